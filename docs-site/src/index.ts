export { drawingsOf } from "./drawings/drawings.js";
export { marginBar, marginMarks } from "./drawings/margin-bar.js";
export { type Drawing, type Subject, svg, svgFile } from "./drawings/shared/drawing.js";
export { formulaMath } from "./math/mathml.js";
export { type Rests, restsOn } from "./site/dependencies.js";
export type { Listed } from "./site/document-summary.js";
export {
  mistakenSheets,
  outlined,
  type PublishInput,
  publish,
  type RestingSheet,
  type Sheet,
  type SiteFile,
  sharedFiles,
  sheetMaker,
  siteFiles,
  siteOf,
} from "./site/publish.js";
export type { Places, Site, Unshown } from "./site/site.js";
export { hashOf } from "./site/trace.js";
export { putAgain, type Stamp, stampOf } from "./write/put-again.js";
export { contentHash, type Hashed, type Into, type Put, putFile } from "./write/put-file.js";
export { SiteError } from "./write/site-error.js";
export { fillSite, type Written, writeSite } from "./write/write-site.js";
