import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { openRepository } from "@plumbmark/core";
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

function told({ rule, front, body }: Branch): readonly string[] {
  const status = /^status:/mu.test(front) ? "" : "status: for-build\n";
  const practice = front.includes("practice:") ? "" : "practice: us\n";
  const text = `---\nbuild: told\ntitle: Told\n${status}${practice}${front}\n---\n\n${body ?? ""}\n`;
  const only = rules.filter(({ id }) => id === rule);
  const { entry } = openRepository(alone({ path: "told.md", text }), only, { today: "2027-01-01", every: true }).one(
    "told.md",
  );
  return entry.checks
    .filter((check) => check.rule === rule)
    .map(
      ({ outcome, at, says, mend, sources }) =>
        `${outcome} ${at.path}: ${says}${outcome === "holds" ? "" : ` → ${mend}`}${withSources(rule, sources)}`,
    );
}

describe.each(notEmpty(readdirSync(FOLDER)))("at its edges: %s", (file) => {
  const branches = parse(readFileSync(join(FOLDER, file), "utf8")) as readonly Branch[];
  for (const branch of notEmpty(branches))
    test(`${branch.rule}: ${branch.name}`, () => expect(told(branch)).toEqual(branch.tells));
});
