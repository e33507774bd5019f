import { type Drawn, drawnOf } from "./one-document.js";
import { inspected, paths } from "./repository.js";

export { files } from "./repository.js";

export const builds = new Map(paths.map((path) => [path, inspected(path)]));

/** Every drawing of every document, as it is written to its file. */
export const drawn: readonly Drawn[] = paths.flatMap(drawnOf);
