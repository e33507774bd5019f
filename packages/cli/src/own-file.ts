/** The folder of this package, whether this runs from the sources, from what the compiler made of them or from the bundle. */
const HOME = import.meta.url.replace(/\/(?:src|dist)\/(?!.*\/(?:src|dist)\/).*$/u, "/");

/** A file of this package, by its path in it. Run from the sources, other processes and threads are still the built ones. */
export const ownFile = (path: string): URL => new URL(path, HOME);
