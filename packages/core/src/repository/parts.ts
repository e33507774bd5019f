import type { Known } from "@plumbmark/calc";
import { asMeant } from "../document/edited.js";
import type { Mistake } from "../document/mistake.js";
import type { Implausible } from "../document/plausible.js";
import { readData } from "../document/read-data.js";
import { readWholeYaml } from "../document/whole-yaml.js";
import type { Data } from "../document/yaml.js";
import type { SourceFile } from "./files.js";

/** One entry of the parts catalogue; quantities by their path inside the part (`power.maximum`, `size.1`). */
export interface Part {
  /** Its name in the catalogue. */
  readonly name: string;
  /** What it is: `panel`, `power-cable`, `hardware` … */
  readonly kind: string;
  /** The file of the catalogue it is in. */
  readonly file: string;
  /** Its entry, as it is written. */
  readonly data: Readonly<Record<string, Data>>;
  /** Its quantities by their path inside the part: `power.maximum`, `size.1`. */
  readonly quantities: ReadonlyMap<string, Known>;
  /** Those of them whose size is not plausible, by their path inside the part. */
  readonly implausible: readonly Implausible[];
}

export interface Catalogue {
  readonly parts: ReadonlyMap<string, Part>;
  readonly mistakes: ReadonlyMap<string, readonly Mistake[]>;
  /** The catalogue as it was most likely meant, for telling what waits for its mistakes. */
  readonly meant: () => Catalogue;
}

const kindOf = ({ kind }: Readonly<Record<string, Data>>): string => (typeof kind === "string" ? kind : "");

const meantFile = ({ path, text }: SourceFile): SourceFile => ({
  path,
  text: asMeant(text, (each) => readData("parts", readWholeYaml(each)).mistakes),
});

/** Made when it is first asked for. */
function lazily<Made>(make: () => Made): () => Made {
  let made: Made | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

/** Reads every file of the catalogue; a part named twice is a mistake of the later file. */
export function readCatalogue(files: readonly SourceFile[]): Catalogue {
  const parts = new Map<string, Part>();
  const mistakes = new Map<string, readonly Mistake[]>();
  for (const file of files) {
    const placed = readWholeYaml(file.text);
    const { values, mistakes: read, implausible } = readData("parts", placed);
    const found = [...read];
    const entries =
      placed.data !== null && typeof placed.data === "object" && !Array.isArray(placed.data)
        ? Object.entries(placed.data)
        : [];
    for (const [name, data] of entries) {
      if (data === null || typeof data !== "object" || Array.isArray(data)) continue;
      const earlier = parts.get(name);
      if (earlier) {
        const place = placed.keys.get(name);
        if (place)
          found.push({
            rule: "document.parts",
            path: name,
            place,
            says: `The part \`${name}\` is also in ${earlier.file}.`,
            mend: "Keep one of them.",
          });
        continue;
      }
      const prefix = `${name}.`;
      const own = new Map(
        [...values]
          .filter(([path]) => path.startsWith(prefix))
          .map(([path, value]) => [path.slice(prefix.length), value]),
      );
      parts.set(name, {
        name,
        kind: kindOf(data as Record<string, Data>),
        file: file.path,
        data: data as Record<string, Data>,
        quantities: own,
        implausible: implausible
          .filter(({ path }) => path.startsWith(prefix))
          .map((each) => ({ ...each, path: each.path.slice(prefix.length) })),
      });
    }
    if (found.length > 0) mistakes.set(file.path, found);
  }
  return { parts, mistakes, meant: lazily(() => readCatalogue(files.map(meantFile))) };
}
