import { type WhereFound, whereFoundWords } from "@plumbmark/core";
import { type Content, h } from "../../html/html.js";
import { inlineCode } from "../../html/inline-code.js";
import { table } from "../../html/table.js";
import type { Site } from "../../site/site.js";
import { linkTo, type SitePage } from "../page.js";
import { examples } from "../rules/examples.js";
import type { Field, Group } from "./fields.js";
import { type Chapter, chaptersOf, type KnownFile, keyAnchor } from "./known-files.js";
import { type WrittenWords, writtenForms } from "./written-as.js";

export const KEY_COLUMNS = ["Key", "What it is", "How it is written", "Checks that read it"];

/** They read whatever a document quotes or waives, so they say nothing of a field. */
const READS_ANYTHING: readonly string[] = ["document.quoted-values", "document.waivers"];

/** In place of a rule: it is read when the model of the build is made, before any rule asks. */
const MADE = "model";

/** A field that more rules read is read by nearly all of them. */
const MOST = 20;

export const referencePath = (name: string): string => `reference/${name}.html`;

const written = (words: WrittenWords): Content =>
  words.map((each): Content => {
    if (typeof each === "string") return each;
    return "code" in each ? h("code", each.code) : h("a", { href: `lists.html#${each.list}` }, each.words);
  });

const sentence = (text: string): string => (text === "" ? "" : `${text.charAt(0).toUpperCase()}${text.slice(1)}.`);

function whatItIs({ title, description, found, required, deprecated }: Field): Content {
  const place = whereFoundWords(found as WhereFound | undefined);
  return [
    deprecated ? [h("strong", "Old key."), " "] : undefined,
    sentence(title),
    required ? [" ", h("strong", "Has to be there.")] : undefined,
    description === undefined ? undefined : [" ", inlineCode(description)],
    place === "" ? undefined : [" ", h("span", { class: "short" }, place)],
  ];
}

const code = (value: unknown): Content =>
  h("code", Array.isArray(value) ? `[${value.map(String).join(", ")}]` : String(value));

const also = (...content: readonly Content[]): Content => [h("br"), content];

function howWritten(file: KnownFile, field: Field): Content {
  const { forms, guess, plausible, default: otherwise, path } = field;
  const value = examples().fields?.values[file.name]?.[path];
  return [
    written(writtenForms(file.schema, forms)),
    guess ? ", or a guess or a bound of it" : undefined,
    value === undefined ? undefined : also("Such as ", h("code", value)),
    otherwise === undefined ? undefined : also("Left out, ", code(otherwise), " counts"),
    plausible === undefined ? undefined : also("Between ", code(plausible[0]), " and ", code(plausible[1])),
  ];
}

/** Links to the rules that read a field while they judged their own cases and a build of the starter. */
function readBy(file: KnownFile, path: string, page: string, site: Site): Content {
  const all = examples().fields?.readBy[file.name]?.[path] ?? [];
  const rules = all.filter((id) => id !== MADE && (!READS_ANYTHING.includes(id) || path.startsWith("waivers")));
  if (rules.length === 0 && all.includes(MADE)) return "whatever is computed: the build is made of it";
  if (rules.length > MOST) return `${rules.length} rules`;
  return rules.map((id, index): Content => {
    const to = site.rulePaths.get(id);
    return [
      index > 0 ? ", " : "",
      to === undefined ? h("code", id) : h("a", { href: linkTo(page, to) }, h("code", id)),
    ];
  });
}

/** Where the keys stand; of a part, after its kind, which tells one table from another. */
function captionOf({ shown }: Group, { id }: Chapter, { name }: KnownFile): string {
  if (name === "parts") return shown === "" ? id : `${id}: ${shown}`;
  return shown === "" ? "At the top" : shown;
}

const groupTable = (group: Group, chapter: Chapter, file: KnownFile, page: string, site: Site): Content => {
  const caption = captionOf(group, chapter, file);
  const rows = group.fields.map((field) => ({
    id: keyAnchor(field.path),
    cells: [h("code", field.key), whatItIs(field), howWritten(file, field), readBy(file, field.path, page, site)],
  }));
  return h("div", { class: "rows keys" }, table(caption, KEY_COLUMNS, rows));
};

/** Every key of one kind of file. */
export function referencePage(file: KnownFile, number: string, site: Site): SitePage {
  const path = referencePath(file.name);
  const chapters = chaptersOf(file);
  const content: Content = [
    h("p", inlineCode(file.says)),
    h("p", [
      "For editors and other programs: ",
      h("a", { href: linkTo(path, `schema/${file.name}.schema.json`) }, `${file.name}.schema.json`),
      ". ",
      h("a", { href: "index.html" }, "How these tables are read"),
      ".",
    ]),
    h("nav", { class: "contents", ariaLabel: "Keys" }, [
      h(
        "ul",
        chapters.map(({ id, title }) => h("li", h("a", { href: `#Chapter-${id}` }, title))),
      ),
    ]),
    chapters.map(
      (chapter): Content => [
        h("h2", { id: `Chapter-${chapter.id}` }, chapter.title),
        chapter.description === undefined ? undefined : h("p", inlineCode(chapter.description)),
        chapter.groups.map((group) => groupTable(group, chapter, file, path, site)),
      ],
    ),
  ];
  return { path, title: file.title, number, content };
}
