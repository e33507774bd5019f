import { starter } from "../documents/repository.js";

export { TODAY } from "../documents/repository.js";

/** The files of the starter, as the command line reads them. */
export const starterFiles = starter();
