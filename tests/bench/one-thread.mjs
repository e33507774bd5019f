// Inspects every document of a repository on one thread, in this process: what a machine with one processor does.
import { readdirSync, readFileSync } from "node:fs";
import { inspect } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { optimizeLater } from "../../packages/cli/dist/start/later.js";

// As the command line does before it begins.
optimizeLater();
const folder = process.argv[2];
const read = (path) => ({ path, text: readFileSync(`${folder}/${path}`, "utf8") });
const below = (name, end) =>
  readdirSync(`${folder}/${name}`, { recursive: true })
    .filter((each) => each.endsWith(end))
    .map((each) => read(`${name}/${each}`));

const { totals } = inspect(
  {
    houseStandard: read("house-standard.yaml"),
    stock: read("stock.yaml"),
    parts: below("parts", ".yaml"),
    documents: below("builds", ".md"),
  },
  rules,
  { today: "2027-01-01" },
);
if (totals.documents === 0) throw new Error("there are no documents");
