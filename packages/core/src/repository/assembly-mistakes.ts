import type { Mistake } from "../document/mistake.js";
import { choices, nearOnes } from "../document/nearest.js";
import { START } from "../document/place.js";
import { type Data, join, type Placed } from "../document/yaml/yaml.js";

/** The name an entry of an assembly gives, on its own or under `part`, and where it stands. */
function nameAt(entry: Data, path: string): readonly [name: string, at: string] {
  const isGroup = entry !== null && typeof entry === "object" && !Array.isArray(entry);
  const name = isGroup ? (entry as Readonly<Record<string, Data>>).part : entry;
  return [typeof name === "string" ? name : "", isGroup ? join(path, "part") : path];
}

/** Parts an assembly of the catalogue is made of and that no file of it has. */
export function assemblyMistakes(
  name: string,
  of: readonly Data[],
  { places }: Placed,
  known: ReadonlySet<string>,
): readonly Mistake[] {
  return of.flatMap((entry, index) => {
    const [part, path] = nameAt(entry, join(join(name, "of"), index + 1));
    if (part === "" || known.has(part)) return [];
    const [near, ...others] = nearOnes(part, [...known]);
    const place = places.get(path) ?? START;
    const all = [...others, ...known].filter((each, at, names) => each !== near && names.indexOf(each) === at);
    return [
      {
        rule: "document.parts" as const,
        ...{ path, place },
        says: `The part \`${part}\` is not in the catalogue.`,
        mend: `${near === undefined ? "" : `Write \`${near}\`. `}${choices(all, undefined, 8)}`,
        ...(near === undefined ? {} : { edit: { place, text: near } }),
      },
    ];
  });
}
