/**
 * Notional pushes on a standing face in pascals, up to 4 m and above: 5 lb/ft² of the building code, and the 0.125 and
 * 0.063 kN/m² of the trade fairs.
 */
export const notionalPush = {
  us: { low: 239.4, high: 239.4 },
  iec: { low: 125, high: 63 },
} as const;

/** Least factor against overturning. */
export const leastOverturningFactor = 1.5;
