export { placeAlong } from "./beam-place.js";
export { cableForWay, ledWay, straightLine } from "./way.js";
