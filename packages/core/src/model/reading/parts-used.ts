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
  const placed = aside(() => reader.placed);
  const find = (data: Data | undefined, path: string): string | undefined => {
    if (data === name) return path;
    if (data === null || typeof data !== "object") return undefined;
    const isList = Array.isArray(data);
    for (const [key, inner] of Object.entries(data)) {
      const step = isList ? String(Number(key) + 1) : key;
      const here = path === "" ? step : `${path}.${step}`;
      const found = !isList && key === name ? here : find(inner as Data, here);
      if (found !== undefined) return found;
    }
    return undefined;
  };
  return find(placed.data, "") ?? "";
}
