export { beats, exposureOf, refreshesExposed } from "./camera.js";
export { type CarriedSignal, carries, type PictureSignal } from "./carry.js";
export { type Blanking, pixelClock, type RasterTotals, timingClock, timingsOf } from "./clock.js";
export { coaxLength, RG6_LENGTHS, SDI_LOSS } from "./coax.js";
export { contrastRatio } from "./contrast.js";
export { hdmiCopper } from "./copper-video.js";
export {
  CHANNEL,
  CORD_MOST,
  type CordBudget,
  copperHop,
  cordAlone,
  cordBudgets,
  cordLength,
  type HopLimit,
  lossLength,
} from "./cords.js";
export { ctaFormats, ctaTiming } from "./cta.js";
export { type CvtMode, canBeTimed, cvt, LEAST_BACK_PORCH } from "./cvt.js";
export { driveLevel, greySteps } from "./drive.js";
export { FRAME_BYTES, FRAME_OVERHEAD, FRAME_PAYLOAD, frameCost, payloadEfficiency } from "./frame.js";
export {
  type ClockLink,
  type FixedRate,
  fixedRate,
  fixedRateMost,
  fixedRates,
  type Link,
  type LinkId,
  links,
  type PacketLink,
  type SerialLink,
  TMDS_FLOOR,
} from "./links.js";
export { CALIFORNIA_ROWS, californiaCharacterHeight } from "./message-signs.js";
export { isInside, overlap, type Rectangle } from "./placement.js";
export { activeRate, bitsPerPixel, panelsPerPort, portBound, portCapacity, STATED_AT } from "./port.js";
export { sdiGross, sdiRate } from "./sdi.js";
export { adaCharacterHeight, adaRows } from "./signs.js";
export {
  CHARACTER_ADVANCE,
  CHARACTER_ANGLE,
  capHeight,
  capPixels,
  characterAngle,
  characterHeight,
  lineCharacters,
} from "./text.js";
export { frameRate, type Rate, rateOf, type Timing, wholeQuotient } from "./timing.js";
export { repetitionNeeded, tmdsClock } from "./tmds.js";
export { acuityDistance, METRES_PER_MM, practiceDistance } from "./viewing.js";
export { DETAILED, LINE_RATE_LEAST, widened, withTotals } from "./widened.js";
