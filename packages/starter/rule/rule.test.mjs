// Run it with: node --test house-rules/my-rule/rule.test.mjs
import { readdirSync, readFileSync } from "node:fs";
import { test } from "node:test";
import { trials } from "plumbmark/kit/tryout";
import rule from "./rule.mjs";

const read = (path) => readFileSync(new URL(path, import.meta.url), "utf8");

// The name of a case begins with what it has to come to: holds, fails or open.
const cases = readdirSync(new URL("cases/", import.meta.url)).map((name) => ({
  name,
  expects: name.split(/[-.]/u)[0],
  documents: read(`cases/${name}`),
}));

for (const { name, run } of trials(rule, cases, { parts: read("parts.yaml") })) test(name, run);
