import type { Place } from "@plumbmark/core";
import type { OpenedFile } from "./opened.js";
import { publishedFigure } from "./pages.js";
import { linesOf, zoneOf } from "./zone.js";

/** A link of a document to a file of the repository, or to the working of a value on the published site. */
export interface FileLink {
  readonly place: Place;
  /** From the root of the repository. */
  readonly target: string;
  /** Where in it. */
  readonly fragment?: string;
}

const CALC = "calc:";
const LINK = /\]\(([^)\s]+)\)/gu;

/** A relative target from the root; undefined for an address, a heading or what leads outside. */
function fromRoot(target: string, from: string): string | undefined {
  if (/^[a-z][a-z0-9+.-]*:|^#|^\//iu.test(target)) return undefined;
  const [path = ""] = target.split("#", 1);
  const steps = from.split("/").slice(0, -1);
  for (const step of decode(path).split("/")) {
    if (step === "" || step === ".") continue;
    if (step !== "..") steps.push(step);
    else if (steps.pop() === undefined) return undefined;
  }
  return steps.join("/");
}

function decode(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

/** Links of the body that lead to files of the repository or the published site, and the files a front matter names. */
export function linksIn(file: OpenedFile): readonly FileLink[] {
  return [...linksToFiles(file), ...linksToFigures(file)];
}

/** Figures, schedules and drawings, where they are on the published sheet. */
function linksToFigures(file: OpenedFile): readonly FileLink[] {
  const lines = linesOf(file.text);
  const zone = zoneOf(lines, file.kind);
  const before: string[] = [];
  return lines.flatMap((line, index) => {
    if (file.kind !== "build" || index + 1 <= zone.to) return [];
    return [...line.matchAll(LINK)].flatMap((match): FileLink[] => {
      const written = match[1] as string;
      if (!written.startsWith(CALC)) return [];
      const of = written.slice(CALC.length);
      const found = publishedFigure(file, of, before);
      before.push(of);
      if (!found) return [];
      const { page: target, ...where } = found;
      const column = match.index + 3;
      const place = { line: index + 1, column, endLine: index + 1, endColumn: column + written.length };
      return [{ target, ...where, place }];
    });
  });
}

function linksToFiles({ path, text, kind, repository }: OpenedFile): readonly FileLink[] {
  const lines = linesOf(text);
  const zone = zoneOf(lines, kind);
  const { documents, surveys = [], papers = [] } = repository.files;
  const there = new Set([...documents, ...surveys].map((file) => file.path).concat(papers));
  return lines.flatMap((line, index) => {
    const number = index + 1;
    const isBody = number > zone.to;
    const found = isBody
      ? [...line.matchAll(LINK)].map((match) => ({
          written: match[1] as string,
          from: match.index + 2,
          target: fromRoot(match[1] as string, path),
        }))
      : [...line.matchAll(/(?<=\bfile: )[^\s,{}[\]"']+/gu)].map((match) => ({
          written: match[0],
          from: match.index,
          target: match[0],
        }));
    return found.flatMap(({ written, from, target }) =>
      target !== undefined && there.has(target)
        ? [{ target, place: { line: number, column: from + 1, endLine: number, endColumn: from + 1 + written.length } }]
        : [],
    );
  });
}
