import type { Data } from "../document/yaml/yaml.js";

/** Whether something written can stand in a cell; lists and groups in its place are slips that are told elsewhere. */
export const isWord = (data: Data | undefined): data is string | number =>
  typeof data === "string" || typeof data === "number";
