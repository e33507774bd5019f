import { formula } from "../formula/formula.js";
import { TMDS_FLOOR } from "./links.js";

/** TMDS clock in Hz of a picture: deep colour raises it, 4:2:0 halves it. */
export const tmdsClock = formula({
  id: "signal.tmds-clock",
  title: "TMDS clock",
  symbol: "T",
  kind: "frequency",
  inputs: {
    c: { kind: "frequency", is: "pixel clock", above: 0 },
    b: { kind: "colour-depth", is: "bits of a pixel", least: 24 },
    s: { kind: "factor", is: "share of the pixel clock (0.5 for 4:2:0)", above: 0, most: 1 },
  },
  expression: "c × s × b ÷ 24 bit",
  source: "hdmi-1.3",
  validity: "24, 30, 36 or 48 bits a pixel; s is 1 for full colour, 0.5 for 4:2:0",
  example: { given: { c: 594e6, b: 30, s: 0.5 }, gives: 371.25e6, within: 1e-3, from: "594 × 0.5 × 1.25 = 371.25 MHz" },
  compute: ({ c, b, s }) => (c * s * b) / 24,
});

/** How often each pixel would have to be sent for the clock to reach the TMDS floor; 1 when it does already. */
export const repetitionNeeded = (clock: number): number => Math.max(1, Math.ceil(TMDS_FLOOR / clock));
