import { createHash } from "node:crypto";
import type { Trace } from "@plumbmark/core";
import type { Site } from "./site.js";

/** Tells pictures apart by what is in them. */
export const pictureDigest = (found: Uint8Array | string): string | undefined =>
  typeof found === "string" ? undefined : createHash("sha256").update(found).digest("hex");

/** The site as one sheet is to see it, with pictures of its own; what the sheet asks it for is noted. */
export function tracedSite(site: Site, trace: Trace): Site {
  const places: Site["places"] = {
    get(path) {
      const place = site.places.get(path);
      trace.answer("pages", path, place?.page);
      return place;
    },
  };
  const picture = (path: string): Uint8Array | string => {
    const found = site.picture?.(path) ?? "";
    trace.answer("pictures", path, pictureDigest(found));
    return found;
  };
  return { ...site, places, ...(site.picture ? { picture } : {}), pictures: new Map() };
}
