import { rules } from "@plumbmark/rules";
import { expect, test } from "vitest";
import { changed, SMALL, starter } from "../documents/repository.js";
import { pageOf } from "./page-of.js";

const waiver = (until: string): string =>
  `{rule: panels.spares, accepts: 0, because: the van is full, by: M. Finch, until: ${until}}`;

const page = (text: string): string => {
  const files = { ...starter(), documents: [{ path: "builds/a.md", text }] };
  return pageOf({ files, rules, today: "2026-11-25" }, "waivers.html") ?? "";
};

test("the register of waivers has every waiver, those that ask for work first", () => {
  const waivers = [waiver("2027-06-30"), waiver("2026-06-30")].map((each) => `  - ${each}`).join("\n");
  const html = page(changed("practice: us", `practice: us\nwaivers:\n${waivers}`, changed("spares: 2", "spares: 0")));
  expect(html).toContain("the van is full");
  expect(html).toContain("M. Finch");
  const [ended, inForce] = [html.indexOf("2026-06-30"), html.indexOf("2027-06-30")];
  expect(ended).toBeGreaterThan(0);
  expect(ended).toBeLessThan(inForce);
  expect(html).toContain("expired");
  expect(html).toContain("in force");
});

test("and says so when there is none", () => expect(page(SMALL)).toContain("No build has a waiver."));
