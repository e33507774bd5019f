export { drawingsOf } from "./drawings/drawings.js";
export { marginBar, marginMarks } from "./drawings/margin-bar.js";
export { type Drawing, type Subject, svg, svgFile } from "./drawings/shared/drawing.js";
export type { Listed } from "./listed.js";
export { formulaMath } from "./math/mathml.js";
export { hashOf } from "./noting.js";
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
} from "./publish.js";
export { putAgain, type Stamp, stampOf } from "./put-again.js";
export { contentHash, type Hashed, type Into, type Put, putFile } from "./put-file.js";
export { type Rests, restsOn } from "./rests.js";
export type { Places, Site, Unshown } from "./site.js";
export { SiteError } from "./site-error.js";
export { fillSite, type Written, writeSite } from "./write-site.js";
