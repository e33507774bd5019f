export { isRunning, type StagingPlace, placeBeside, removeLeftovers } from "./beside.js";
export { writeInPlace } from "./file.js";
