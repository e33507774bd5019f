export { lineMass, partsMass } from "./carried.js";
export { faceArea, faceHeight, facePixelsAlong, faceWidth, panelPixels, panelsMass } from "./extent.js";
export {
  areNeighbours,
  cellCentre,
  type GridPlace,
  jumperNeeded,
  type PanelSize,
  type Point,
  pathLength,
  stepBetween,
} from "./path.js";
export { pitchAgrees, pixelPitch } from "./pitch.js";
