export { type Booking, type Peak, peakUse } from "./sweep.js";
