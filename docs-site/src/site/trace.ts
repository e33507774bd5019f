import { createHash } from "node:crypto";
import type { SheetDependencies } from "./dependencies.js";
import type { Site } from "./site.js";

export interface SiteTrace {
  /** The site as one sheet is to see it, with pictures of its own. */
  readonly site: Site;
  /** What was asked for so far, and what was there. */
  readonly dependencies: () => Pick<SheetDependencies, "pages" | "pictures">;
}

/** Tells pictures apart by what is in them. */
export const pictureDigest = (found: Uint8Array | string): string | undefined =>
  typeof found === "string" ? undefined : createHash("sha256").update(found).digest("hex");

/** Notes what a sheet asks the site for. */
export function traceSite(site: Site): SiteTrace {
  const pages = new Map<string, string | null>();
  const pictures = new Map<string, string | null>();
  const places: Site["places"] = {
    get(path) {
      const place = site.places.get(path);
      pages.set(path, place?.page ?? null);
      return place;
    },
  };
  const picture = (path: string): Uint8Array | string => {
    const found = site.picture?.(path) ?? "";
    pictures.set(path, pictureDigest(found) ?? null);
    return found;
  };
  return {
    site: { ...site, places, ...(site.picture ? { picture } : {}), pictures: new Map() },
    dependencies: () => ({ pages: [...pages], pictures: [...pictures] }),
  };
}
