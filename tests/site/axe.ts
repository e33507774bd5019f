import axe from "axe-core";
import type { Page } from "playwright-core";

/**
 * What axe-core finds on the page that is open: how many of its rules pass, and what breaks one. A dark page has the same
 * elements as a light one in other colours, so that in the dark only the rules about colours are asked.
 */
export async function axeOf(
  page: Page,
  colorScheme: "light" | "dark",
): Promise<{ readonly passes: number; readonly violations: readonly string[] }> {
  await page.emulateMedia({ colorScheme });
  await page.evaluate(axe.source);
  // Of what passes, the number is enough: to describe every element of a page takes longer than to look at it.
  const brief = { resultTypes: ["violations"], selectors: false };
  const asked = colorScheme === "light" ? brief : { ...brief, runOnly: { type: "tag", values: ["cat.color"] } };
  const { passes, violations } = (await page.evaluate(`axe.run(${JSON.stringify(asked)})`)) as axe.AxeResults;
  await page.emulateMedia({ colorScheme: "light" });
  return {
    passes: passes.length,
    violations: violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(" ")}`),
  };
}
