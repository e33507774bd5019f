import { type DocumentEntry, openRepository, type RepositoryFiles } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { describe, expect, test } from "vitest";
import { approvedAsTheyAre, changed, SMALL, starter, TODAY } from "../documents/repository.js";

// What was ready although a careful engineer refuses it, and what was refused although it is sound: power, picture,
// data, viewing and the document as a whole. Every document is the small one with one thing changed.

type Parts = readonly (readonly [from: string, to: string])[];

function inspected(text: string, parts: Parts = []): DocumentEntry {
  const files: RepositoryFiles = {
    ...starter(),
    documents: [{ path: "builds/a.md", text }],
    parts: starter().parts.map(({ path, text: own }) => ({
      path,
      text: parts.reduce((all, [from, to]) => all.replaceAll(from, to), own),
    })),
  };
  for (const [from] of parts) if (!starter().parts.some(({ text: own }) => own.includes(from))) throw new Error(from);
  const [document] = openRepository(approvedAsTheyAre(files), rules, { today: TODAY, every: true, turns: false }).all()
    .documents;
  if (!document) throw new Error("one document in, one document out");
  return document;
}

/** What keeps a document from being ready: rules whose requirement fails or is open. */
const keeps = ({ checks }: DocumentEntry): readonly string[] => [
  ...new Set(
    checks
      .filter(({ level, outcome }) => level === "shall" && (outcome === "fails" || outcome === "open"))
      .map(({ rule, outcome }) => `${rule} ${outcome}`),
  ),
];

/** Outcomes of one rule, whatever its level. */
const outcomes = ({ checks }: DocumentEntry, rule: string): ReadonlySet<string> =>
  new Set(checks.filter((check) => check.rule === rule).map(({ outcome }) => outcome));

test("the document the others are made from has nothing of these open", () =>
  expect(keeps(inspected(SMALL)).filter((each) => !each.startsWith("rigging."))).toEqual([]));

let before: readonly string[] | undefined;

const more = (text: string, parts: Parts = []): readonly string[] => {
  before ??= keeps(inspected(SMALL));
  return keeps(inspected(text, parts)).filter((each) => !before?.includes(each));
};

const circuit = (to: string): string => changed("      control: constant\n", to);

