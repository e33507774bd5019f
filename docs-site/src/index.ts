export { drawingsOf } from "./drawings/drawings.js";
export { marginBar, marginMarks } from "./drawings/margin-bar.js";
export { type Drawing, type DrawingSubject, svg, svgFile } from "./drawings/shared/drawing.js";
export { htmlText } from "./html/html.js";
export { formulaMath } from "./math/mathml.js";
export { freeDaysOf, type LotShapes, stockShapes } from "./pages/stock-shapes.js";
export { surveyFormPage } from "./pages/survey-form-page.js";
export { dependenciesHold, type SheetDependencies } from "./site/dependencies.js";
export type { DocumentSummary } from "./site/document-summary.js";
export {
  mistakenSheets,
  type PublishInput,
  promisesIn,
  publish,
  type Sheet,
  type SiteFile,
  sharedFiles,
  sheetOfDocument,
  siteFiles,
  siteOf,
  type TracedSheet,
  withOutline,
} from "./site/publish.js";
export type { SheetPlaces, Site, Unshown } from "./site/site.js";
export { pictureDigest } from "./site/trace.js";
export { draftedWish, type WishesInput } from "./wishes/draft-wish.js";
export { optionSheet } from "./wishes/option-sheet.js";
export type { WishSheet } from "./wishes/wish-content.js";
export type { WishEntry } from "./wishes/wish-entry.js";
export { type FileStamp, fileStamp, putAgain } from "./write/put-again.js";
export { contentHash, type Hashed, type Into, type Put, putFile } from "./write/put-file.js";
export { SiteError } from "./write/site-error.js";
export { fillSite, type WrittenSite, writeSite } from "./write/write-site.js";
