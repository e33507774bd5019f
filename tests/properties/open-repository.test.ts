import {
  type FileRole,
  type InspectionRecord,
  type OpenRepository,
  openRepository,
  type RepositoryFiles,
  type Rule,
  StandardError,
  type ValueChange,
} from "@plumbmark/core";
import { is, rule } from "@plumbmark/kit";
import { rules } from "@plumbmark/rules";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parse, parseDocument } from "yaml";
import { starter, TODAY } from "../documents/repository.js";
import { deep } from "../run/effort.js";
import { notEmpty } from "../run/not-empty.js";

const noting = (id: string, says: (context: Parameters<Rule["checks"]>[0]) => string): Rule =>
  rule({
    id,
    states: "It says what it sees.",
    level: "note",
    why: "What is looked at has to be noted.",
    judged: "Nothing.",
    sources: ["house"],
    *checks(context) {
      yield is(context.build, { holds: true, says: says(context as never) });
    },
  });

/** Rules that look further than one document: some documents at the others, some at every part or path. */
const looking: readonly Rule[] = [
  noting("tests.others", ({ build, repository }) =>
    build.faces.length > 1
      ? repository.builds.map((each) => each.sections.length + each.faces.length).join(" ")
      : "one",
  ),
  noting("tests.parts", ({ build, repository }) =>
    build.runs.length > 2 ? [...repository.parts.keys()].join(" ") : "few",
  ),
  noting("tests.paths", ({ build, repository }) => (build.bars.length === 0 ? repository.files.join(" ") : "bars")),
  noting("tests.promises", ({ build }) =>
    build.circuits.length > 1 ? JSON.stringify(build.context.promises) : "one circuit",
  ),
];
const all = [...rules, ...looking];
const LONG = 1_800_000;
const options = { today: TODAY, every: true };

const NAMES = ["riser-fascias", "side-strips", "small-screen"];
const files = (): RepositoryFiles => {
  const { documents, ...rest } = starter();
  return { ...rest, documents: documents.filter(({ path }) => NAMES.some((name) => path.includes(name))) };
};
const textOf = (path: string): string => {
  const { documents, parts, stock, houseStandard } = files();
  const found = [...documents, ...parts, stock, houseStandard].find((each) => each?.path === path);
  if (!found) throw new Error(`the starter has no ${path}`);
  return found.text;
};

/** A change of a file: its text as it is in the starter with something else in it, or nothing. */
interface Step {
  readonly path: string;
  readonly text: string | undefined;
  readonly role: FileRole;
}

const edited = (path: string, role: FileRole, ...edits: readonly (readonly [RegExp, string])[]): readonly Step[] => {
  const text = textOf(path);
  const made = edits.map(([from, to]) => ({ path, role, text: text.replace(from, to) }));
  const idle = made.findIndex((each) => each.text === text);
  if (idle >= 0) throw new Error(`edit ${idle + 1} of ${path} changes nothing`);
  return [...made, { path, role, text }];
};