describe("was ready, and is refused", () => {
  const REFUSED: readonly (readonly [name: string, text: string, by: readonly string[], parts?: Parts])[] = [
    ["a processor and a computer on no circuit", changed("      serves: [rack]\n", ""), ["power.devices open"]],
    [
      "a processor whose power nobody wrote down",
      SMALL,
      ["power.devices open"],
      [["  power: {maximum: 52 VA, inrush: 17 A, leakage: 0.4 mA}\n", ""]],
    ],
    ["a circuit nobody knows the control of", circuit(""), ["power.control open"]],
    ["tiles on a dimmer parked at full", circuit("      control: dimmer\n"), ["power.control fails"]],
    ["tiles on a dimmer's non-dim mode", circuit("      control: non-dim\n"), ["power.control fails"]],
    ["a relay the desk of the house switches", circuit("      control: relay\n"), ["power.control open"]],
    [
      "a cord of hard usage on a stage",
      SMALL,
      ["power.cord-type fails"],
      [
        [
          "conductors: 3, jacket: SOOW, mass: 0.25 kg/m, rating: 20 A",
          "conductors: 3, jacket: SJOOW, mass: 0.25 kg/m, rating: 20 A",
        ],
      ],
    ],
    [
      "a cord through a wall of a build that stays",
      changed("on-site: 2027-03-05 to 2027-03-08", "on-site: from 2027-03-05").replace(
        "feed: {part: cord-12-3, length: 35 ft}",
        "feed: {part: cord-12-3, length: 35 ft, passes: [wall, fastened]}",
      ),
      ["power.cord-type fails"],
    ],
    [
      "an outlet without neutral on a line and neutral",
      changed("outlet: nema-5-20", "outlet: nema-l6-20"),
      ["power.plug-fits fails"],
      [["connectors: [nema-5-20, ac-locking-16]", "connectors: [nema-l6-20, ac-locking-16]"]],
    ],
    [
      "a cord without an earth",
      SMALL,
      ["power.plug-fits fails"],
      [
        [
          "conductors: 3, jacket: SOOW, mass: 0.25 kg/m, rating: 20 A",
          "conductors: 2, jacket: SOOW, mass: 0.25 kg/m, rating: 20 A",
        ],
      ],
    ],
    [
      "a breaker called listed for 100 % by nobody",
      changed(
        "      other-load: none\n",
        "      other-load: 1500 VA\n      other-inrush: 1 A\n      rated-100: true\n",
      ),
      ["power.circuit-load fails"],
    ],
    ["a load nobody was asked about", changed("      other-load: none\n", ""), ["power.circuit-load open"]],
    [
      "a cable taken out of the picture path",
      changed("    - {part: hdmi-cable, length: 6 ft}\n", ""),
      ["picture.joined fails"],
    ],
    [
      "a small raster with wider blanking, and an input that does not say it takes it",
      changed("raster: 1920 x 1080", "raster: 640 x 160\n  blanking: widened"),
      ["picture.carried open"],
    ],
    ["a build outdoors", changed("exposure: indoors", "exposure: outdoors"), ["document.exposure open"]],
    ["a build that stands nobody says where", changed("exposure: indoors\n", ""), ["document.exposure open"]],
    [
      "cautions in words, gone over by nobody",
      changed(/cautions-confirmed: .*\n/u.exec(SMALL)?.[0] ?? "none", ""),
      ["document.cautions open"],
    ],
    [
      "cautions gone over by a placeholder",
      changed("cautions-confirmed: {by: M. Finch", "cautions-confirmed: {by: TBD"),
      ["document.cautions open"],
    ],
    [
      "a document without days on site",
      changed("on-site: 2027-03-05 to 2027-03-08\n", ""),
      ["document.described open"],
    ],
  ];
  for (const [name, text, by, parts] of REFUSED)
    test(name, () => expect(more(text, parts)).toEqual(expect.arrayContaining([...by])));

  test("a document without a display in it", () => {
    const front = "---\nbuild: nothing\ntitle: Nothing\nstatus: for-build\npractice: us\n---\n\n# Nothing\n";
    expect(keeps(inspected(front))).toContain("document.described open");
  });
});

describe("what is left out never helps", () => {
  test.each([
    ["control", "      control: constant\n"],
    ["serves", "      serves: [rack]\n"],
    ["other-load", "      other-load: none\n"],
    ["exposure", "exposure: indoors\n"],
    ["on-stage", "on-stage: true\n"],
  ])("%s", (_, line) => expect(more(changed(line, ""))).not.toEqual([]));
  test.each([
    ["residual", "      residual: none\n", "power.leakage"],
    ["camera", "camera: none\n", "viewing.camera"],
  ])("%s, which a recommendation rests on", (_, line, rule) =>
    expect(outcomes(inspected(changed(line, "")), rule)).toContain("open"),
  );
});

