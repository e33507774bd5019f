import { openRepository, type RepositoryFiles } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { describe, expect, test } from "vitest";
import { inspectText, SMALL, starter, TODAY } from "./repository.js";

const of = (text: string, rule: string) => inspectText(text).checks.filter((check) => check.rule === rule);

describe("slips of YAML", () => {
  // YAML 1.2.2, 6.6: a comment begins at a # that stands behind white space.
  test("a number sign behind a blank is told, with its place", () => {
    const [check] = of(SMALL.replace("title: Small header", "title: Header of 12 #8 screws"), "document.front-matter");
    expect(check).toMatchObject({ outcome: "fails", at: { path: "title", line: 3 } });
    expect(check?.says).toContain("#8 screws");
  });
  test.each([
    ["an ordinary comment", "title: Small header # as ordered"],
    ["a number sign in quotes", 'title: "Header of 12 #8 screws"'],
    ["a number sign inside a word", "title: Header-of-12#8-screws"],
  ])("%s is none", (_, title) => {
    expect(of(SMALL.replace("title: Small header", title), "document.front-matter")).toMatchObject([
      { outcome: "holds" },
    ]);
  });
  test("one slip is told once, and figures of the text are open, not wrong", () => {
    const text = SMALL.replace("title: Small header", "title: a: b: c");
    const fails = of(text, "document.front-matter").filter(({ outcome }) => outcome === "fails");
    expect(fails.length).toBe(1);
    expect(of(`${text}\nIt weighs [70 lb](calc:faces.header.mass).\n`, "document.quoted-values")).toMatchObject([
      { outcome: "open" },
    ]);
  });
});

describe("what stands in the body has a path a waiver can name", () => {
  const waiver = (rule: string, where: string, more = ""): string =>
    SMALL.replace(
      "\nfaces:\n",
      `\nwaivers: [{rule: ${rule}, where: ${where},${more} because: agreed with the hall, by: M. Finch, until: 2027-06-30}]\nfaces:\n`,
    );
  const asBuilt = (text: string): string => `${text.replace("for-build", "as-built")}\n- [x] hung\n- [ ] measured\n`;

  test("a task by its number, and no other", () => {
    const fails = (text: string) =>
      of(asBuilt(text), "document.tasks")
        .filter(({ outcome }) => outcome === "fails")
        .map(({ at }) => at.path);
    const open = fails(SMALL);
    expect(open.length).toBeGreaterThan(0);
    const last = open.at(-1) as string;
    expect(last).toMatch(/^tasks\.\d+$/u);
    expect(fails(waiver("document.tasks", last))).toEqual(open.slice(0, -1));
  });
  test("a link and who has gone over the cautions", () => {
    const links = of(`${waiver("document.links", "links.1")}\n[nowhere](#not-there)\n`, "document.links");
    expect(links.map(({ outcome }) => outcome)).toEqual(["waived"]);
    const silent = waiver("document.cautions", "cautions-confirmed", " of: open,").replace(
      /cautions-confirmed: .*\n/u,
      "",
    );
    const cautions = of(silent, "document.cautions");
    expect(cautions.find(({ at }) => at.path === "cautions-confirmed")?.outcome).toBe("waived");
  });
});

describe("names", () => {
  test("a house rule may not have the name of another rule", () => {
    const standard = starter().houseStandard;
    const files: RepositoryFiles = {
      ...starter(),
      houseStandard: {
        path: standard?.path ?? "house-standard.yaml",
        text: (standard?.text ?? "").replace("house.two-spares:", "panels.spares:"),
      },
    };
    expect(() => openRepository(files, rules, { today: TODAY }).all()).toThrow(/panels\.spares/u);
  });
  test("what a part does not say is asked for in the part's own file", () => {
    const parts = starter().parts.map(({ path, text }) => ({
      path,
      text: text.replace(/typical: 47 W, factor: 0\.95, /u, ""),
    }));
    const record = openRepository({ ...starter(), parts, documents: [{ path: "builds/1.md", text: SMALL }] }, rules, {
      today: TODAY,
    }).all();
    const check = record.documents[0]?.checks.find(({ rule }) => rule === "power.circuit-load");
    expect(check?.mend).toContain("`tile-500-p3.1.power.factor` in parts/panels.yaml");
  });
});
