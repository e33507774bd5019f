import type { CheckEntry } from "@plumbmark/core";
import { describe, expect, test } from "vitest";
import { changed, inspectText, PAPER, SMALL } from "../documents/repository.js";

/** Five panels' worth of other load on a 20 A breaker. Their current, by hand: see the first test. */
const OVERLOADED = changed("other-load: none", "other-load: 1400 VA");
const PAPERED = `licensed: {by: N. Amser, licence: EL 4821, on: 2026-11-02, file: ${PAPER}}`;
const SIGNED = "because: the season ends in May, by: M. Finch, until: 2027-06-30";

const waived = (fields: string, text = OVERLOADED): string =>
  changed("practice: us", `practice: us\nwaivers: [{rule: power.circuit-load, ${fields}}]`, text);

const found = (text: string) => {
  const { checks, verdict, waivers } = inspectText(text, { turns: false });
  const of = (rule: string): readonly CheckEntry[] => checks.filter((check) => check.rule === rule);
  return { load: of("power.circuit-load")[0], told: of("document.waivers"), verdict, state: waivers?.[0]?.state };
};

const outcomes = (fields: string, text = OVERLOADED) => {
  const { load, verdict, state, told } = found(waived(fields, text));
  return { load: load?.outcome, verdict, state, told: told.map(({ at, outcome }) => `${at.path} ${outcome}`) };
};

describe("a waiver says what it accepts", () => {
  test("and covers what is no worse", () => {
    expect(outcomes(`${SIGNED}, accepts: 19 A, ${PAPERED}`)).toEqual({
      ...{ load: "waived", verdict: "ready", state: "in force" },
      told: ["waivers.1 holds"],
    });
    // The current itself, to the four digits it is printed with.
    const printed = /carries ([\d.]+ A)/u.exec(found(OVERLOADED).load?.says ?? "")?.[1];
    expect(printed).toBeDefined();
    expect(outcomes(`${SIGNED}, accepts: ${printed}, ${PAPERED}`).load).toBe("waived");
    expect(found(waived(`${SIGNED}, accepts: 19 A, ${PAPERED}`)).load?.waiver).toMatchObject({ accepts: "19 A" });
  });

  test("a worse figure is not waived, whatever was signed before it got worse", () => {
    expect(outcomes(`${SIGNED}, accepts: 15.5 A, ${PAPERED}`)).toMatchObject({
      ...{ load: "fails", verdict: "not ready", state: "exceeded" },
      told: ["waivers.1.accepts fails"],
    });
    const worse = changed("other-load: 1400 VA", "other-load: 1800 VA", OVERLOADED);
    expect(outcomes(`${SIGNED}, accepts: 19 A, ${PAPERED}`, worse).load).toBe("fails");
  });

  test("nothing is waived that does not say it, or says it in a unit of something else", () => {
    expect(outcomes(`${SIGNED}, ${PAPERED}`)).toMatchObject({
      load: "fails",
      state: "incomplete",
      told: ["waivers.1 open"],
    });
    expect(outcomes(`${SIGNED}, accepts: TBD, ${PAPERED}`)).toMatchObject({ load: "fails", state: "incomplete" });
    expect(outcomes(`${SIGNED}, accepts: 18 kg, ${PAPERED}`)).toMatchObject({ load: "fails", state: "refused" });
    expect(outcomes(`${SIGNED}, accepts: 18, ${PAPERED}`)).toMatchObject({ load: "fails", state: "refused" });
  });

  test("where more is better, less than accepted is worse", () => {
    const few = changed("    spares: 2", "    spares: 0");
    const spares = (accepts: string) =>
      inspectText(
        changed("practice: us", `practice: us\nwaivers: [{rule: panels.spares, ${SIGNED}, accepts: ${accepts}}]`, few),
      ).checks.find(({ rule, at }) => rule === "panels.spares" && at.path === "faces.header")?.outcome;
    expect([spares("0"), spares("1")]).toEqual(["waived", "fails"]);
  });
});

