// Run it with: node --test house-rules/turnaround/rule.test.mjs
import { readdirSync, readFileSync } from "node:fs";
import { test } from "node:test";
import { trials } from "plumbmark/kit/tryout";
import rule from "./rule.mjs";

const read = (path) => readFileSync(new URL(path, import.meta.url), "utf8");
const list = (path) => readdirSync(new URL(path, import.meta.url)).sort();

// Each case is a folder of documents; its name begins with what it has to come to: holds, fails or open.
const cases = list("cases/").map((name) => ({
  name,
  expects: name.split("-")[0],
  documents: Object.fromEntries(list(`cases/${name}/`).map((file) => [`builds/${file}`, read(`cases/${name}/${file}`)])),
}));

for (const { name, run } of trials(rule, cases, { parts: read("parts.yaml"), stock: read("stock.yaml") })) test(name, run);
