import { execFileSync } from "node:child_process";
import { chmodSync, readFileSync, statSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { plumbmark } from "../plumbmark.js";
import { unborn } from "./scratch.js";

const BANNER = "builds/over-stage-banner.md";
const PANELS = "parts/panels.yaml";

/** A banner with a figure that is not up to date, and a catalogue with a decimal comma. */
function slipped() {
  const repository = unborn();
  repository.change(BANNER, "[132 lb](calc:faces.banner.mass)", "[131 lb](calc:faces.banner.mass)");
  repository.change(BANNER, "    trim: 11 ft", "    trimm: 11 ft   # to the lower edge");
  repository.change(PANELS, "  mass: 7.6 kg", "  mass: 7,6 kg");
  return repository;
}

test("what has one answer is written, every other byte as it was, and which approvals end is told", async () => {
  const repository = unborn();
  const approved = repository.read(BANNER);
  chmodSync(join(repository.folder, BANNER), 0o640);
  repository.change(BANNER, "[132 lb](calc:faces.banner.mass)", "[131 lb](calc:faces.banner.mass)");
  repository.approve();
  const before = repository.read(BANNER);
  const told = await repository.plumbmark("mend", BANNER);
  expect(told).toMatchObject({ status: 0, err: "" });
  expect(told.out).toBe(
    `${BANNER}: 1 change\n  line 169: \`131 lb\` is \`132 lb\` now\nThe approval of ${BANNER} by M. Finch ends: it was of what stood there before. Look at it, and approve it anew.\n`,
  );
  expect(repository.read(BANNER)).toBe(before.replace("[131 lb]", "[132 lb]"));
  expect(repository.read(BANNER).length).toBe(approved.length);
  expect(statSync(join(repository.folder, BANNER)).mode & 0o777).toBe(0o640);
  expect(await repository.plumbmark("mend", BANNER)).toMatchObject({
    status: 0,
    out: expect.stringMatching(/^Nothing /u),
  });
});

test("only what is asked for is mended; without a path, everything", async () => {
  const repository = slipped();
  const catalogue = repository.read(PANELS);
  expect((await repository.plumbmark("mend", BANNER)).status).toBe(0);
  expect(repository.read(PANELS)).toBe(catalogue);
  expect(repository.read(BANNER)).toContain("    trim: 11 ft   # to the lower edge");
  // The mass of a panel cannot be read yet, so what is quoted of it is not known.
  expect(repository.read(BANNER)).toContain("[131 lb](calc:faces.banner.mass)");
  expect((await repository.plumbmark("mend")).status).toBe(0);
  expect(repository.read(PANELS)).toBe(catalogue.replace("7,6 kg", "7.6 kg"));
  expect(repository.read(BANNER)).toContain("[132 lb](calc:faces.banner.mass)");
});

test("--show prints a difference that patch(1) takes, and changes nothing", async () => {
  const repository = slipped();
  repository.write(BANNER, repository.read(BANNER).trimEnd());
  const [banner, panels] = [repository.read(BANNER), repository.read(PANELS)];
  const shown = await repository.plumbmark("mend", "--show");
  expect(shown.status).toBe(1);
  expect([repository.read(BANNER), repository.read(PANELS)]).toEqual([banner, panels]);
  expect(shown.out).toContain(`--- a/${BANNER}\n+++ b/${BANNER}\n@@ -`);
  execFileSync("git", ["apply", "--whitespace=nowarn", "-"], { cwd: repository.folder, input: shown.out });
  const [applied, both] = [repository.read(BANNER), repository.read(PANELS)];
  repository.write(BANNER, banner);
  repository.write(PANELS, panels);
  expect((await repository.plumbmark("mend")).status).toBe(0);
  expect([repository.read(BANNER), repository.read(PANELS)]).toEqual([applied, both]);
  expect(await repository.plumbmark("mend", "--show")).toMatchObject({ status: 0, out: "" });
});

test("line ends and a byte order mark stay", async () => {
  const repository = slipped();
  const text = `\uFEFF${repository.read(BANNER).replaceAll("\n", "\r\n")}`;
  repository.write(BANNER, text);
  expect((await repository.plumbmark("mend", BANNER)).status).toBe(0);
  expect(repository.read(BANNER)).toBe(text.replace("trimm:", "trim:"));
});

test("a file that cannot be written is told, and the others are written all the same", async () => {
  const repository = slipped();
  const link = join(repository.folder, "builds/linked.md");
  repository.write("letters/outside.md", repository.read(BANNER).replace("build: over-stage-banner", "build: linked"));
  symlinkSync("../letters/outside.md", link);
  const before = readFileSync(link, "utf8");
  const { status, out, err } = await repository.plumbmark("mend");
  expect({ status, err }).toEqual({ status: 2, err: expect.stringContaining("builds/linked.md: It is a link") });
  expect(out).toContain(`${BANNER}: `);
  expect(readFileSync(link, "utf8")).toBe(before);
  expect(repository.read(PANELS)).toContain("mass: 7.6 kg");
});

test("what is no document is left alone", async () => {
  const repository = unborn();
  const { status, err } = await repository.plumbmark("mend", "README.md");
  expect({ status, err }).toEqual({ status: 0, err: expect.stringMatching(/^README\.md: left alone/u) });
  expect((await repository.plumbmark("mend", "none.md")).status).toBe(2);
});

const PLUGIN = `import { is, plugin, rule } from "@plumbmark/kit";
const low = rule({ id: "low.brackets", states: "S.", level: "should", why: "w", judged: "j", sources: ["house"],
  *checks({ build }) {
    const title = build.reader.text("title") ?? "";
    yield is(build, { holds: title !== "WORD", says: "A title.", mend: "Write it small.",
      mends: [{ at: "title", becomes: "Word", sure: true }, { at: "title", becomes: "word", sure: false }] });
  } });
export default plugin({ kit: 1, rules: [low] });
`;

test("a plugin's rule may say how it is mended, and is asked again about what was mended", async () => {
  const repository = unborn();
  repository.write("plugins/low.mjs", PLUGIN);
  repository.change("house-standard.yaml", "stock: stock.yaml", 'stock: stock.yaml\nrules-from: ["./plugins/low.mjs"]');
  repository.change(BANNER, "title: Over-stage text banner", "title: WORD");
  repository.change(BANNER, "    trim: 11 ft", "    trimm: 11 ft");
  const record = JSON.parse((await repository.plumbmark("inspect", BANNER, "--as", "json")).out);
  const check = record.documents[0].checks.find(({ rule }: { rule: string }) => rule === "low.brackets");
  expect(check.mends).toEqual([
    { at: { line: 3, column: 8, endLine: 3, endColumn: 12 }, was: "WORD", becomes: "Word", sure: true },
    { at: { line: 3, column: 8, endLine: 3, endColumn: 12 }, was: "WORD", becomes: "word", sure: false },
  ]);
  expect((await repository.plumbmark("mend", BANNER, "--no-plugins")).status).toBe(0);
  expect(repository.read(BANNER)).toContain("title: WORD");
  expect((await repository.plumbmark("mend", BANNER)).status).toBe(0);
  expect(repository.read(BANNER)).toContain("title: Word\n");
});

test("a file that is changed meanwhile is left alone, and is told", async () => {
  const repository = slipped();
  let out = "";
  const meanwhile = "---\nbuild: somebody-else\n---\n";
  const told = await plumbmark(repository.folder, ["mend"], {
    print: (text) => {
      // The first file is told once it is written; the other is not yet.
      if (out === "") repository.write(text.startsWith(BANNER) ? PANELS : BANNER, meanwhile);
      out += text;
    },
  });
  expect(told).toMatchObject({ status: 2, err: expect.stringContaining("It was changed meanwhile") });
  expect([repository.read(BANNER), repository.read(PANELS)]).toContain(meanwhile);
  expect(out).toMatch(/: 1 change\n|: \d changes\n/u);
});
