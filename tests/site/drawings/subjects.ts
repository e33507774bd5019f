import { type Drawn, drawnOf, paths, repository } from "./one-document.js";

export { files } from "./one-document.js";

export const builds = new Map(paths.map((path) => [path, repository.one(path)]));

/** Every drawing of every document, as it is written to its file. */
export const drawn: readonly Drawn[] = paths.flatMap(drawnOf);
