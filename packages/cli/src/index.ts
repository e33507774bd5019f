export { main } from "./main.js";
export { textReport } from "./report/text.js";
export type { Colour, CommandContext } from "./terminal/context.js";
