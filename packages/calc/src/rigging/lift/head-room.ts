/** Least clear height over where people walk, metres: ADA 307.4 80 in (printed 2030 mm); 2.1 m by common practice. */
export const headRoom = { us: 80 * 0.0254, iec: 2.1 } as const;
