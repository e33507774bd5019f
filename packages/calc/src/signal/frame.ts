import { formula } from "../formula/formula.js";

/** Bytes an Ethernet frame costs beside its payload (IEEE 802.3): preamble and start, header, check, gap. */
export const FRAME_BYTES = { preamble: 8, header: 14, check: 4, gap: 12, tag: 4, leastFrame: 84 } as const;

/** Overhead of an untagged frame, in bytes. */
export const FRAME_OVERHEAD = FRAME_BYTES.preamble + FRAME_BYTES.header + FRAME_BYTES.check + FRAME_BYTES.gap;

/** The payload of an ordinary frame, in bytes. */
export const FRAME_PAYLOAD = 1500;

/** Share of a link's rate that is left for payload. */
export const payloadEfficiency = formula({
  id: "signal.payload-efficiency",
  title: "Share of a link left for payload",
  symbol: "η",
  kind: "ratio",
  inputs: {
    p: { kind: "count", is: "useful bytes of a frame", above: 0 },
    c: { kind: "count", is: "bytes a frame costs with everything", above: 0 },
  },
  expression: "p ÷ c",
  source: "ieee-802.3",
  validity: "full frames back to back; 1538 bytes for a payload of 1500, 1542 with an 802.1Q tag",
  example: { given: { p: 1500, c: 1538 }, gives: 0.9753, within: 0.00005, from: "97.53 %, wiki.creatica.org" },
  compute: ({ p, c }) => p / c,
});

/** Bytes a frame of this payload costs on the wire, gap included. */
export const frameCost = (payload: number, tagged = false): number =>
  payload + FRAME_OVERHEAD + (tagged ? FRAME_BYTES.tag : 0);