describe("was refused, and is sound", () => {
  const raster = (more: string): string => changed("raster: 1920 x 1080", `raster: 640 x 160\n  ${more}`);
  // 640 × 160 in its own timing runs at 720 × 175 × 60 Hz = 7.56 MHz (VESA CVT 1.2, reduced blanking 2), under the 25 MHz of DVI 1.0.
  test.each(["blanking: widened", "totals: 1112 x 375"])("a small raster sent straight: %s", (blanking) =>
    expect(
      outcomes(
        inspected(raster(blanking), [["inputs: [hdmi-1.4]\n", "inputs: [hdmi-1.4]\n  custom-rasters: true\n"]]),
        "picture.carried",
      ),
    ).toEqual(new Set(["holds"])),
  );
  test("with reduced blanking it is still too small", () =>
    expect(outcomes(inspected(raster("blanking: reduced-2")), "picture.carried")).toContain("fails"));

  // BS 7671 433.1.204: 13 A sockets on a ring behind 32 A, copper of 2.5 mm², 27 A clipped to a wall (Table B.52.4, C).
  const ring = changed("practice: us", "practice: iec")
    .replace("supply: 120 V", "supply: 230 V")
    .replace("breaker: 20 A", "breaker: 32 A")
    .replace("outlet: nema-5-20", "outlet: bs-1363\n      layout: ring")
    .replace("wiring: {conductor: 12 AWG, length: 30 ft", "wiring: {conductor: 2.5 mm2, method: C, length: 10 m");
  const fused: Parts = [
    [
      "conductor: 12 AWG, conductors: 3, jacket: SOOW, mass: 0.25 kg/m, rating: 20 A",
      "conductor: 1.5 mm2, conductors: 3, jacket: H07RN-F, mass: 0.2 kg/m, fuse: 13 A, rating: 16 A",
    ],
    ["connectors: [nema-5-20, ac-locking-16]", "connectors: [bs-1363, ac-locking-16]"],
    [
      "conductor: 12 AWG, conductors: 3, jacket: SOOW, mass: 0.25 kg/m, rating: 16 A",
      "conductor: 1.5 mm2, conductors: 3, jacket: H07RN-F, mass: 0.2 kg/m, rating: 16 A",
    ],
  ];
  test.each(["power.plug-fits", "power.cord-ampacity", "power.run-current"])(
    "a 13 A socket on a ring of 32 A: %s",
    (rule) => expect(outcomes(inspected(ring, fused), rule)).toEqual(new Set(["holds"])),
  );
  test("without its layout it is open, and with a fuse over its cord it fails", () => {
    expect(outcomes(inspected(ring.replace("      layout: ring\n", ""), fused), "power.plug-fits")).toContain("open");
    const thick: Parts = fused.map(([from, to]) => [
      from,
      to.replace("fuse: 13 A, rating: 16 A", "fuse: 13 A, rating: 10 A"),
    ]);
    expect(outcomes(inspected(ring, thick), "power.cord-ampacity")).toContain("fails");
  });

  // IEC 60898-1: at least 5 × 16 A r.m.s., √2 × that is 113 A peak.
  test("a third tile of 30 A peak on 16 A of curve C", () => {
    const third = changed("rides-through: 200 A", "curve: C")
      .replace("breaker: 20 A", "breaker: 16 A")
      .replace("columns: 4", "columns: 3")
      .replaceAll("A1..A4", "A1..A3")
      .replace("      serves: [rack]\n", "");
    expect(outcomes(inspected(third, [["inrush: 13 A", "inrush: 30 A"]]), "power.inrush")).toEqual(new Set(["holds"]));
    expect(
      outcomes(inspected(third.replace("curve: C", "curve: B"), [["inrush: 13 A", "inrush: 30 A"]]), "power.inrush"),
    ).toEqual(new Set(["fails"]));
  });

  // NEC 110.14(C): 30 A × 0.91 × 0.80 = 21.84 A, capped at 20 A by 240.4(D); from the 60 °C column it was 13.12 A.
  test("wire of 90 °C among others in a warm roof", () => {
    const warm = changed("wiring: {conductor: 12 AWG,", "wiring: {conductor: 12 AWG, together: 3, ambient: 40 C,");
    // Wiring that stands is its electrician's work: a recommendation, and no less wrong for it.
    expect(outcomes(inspected(warm), "power.cord-ampacity")).toContain("fails");
    const marked = warm.replace("ambient: 40 C,", "ambient: 40 C, insulation: 90 C, terminals: 75 C,");
    expect(outcomes(inspected(marked), "power.cord-ampacity")).toEqual(new Set(["holds"]));
  });
});
