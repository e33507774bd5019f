import { type Placed, readYaml } from "./yaml.js";

// House standards, parts and stock are looked at several times in one inspection, and are the same in most of them.

/** More files than a catalogue usually has. */
const MOST = 64;
/** A file above this is read anew each time, so that what is remembered stays small. */
const LARGEST = 200_000;

const known = new Map<string, Placed>();

/** Has the reading of a whole file of YAML remembered: it must be what `readYaml` made of this text. */
export function rememberYaml(text: string, placed: Placed): void {
  if (text.length > LARGEST) return;
  known.delete(text);
  known.set(text, placed);
  const [oldest] = known.keys();
  if (known.size > MOST && oldest !== undefined) known.delete(oldest);
}

/** Reads a whole file of YAML, once for each text. */
export function readWholeYaml(text: string): Placed {
  const placed = known.get(text) ?? readYaml(text);
  rememberYaml(text, placed);
  return placed;
}