const STEPS: readonly Step[] = [
  ...NAMES.flatMap((name) =>
    edited(
      `builds/${name}.md`,
      "document",
      [/^build: .*$/mu, "build: the-same"],
      [/^status: .*$/mu, "status: as-built"],
      [/columns: (\d)/u, "columns: 1$1"],
      [/^faces:/mu, "faces: ["],
      [/^on-site: .*$/mu, "on-site: 2027-01-01 to 2027-12-31"],
      [/\n## /u, "\n[another](small-screen.md) and [a part](../parts/panels.yaml)\n\n## "],
    ),
  ),
  { path: "builds/small-screen.md", role: "document", text: undefined },
  { path: "builds/riser-fascias.md", role: "document", text: undefined },
  { path: "builds/another.md", role: "document", text: textOf("builds/side-strips.md") },
  { path: "builds/another.md", role: "document", text: undefined },
  ...edited(
    "parts/panels.yaml",
    "parts",
    [/mass: \d/u, "mass: 9"],
    [/^(\S+):$/mu, "$1-other:"],
    [/mass: /u, "mass: about "],
    [/^/u, "unused: {kind: hardware, wll: 100 kg}\n"],
    [/^/u, "a: ["],
  ),
  { path: "parts/panels.yaml", role: "parts", text: undefined },
  { path: "parts/more.yaml", role: "parts", text: "spare: {kind: hardware, wll: 100 kg, mass: 1 kg}\n" },
  { path: "parts/more.yaml", role: "parts", text: textOf("parts/rigging.yaml") },
  { path: "parts/more.yaml", role: "parts", text: undefined },
  ...edited("stock.yaml", "stock", [/count: \d+/u, "count: 1"], [/count: /u, "number: "]),
  { path: "stock.yaml", role: "stock", text: undefined },
  ...edited(
    "house-standard.yaml",
    "house standard",
    [/^practice: .*$/mu, "practice: iec"],
    [/^house-standard: .*$/mu, "house-standard: Another"],
    [/$/u, "\nnot-known: 1\n"],
    [/house\.two-spares/u, "house.three-spares"],
  ),
  {
    path: "builds/house-standard.yaml",
    role: "folder standard",
    text: "house-standard: Deeper\nsections: [Rehearsal]\n",
  },
  { path: "builds/house-standard.yaml", role: "folder standard", text: undefined },
];

/** What is asked for, or why it is refused. */
function told<T>(ask: () => T): T | string {
  try {
    return ask();
  } catch (error) {
    if (error instanceof StandardError) return error.message;
    throw error;
  }
}

const inspected = new WeakMap<RepositoryFiles, InspectionRecord | string>();

/** The record of a repository that is inspected anew, once for the same files. */
function fresh(now: RepositoryFiles): InspectionRecord | string {
  const found = inspected.get(now) ?? told(() => openRepository(now, all, options).all());
  inspected.set(now, found);
  return found;
}

/** The files with one replaced, by plain means. */
function after(now: RepositoryFiles, { path, text, role }: Step): RepositoryFiles {
  const file = text === undefined ? undefined : { path, text };
  const list = <F extends { readonly path: string }>(from: readonly F[], to: F | undefined): readonly F[] =>
    [...from.filter((each) => each.path !== path), ...(to ? [to] : [])].sort((one, other) =>
      one.path < other.path ? -1 : 1,
    );
  if (role === "document") return { ...now, documents: list(now.documents, file) };
  if (role === "parts") return { ...now, parts: list(now.parts, file) };
  if (role === "folder standard")
    return { ...now, folderStandards: list(now.folderStandards ?? [], file && { ...file, folder: "builds" }) };
  const { stock, houseStandard, ...rest } = now;
  const kept = role === "stock" ? { ...(houseStandard && { houseStandard }) } : { ...(stock && { stock }) };
  return { ...rest, ...kept, ...(file && { [role === "stock" ? "stock" : "houseStandard"]: file }) };
}

const step = fc.constantFrom(...STEPS);

test(
  "after any replacements, one and all are what they are of a repository that is opened anew",
  () => {
    const steps = fc.array(fc.record({ step, look: fc.constantFrom(...NAMES, "all", "nothing") }), {
      minLength: 1,
      maxLength: 5,
    });
    fc.assert(
      fc.property(steps, (taken) => {
        let now = files();
        const open = openRepository(now, all, options);
        const first = open.all();
        expect(first.documents.length).toBeGreaterThanOrEqual(NAMES.length);
        for (const { step: next, look } of notEmpty(taken)) {
          now = after(now, next);
          open.replace(next.path, next.text, next.role);
          if (look === "nothing") continue;
          const expected = fresh(now);
          const path = `builds/${look}.md`;
          if (look === "all" || typeof expected === "string" || !open.documents.includes(path))
            expect(told(() => open.all())).toEqual(expected);
          else expect(open.one(path).entry).toEqual(expected.documents.find(({ file }) => file === path));
        }
        expect(told(() => open.all())).toEqual(fresh(now));
      }),
      { numRuns: deep ? 300 : 1 },
    );
  },
  LONG,
);

test("only what depends on a file is judged again", () => {
  const judged: string[] = [];
  const spy = noting("tests.spy", ({ build }) => {
    judged.push(build.context.file);
    return "seen";
  });
  const open = openRepository(files(), [...rules, spy], options);
  open.all();
  expect(judged.sort()).toEqual(NAMES.map((name) => `builds/${name}.md`));
  const again = (path: string, from: RegExp, to: string): readonly string[] => {
    judged.length = 0;
    const text = textOf(path).replace(from, to);
    expect(text).not.toBe(textOf(path));
    open.replace(path, text);
    open.all();
    return [...judged].sort();
  };
  expect(again("builds/side-strips.md", /\n## /u, "\nA word more.\n\n## ")).toEqual(["builds/side-strips.md"]);
  expect(again("parts/rigging.yaml", /^/u, "nobody-names-it: {kind: hardware, wll: 100 kg, mass: 1 kg}\n")).toEqual([]);
  expect(again("house-standard.yaml", /^practice: .*$/mu, "practice: iec")).toHaveLength(NAMES.length);
});

/** What a document comes to, without where in the text it stands. */
function outcomes(open: OpenRepository, path: string): readonly string[] {
  const { checks, verdict } = open.one(path).entry;
  // A mend is an edit of the text, which what is laid over has none of.
  const plain = checks.map(({ at, "follows-from": _, mends: __, ...rest }) => JSON.stringify([at.path, rest]));
  // What is laid over has no text for the code of an approval to be of.
  return [verdict, ...plain.map((each) => each.replace(/\b[0-9A-Z]{4}-[0-9A-Z]{4}\b/gu, "CODE")).sort()];
}

const figures = (open: OpenRepository, path: string) =>
  [...open.model(path).build.values].map(([name, value]) => [name, value.known ? value.value : value.gaps]);

const pointer = (keys: readonly (string | number)[]): string =>
  keys.map((key) => `/${String(key).replaceAll("~", "~0").replaceAll("/", "~1")}`).join("");

/** Every place in data, by its keys. */
function placesIn(data: unknown, at: readonly (string | number)[] = []): readonly (readonly (string | number)[])[] {
  const inner = Array.isArray(data)
    ? data.map((item, index) => [index, item] as const)
    : typeof data === "object" && data !== null
      ? Object.entries(data)
      : [];
  return inner.flatMap(([key, value]) => [[...at, key], ...placesIn(value, [...at, key])]);
}

const FRONT = /^---\n([\s\S]*?)\n---\n/u;
const frontOf = (text: string): string => FRONT.exec(text)?.[1] ?? "";
/** The text with its front matter written out by a library, so that an edit of it changes nothing else. */
const withFront = (text: string, front: string): string => text.replace(FRONT, () => `---\n${front.trimEnd()}\n---\n`);
const written = (text: string): string =>
  withFront(text, parseDocument(frontOf(text)).toString({ lineWidth: 0, flowCollectionPadding: false }));

const VALUES = fc.constantFrom<ValueChange extends infer C ? (C extends { value: infer V } ? V : never) : never>(
  ...["10 A", "2.5 m", "100 kg", "nonsense", 3, 0, true, ["a", "b"], { at: "1 m" }, "draft", "cat6-solid"],
);

describe("values laid over a document", () => {
  const path = "builds/side-strips.md";
  const base = written(textOf(path));
  const places = placesIn(parse(frontOf(base)));
  const withText = (text: string): RepositoryFiles => after(files(), { path, text, role: "document" });
  const change = fc.record({
    keys: fc.constantFrom(...places),
    op: fc.constantFrom("replace" as const, "remove" as const, "add" as const),
    value: VALUES,
    name: fc.constantFrom("new-one", "spares", "length"),
  });

  test("there is something to lay over", () => expect(places.length).toBeGreaterThan(50));

  test(
    "come to what the edited text comes to",
    () => {
      const open = openRepository(withText(base), all, options);
      const before = open.all();
      fc.assert(
        fc.property(fc.array(change, { minLength: 1, maxLength: 3 }), (wanted) => {
          const front = parseDocument(frontOf(base));
          const changes: ValueChange[] = [];
          for (const { keys, op, value, name } of wanted) {
            if (!front.hasIn(keys)) continue;
            const parent = keys.length > 1 ? front.getIn(keys.slice(0, -1)) : front.contents;
            const inList = typeof keys.at(-1) === "number";
            const at = { document: path, path: pointer(keys) };
            if (op === "remove") {
              front.deleteIn(keys);
              changes.push({ ...at, op });
            } else if (op === "replace") {
              front.setIn(keys, front.createNode(value));
              changes.push({ ...at, op, value });
            } else if (inList) {
              (parent as { items: unknown[] }).items.splice(keys.at(-1) as number, 0, front.createNode(value));
              changes.push({ ...at, op, value });
            } else {
              const inner = [...keys.slice(0, -1), name];
              front.setIn(inner, front.createNode(value));
              changes.push({ document: path, path: pointer(inner), op, value });
            }
          }
          const laid = open.with(changes);
          const text = withFront(base, front.toString({ lineWidth: 0, flowCollectionPadding: false }));
          const anew = openRepository(withText(text), all, options);
          for (const each of open.documents) expect(outcomes(laid, each)).toEqual(outcomes(anew, each));
          expect(figures(laid, path)).toEqual(figures(anew, path));
        }),
        { numRuns: deep ? 1000 : 3 },
      );
      // What it was laid over is as it was.
      expect(open.all()).toEqual(before);
    },
    LONG,
  );

  test("an approval is not of what is laid over", () => {
    const [name] = Object.keys((parse(frontOf(base)) as { faces: object }).faces);
    const state = (open: OpenRepository) => open.model(path).build.approval.state;
    const open = openRepository(files(), all, options);
    expect(state(open)).toBe("approved");
    expect(state(open.with([{ op: "replace", document: path, path: `/faces/${name}/columns`, value: 3 }]))).toBe(
      "changed",
    );
  });

  test.each([
    ["/faces/none/columns", /there is no `faces\.none`/u],
    ["faces", /no JSON Pointer/u],
    ["/build/length", /neither a group nor a list/u],
  ])("a change that leads to nothing is refused: %s", (at, says) => {
    const open = openRepository(files(), all, options);
    expect(() => open.with([{ op: "replace", document: path, path: at, value: 1 }])).toThrow(says);
    expect(() => open.with([{ op: "replace", document: "none.md", path: "/build", value: 1 }])).toThrow(RangeError);
  });
});
