import { type Drawn, drawnOf } from "./one-document.js";
import type { Read } from "./read.js";
import { inspected, paths } from "./repository.js";

export { files } from "./repository.js";

export const builds = new Map(paths.map((path) => [path, inspected(path)]));

/** Every drawing of every document, as it is written to its file. */
export const drawn: readonly Drawn[] = paths.flatMap(drawnOf);

/** One of them; one that is not there is a mistake of the test or of the product. */
export function found(file: string, name: string): Read {
  const one = drawn.find((each) => each.file === file && each.drawing.name === name);
  if (!one) throw new Error(`${file} has no drawing ${name}`);
  return one.read;
}
