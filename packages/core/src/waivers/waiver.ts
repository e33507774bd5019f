import { isDay } from "../document/days.js";
import { written } from "../document/nothing-written.js";
import { type Person, person } from "../document/person.js";
import type { Data } from "../document/yaml/yaml.js";
import type { CheckEntry } from "../inspection/record.js";
import type { DesignSource } from "../model/reading/design-source.js";
import { type Paper, paperAt } from "../model/reading/paper.js";
import { currentRule } from "../standard/old-rules.js";

const FIELDS = ["rule", "because", "by", "until"] as const;

/** One waiver as it is written; what is left out is undefined. */
export interface Waiver {
  readonly path: string;
  readonly label: string;
  readonly rule?: string;
  /** The name its rule had before, where that is written. */
  readonly formerRule?: string;
  /** Place it is for; the whole document when left out. */
  readonly where?: string;
  readonly because?: string;
  readonly by?: string;
  /** Who signed it; undefined too where what is written names nobody. */
  readonly signer: Person | undefined;
  /** Its last day, `2027-06-30`; undefined too when what is written is no day. */
  readonly until?: string;
  /** The worst figure it accepts, as written. */
  readonly accepts?: string | number;
  /** Whether it is for what fails or for what cannot be told: two things, and one does not cover the other. */
  readonly of: "fails" | "open";
  /** What a licensed engineer or electrician has put on paper for it. */
  readonly licensed: Paper | undefined;
  /** Fields that have to be there and are not. */
  readonly absent: readonly (typeof FIELDS)[number][];
}

const acceptsIn = (data: Data | undefined): { readonly accepts?: string | number } => {
  if (typeof data === "number") return { accepts: data };
  const text = written(data);
  return text === undefined ? {} : { accepts: text };
};

const formerIn = (data: Data | undefined): { readonly formerRule?: string } =>
  typeof data === "string" && currentRule(data) !== data ? { formerRule: data } : {};

/** Waivers of a document in the order they are written. */
export const waiversOf = (build: DesignSource): readonly Waiver[] =>
  build.reader.list("waivers").map((_, index) => {
    const path = `waivers.${index + 1}`;
    const data = (field: string): Data | undefined => build.reader.data(`${path}.${field}`);
    const texts = [...FIELDS, "where"].flatMap((field) => {
      const text = written(data(field));
      if (text === undefined || (field === "until" && !isDay(text))) return [];
      return [[field, field === "rule" ? currentRule(text) : text] as const];
    });
    const signer = person(build.reader.text(`${path}.by`));
    const absent = FIELDS.filter((field) => written(data(field)) === undefined || (field === "by" && !signer));
    return {
      ...{ path, label: `Waiver ${index + 1}`, signer, ...Object.fromEntries(texts), ...acceptsIn(data("accepts")) },
      ...formerIn(data("rule")),
      of: data("of") === "open" ? "open" : "fails",
      licensed: paperAt(build, `${path}.licensed`),
      absent,
    };
  });

/**
 * What is never waived: that the document cannot be read, that what it refers to is not there, who signed it, what is
 * said of waivers, who states what the structure bears, and what a plugin failed to judge.
 */
export const UNWAIVABLE: readonly string[] = [
  "document.front-matter",
  "document.parts",
  "document.sign-off",
  "document.waivers",
  "rigging.letter",
  "plugin.failed",
];

/** Whether a waiver is about a check, whatever its day and whatever it accepts. */
export const isAbout = ({ rule, where, of }: Waiver, check: Pick<CheckEntry, "rule" | "at" | "outcome">): boolean =>
  rule === check.rule &&
  of === check.outcome &&
  !UNWAIVABLE.includes(check.rule) &&
  (where === undefined || check.at.path === where || check.at.path.startsWith(`${where}.`));
