import type { SourceId } from "../../sources/index.js";

/** U-bolt wire rope clips: rope size in, least count by makers' charts, turn-back in, torque lb·ft dry. */
export const clipChart = [
  // The printed turn-back for 1/8 in equals the 3/16 row; longer is the safe side.
  { size: "1/8", clips: 2, turnBack: 3.75, torque: 4.5 },
  { size: "3/16", clips: 2, turnBack: 3.75, torque: 7.5 },
  { size: "1/4", clips: 2, turnBack: 4.75, torque: 15 },
  { size: "5/16", clips: 2, turnBack: 5.25, torque: 30 },
  { size: "3/8", clips: 2, turnBack: 6.5, torque: 45 },
  { size: "7/16", clips: 2, turnBack: 7, torque: 65 },
  { size: "1/2", clips: 3, turnBack: 11.5, torque: 65 },
] as const;

export interface ClipsNeeded {
  readonly count: number;
  readonly source: SourceId;
}

/**
 * Clips an eye needs: the maker's sheet where it is on record, else three drop-forged or four others.
 * Undefined for a size no chart lists.
 */
export function clipsNeeded(
  size: string,
  how: { readonly makersSheet: boolean; readonly forged: boolean },
): ClipsNeeded | undefined {
  const row = clipChart.find((each) => each.size === size);
  if (!row) return undefined;
  if (how.makersSheet) return { count: row.clips, source: "clip-charts" };
  return { count: how.forged ? 3 : 4, source: "cfr-1918-app-2" };
}
