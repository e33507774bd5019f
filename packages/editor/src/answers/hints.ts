import { type Known, type Print, printQuantity, type Value } from "@plumbmark/calc";
import type { Place } from "@plumbmark/core";
import type { OpenedFile, SoundModel } from "./opened.js";

/** What a line comes to, shown behind it. */
export interface Hint {
  readonly place: Place;
  readonly text: string;
}

interface Figures {
  readonly print: Print;
  readonly at: (path: string) => Value | undefined;
}

const known = (value: Value | undefined): Known | undefined => (value?.known ? (value as Known) : undefined);

/** `6.8 A of 15 A`: the unit once where it is the same. */
function ofTwo({ print }: Figures, used: Known, limit: Known): string {
  const [one, other] = [print(used.value, used.kind), print(limit.value, limit.kind)];
  const unit = /\s\D+$/u.exec(one)?.[0];
  return unit !== undefined && other.endsWith(unit)
    ? `${one.slice(0, -unit.length)} of ${other}`
    : `${one} of ${other}`;
}

const share = (figures: Figures, used: string, limit: string): string | undefined => {
  const [one, other] = [known(figures.at(used)), known(figures.at(limit))];
  return one && other ? ofTwo(figures, one, other) : one ? figures.print(one.value, one.kind) : undefined;
};

const one = ({ print, at }: Figures, path: string, words: (text: string) => string): string | undefined => {
  const value = known(at(path));
  return value ? words(print(value.value, value.kind)) : undefined;
};

const joined = (...parts: readonly (string | undefined)[]): string =>
  parts.filter((part) => part !== undefined).join(", ");

const ofRun = (figures: Figures, path: string, circuit: string | undefined): string =>
  joined(
    share(figures, `${path}.current`, circuit === undefined ? `${path}.rating` : `${circuit}.continuous-rating`),
    one(figures, `${path}.drop-share`, (text) => `${text} drop`),
  );

const ofCircuit = (figures: Figures, path: string): string =>
  joined(share(figures, `${path}.current`, `${path}.continuous-rating`));

const ofChain = (figures: Figures, path: string): string =>
  joined(share(figures, `${path}.pixels`, `${path}.capacity`));

const ofBar = (figures: Figures, path: string): string =>
  joined(share(figures, `${path}.on-structure`, `${path}.structure`));

function ofHang(figures: Figures, path: string): string {
  const worst = share(figures, `${path}.worst-on-structure`, `${path}.structure`);
  return joined(
    one(figures, `${path}.on-structure`, (text) => text) ?? one(figures, `${path}.reaction`, (text) => text),
    worst === undefined ? undefined : `at worst ${worst}`,
  );
}

const ofFace = (figures: Figures, path: string): string =>
  joined(
    one(figures, `${path}.panel-count`, (text) => `${text} panels`),
    one(figures, `${path}.mass`, (text) => text),
  );

/** Three digits tell enough behind a line; what is counted is whole. */
const brief =
  (system: SoundModel["system"]): Print =>
  (value, kind) =>
    printQuantity(value, kind, system, undefined, kind === "pixels" || kind === "count" ? undefined : 3);

/**
 * What lines come to, between two lines of a document: a run its current and drop, a hang its load, a chain its pixels.
 * Only lines that stand in the text as the model was made from it.
 */
export function hintsIn({ model, text }: OpenedFile, from: number, to: number): readonly Hint[] {
  if (!model || model.text !== text) return [];
  const { build } = model;
  const figures: Figures = { print: brief(model.system), at: (path) => build.valueAt(path) };
  const { keys } = build.reader.placed;
  const things = [
    ...build.faces.map(({ path }) => [path, ofFace] as const),
    ...build.circuits.map(({ path }) => [path, ofCircuit] as const),
    ...build.runs.map(
      ({ path, circuit }) => [path, (each: Figures, at: string) => ofRun(each, at, circuit?.path)] as const,
    ),
    ...build.chains.map(({ path }) => [path, ofChain] as const),
    ...build.bars.map(({ path }) => [path, ofBar] as const),
    ...build.bars.flatMap(({ hangs }) => hangs.map(({ path }) => [path, ofHang] as const)),
  ];
  const lines = text.split(/\r\n|\n|\r/u);
  return things.flatMap(([path, words]) => {
    const place = keys.get(path);
    if (!place || place.line < from || place.line > to) return [];
    const told = words(figures, path);
    if (told === "") return [];
    const end = (lines[place.line - 1] ?? "").length + 1;
    return [{ place: { line: place.line, column: end, endLine: place.line, endColumn: end }, text: told }];
  });
}
