import { type Citing, register } from "@plumbmark/calc";
import type { SitePage } from "../page.js";
import { formulasPage } from "./formulas-page.js";
import { sourcesPage } from "./sources-page.js";
import { tablesPage } from "./tables-page.js";

/** The register of sources, formulas and tables, made from the code: nothing in it is written by hand. */
export function registerPages(rules: readonly Citing[], rulePaths: ReadonlyMap<string, string>): readonly SitePage[] {
  const all = register(rules);
  return [sourcesPage(all, rulePaths), formulasPage(all), tablesPage(all)];
}
