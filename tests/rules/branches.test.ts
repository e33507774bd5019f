import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { type CheckEntry, openRepository } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { notEmpty } from "../run/not-empty.js";
import { alone, root } from "./repository.js";

// What a rule tells at its edges, each told from a document of a few lines: lists that are one too long, one thing and
// several, a value at its limit, what is missing on one side, and how it would be put right. The names and figures were
// reckoned by hand from the lines above them, with the starter's tile: 160 × 160 px, 7.9 kg, 133 W ÷ 0.95 = 140 VA.

interface Branch {
  readonly name: string;
  readonly rule: string;
  readonly front: string;
  readonly body?: string;
  /** Parts of its own beside the starter's, as YAML. */
  readonly parts?: string;
  /** Holdings in place of the starter's, as YAML. */
  readonly stock?: string;
  readonly houseStandard?: string;
  /** The level of each check, where the rule has several. */
  readonly levels?: readonly string[];
  /** The path of what each check says would turn it, where it says so. */
  readonly turns?: readonly (string | null)[];
  readonly tells: readonly string[];
}

const FOLDER = join(root, "tests/rules/branches");

/** Rules that cite one source or another, by what was written. */
const CITING: ReadonlySet<string> = new Set([
  "power.inrush",
  "rigging.bridle-angle",
  "rigging.head-room",
  "rigging.stack-slides",
  "viewing.text",
]);

const withSources = (rule: string, sources: readonly { readonly id: string }[]): string =>
  CITING.has(rule) ? ` [${sources.map(({ id }) => id).join(" ")}]` : "";

function checksOf({ rule, front, body, parts, stock, houseStandard }: Branch): readonly CheckEntry[] {
  const status = /^status:/mu.test(front) ? "" : "status: for-build\n";
  const practice = front.includes("practice:") ? "" : "practice: us\n";
  const text = `---\nbuild: told\ntitle: Told\n${status}${practice}${front}\n---\n\n${body ?? ""}\n`;
  const only = rules.filter(({ id }) => id === rule);
  const starter = alone({ path: "told.md", text });
  const files = {
    ...starter,
    ...(parts ? { parts: [...starter.parts, { path: "parts/own.yaml", text: parts }] } : {}),
    ...(stock ? { stock: { path: "stock.yaml", text: stock } } : {}),
    ...(houseStandard ? { houseStandard: { path: "house-standard.yaml", text: houseStandard } } : {}),
  };
  const { entry } = openRepository(files, only, { today: "2027-01-01", every: true }).one("told.md");
  return entry.checks.filter((check) => check.rule === rule);
}

const told = (rule: string, { outcome, at, says, mend, sources }: CheckEntry): string =>
  `${outcome} ${at.path}: ${says}${outcome === "holds" ? "" : ` → ${mend}`}${withSources(rule, sources)}`;

describe.each(notEmpty(readdirSync(FOLDER)))("at its edges: %s", (file) => {
  const branches = parse(readFileSync(join(FOLDER, file), "utf8")) as readonly Branch[];
  for (const branch of notEmpty(branches))
    test(`${branch.rule}: ${branch.name}`, () => {
      const checks = checksOf(branch);
      expect(checks.map((check) => told(branch.rule, check))).toEqual(branch.tells);
      if (branch.levels) expect(checks.map(({ level }) => level)).toEqual(branch.levels);
      if (branch.turns) expect(checks.map((check) => check["turns-at"]?.path ?? null)).toEqual(branch.turns);
    });
});
