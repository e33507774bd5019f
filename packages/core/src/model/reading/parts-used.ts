import type { Data } from "../../document/yaml/yaml.js";
import type { Part } from "../../repository/parts.js";
import { partsOfAssembly } from "../rigging/assembly.js";
import { once } from "./once.js";
import { partName, type Reader } from "./reader.js";
import { aside, LOOK, LOOKED_AT, note, noteAt } from "./reads.js";

/** A part that a document names, and the first place it does so. */
export interface PartUsed {
  readonly part: Part;
  readonly path: string;
}

/** Every part of the catalogue that the front matter names, as a text or as a key, or that an assembly is made of, each once. */
export function partsUsed(reader: Reader): readonly PartUsed[] {
  note(LOOKED_AT.parts);
  return aside(() => once(reader, "parts used", () => found(reader)));
}

function found({ placed, parts }: Reader): readonly PartUsed[] {
  const used = new Map<string, PartUsed>();
  const name = (text: string, path: string): void => {
    const part = parts.get(text);
    if (!part || used.has(text)) return;
    used.set(text, { part, path });
    for (const entry of partsOfAssembly(part)) name(partName(entry), path);
  };
  const walk = (data: Data | undefined, path: string): void => {
    if (typeof data === "string") name(data, path);
    if (data === null || typeof data !== "object") return;
    const isList = Array.isArray(data);
    for (const [key, inner] of Object.entries(data)) {
      const step = isList ? String(Number(key) + 1) : key;
      const here = path === "" ? step : `${path}.${step}`;
      if (!isList) name(key, here);
      walk(inner as Data, here);
    }
  };
  walk(placed.data, "");
  return [...used.values()];
}

/** The first place at which the front matter names something, as a text or as a key; empty where it does not. */
export function placeNaming(reader: Pick<Reader, "placed">, name: string): string {
  noteAt(LOOK.naming, name);
  return aside(() => once(reader, "first places", () => firstPlaces(reader.placed.data))).get(name) ?? "";
}

/** Every text and key with the path at which it stands first. */
function firstPlaces(data: Data): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  const put = (name: string, path: string): void => {
    if (!found.has(name)) found.set(name, path);
  };
  const walk = (here: Data | undefined, path: string): void => {
    if (typeof here === "string") put(here, path);
    if (here === null || typeof here !== "object") return;
    const isList = Array.isArray(here);
    for (const [key, inner] of Object.entries(here)) {
      const step = isList ? String(Number(key) + 1) : key;
      const inside = path === "" ? step : `${path}.${step}`;
      if (!isList) put(key, inside);
      walk(inner as Data, inside);
    }
  };
  walk(data, "");
  return found;
}
