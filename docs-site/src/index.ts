export { marginBar } from "./drawings/margin-bar.js";
export { formulaMath } from "./math/mathml.js";
export { type PublishInput, publish } from "./publish.js";
export { SiteError, writeSite } from "./write-site.js";
