export { readMarkdown, type Markdown, type Section, sectionsOf } from "./document/markdown.js";
export type { Mistake } from "./document/mistake.js";
export { choices, nearest } from "./document/nearest.js";
export type { Place } from "./document/place.js";
export { readQuantities } from "./document/quantities.js";
export { validate } from "./document/validate.js";
export { type Data, type Placed, readYaml } from "./document/yaml.js";
