import { printer, type Value } from "@plumbmark/calc";
import {
  chainFor,
  fromText,
  listRule,
  type Part,
  type Place,
  type WhereFound,
  whereFoundWords,
  workingEntries,
} from "@plumbmark/core";
import { type Cursor, type CursorPoint, cursorAt } from "./cursor.js";
import { descriptionOf, fixedWordsOf, formsAt, foundOf, quantitiesOf, titleOfField } from "./fields.js";
import { nameAt } from "./names/names.js";
import { mentionAt } from "./names/same-names.js";
import { isOlder, OLDER, type OpenedFile } from "./opened.js";
import { isIn, linesOf, zoneOf } from "./zone.js";

/** What is told of a place, as Markdown. */
export interface Told {
  readonly place: Place;
  readonly text: string;
}

/** A text of the author's in Markdown, as the text it is. */
const plain = (text: string): string => text.replace(/[\\`*_{}[\]<>()#+!|~]/gu, "\\$&");
const code = (text: string): string => `\`${text.replaceAll("`", "'")}\``;

/** Figures that tell what a thing comes to, of everything that is computed of it. */
const MOST_FIGURES = 12;
const MOST_LINES = 14;

function valueText({ model }: OpenedFile, value: Value): string {
  if (!model) return "";
  if (!value.known) {
    const gaps = value.gaps.map((gap) => gap.because ?? `${gap.of ?? "The document"} has no ${gap.what} written down.`);
    return [...new Set(gaps)].map(plain).join(" ");
  }
  const print = printer(model.system);
  const lines = workingEntries([value], print).slice(-MOST_LINES);
  const shown = `**${plain(print(value.value, value.kind))}**`;
  return lines.length === 0
    ? shown
    : `${shown}\n\n\`\`\`text\n${lines.map((line) => `${line.formula}\n  ${line.with}`).join("\n")}\n\`\`\``;
}

/** Values computed of a thing, one level below its path. */
function figuresUnder({ model }: OpenedFile, path: string): string {
  if (!model) return "";
  const print = printer(model.system);
  const first = path.split(".", 1)[0] as string;
  const found = [...model.build.valuesUnder(first)]
    .filter(([each]) => each.startsWith(`${path}.`) && !each.slice(path.length + 1).includes("."))
    .slice(0, MOST_FIGURES);
  const row = ([each, value]: readonly [string, Value]): string =>
    `- ${code(each.slice(path.length + 1))}: ${value.known ? plain(print(value.value, value.kind)) : "cannot be told"}`;
  return found.map(row).join("\n");
}

function partText(part: Part): string {
  const { describes } = part.data;
  const figures = [...part.quantities]
    .slice(0, MOST_FIGURES)
    .flatMap(([path, { origin }]) =>
      origin.from === "written" && !/\.[12]$/u.test(path) ? [`- ${code(path)}: ${plain(origin.text)}`] : [],
    );
  const head = `**${plain(part.name)}**, ${plain(part.kind)}, in ${plain(part.file)}`;
  return [head, typeof describes === "string" ? plain(describes) : "", figures.join("\n")]
    .filter((each) => each !== "")
    .join("\n\n");
}

function ruleText({ repository, path, model }: OpenedFile, id: string): string | undefined {
  const rule = repository.rules.find((each) => each.id === id);
  if (!rule) return undefined;
  const practice = model?.build.practice ?? repository.standard.practice ?? "us";
  const listed = listRule(rule, chainFor(repository.standards, path), practice);
  const settings = Object.entries(listed.settings).map(
    ([name, { text, from }]) => `- ${code(name)}: ${plain(text)} (${plain(fromText(from))})`,
  );
  const level = `- level: ${listed.level.text} (${plain(fromText(listed.level.from))})`;
  return [
    `**${plain(id)}**`,
    plain(rule.states),
    plain(rule.why),
    [level, ...settings].join("\n"),
    `Rests on: ${rule.sources.map(plain).join(", ")}`,
  ].join("\n\n");
}

function fieldText(file: OpenedFile, path: readonly string[]): string {
  const forms = formsAt(file, path);
  if (forms.length === 0) return "";
  const quantities = quantitiesOf(forms);
  const words = fixedWordsOf(forms);
  const found = foundOf(forms);
  return [
    titleOfField(forms) === undefined ? "" : `**${plain(titleOfField(forms) as string)}**`,
    descriptionOf(forms) ?? "",
    quantities.length > 0 ? `A ${quantities.map(plain).join(" or ")}.` : "",
    words.length > 0 ? `One of ${words.slice(0, 16).map(code).join(", ")}.` : "",
    found === undefined ? "" : whereFoundWords(found as WhereFound),
  ]
    .filter((each) => each !== "")
    .join("\n\n");
}

function yamlText(file: OpenedFile, { path, at, word }: Cursor): string {
  const steps = at === "key" ? [...path, word] : path;
  const named = nameAt(file.kind, at, steps);
  const name = word.replace(/^["']|["']$/gu, "");
  const part = named?.of === "part" ? file.repository.catalogue.parts.get(name) : undefined;
  if (part) return partText(part);
  const rule = named?.of === "rule" ? ruleText(file, name) : undefined;
  if (rule !== undefined) return rule;
  const dotted = steps.join(".");
  const value = file.kind === "build" ? file.model?.build.valueAt(dotted) : undefined;
  const parts = [
    fieldText(file, steps),
    value ? valueText(file, value) : "",
    file.kind === "build" && at === "key" ? figuresUnder(file, dotted) : "",
  ];
  return parts.filter((each) => each !== "").join("\n\n");
}

const LINK = /\[([^\]]*)\]\(calc:([^)\s]*)\)/gu;

/** The link to a computed value a point is in. */
export function linkAt(
  line: string,
  { line: number, column }: CursorPoint,
): { readonly path: string; readonly place: Place } | undefined {
  for (const match of line.matchAll(LINK)) {
    const [from, to] = [match.index + 1, match.index + 1 + match[0].length];
    if (column < from || column > to) continue;
    return { path: match[2] as string, place: { line: number, column: from, endLine: number, endColumn: to } };
  }
  return undefined;
}

/** What is told of a point of a file; undefined where nothing is. */
export function hoverAt(file: OpenedFile, point: CursorPoint): Told | undefined {
  const lines = linesOf(file.text);
  const zone = zoneOf(lines, file.kind);
  const older = isOlder(file) ? `\n\n_${OLDER}_` : "";
  if (isIn(zone, point.line)) {
    const cursor = cursorAt(file.text, zone, point);
    if (!cursor || cursor.word === "") return undefined;
    const text = yamlText(file, cursor);
    const place = mentionAt(file.repository, file, point)?.place ?? cursor.place;
    return text === "" ? undefined : { place, text: text + (file.kind === "build" ? older : "") };
  }
  const link = linkAt(lines[point.line - 1] ?? "", point);
  const value = link && file.model?.build.valueAt(link.path);
  return link && value
    ? { place: link.place, text: `${code(link.path)}\n\n${valueText(file, value)}${older}` }
    : undefined;
}
