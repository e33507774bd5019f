import type { DraftRecord } from "@plumbmark/draft";

/** Faces named before the rest is only counted. */
const MOST_NAMED = 3;

const faceOf = ({ columns, rows, panel, variant }: DraftRecord["fell-out"][number]): string =>
  `${columns} × ${rows} ${panel}${variant.length > 0 ? `, ${variant.join(", ")}` : ""}`;

/** Why faces fell out, a line for each cause, in the order they were looked at: the nearest to the wish first. */
export function fallenLines(record: DraftRecord): readonly string[] {
  const causes = new Map<string, string[]>();
  for (const each of record["fell-out"]) {
    const cause = `${each.says}${each.nearest ? ` ${each.nearest}` : ""}`;
    const faces = causes.get(cause) ?? [];
    causes.set(cause, faces);
    faces.push(faceOf(each));
  }
  return [...causes].map(([cause, faces]) => {
    const more = faces.length - MOST_NAMED;
    const named = faces.slice(0, MOST_NAMED).join("; ");
    return `${named}${more > 0 ? ` and ${more} more` : ""}: ${cause}`;
  });
}
