import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { type CheckEntry, openRepository, type RepositoryFiles } from "@plumbmark/core";
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
  /** What stands in the front matter of the survey of `ferry-hall`. */
  readonly survey?: string;
  /** Other documents beside it, by their paths: what stands in their front matter. */
  readonly others?: Readonly<Record<string, string>>;
  /** The level of each check, where the rule has several. */
  readonly levels?: readonly string[];
  /** The path of what each check says would turn it, where it says so. */
  readonly turns?: readonly (string | null)[];
  /** Of each check whether it compares two figures. */
  readonly compared?: readonly boolean[];
  /** What each check says is missing; none where nothing is. */
  readonly missing?: readonly (readonly string[])[];
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

const written = (name: string, front: string, body = ""): string => {
  const status = /^status:/mu.test(front) ? "" : "status: for-build\n";
  const practice = front.includes("practice:") ? "" : "practice: us\n";
  return `---\nbuild: ${name}\ntitle: Told\n${status}${practice}${front}\n---\n\n${body}\n`;
};

function checksOf({ rule, front, body, parts, stock, houseStandard, survey, others }: Branch): readonly CheckEntry[] {
  const only = rules.filter(({ id }) => id === rule);
  const starter = alone({ path: "told.md", text: written("told", front, body) });
  const more = Object.entries(others ?? {}).map(([path, each]) => ({
    path,
    text: written(path.replace(".md", ""), each),
  }));
  const hall = `---\nsurvey: ferry-hall\ntitle: Ferry Hall\n${survey}\n---\n\n# Ferry Hall\n`;
  const files: RepositoryFiles = {
    ...starter,
    documents: [...starter.documents, ...more],
    ...(parts ? { parts: [...starter.parts, { path: "parts/own.yaml", text: parts }] } : {}),
    ...(survey ? { surveys: [{ path: "venues/ferry-hall.md", text: hall }] } : {}),
    ...(stock ? { stock: { path: "stock.yaml", text: stock } } : {}),
    ...(houseStandard ? { houseStandard: { path: "house-standard.yaml", text: houseStandard } } : {}),
  };
  const { entry } = openRepository(files, only, { today: "2027-01-01", every: true }).one("told.md");
  return entry.checks.filter((check) => check.rule === rule);
}

/** The code of a document changes with everything it rests on; that it is right is looked at elsewhere. */
const CODE = /\b[0-9A-HJKMNP-TV-Z]{4}-[0-9A-HJKMNP-TV-Z]{4}\b/gu;

const told = (rule: string, { outcome, at, says, mend, sources }: CheckEntry): string =>
  `${outcome} ${at.path}: ${says}${outcome === "holds" ? "" : ` → ${mend?.replaceAll(CODE, "CODE")}`}${withSources(rule, sources)}`;

describe.each(notEmpty(readdirSync(FOLDER)))("at its edges: %s", (file) => {
  const branches = parse(readFileSync(join(FOLDER, file), "utf8")) as readonly Branch[];
  for (const branch of notEmpty(branches))
    test(`${branch.rule}: ${branch.name}`, () => {
      const checks = checksOf(branch);
      expect(checks.map((check) => told(branch.rule, check))).toEqual(branch.tells);
      if (branch.levels) expect(checks.map(({ level }) => level)).toEqual(branch.levels);
      if (branch.turns) expect(checks.map((check) => check["turns-at"]?.path ?? null)).toEqual(branch.turns);
      if (branch.compared) expect(checks.map(({ allowed }) => allowed !== undefined)).toEqual(branch.compared);
      if (branch.missing) expect(checks.map(({ missing }) => missing ?? [])).toEqual(branch.missing);
    });
});
