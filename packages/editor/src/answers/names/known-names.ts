import { cellName, type OpenRepository, type Part } from "@plumbmark/core";
import type { OpenedFile } from "../opened.js";
import { type Mention, mentionsIn } from "./mentions.js";
import { builtIn, type NamedAt, type NameKind } from "./names.js";
import { definedIn } from "./same-names.js";

export function aboutPart({ kind, data, file }: Part): string {
  const { describes } = data;
  return typeof describes === "string" ? describes : `${kind} in ${file}`;
}

export const partsOfKinds = ({ catalogue }: OpenRepository, kinds: readonly string[] = []): readonly Part[] => {
  const all = [...catalogue.parts.values()];
  return kinds.length === 0 ? all : all.filter(({ kind }) => kinds.includes(kind));
};

/** What a wish may be made out of besides one lot. */
const ANY_LOT = [
  ["holdings", "whatever is owned and free"],
  ["catalogue", "whatever can be bought"],
] as const;

/** Names that may stand somewhere, each with what it is. */
export function namesFor(
  file: OpenedFile,
  { of, kinds }: NamedAt,
  path: readonly string[],
): readonly (readonly [name: string, about: string])[] {
  const { repository } = file;
  if (of === "part") return partsOfKinds(repository, kinds).map((part) => [part.name, aboutPart(part)]);
  if (of === "lot") {
    const lots = [...repository.stock.lots.values()].map(
      ({ name, panel, count }) => [name, `${count} of ${panel}`] as const,
    );
    return path[0] === "out-of" ? [...ANY_LOT, ...lots] : lots;
  }
  if (of === "rule") return repository.rules.map(({ id, states }) => [id, states]);
  if (of === "place") return placesIn(file);
  if (of === "point")
    return givenByVenue(file, of).map(({ name, within }) => [`${within}.${name}`, "point of the venue"]);
  const table = builtIn[of];
  const tabled = table ? table().map((name) => [name, of] as const) : [];
  if (of === "section")
    return [...partsOfKinds(repository, ["bar"]).map((part) => [part.name, aboutPart(part)] as const), ...tabled];
  if (table) return tabled;
  return [...new Set(ownNames(file, of, path))].map((name) => [name, of]);
}

/** Names of the same document, and of the venue it is at. */
function ownNames(file: OpenedFile, of: NameKind, path: readonly string[]): readonly string[] {
  const { repository, model } = file;
  if (of === "venue" || of === "build")
    return definedIn(repository, of === "venue" ? "survey" : "build", of).map(({ name }) => name);
  // While the text is broken, the names are those of the last one that could be read.
  const text = model && model.text !== file.text ? [model.text, file.text] : [file.text];
  const own = text
    .flatMap((each) => mentionsIn(repository, file.path, each, file.kind))
    .filter((each) => each.of === of && each.defines);
  const itself = path.at(-1) === "like" ? path.at(-2) : undefined;
  const stated = givenByVenue(file, of).map(({ name }) => name);
  const hangs = of === "hang" ? (model?.build.bars ?? []).flatMap((bar) => bar.hangs.map(({ name }) => name)) : [];
  return [...own.map(({ name }) => name), ...stated, ...hangs].filter((name) => name !== itself);
}

/** What the survey of the venue a file names gives a name to; nothing where none is named, or none was surveyed. */
function givenByVenue({ repository, text }: OpenedFile, of: NameKind): readonly Mention[] {
  // Told from the line alone: what is being written cannot be read most of the time.
  const [, venue = ""] = /^venue[ \t]*:[ \t]*["']?([a-z0-9][a-z0-9-]*)/mu.exec(text) ?? [];
  const survey = repository.surveys.byName.get(venue);
  const file = (repository.files.surveys ?? []).find((each) => each.path === survey?.file);
  const all = file ? mentionsIn(repository, file.path, file.text, "survey") : [];
  return all.filter((each) => each.of === of && each.defines);
}

/** Places of the venue, and those at which devices of the build are. */
function placesIn(file: OpenedFile): readonly (readonly [string, string])[] {
  const own = mentionsIn(file.repository, file.path, file.text, file.kind).filter((each) => each.of === "place");
  const given = [...givenByVenue(file, "place"), ...own.filter(({ defines }) => defines)];
  const devices = (file.model?.build.devices ?? []).flatMap(({ stands, label }) =>
    stands === undefined ? [] : [[stands, label] as const],
  );
  return [...new Map([...given.map(({ name }) => [name, "place"] as const), ...devices])];
}

const snake = (columns: number, rows: number): string =>
  Array.from({ length: rows }, (_, row) => {
    const [left, right] = [cellName({ row, column: 0 }), cellName({ row, column: columns - 1 })];
    return row % 2 === 0 ? `${left}..${right}` : `${right}..${left}`;
  }).join(", ");

/** A face with its cells, there and back again, and row by row. */
export function cellsIn({ model }: OpenedFile): readonly (readonly [string, string])[] {
  return (model?.build.faces ?? []).flatMap((face) => {
    if (face.columns < 1 || face.rows < 1 || face.rows > 40) return [];
    const rows = Array.from(
      { length: face.rows },
      (_, row) => `${cellName({ row, column: 0 })}..${cellName({ row, column: face.columns - 1 })}`,
    );
    const all: (readonly [string, string])[] = [
      [`${face.name} ${snake(face.columns, face.rows)}`, "every panel, there and back again"],
    ];
    return face.rows === 1
      ? all
      : [...all, ...rows.map((row, index) => [`${face.name} ${row}`, `row ${index + 1}`] as const)];
  });
}
