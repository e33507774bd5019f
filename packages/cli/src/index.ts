export { main } from "./main.js";
export { textReport } from "./report/text.js";
export type { Colour, Surroundings } from "./surroundings.js";
