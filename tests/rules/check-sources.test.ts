import { join } from "node:path";
import { openRepository } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { expect, test } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { caseFiles, root } from "./repository.js";

// A finding shows what it rests on: a rule that judges several things rests on other sources for each of them.
test.each([
  ["document.plausible", "fails-heavy-tile", ["common practice"]],
  ["document.plausible", "fails-thin-base.md", ["common practice"]],
  ["document.plausible", "fails-load-table", ["statics"]],
  ["document.plausible", "fails-heavy-cord", ["IEC 60227-5", "IEC 60028", "IEC 60228"]],
  ["rigging.rope-figures", "fails", ["rope", "common practice"]],
  ["rigging.rope-figures", "fails-light-rope", ["EN 12385-4; API Specification 9A"]],
  ["power.circuit-load", "open-other-load-in-watts.md", ["common practice"]],
  ["power.cord-ampacity", "fails-thin-metric-cord", ["BS 7671", "parts catalogue"]],
  ["power.cord-ampacity", "fails-warm-cord", ["NFPA 70", "NFPA 70", "NFPA 70", "parts catalogue"]],
  ["power.cord-ampacity", "fails-thin-wiring.md", ["NFPA 70", "NFPA 70", "NFPA 70"]],
] as const)("%s, %s rests on its own sources alone", (id, name, documents) => {
  const files = caseFiles(join(root, "rules", ...id.split("."), "cases", name));
  const { documents: inspected } = openRepository(files, rules, { today: "2027-01-01", every: true }).all();
  const told = inspected.flatMap(({ checks }) =>
    checks.filter(({ rule, outcome }) => rule === id && ["fails", "open"].includes(outcome)),
  );
  const rests = told.map(({ sources }) => sources.map(({ document }) => document));
  expect(rests).toHaveLength(1);
  expect(rests[0]).toHaveLength(documents.length);
  for (const [index, document] of notEmpty([...documents].map((each, at) => [at, String(each)] as const)))
    expect(rests[0]?.[index]).toContain(document);
});