describe("a waiver is of what fails or of what cannot be told", () => {
  const OPEN = changed("      breaker: 20 A\n", "");
  test("and one does not cover the other", () => {
    expect(outcomes(`${SIGNED}, ${PAPERED}`, OPEN).load).toBe("open");
    expect(outcomes(`${SIGNED}, of: open, ${PAPERED}`, OPEN).load).toBe("waived");
    expect(outcomes(`${SIGNED}, of: open, accepts: 19 A, ${PAPERED}`).load).toBe("fails");
  });
});

describe("a waiver lasts as long as the build stands", () => {
  const until = (day: string, site = "2027-03-05 to 2027-03-08") =>
    outcomes(
      `because: so, by: M. Finch, until: ${day}, accepts: 19 A, ${PAPERED}`,
      changed("on-site: 2027-03-05 to 2027-03-08", `on-site: ${site}`, OVERLOADED),
    );
  test("to its last day on site, and no day less", () => {
    expect(until("2027-03-08")).toMatchObject({ load: "waived", state: "in force" });
    expect(until("2027-03-07")).toMatchObject({ load: "fails", state: "refused", told: ["waivers.1.until fails"] });
    expect(until("2027-03-05", "2027-03-05")).toMatchObject({ load: "waived" });
  });
  // Inspected on 2026-11-25; 366 days on is 2027-11-26, by the calendar.
  test("of a build that stays, at most 366 days", () => {
    expect(until("2027-11-26", "from 2027-03-05")).toMatchObject({ load: "waived" });
    expect(until("2027-11-27", "from 2027-03-05")).toMatchObject({ load: "fails", state: "refused" });
  });
});

describe("a waiver is signed", () => {
  const by = (name: string, more = "") =>
    outcomes(
      `because: so, by: ${name}, until: 2027-06-30, accepts: 19 A, ${PAPERED}`,
      changed("practice: us", `practice: us${more}`, OVERLOADED),
    );
  test("by somebody other than the preparer, however they spell themselves", () => {
    expect(by("M. Finch").load).toBe("waived");
    for (const name of ["R. Tallow", '"Tallow, R."', '"R. Tal\\u200Blow"', "Robin Tallow"])
      expect(by(name)).toMatchObject({ load: "fails", state: "refused" });
  });
  test("by somebody who may, and by somebody at all", () => {
    // The starter's house standard lets J. Ardle prepare, and no more.
    expect(by("J. Ardle")).toMatchObject({ load: "fails", state: "refused", told: ["waivers.1.by fails"] });
    expect(by("E. Nobody-Knows")).toMatchObject({ load: "fails", state: "refused" });
    for (const name of ["TBD", '"?"', "nobody"]) expect(by(name)).toMatchObject({ load: "fails", state: "incomplete" });
  });
});

describe("a requirement of rigging or power", () => {
  const papered = (paper: string) => outcomes(`${SIGNED}, accepts: 19 A, ${paper}`);
  test("is waived only with a licensed electrician's or engineer's paper", () => {
    expect(outcomes(`${SIGNED}, accepts: 19 A`)).toMatchObject({
      load: "fails",
      state: "incomplete",
      told: ["waivers.1 open"],
    });
    expect(papered(PAPERED).load).toBe("waived");
  });
  test.each([
    ["without a name", `licensed: {licence: EL 4821, on: 2026-11-02, file: ${PAPER}}`],
    ["of nobody", `licensed: {by: the electrician, licence: EL 4821, on: 2026-11-02, file: ${PAPER}}`],
    ["without a licence", `licensed: {by: N. Amser, on: 2026-11-02, file: ${PAPER}}`],
    ["with a placeholder for a licence", `licensed: {by: N. Amser, licence: n/a, on: 2026-11-02, file: ${PAPER}}`],
    ["without a day", `licensed: {by: N. Amser, licence: EL 4821, file: ${PAPER}}`],
    ["of a day that is none", `licensed: {by: N. Amser, licence: EL 4821, on: 2026-02-30, file: ${PAPER}}`],
    ["without a file", "licensed: {by: N. Amser, licence: EL 4821, on: 2026-11-02}"],
    ["whose file is not there", "licensed: {by: N. Amser, licence: EL 4821, on: 2026-11-02, file: letters/other.pdf}"],
    ["that is empty", "licensed: {}"],
  ])("is not waived by a paper %s", (_, paper) => expect(papered(paper).load).toBe("fails"));
});

