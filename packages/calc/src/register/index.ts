export type { Answer, Method } from "./method.js";
export { type Citing, type Entry, type Register, register, restsOn } from "./register.js";
export { sourcesOfTable, type Table } from "./table.js";
