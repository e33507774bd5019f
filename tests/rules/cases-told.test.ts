import { readFileSync } from "node:fs";
import { join } from "node:path";
import { openRepository } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { notEmpty } from "../run/not-empty.js";
import { caseFiles, root } from "./repository.js";

// What some cases of the rules tell, word for word, as it was read against each case: who is named, one thing or
// several, where it stands, how it would be put right. Figures that are computed stand as #: they are checked elsewhere.

const CASES = parse(readFileSync(join(root, "tests/rules/cases-told.yaml"), "utf8")) as Readonly<
  Record<string, readonly string[]>
>;

const masked = (text: string): string =>
  text.replaceAll(/\d[\d,]*\.\d+|\d{1,3}(?:,\d{3})+|\d+(?= (?:kg|lb|mm|ft|mA|A|V|VA|W)\b)/gu, "#");

function told(path: string): readonly string[] {
  const [id = "", name = ""] = path.split("/");
  const folder = join(root, "rules", id.replace(".", "/"), "cases", name);
  const own = rules.filter((rule) => rule.id === id);
  const { documents } = openRepository(caseFiles(folder), own, { today: "2027-01-01", every: true }).all();
  const lines = documents
    .flatMap(({ checks }) => checks)
    .filter(({ rule }) => rule === id)
    .map(({ outcome, at, says, mend, mends }) => {
      const edits = mends?.map(
        ({ becomes, sure }) => `${becomes === "" ? "taken out" : masked(becomes)}${sure ? "" : "?"}`,
      );
      const how = outcome === "holds" ? "" : ` → ${masked(mend ?? "")}`;
      return `${outcome} ${at.path}: ${masked(says)}${how}${edits?.length ? ` (${edits.join("; ")})` : ""}`;
    });
  return [...new Set(lines)];
}

describe("what a case tells", () => {
  test.each(notEmpty(Object.entries(CASES)))("%s", (path, lines) => expect(told(path)).toEqual(lines));
});
