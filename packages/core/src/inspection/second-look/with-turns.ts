import { printer } from "@plumbmark/calc";
import { LIKE_IN_BUILD, withLike } from "../../document/like.js";
import type { Data } from "../../document/yaml/yaml.js";
import { TURNS } from "../../findings/turns.js";
import { withChanges } from "../../repository/outline.js";
import { surveyWith } from "../../venue/survey.js";
import { type DocumentModel, modelOf } from "../document-model.js";
import type { InspectionTask } from "../judge-document.js";
import type { Rule } from "../judging/rule.js";
import { runRule } from "../judging/run-rule.js";
import type { CheckEntry, TurnsAtEntry } from "../record.js";
import { type Attempt, turnsAt, type Written } from "./turning.js";

/** So many findings of a document are told what would turn them. */
const MOST_TURNED = 16;

/** Tells of what does not hold and is going to be printed at which figure it would come out otherwise. */
export function withTurns(
  checks: readonly CheckEntry[],
  model: DocumentModel,
  asked: InspectionTask,
): readonly CheckEntry[] {
  const { document, snapshot, rules, subject } = asked;
  const { build, system, trace, kept } = model;
  const isTold = (check: CheckEntry): boolean =>
    check[TURNS] !== undefined && check.outcome !== "holds" && check.outcome !== "waived" && !check["follows-from"];
  const told = checks.filter(isTold).slice(0, MOST_TURNED);
  if (told.length === 0) return checks;
  const { reader } = build;
  const ruleOf = (id: string): Rule | undefined => rules.find((each) => each.id === id);
  const run = (id: string, by: DocumentModel): readonly CheckEntry[] => {
    const rule = ruleOf(id);
    return rule ? runRule(rule, { ...subject, build: by.build, print: printer(system), every: true }) : [];
  };
  const written: Written = {
    known: (path) => reader.quantities.get(path),
    whole: (path) => {
      const data = reader.data(path);
      return typeof data === "number" ? data : undefined;
    },
    system,
  };
  // What an entry copies is written out, so that it can be laid over one by one.
  const whole = document.placed ? { ...document, placed: withLike(document.placed, LIKE_IN_BUILD) } : document;
  const modelWith = (path: string, figure: Data): DocumentModel => {
    const { venue } = reader;
    const stated = venue?.statedAt(path)?.path ?? venue?.belongs(path)?.path;
    if (venue && stated !== undefined) {
      const other = snapshot.withSurvey(surveyWith(venue.survey, stated, figure));
      return modelOf(document, other, () => build.context.rules, trace);
    }
    // A pointer counts the items of a list from nought.
    const keys = path.split(".");
    const dataAt = (length: number): Data | undefined =>
      keys
        .slice(0, length)
        .reduce<Data | undefined>(
          (here, key) =>
            Array.isArray(here)
              ? (here as readonly Data[])[Number(key) - 1]
              : here !== null && typeof here === "object"
                ? (here as Readonly<Record<string, Data>>)[key]
                : undefined,
          whole.placed?.data,
        );
    const isThere = (length: number): boolean => {
      const data = dataAt(length);
      return typeof data === "object" && data !== null;
    };
    // What a figure stands in may not be written either: it is put there with it.
    const missing = keys.findIndex((_, index) => index > 0 && !isThere(index));
    const depth = missing < 0 ? keys.length : missing;
    const value = keys.slice(depth).reduceRight<Data>((inner, key) => ({ [key]: inner }), figure);
    const pointer = keys
      .slice(0, depth)
      .map((key, index) => (Array.isArray(dataAt(index)) ? String(Number(key) - 1) : key))
      .map((key) => `/${key}`)
      .join("");
    const read = withChanges(whole, [{ op: "add", document: document.file.path, path: pointer, value }]);
    return modelOf(read, snapshot.withDocument(read), () => build.context.rules, trace);
  };
  const attempt: Attempt = (rule, path, figure) => run(rule, modelWith(path, figure));
  // Of several checks at one place each is found again by its turn among them.
  const as = new Map<string, readonly CheckEntry[]>();
  const indexOf = (check: CheckEntry): number => {
    const found = as.get(check.rule) ?? run(check.rule, model);
    as.set(check.rule, found);
    return found.filter(({ at }) => at.path === check.at.path).findIndex(({ says }) => says === check.says);
  };
  const turnsOf = (check: CheckEntry): TurnsAtEntry | undefined => {
    if (kept?.turns.has(check)) return kept.turns.get(check);
    const index = indexOf(check);
    const turns = index < 0 ? undefined : turnsAt(check, index, written, attempt);
    // Of a check that was made anew nobody asks again.
    if (kept?.checks.get(ruleOf(check.rule) as Rule)?.found.includes(check)) kept.turns.set(check, turns);
    return turns;
  };
  return checks.map((check) => {
    const turns = told.includes(check) ? turnsOf(check) : undefined;
    return turns ? { ...check, "turns-at": turns } : check;
  });
}
