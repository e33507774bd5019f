import { kinds, sources } from "@plumbmark/calc";
import type { RawCheck } from "./rule.js";

type Unknown = Readonly<Record<string, unknown>>;

const isObject = (value: unknown): value is Unknown =>
  typeof value === "object" && value !== null && !Array.isArray(value);

const shown = (value: unknown): string =>
  value === undefined ? "nothing" : typeof value === "string" ? `\`${value.slice(0, 40)}\`` : typeof value;

const refuse: (what: string, value: unknown, wanted: string) => never = (what, value, wanted) => {
  throw new TypeError(`${what} is ${shown(value)}; it has to be ${wanted}`);
};

const text = (what: string, value: unknown): void => {
  if (typeof value !== "string") refuse(what, value, "a text");
};

function refuseValue(what: string, value: unknown): void {
  if (!isObject(value) || typeof value.known !== "boolean" || !Object.hasOwn(kinds, String(value.kind)))
    refuse(what, value, "a value of the model, or one made with the kit");
  if (value.known && !(typeof value.value === "number" && Number.isFinite(value.value)))
    throw new TypeError(`${what} is ${String(value.value)}, which is no finite number`);
  if (value.known ? !isObject(value.origin) : !Array.isArray(value.gaps))
    refuse(what, value, "a value that says where it comes from");
}

/** More changes than this are no answer to one check. */
const MOST_MENDS = 100;

function refuseMends(mends: unknown): void {
  if (!Array.isArray(mends) || mends.length > MOST_MENDS) refuse("`mends`", mends, `a list of at most ${MOST_MENDS}`);
  for (const mend of mends as readonly unknown[]) {
    if (!isObject(mend)) refuse("one of `mends`", mend, "a change: `{at, becomes, sure}`");
    const isPlace =
      isObject(mend.at) &&
      ["line", "column", "endLine", "endColumn"].every((key) => Number.isInteger((mend.at as Unknown)[key]));
    if (typeof mend.at !== "string" && !isPlace) refuse("`at` of one of `mends`", mend.at, "a path or a place");
    // Written out as undefined it takes the entry out; left away it is forgotten.
    if (!("becomes" in mend) || mend.becomes !== undefined) text("`becomes` of one of `mends`", mend.becomes);
    // One line takes the place of another: a change that adds keys of its own would be no mend of a value.
    if (/[\r\n]/u.test(mend.becomes as string)) refuse("`becomes` of one of `mends`", mend.becomes, "one line of text");
    if (typeof mend.sure !== "boolean") refuse("`sure` of one of `mends`", mend.sure, "true or false");
  }
}

/**
 * What a plugin yields has to be a check: anything may come out of somebody else's code.
 * @throws TypeError that says what is wrong with it.
 */
export function refuseUnsound(raw: unknown): asserts raw is RawCheck {
  if (!isObject(raw)) refuse("what it yields", raw, "a check made with the kit");
  if (raw.form !== "compare" && raw.form !== "plain" && raw.form !== "open")
    refuse("the form of its check", raw.form, "one the kit makes: atMost, atLeast, within, agrees, is, open");
  text("the path of its check", raw.at);
  if (typeof raw.says !== "function") refuse("`says`", raw.says, "a function, or a text for `is` and `open`");
  if (raw.mend !== undefined) text("`mend`", raw.mend);
  refuseMends(raw.mends ?? []);
  const rests: unknown = raw.sources ?? [];
  if (!Array.isArray(rests) || !rests.every((each) => Object.hasOwn(sources, String(each))))
    refuse("`sources`", rests, "a list of sources that are known");
  if (raw.form === "plain" && typeof raw.holds !== "boolean") refuse("`holds`", raw.holds, "true or false");
  if (raw.form !== "compare") return;
  refuseValue("`measured`", raw.measured);
  refuseValue("`allowed`", raw.allowed);
  if (raw.most !== undefined) refuseValue("`most`", raw.most);
}

/** Longer than any sentence, and more than there are things in a build: a record has to stay readable. */
const LONGEST = 2000;
export const MOST_CHECKS = 10_000;

/** The sentences of a check are made by the plugin, too. @throws TypeError */
export function refuseUnsoundText(says: unknown): asserts says is string {
  if (typeof says !== "string" || says.trim() === "") refuse("what `says` gives", says, "a sentence");
  if (says.length > LONGEST)
    throw new TypeError(`what \`says\` gives has ${says.length} characters; ${LONGEST} are the most`);
}

/** @throws RangeError */
export function refuseTooMany(checks: number): void {
  if (checks > MOST_CHECKS) throw new RangeError(`it yields more than ${MOST_CHECKS} checks for one document`);
}
