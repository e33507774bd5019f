export { lineMass, partsMass } from "./carried.js";
export { faceArea, faceHeight, facePixelsAlong, faceWidth, panelPixels, panelsMass } from "./extent.js";
export {
  areNeighbours,
  cellCentre,
  jumperNeeded,
  type PanelSize,
  type Place,
  type Point,
  pathLength,
  stepBetween,
} from "./path.js";
export { pitchAgrees, pixelPitch } from "./pitch.js";
