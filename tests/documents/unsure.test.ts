import { openRepository, schedule, tableCsv, workedValues } from "@plumbmark/core";
import { describe, expect, inject, test } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { someOfEach } from "../run/some.js";
import { changed, inspectText, onlyRules, SMALL, starter, TODAY } from "./repository.js";

type Document = ReturnType<typeof inspectText>;
const of = (document: Document, rule: string) => document.checks.filter((check) => check.rule === rule);
/** A text inspected by these rules alone. */
const inspected = (text: string, ...rules: readonly string[]): Document => inspectText(text, { rules, turns: false });
const notHolding = (document: Document) => document.checks.filter(({ outcome }) => outcome !== "holds");
const files = (text: string) => ({ ...starter(), documents: [{ path: "builds/1.md", text }] });

describe("a guess", () => {
  const guess = inspected(
    changed("      breaker: 20 A", "      breaker: 20 A ?"),
    "power.circuit-load",
    "rigging.point-load",
  );
  test("leaves open what rests on it, says which, and how it would come out", () => {
    const [check] = of(guess, "power.circuit-load");
    expect(check).toMatchObject({
      outcome: "open",
      "rests-on-guesses": ["power.circuits.c1.breaker"],
      "if-right": "holds",
    });
    expect(check?.says).toContain("`power.circuits.c1.breaker` (20 A ?)");
    expect(check?.says).toContain("15 A ?");
  });
  test("is computed with, and stands in the working with its sign", () => {
    // NEC 210.20(A) by the house standard of the starter: 75 % of 20 A is 15 A.
    const lines = of(guess, "power.circuit-load")[0]?.working?.map((line) => line.with) ?? [];
    expect(lines).toContain("20 A ? × 75 % = 15 A ?");
    const value = workedValues(
      openRepository(files(changed("      breaker: 20 A", "      breaker: 20 A ?")), [], { today: TODAY }).model(
        "builds/1.md",
      ),
    ).get("power.circuits.c1.continuous-rating");
    expect(value?.text).toBe("15 A ?");
  });
  test("of which it would fail says so, and is no failure yet", () => {
    const [check] = of(
      inspected(changed("      breaker: 20 A", "      breaker: 5 A ?"), "power.circuit-load"),
      "power.circuit-load",
    );
    expect(check).toMatchObject({ outcome: "open", "if-right": "fails" });
  });
  test("leaves alone what does not rest on it", () => {
    const whole = inspected(SMALL, "rigging.point-load");
    const [touched] = of(guess, "rigging.point-load");
    expect(touched).toEqual(of(whole, "rigging.point-load")[0]);
  });
  test("may be a whole number, a pair, and a value of a part", () => {
    for (const [from, to, path, rule] of [
      ["    columns: 4", "    columns: 4 ?", "faces.header.columns", "power.circuit-load"],
      ["  raster: 1920 x 1080", "  raster: 1920 x 1080 ?", "picture.raster", "picture.placed"],
    ] as const) {
      const document = inspected(changed(from, to), rule);
      const resting = document.checks.filter((check) => check["rests-on-guesses"]?.includes(path));
      expect(resting.length, path).toBeGreaterThan(0);
      expect(document.verdict).toBe("not ready");
    }
    const parts = starter().parts.map((each) => ({
      ...each,
      text: each.text.replace("mass: 7.9 kg", "mass: 7.9 kg ?"),
    }));
    const asked = onlyRules(["rigging.point-load"]);
    const [document] = openRepository({ ...files(SMALL), parts }, asked, { today: TODAY, every: true }).all().documents;
    const loads = (document as Document).checks.filter(({ rule }) => rule === "rigging.point-load");
    expect(loads.length).toBeGreaterThan(0);
    for (const check of loads) expect(check["rests-on-guesses"]).toEqual(["tile-500-p3.1.mass"]);
  });
  test.each([
    ["a rating by a letter", ", structure: 500 lb}\n        H2", ", structure: 500 lb ?}\n        H2"],
    ["dates", "on-site: 2027-03-05 to 2027-03-08", "on-site: 2027-03-05 to 2027-03-08 ?"],
    ["the name of a part", "panel: tile-500-p3.1", "panel: tile-500-p3.1 ?"],
  ])("is never %s", (_, from, to) => {
    const document = inspected(changed(from, to), "document.front-matter", "document.parts");
    const mistakes = document.checks.filter(
      ({ rule, outcome }) => /^document\.(?:front-matter|parts)$/u.test(rule) && outcome === "fails",
    );
    expect(mistakes.length).toBeGreaterThan(0);
    expect(document.verdict).toBe("not ready");
  });
  test("quoted in the text has its sign in the link, and only then", () => {
    const quoted = (breaker: string, figure: string) =>
      of(
        inspected(
          `${changed("      breaker: 20 A", `      breaker: ${breaker}`)}\n[${figure}](calc:power.circuits.c1.continuous-rating)\n`,
          "document.quoted-values",
        ),
        "document.quoted-values",
      ).at(-1);
    expect(quoted("20 A ?", "15 A")).toMatchObject({ outcome: "fails", mend: expect.stringContaining("`15 A ?`") });
    expect(quoted("20 A ?", "15 A ?")).toMatchObject({ outcome: "open", "if-right": "holds" });
    expect(quoted("20 A", "15 A ?")).toMatchObject({ outcome: "fails" });
    expect(quoted("20 A", "15 A")).toMatchObject({ outcome: "holds" });
  });
  test("has its sign in schedules, and a column of its own in CSV", () => {
    const table = openRepository(files(changed("      breaker: 20 A", "      breaker: 20 A ?")), onlyRules([]), {
      today: TODAY,
    }).model("builds/1.md");
    const made = schedule(table.build, "circuits", table.system);
    expect(made.rows[0]?.some(({ text }) => text === "20 ?")).toBe(true);
    const [head, line] = tableCsv(made).split("\r\n");
    expect(head).toMatch(/,sure$/u);
    expect(line).toMatch(/,20,.*,guess$/u);
  });
});

