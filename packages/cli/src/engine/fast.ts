import { cacheFor } from "./cache/cache.js";
import { inspectCached } from "./cache/inspect-cached.js";
import { withOutlines } from "./cache/outlines.js";
import { type Engine, engineOf, type Means } from "./engine.js";

/**
 * The engine of the command line: what was found before is looked up, and what is left is dealt with by several workers
 * where there is much of it.
 * @param caches gives what is cached for a docs repository
 */
export const fastEngine = (caches: Means["cacheFor"] = cacheFor): Engine =>
  engineOf({
    cacheFor: caches,
    outline: withOutlines,
    judge: inspectCached,
    // Only sheets need what makes them.
    makeSheets: async (work) => (await import("./cache/sheets-cached.js")).makeSheetsCached(work),
    draftWishes: async ({ wishes, input, cache, progress }) =>
      (await import("./cache/wishes-cached.js")).draftWishesCached(wishes, input, cache, progress),
    shapes: async ({ input, cache }) => (await import("./cache/wishes-cached.js")).stockShapesCached(input, cache),
  });
