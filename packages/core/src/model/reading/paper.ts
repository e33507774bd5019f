import { isDay } from "../../document/days.js";
import { affirmed, written } from "../../document/nothing-written.js";
import { nobodyIn, type Person, person } from "../../document/person.js";
import type { DesignSource } from "./design-source.js";

/** What somebody who is licensed has put on paper: `{by, licence, on, file}`. */
export interface Paper {
  readonly path: string;
  readonly by: Person | undefined;
  readonly licence: string | undefined;
  /** Its day; undefined too where what is written is no day. */
  readonly on: string | undefined;
  readonly file: string | undefined;
  /** Whether the file is among the papers of the repository; undefined where none is named, or nobody looked. */
  readonly filed: boolean | undefined;
  /** Paths of what is not written, or is a placeholder. */
  readonly absent: readonly string[];
  /** What is written and cannot be right, each as a sentence without its beginning. */
  readonly wrong: readonly { readonly path: string; readonly says: string }[];
}

const KEYS = ["by", "licence", "on", "file"] as const;

/** Path from the root: as it is written, or from the folder of the document. */
function filedUnder({ context, reader }: DesignSource, path: string, file: string): boolean | undefined {
  if (!context.papers) return undefined;
  const plain = file.replace(/^\.\//u, "");
  // A paper that the survey names may lie beside the survey.
  const from = reader.venue?.statedAt(path)?.file ?? context.file;
  const folder = from.includes("/") ? from.slice(0, from.lastIndexOf("/") + 1) : "";
  return context.papers.includes(plain) || context.papers.includes(folder + plain);
}

/** The paper that is written at a path; undefined where nothing is. */
export function paperAt(build: DesignSource, path: string): Paper | undefined {
  const { reader } = build;
  if (!reader.has(path)) return undefined;
  const text = (key: string): string | undefined =>
    (key === "licence" ? affirmed : written)(reader.data(`${path}.${key}`));
  const [name, day, file] = [reader.text(`${path}.by`), text("on"), text("file")];
  const by = person(name);
  const nobody = name === undefined || by ? undefined : nobodyIn(name);
  const filed = file === undefined ? undefined : filedUnder(build, `${path}.file`, file);
  const wrong = [
    ...(day === undefined || isDay(day) ? [] : [{ path: `${path}.on`, says: `its day, \`${day}\`, is no day` }]),
    ...(file === undefined || filed !== false
      ? []
      : [{ path: `${path}.file`, says: `its file, \`${file}\`, is not among the papers of the repository` }]),
  ];
  const absent = KEYS.filter((key) => text(key) === undefined || (key === "by" && nobody !== undefined));
  return {
    ...{ path, by, licence: text("licence"), on: day !== undefined && isDay(day) ? day : undefined, file, filed },
    absent: absent.map((key) => `${path}.${key}`),
    wrong,
  };
}
