import { searchPage } from "../search/search-page.js";
import type { SiteWithDocuments } from "../site/site.js";
import { wishPages } from "../wishes/wish-pages.js";
import { guidePages } from "./guide-pages.js";
import { houseStandardPage } from "./house-standard.js";
import type { SitePage } from "./page.js";
import { partsPage } from "./parts-page.js";
import { referencePages } from "./reference/reference-pages.js";
import { registerPage } from "./register.js";
import { rulePage } from "./rules/rule-page.js";
import { rulesIndex } from "./rules/rules-index.js";
import { registerPages } from "./sources/register-pages.js";
import { stockPage } from "./stock-page.js";
import { venuePages } from "./venue-pages.js";
import { waiversPage } from "./waivers-page.js";

/** Pages there is one of each. */
const general: readonly ((site: SiteWithDocuments) => SitePage)[] = [
  registerPage,
  rulesIndex,
  houseStandardPage,
  waiversPage,
  partsPage,
  stockPage,
  searchPage,
];

const ruleNumber = (index: number): string => `2.${String(index + 1).padStart(3, "0")}`;

/** Every page of the site but the sheets, one after another, so that a page can be written before the next is made. */
export function* sitePages(site: SiteWithDocuments): Generator<SitePage> {
  for (const page of general) yield page(site);
  yield* venuePages(site);
  yield* wishPages(site);
  yield* registerPages(site.rules, site.rulePaths);
  yield* guidePages();
  yield* referencePages(site);
  for (const [index, rule] of site.rules.entries()) yield rulePage(rule, ruleNumber(index), site);
}
