// The starter's builds are approved as they are: an approval is of a content, parts and house standard included, so a
// change of any of them asks for new codes. This writes them, and says which documents it touched.
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { openRepository } from "@plumbmark/core";

const root = fileURLToPath(new URL("../../starter/repository/", import.meta.url));
const read = (path) => ({ path, text: readFileSync(root + path, "utf8") });
const all = (folder, end) =>
  readdirSync(root + folder)
    .filter((name) => name.endsWith(end))
    .sort()
    .map((name) => read(`${folder}/${name}`));

const files = {
  houseStandard: read("house-standard.yaml"),
  parts: all("parts", ".yaml"),
  stock: read("stock.yaml"),
  surveys: all("venues", ".md"),
  documents: all("builds", ".md"),
};
const repository = openRepository(files, [], { today: "2027-01-01" });
for (const { path, text } of files.documents) {
  const { code } = repository.model(path).build.approval;
  const now = text.replace(/(^approved: \{.*code: )[0-9A-Z-]+/mu, (_, before) => before + code);
  if (now === text) continue;
  writeFileSync(root + path, now);
  console.log(`${path}: approved as it is, ${code}`);
}
