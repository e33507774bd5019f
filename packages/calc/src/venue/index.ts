export { placeAlong } from "./beam-place.js";
export { CABLE_ALLOWANCE, cableForWay, ledWay, straightLine } from "./way.js";
