/** How the sockets of a final circuit are laid: on a ring back to the breaker, or one after another. */
export type SocketLayout = "ring" | "radial";

/**
 * Greatest protective device, A, ahead of 13 A sockets of BS 1363: the fuse in each plug protects the cord, so the
 * circuit may be larger than the socket (BS 7671 433.1.204, ring; Appendix 15, radial).
 */
export const SOCKET_CIRCUITS = { ring: 32, radial: 32 } as const;

/** The same by layout. */
export const socketAllows = (layout: SocketLayout): number => SOCKET_CIRCUITS[layout];

/** Least conductor, mm², and least current-carrying capacity, A, of a ring behind 30 or 32 A (BS 7671 433.1.204). */
export const RING = { conductor: 2.5, capacity: 20, breaker: 32 } as const;

/** Greatest fuse of a plug, A (BS 1362). */
export const PLUG_FUSE_MOST = 13;
