// Cost of publishing a thousand documents beside that of their Markdown alone, parsed and rendered with the same
// libraries: a ratio measured in one run. `node tests/bench/publish.mjs [documents]`.
import { readdirSync, readFileSync } from "node:fs";
import { readMarkdown } from "@plumbmark/core";
import { siteFiles } from "@plumbmark/docs-site";
import { rules } from "@plumbmark/rules";
import { starterRepository } from "@plumbmark/starter";
import { toHtml } from "hast-util-to-html";
import rehypeSanitize from "rehype-sanitize";
import rehypeSlug from "rehype-slug";
import remarkRehype from "remark-rehype";
import { unified } from "unified";

const COUNT = Number(process.argv[2] ?? 1000);
const read = (path) => ({ path, text: readFileSync(`${starterRepository}/${path}`, "utf8") });
const folder = (name) => readdirSync(`${starterRepository}/${name}`).map((file) => read(`${name}/${file}`));

/** The starter's documents over and over, each with a name and days of its own, so that no lot is promised twice. */
const starter = folder("builds");
const documents = Array.from({ length: COUNT }, (_, index) => {
  const { path, text } = starter[index % starter.length];
  const day = new Date(Date.UTC(2100, 0, 1 + 2 * index)).toISOString().slice(0, 10);
  return {
    path: path.replace(/\.md$/u, `-${index}.md`),
    text: text.replace(/^build: (.*)$/mu, `build: $1-${index}`).replace(/^on-site: .*$/mu, `on-site: ${day} to ${day}`),
  };
});
const files = {
  houseStandard: read("house-standard.yaml"),
  stock: read("stock.yaml"),
  parts: folder("parts"),
  documents,
};

const processor = unified().use(remarkRehype).use(rehypeSanitize).use(rehypeSlug);
function markdown(some) {
  let length = 0;
  for (const { text } of some) length += toHtml(processor.runSync(readMarkdown(text).tree)).length;
  return length;
}

function published(some) {
  let length = 0;
  for (const [, content] of siteFiles({ files: { ...files, documents: some }, rules, today: "2027-01-01" }))
    length += content.length;
  return length;
}

const cost = (work) => {
  const start = performance.now();
  const length = work();
  return { ms: performance.now() - start, length };
};

// Both have run once before they are measured.
markdown(documents.slice(0, 14));
published(documents.slice(0, 14));
const alone = cost(() => markdown(documents));
const whole = cost(() => published(documents));
const of = ({ ms, length }) => `${(ms / COUNT).toFixed(1)} ms and ${(length / COUNT / 1000).toFixed(0)} kB a document`;
console.log(`${COUNT} documents, Markdown alone: ${of(alone)}`);
console.log(`${COUNT} documents, published: ${of(whole)}`);
console.log(`publishing costs ${(whole.ms / alone.ms).toFixed(2)} times the Markdown`);
