import { execFileSync } from "node:child_process";
import { chmodSync, cpSync, readFileSync, statSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { starterRepository } from "@plumbmark/starter";
import { expect, test } from "vitest";
import { plumbmark } from "../plumbmark.js";
import { unborn } from "./scratch.js";

const BANNER = "builds/over-stage-banner.md";
const PANELS = "parts/panels.yaml";

/** The mass of the banner as the starter quotes it, and one that is none. */
const MASS = /\[\d+ lb\]\(calc:faces\.banner\.mass\)/u.exec(
  readFileSync(join(starterRepository, BANNER), "utf8"),
)?.[0] as string;
const WRONG = "[1 lb](calc:faces.banner.mass)";

/** A banner with a figure that is not up to date, and a catalogue with a decimal comma. */
function slipped() {
  const repository = unborn();
  repository.change(BANNER, MASS, WRONG);
  repository.change(BANNER, "    trim: 11 ft", "    trimm: 11 ft   # to the lower edge");
  repository.change(PANELS, "  mass: 7.9 kg", "  mass: 7,9 kg");
  return repository;
}

test("what has one answer is written, every other byte as it was, and which approvals end is told", async () => {
  const repository = unborn();
  const approved = repository.read(BANNER);
  chmodSync(join(repository.folder, BANNER), 0o640);
  repository.change(BANNER, MASS, WRONG);
  repository.approve();
  const before = repository.read(BANNER);
  const told = await repository.plumbmark("mend", BANNER);
  expect(told).toMatchObject({ status: 0, err: "" });
  const line = before.slice(0, before.indexOf(WRONG)).split("\n").length;
  const mass = /\d+ lb/u.exec(MASS)?.[0];
  expect(told.out).toBe(
    `${BANNER}: 1 change\n  line ${line}: \`1 lb\` is \`${mass}\` now\nThe approval of ${BANNER} by M. Finch ends: it was of what stood there before. Look at it, and approve it anew.\n`,
  );
  expect(repository.read(BANNER)).toBe(before.replace(WRONG, MASS));
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
  expect(repository.read(BANNER)).toContain(WRONG);
  expect((await repository.plumbmark("mend")).status).toBe(0);
  expect(repository.read(PANELS)).toBe(catalogue.replace("7,9 kg", "7.9 kg"));
  expect(repository.read(BANNER)).toContain(MASS);
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
  expect(repository.read(PANELS)).toContain("mass: 7.9 kg");
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

/** The starter as it is, its venues surveyed. */
function surveyed() {
  const repository = unborn();
  repository.remove("builds");
  for (const path of [BANNER, "builds/small-screen.md", "venues"])
    cpSync(join(starterRepository, path), join(repository.folder, path), { recursive: true });
  return repository;
}

/** What a person types to make the starter's banner two panels wider: the face, its run and chain, and the bar. */
const WIDER = [
  ["    columns: 6", "    columns: 8"],
  ["panels: banner A1..A6\n\ndata", "panels: banner A1..A8\n\ndata"],
  ["panels: banner A1..A6\n\npicture", "panels: banner A1..A8\n\npicture"],
  ["length: 10 ft 6 in", "length: 13 ft 9 in"],
] as const;

test("two panels wider: at most five edits by hand and one mend, and the banner is ready to be approved", async () => {
  const repository = surveyed();
  expect(WIDER.length).toBeLessThanOrEqual(5);
  for (const [from, to] of WIDER) repository.change(BANNER, from, to);
  expect((await repository.plumbmark("mend", BANNER)).out).toMatch(/^builds\/over-stage-banner\.md: [3-9] changes\n/u);
  expect(await repository.plumbmark("approve", BANNER, "--by", "M. Finch")).toMatchObject({ status: 0 });
  expect((await repository.plumbmark("inspect", BANNER)).status).toBe(0);
});

test("a feed that is shorter than its way is the shortest in stock that reaches", async () => {
  const repository = surveyed();
  repository.change(
    BANNER,
    "feed: {part: cord-12-3, hangs: 6 ft}",
    "feed: {part: cord-12-3, length: 25 ft, hangs: 6 ft}",
  );
  const feeds = async (): Promise<number> => {
    const { out } = await repository.plumbmark("inspect", BANNER, "--as", "json");
    const [document] = JSON.parse(out).documents as readonly { checks: readonly { rule: string }[] }[];
    return (document?.checks ?? []).filter(({ rule }) => rule === "power.feed-reach").length;
  };
  expect(await feeds()).toBe(1);
  expect((await repository.plumbmark("mend", BANNER)).status).toBe(0);
  // The catalogue has 25, 35 and 50 ft; the surveyed way to the beam alone is 22 ft, and on to the first tile comes on top.
  expect(repository.read(BANNER)).toMatch(/feed: \{part: cord-12-3, length: (?:35|50) ft, hangs: 6 ft\}/u);
  expect(await feeds()).toBe(0);
});