describe("never waived", () => {
  test.each([
    "document.front-matter",
    "document.parts",
    "document.sign-off",
    "document.waivers",
    "rigging.letter",
    "plugin.failed",
  ])("is %s", (rule) => {
    const text = changed("practice: us", `practice: us\nwaivers: [{rule: ${rule}, ${SIGNED}, of: open}]`);
    const { told, verdict } = found(text);
    expect(told).toMatchObject([{ outcome: "fails", says: expect.stringContaining("cannot be waived") }]);
    expect(verdict).toBe("not ready");
  });

  test("that a part is not in the catalogue", () => {
    const text = changed(
      "part: power-jumper",
      "part: no-such-jumper",
      changed("practice: us", `practice: us\nwaivers: [{rule: document.parts, ${SIGNED}}]`),
    );
    expect(
      inspectText(text, { turns: false })
        .checks.filter(({ rule }) => rule === "document.parts")
        .map(({ outcome }) => outcome),
    ).toContain("fails");
  });
});

describe("what is told of a waiver that is complete", () => {
  /** Inspected on 2026-11-25. */
  const told = (fields: string, text = SMALL): readonly string[] =>
    inspectText(changed("practice: us", `practice: us\nwaivers: [{${fields}}]`, text), { turns: false })
      .checks.filter(({ rule }) => rule === "document.waivers")
      .map(({ level, outcome, at, says }) => `${level} ${outcome} ${at.path}: ${says}`);
  const few = changed("    spares: 2", "    spares: 0");
  const SPARES = "rule: panels.spares, because: so, by: M. Finch";

  test("it ran out, with something left to excuse", () => {
    expect(told(`${SPARES}, until: 2026-11-24, accepts: 0`, few)).toEqual([
      "shall fails waivers.1: Waiver 1 ran out on 2026-11-24.",
    ]);
  });
  test("it ran out, with nothing left to excuse, whatever it lacks", () => {
    const left = [
      "should fails waivers.1: Waiver 1 ran out on 2026-11-24, and there is nothing left for it to excuse.",
    ];
    expect(told(`${SPARES}, until: 2026-11-24, accepts: 2`)).toEqual(left);
    expect(told(`${SPARES}, until: 2026-11-24`)).toEqual(left);
  });
  test("it excuses nothing, anywhere or at its place", () => {
    expect(told(`${SPARES}, until: 2027-06-30, accepts: 0`)).toEqual([
      "should fails waivers.1: Waiver 1 excuses nothing: nothing that panels.spares judges in the document fails or is open.",
    ]);
    expect(told(`${SPARES}, where: faces.header, until: 2027-06-30, accepts: 0`)).toEqual([
      "should fails waivers.1: Waiver 1 excuses nothing: nothing that panels.spares judges at `faces.header` fails or is open.",
    ]);
  });
  // 400 days on from 2026-11-25 is 2027-12-30, by the calendar.
  test("it runs for very long", () => {
    expect(told(`${SPARES}, until: 2027-12-30, accepts: 0`, few)).toHaveLength(1);
    expect(told(`${SPARES}, until: 2027-12-31, accepts: 0`, few)[1]).toBe(
      "should fails waivers.1.until: Waiver 1 runs for 401 more days; a waiver runs for at most 400.",
    );
  });
});

test("the small build itself needs no waiver", () => expect(inspectText(SMALL).verdict).toBe("ready"));
