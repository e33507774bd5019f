import { failuresAt, openRepository } from "@plumbmark/core";
import { type Drawing, drawingsOf, publish, svgFile } from "@plumbmark/docs-site";
import { rules } from "@plumbmark/rules";
import { describe, expect, inject, it } from "vitest";
import { notEmpty } from "../../run/not-empty.js";
import { some, someOfEach } from "../../run/some.js";
import { pageOf, sheetsOf } from "../page-of.js";
import { TODAY } from "../starter-files.js";
import { read, words } from "./read.js";
import { builds, drawn, files } from "./subjects.js";

/**
 * In a deep run every drawing of every document, and the whole site; else two drawings of each kind and the sheets of two
 * documents, others in each run.
 */
const { deep, seed } = inject("effort");
const KINDS = ["hang-plot", "stand", "face", "one-line", "picture-path", "raster", "sightlines"];
const kindOf = ({ drawing }: { readonly drawing: Drawing }): string =>
  KINDS.find((kind) => drawing.name.startsWith(kind)) ?? drawing.name.replace(/-.*/u, "");
const tried = deep ? drawn : someOfEach(drawn, kindOf, 2, seed);
const sheets = deep ? files.documents : some(files.documents, 2, seed);

describe("every drawing", () => {
  it("of every kind is there", () => {
    for (const kind of KINDS)
      expect(drawn.filter(({ drawing }) => drawing.name.startsWith(kind)).length).toBeGreaterThan(2);
  });

  it.each(notEmpty(tried))("$name is well-formed XML with a title and a description", ({ text, drawing }) => {
    const { root, all } = read(text);
    expect(root.name).toBe("svg");
    expect(root.attributes.xmlns).toBe("http://www.w3.org/2000/svg");
    expect(root.attributes.role).toBe("img");
    const [title, desc] = [all("title")[0], all("desc")[0]];
    expect(root.attributes["aria-labelledby"]).toBe(`${title?.attributes.id} ${desc?.attributes.id}`);
    expect(words(title as never)).toBe(drawing.title);
    expect(words(desc as never).length).toBeGreaterThan(20);
  });

  it.each(notEmpty(tried))("$name says nothing of numbers that are none", ({ text }) => {
    expect(text).not.toMatch(/NaN|undefined|Infinity|\[object/u);
  });

  it.each(notEmpty(tried))("$name carries no style and no script, and refers to nothing elsewhere", ({ text }) => {
    expect(text.replace('xmlns="http://www.w3.org/2000/svg"', "")).not.toMatch(
      /<(?:style|script|image|use|a)\b|\sstyle=|href=|url\(|https?:/u,
    );
  });
});

describe("names of drawings", () => {
  it("are those a document may link to, in number and order", () => {
    for (const [file, { build }] of notEmpty(builds))
      expect(build.drawings).toEqual(drawn.filter((each) => each.file === file).map(({ drawing }) => drawing.name));
  });
});

/** What is drawn on the paper of a drawing. */
const bodyOf = (text: string): readonly string[] => {
  const found = read(text)
    .having("id")
    .find(([id]) => id === "Drawing-body");
  return (found?.[1].children ?? [])
    .slice(1)
    .map((each) => JSON.stringify(each, (key, value) => (key === "position" ? undefined : value)));
};

/** A drawing of a document with what does not hold, as the site shows it. */
const judgedDrawing = (file: string, name: string): string => {
  const subject = builds.get(file) as NonNullable<ReturnType<typeof builds.get>>;
  const all = judged.get(file) ?? drawingsOf({ ...subject, failures: failuresAt(subject.entry) });
  judged.set(file, all);
  return svgFile(all.find((each) => each.name === name) as Drawing);
};
const judged = new Map<string, readonly Drawing[]>();

describe("on the site", () => {
  const input = { files, rules, today: TODAY };
  const pages = deep ? publish(input) : sheetsOf(input, sheets);
  const shown = drawn.filter(({ file }) => sheets.some(({ path }) => path === file));

  it("every drawing has a file of its own, and the sheet shows it and links to it", () => {
    for (const { file, drawing } of notEmpty(shown)) {
      const stem = file.replace(/^builds\/|\.md$/gu, "");
      const name = drawing.name.toLowerCase();
      const own = pages.get(`drawings/${stem}/${name}.svg`) ?? "";
      // What is drawn is the same; at its foot stands what a loose page belongs to, and the sheet is higher by that.
      const [plain, whole] = [bodyOf(judgedDrawing(file, drawing.name)), bodyOf(own)];
      expect(plain.length).toBeGreaterThan(1);
      expect(whole.slice(0, plain.length)).toEqual(plain);
      const [[stamp] = []] = read(own).having("data-stamp");
      expect(stamp?.split(" · ")).toEqual([
        builds.get(file)?.build.reader.text("build"),
        expect.stringMatching(/^sheet 1\.\d\d$/u),
        expect.stringMatching(/^revision (\d+|not stated)$/u),
        builds.get(file)?.build.reader.text("status"),
        ...(builds.get(file)?.entry.approval
          ? [expect.stringMatching(/^(?:not )?approved [0-9A-Z]{4}-[0-9A-Z]{4}$/u)]
          : []),
        `inspected ${TODAY}`,
      ]);
      expect(pages.get(`builds/${stem}.html`)).toContain(`id="Drawing-${name}-title"`);
      expect(pages.get(`builds/${stem}.html`)).toContain(`href="../drawings/${stem}/${name}.svg"`);
    }
  });

  it("no id stands twice on a page", () => {
    for (const [path, text] of notEmpty(pages)) {
      if (!path.endsWith(".html")) continue;
      const ids = [...text.matchAll(/ id="([^"]+)"/gu)].map(([, id]) => id);
      expect(
        ids.filter((id, index) => ids.indexOf(id) !== index),
        path,
      ).toEqual([]);
    }
  });
});

describe("a link to a drawing", () => {
  const document = (body: string) => ({
    path: "builds/x.md",
    text: `---\nbuild: x\ntitle: X\nstatus: draft\nfaces: {f: {panel: tile-500-p3.1, columns: 2, rows: 1, support: wall}}\n---\n\n${body}\n`,
  });
  const page = (body: string) =>
    pageOf({ files: { ...files, documents: [document(body)] }, rules, today: TODAY }, "builds/x.html") ?? "";
  const link = "[front](calc:drawings.face-f-power-audience)";

  it("is replaced by the drawing where it is the whole paragraph", () => {
    const text = page(link);
    expect(text).toContain('id="Figure-face-f-power-audience-title"');
    expect(text).not.toContain("calc:");
  });

  it("leads to the file where it stands in a sentence", () => {
    const text = page(`See the ${link} first.`);
    expect(text).toContain('<a href="../drawings/x/face-f-power-audience.svg">front</a>');
    expect(text).not.toContain('id="Figure-');
  });

  it("stands once as a drawing when it is written twice", () => {
    expect(page(`${link}\n\n${link}`).split('id="Figure-face-f-power-audience-title"')).toHaveLength(2);
  });

  it("to a drawing that is not there is a mistake that names the nearest one", () => {
    const wrong = document("[front](calc:drawings.face-f-power-audiense)");
    const [entry] = openRepository({ ...files, documents: [wrong] }, rules, { today: TODAY }).all().documents;
    const check = entry?.checks.find(({ rule }) => rule === "document.quoted-values");
    expect(check?.outcome).toBe("fails");
    expect(check?.at.line).toBe(8);
    expect(check?.mend).toContain("Did you mean `face-f-power-audience`?");
  });
});
