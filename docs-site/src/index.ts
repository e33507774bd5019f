export { drawingsOf } from "./drawings/drawings.js";
export { marginBar, marginMarks } from "./drawings/margin-bar.js";
export { type Drawing, type Subject, svg, svgFile } from "./drawings/shared/drawing.js";
export { formulaMath } from "./math/mathml.js";
export { type PublishInput, publish, type SiteFile, siteFiles } from "./publish.js";
export { SiteError, type Written, writeSite } from "./write-site.js";
