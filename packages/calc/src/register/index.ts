export type { Answer, Method } from "./method.js";
export { type Citing, type Register, type RegisterEntry, register, restsOn } from "./register.js";
export { type RegisterTable, sourcesOfTable } from "./table.js";
