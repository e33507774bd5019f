import { type Kind, kinds, unitsOf } from "@plumbmark/calc";
import { formsOf, isSchema, type SchemaPiece } from "./fields.js";

/** How a value is written: words, among them what is written letter for letter, and what is one of a list. */
export type WrittenWords = readonly (
  | string
  | { readonly code: string }
  | { readonly list: "Connectors"; readonly words: string }
)[];

const code = (value: unknown): { readonly code: string } => ({ code: String(value) });

const separated = (parts: readonly WrittenWords[], between: string, last = between): WrittenWords =>
  parts.flatMap((part, index) => (index === 0 ? part : [index === parts.length - 1 ? last : between, ...part]));

const kindsOf = (value: unknown): readonly Kind[] =>
  [value].flat().filter((each): each is Kind => Object.hasOwn(kinds, String(each)));

/** The two units of a kind somebody is likeliest to write, one metric and one of the US. */
const usualUnits = (kind: Kind): readonly string[] => {
  const all = unitsOf(kind).filter(({ print }) => print !== "");
  const one = (system: string) => all.find((unit) => unit.system === system)?.print;
  const found = [one("metric"), one("us")].filter((each): each is string => each !== undefined);
  return found.length > 0 ? found : all.slice(0, 2).map(({ print }) => print);
};

const quantity = (wanted: readonly Kind[]): WrittenWords =>
  separated(
    wanted.map((kind) => {
      const units = usualUnits(kind).map((unit) => [code(unit)]);
      return [kinds[kind].name, ...(units.length === 0 ? [] : [" in ", ...separated(units, ", ", " or ")])];
    }),
    ", ",
    " or ",
  );

const within = ({ minimum, maximum, exclusiveMinimum }: SchemaPiece): string => {
  if (minimum !== undefined && maximum !== undefined) return ` from ${minimum} to ${maximum}`;
  if (exclusiveMinimum !== undefined)
    return ` above ${exclusiveMinimum}${maximum === undefined ? "" : `, ${maximum} at most`}`;
  if (minimum !== undefined) return `, ${minimum} at least`;
  return maximum === undefined ? "" : `, ${maximum} at most`;
};

const REFERS: Readonly<Record<string, WrittenWords>> = {
  connector: [{ list: "Connectors", words: "a connector of the list" }],
  panel: ["the name of a panel in the parts catalogue"],
  attachment: ["the name of an attachment in the parts catalogue"],
};

const DAY = "2027-03-05";

function oneForm(root: SchemaPiece, form: SchemaPiece): WrittenWords | undefined {
  if (form.const !== undefined) return [code(form.const)];
  if (Array.isArray(form.enum))
    return separated(
      form.enum.map((each) => [code(each)]),
      ", ",
      " or ",
    );
  if (form.pair !== undefined) return ["two of it with ", code("x"), " between: ", ...quantity(kindsOf(form.pair))];
  if (form.extent !== undefined)
    return [
      ...quantity(kindsOf(form.extent)),
      ", with ",
      code("at most"),
      ", ",
      code("at least"),
      ", ",
      code("about"),
      " or ",
      code("exactly"),
      " before it",
    ];
  if (form.range !== undefined && form.quantity === undefined)
    return ["two of it with ", code("to"), " between: ", ...quantity(kindsOf(form.range))];
  if (form.quantity === "factor") return [`a number${within(form)}`];
  if (form.quantity !== undefined) {
    const one = quantity(kindsOf(form.quantity));
    return form.range === undefined ? one : [...one, ", or two of it with ", code("to"), " between"];
  }
  if (form.form === "stay") return ["days: ", code("2027-03-05 to 2027-03-08"), ", or ", code("from 2027-03-05")];
  if (form.form === "day" || /^\^(?:\\d|\[0-9\])\{4\}-/u.test(String(form.pattern))) return ["a day, ", code(DAY)];
  if (typeof form.refers === "string") return REFERS[form.refers];
  if (isSchema(form.items)) return ["a list; each item: ", ...writtenAs(root, form.items)];
  if (isSchema(form.properties)) return ["keys of its own, see below"];
  if (isSchema(form.additionalProperties))
    return ["names of your own, each with: ", ...writtenAs(root, form.additionalProperties)];
  return plain(form);
}

function plain(form: SchemaPiece): WrittenWords | undefined {
  const types = [form.type].flat();
  if (types.includes("boolean")) return [code("true"), " or ", code("false")];
  if (types.includes("string") && types.includes("integer")) return ["a text or a whole number"];
  if (types.includes("string") && types.includes("number")) return ["a text or a number"];
  if (types.includes("integer")) return [`a whole number${within(form)}`];
  if (types.includes("number")) return [`a number${within(form)}`];
  if (types.includes("string")) return ["a text"];
  if (types.includes("array")) return ["a list"];
  return types.includes("object") ? ["keys and values"] : undefined;
}

const same = (one: WrittenWords): string => JSON.stringify(one);

/** How the value of a field is written, from every form it may have. */
export function writtenAs(root: SchemaPiece, schema: SchemaPiece): WrittenWords {
  return writtenForms(root, formsOf(root, schema));
}

export function writtenForms(root: SchemaPiece, forms: readonly SchemaPiece[]): WrittenWords {
  const all = forms.flatMap((form) => {
    const one = oneForm(root, form);
    return [...(one ? [one] : []), ...(form.none === true ? [[code("none")]] : [])];
  });
  const once = all.filter((each, index) => all.findIndex((other) => same(other) === same(each)) === index);
  return separated(once, "; or ");
}
