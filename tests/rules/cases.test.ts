import { existsSync } from "node:fs";
import { join } from "node:path";
import { trials } from "@plumbmark/kit/tryout";
import { rules } from "@plumbmark/rules";
import { readCases, starterParts } from "@plumbmark/starter/cases";
import { describe, test } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { root } from "./repository.js";

/** What stands in a file can always be read or not; what is not told is open, and no fault. */
const NEVER: Readonly<Record<string, readonly ("open" | "fails")[]>> = {
  "document.front-matter": ["open"],
  "document.described": ["fails"],
  "document.exposure": ["fails"],
  "venue.agrees": ["open"],
};

const around = { ...starterParts(), known: rules.map(({ id }) => id) };

describe.each(notEmpty(rules.map((rule) => [rule.id, rule] as const)))("%s", (id, rule) => {
  const folder = join(root, "rules", id.replace(".", "/"), "cases");
  const cases = existsSync(folder) ? readCases(folder) : [];
  const never = NEVER[id] ?? [];
  for (const { name, run } of notEmpty(trials(rule, cases, { ...around, never }))) test(name, run);
});
