import type { SizeRow } from "./rope.js";

/** Grade 80 chain, one leg straight down, lb: maker tables to ASTM A906/A391. */
export const chain80: readonly SizeRow[] = [
  { size: "7/32", pounds: 2100 },
  { size: "9/32", pounds: 3500 },
  { size: "5/16", pounds: 4500 },
  { size: "3/8", pounds: 7100 },
  { size: "1/2", pounds: 12000 },
  { size: "5/8", pounds: 18100 },
  { size: "3/4", pounds: 28300 },
];

/** Share of a textile sling's WLL by how it is used: EN 1492-2, LEEA. Two legs by angle from vertical. */
export const slingModes = {
  straight: 1,
  choke: 0.8,
  "basket-parallel": 2,
  "two-leg-to-45": 1.4,
  "two-leg-45-to-60": 1,
} as const;

/** WLL in tonnes of a round sling by its colour: EN 1492-2. Orange is 10 or more, so its label decides. */
export const slingColours = { violet: 1, green: 2, yellow: 3, grey: 4, red: 5, brown: 6, blue: 8 } as const;
