// The least that could be done with the documents of a repository: `hash` reads and hashes them, `parse` reads their
// Markdown and YAML with the libraries Plumbmark uses and validates the front matter, on one thread.
import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { pathToFileURL } from "node:url";

const [, , how, folder] = process.argv;
const all = readdirSync(folder, { recursive: true }).filter((name) => name.endsWith(".md"));

if (how === "hash") {
  const names = all.map((name) =>
    createHash("sha1")
      .update(readFileSync(`${folder}/${name}`))
      .digest("hex"),
  );
  if (new Set(names).size === 0) throw new Error("there are no documents");
} else {
  // The libraries are those of the core, from where it has them.
  const own = createRequire(new URL("../../packages/core/package.json", import.meta.url));
  const bring = (name) => import(pathToFileURL(own.resolve(name)).href);
  const [{ unified }, markdown, matter, gfm, yaml, ajv] = await Promise.all(
    ["unified", "remark-parse", "remark-frontmatter", "remark-gfm", "yaml", "ajv/dist/2020.js"].map(bring),
  );
  const schema = JSON.parse(
    readFileSync(new URL("../../packages/core/schema/build.schema.json", import.meta.url), "utf8"),
  );
  const processor = unified().use(markdown.default).use(matter.default, ["yaml"]).use(gfm.default);
  const Ajv = ajv.Ajv2020 ?? ajv.default?.Ajv2020 ?? ajv.default;
  const validator = new Ajv({ strict: false, allErrors: true });
  let validate;
  try {
    validate = validator.compile(schema);
  } catch {
    validate = undefined;
  }
  for (const name of all) {
    const tree = processor.parse(readFileSync(`${folder}/${name}`, "utf8"));
    const front = tree.children[0];
    const data = yaml.parseDocument(front?.type === "yaml" ? front.value : "", { version: "1.2" }).toJS();
    validate?.(data);
  }
}
