import { fileURLToPath } from "node:url";

/** Absolute path of the docs repository that `plumbmark start` copies. */
export const starterRepository: string = fileURLToPath(new URL("../repository/", import.meta.url));
