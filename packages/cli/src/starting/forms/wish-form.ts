import { type SchemaNode, schemas } from "@plumbmark/core";
import { linesOfKeys } from "./lines-of-keys.js";

const root = schemas.wishSchema as SchemaNode;

/** Written otherwise: its facts of a venue are those of a survey, which has a form of its own. */
const WRITTEN = new Set(["wish", "title", "venue", "size", "support", "out-of"]);

const SIZE = { us: "width: at most 10 ft, height: at most 2 ft", iec: "width: at most 3 m, height: at most 0.5 m" };

/** A new wish: what most wishes say, and every other key with what it means. */
export const wishForm = (
  name: string,
  venue: string | undefined,
  practice?: string,
): string => `# What somebody wants. What is not said is told before the options, with what was taken instead.
wish: ${name}
title: ${name.charAt(0).toUpperCase()}${name.slice(1).replaceAll("-", " ")}
${venue === undefined ? "#venue:                     # the name of a survey" : `venue: ${venue}`}
size: {${SIZE[practice === "iec" ? "iec" : "us"]}}    # exactly, at most, at least or about; a bare length is the most
support: flown              # flown, stacked, wall or deck
out-of: holdings            # holdings, catalogue, or the name of a lot
# Take the # in front of a key away when you write its value.
${linesOfKeys(root, root, "", practice, WRITTEN).join("\n")}
`;
