// The least a site of these documents could cost: their Markdown parsed and rendered with the libraries of the site, on
// one thread. Prints how long the text came out, so that nothing of it can be left out.
import { readdirSync, readFileSync } from "node:fs";
import { toHtml } from "hast-util-to-html";
import rehypeSanitize from "rehype-sanitize";
import rehypeSlug from "rehype-slug";
import remarkFrontmatter from "remark-frontmatter";
import remarkGfm from "remark-gfm";
import remarkParse from "remark-parse";
import remarkRehype from "remark-rehype";
import { unified } from "unified";

const folder = process.argv[2];
const parser = unified().use(remarkParse).use(remarkFrontmatter, ["yaml"]).use(remarkGfm);
const renderer = unified().use(remarkRehype).use(rehypeSanitize).use(rehypeSlug);
let length = 0;
for (const name of readdirSync(folder, { recursive: true }))
  if (name.endsWith(".md"))
    length += toHtml(renderer.runSync(parser.parse(readFileSync(`${folder}/${name}`, "utf8")))).length;
console.log(length);
