import { rules } from "@plumbmark/rules";
import { expect, test } from "vitest";
import { changed, SMALL, starter } from "../documents/repository.js";
import { pageOf as siteFile } from "./page-of.js";

const pageOf = (documents: readonly string[], parts = ""): string => {
  const from = starter();
  const files = {
    ...from,
    parts: [...from.parts, { path: "parts/more.yaml", text: parts }],
    documents: documents.map((text, index) => ({ path: `builds/${index + 1}.md`, text })),
  };
  return siteFile({ files, rules, today: "2026-11-25" }, "index.html") ?? "";
};

test("a face of panels rated in W beside one of panels rated in VA has its power in the register", () => {
  const tile = (name: string, power: string): string =>
    `${name}: {kind: panel, size: 500 mm x 500 mm, pixels: 120 x 120, mass: 8 kg, power: {maximum: ${power}}}\n`;
  const face = (name: string, panel: string): string =>
    `  ${name}: {panel: ${panel}, columns: 2, rows: 1, support: flown}\n`;
  const text = `---\nbuild: both\ntitle: Both\nstatus: draft\nfaces:\n${face("a", "tile-w")}${face("b", "tile-va")}---\n\nBoth.\n`;
  // 2 × 100 W + 2 × 150 VA, the volt-amperes counted as watts: the safe side.
  expect(pageOf([text], tile("tile-w", "100 W") + tile("tile-va", "150 VA"))).toContain("500 W");
});

test("a document whose face names no lot is named among those that cannot be told of", () => {
  const lotless = changed("build: small-header", "build: no-lot", SMALL).replace(/^ +lot: .*\n/mu, "");
  expect(lotless).not.toMatch(/^ +lot:/mu);
  const page = pageOf([SMALL, lotless.replace("title: Small header", "title: Lotless header")]);
  expect(page).toContain("Cannot be told of Lotless header");
});