/** Every quantity of the small build as a guess, one at a time. */
const QUANTITY = /(?<=: )\d[\d.]*(?: x \d+| (?:ft|in|m|A|V|AWG|lb|%|Hz|bit|cd\/m2|h|deg))(?: \d+ in)?(?=[,}\n])/gu;

describe("nothing that rests on a guess is ever ready", () => {
  const front = SMALL.slice(0, SMALL.indexOf("\n---\n"));
  const places = [...front.matchAll(QUANTITY)].map(({ index, 0: text }) => [index, text] as const);
  const whole = inspectText(SMALL);
  // All in a deep run; else two of each unit and of what has none, others in each run.
  const { deep, seed } = inject("effort");
  const tried = deep ? places : someOfEach(places, ([, text]) => text.replace(/^[\d. x]+/u, ""), 2, seed);
  test("there are many, and the whole is ready", () => {
    expect(places.length).toBeGreaterThan(30);
    expect(tried.length).toBeGreaterThan(10);
    expect(whole.verdict).toBe("ready");
  });
  test.each(notEmpty(tried))("at %i: %s", (index, text) => {
    const end = index + text.length;
    const document = inspectText(`${SMALL.slice(0, end)} ?${SMALL.slice(end)}`, { turns: false });
    const resting = document.checks.filter((check) => check["rests-on-guesses"] !== undefined);
    expect(resting.filter(({ outcome }) => outcome !== "open")).toEqual([]);
    const mistaken = notHolding(document).some(({ rule }) => rule === "document.front-matter");
    if (resting.length > 0 || mistaken) expect(document.verdict).toBe("not ready");
    // Where nothing rests on it, it changes nothing but the code of what was approved.
    else
      expect(notHolding(document).filter(({ rule }) => rule !== "document.sign-off")).toEqual(
        notHolding(whole).filter(({ rule }) => rule !== "document.sign-off"),
      );
  });
});

describe("a bound", () => {
  const wiring = (length: string): Document =>
    inspected(
      changed("{conductor: 12 AWG, length: 30 ft,", `{conductor: 12 AWG, length: ${length},`),
      "power.supply-range",
    );
  test("is enough where it holds at the bound and at the other end", () => {
    const document = wiring("at most 100 ft");
    expect(of(document, "power.supply-range").map(({ outcome }) => outcome)).not.toContain("open");
    expect(of(document, "power.supply-range").length).toBeGreaterThan(0);
  });
  test("is open where it holds at one end only, and asks for the figure", () => {
    const open = of(wiring("at most 5000 ft"), "power.supply-range").filter(({ outcome }) => outcome === "open");
    expect(open.length).toBeGreaterThan(0);
    for (const check of open) {
      expect(check["rests-on-bounds"]).toEqual(["power.circuits.c1.wiring.length"]);
      expect(check.mend).toContain("`power.circuits.c1.wiring.length`");
    }
  });
  test("fails where it fails at both ends", () => {
    const document = inspected(changed("      breaker: 20 A", "      breaker: at most 3 A"), "power.circuit-load");
    expect(of(document, "power.circuit-load").map(({ outcome }) => outcome)).toEqual(["fails"]);
  });
  test("stands as it is written where it is printed", () => {
    const table = openRepository(files(changed("length: 35 ft}", "length: at most 35 ft}")), onlyRules([]), {
      today: TODAY,
    }).model("builds/1.md");
    const texts = schedule(table.build, "cables", table.system).rows.flatMap((row) => row.map(({ text }) => text));
    expect(texts.some((text) => text.startsWith("at most 35"))).toBe(true);
  });
});
