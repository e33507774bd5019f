export { marginBar } from "./drawings/margin-bar.js";
export { type PublishInput, publish } from "./publish.js";
export { SiteError, writeSite } from "./write-site.js";
