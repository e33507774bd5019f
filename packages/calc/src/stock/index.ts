export { type Booking, type Peak, peakUse } from "./sweep.js";
export { type Claim, type Shortage, standTogether, type Together } from "./together.js";
