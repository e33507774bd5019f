import { isPlaceholder } from "../../document/nothing-written.js";
import { placeName } from "../../document/place-name.js";

/** A venue by which builds find each other: the name of its survey, or what is written, spaces and case aside. */
export const sharedVenue = (written: unknown): string | undefined =>
  typeof written === "string" && !isPlaceholder(written) ? placeName(written) : undefined;
