export { isRunning, placeBeside, removeLeftovers, type StagingPlace } from "./beside.js";
export { writeInPlace } from "./file.js";
