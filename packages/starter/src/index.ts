import { fileURLToPath } from "node:url";

/** Absolute path of the docs repository that `plumbmark start` copies. */
export const starterRepository: string = fileURLToPath(new URL("../repository/", import.meta.url));

/** Absolute path of the rule that `plumbmark start rule` copies; its id is `house.my-rule` and its folder `my-rule`. */
export const starterRule: string = fileURLToPath(new URL("../rule/", import.meta.url));
