import { openRepository, type WorkedValue, workedValues } from "@plumbmark/core";
import { rules } from "@plumbmark/rules";
import { describe, expect, test } from "vitest";
import { starter } from "../documents/repository.js";
import { notEmpty } from "../run/not-empty.js";

const TODAY = "2027-01-01";
const READY = ["over-stage-banner", "riser-fascias", "side-strips", "small-screen", "harbour-header"] as const;
const of = new Map(
  READY.map((name) => [name, workedValues(openRepository(starter(), [], { today: TODAY }).model(`builds/${name}.md`))]),
);

/** Paths of the interface by the thing they belong to; `*` stands for a name or a number. */
const COMPUTED: Readonly<Record<string, readonly string[]>> = {
  "faces.*": [
    "width height area pixels-wide pixels-high pixels pitch mass power-maximum power-typical heat",
    "columns rows panel-count",
  ].flatMap((keys) => keys.split(" ")),
  "power.circuits.*": "load current continuous-rating share inrush leakage".split(" "),
  "power.runs.*": "current rating voltage-drop drop-share voltage-at-end segments.1.voltage-drop feed.ampacity".split(
    " ",
  ),
  "data.chains.*": "panels pixels capacity link-bound share".split(" "),
  "data.processor": "pixels share ports-used".split(" "),
  "picture.path.2": "pixel-clock needed bound link-length length-limit".split(" "),
  "rigging.bars.*":
    "load moment stress deflection self-mass hangs.*.reaction hangs.*.design-factor hangs.*.capacity".split(" "),
  "rigging.lifting": "heaviest limit".split(" "),
  "viewing.*": "nearest-acuity-distance drive-level grey-steps".split(" "),
  "stock.*": "promised in-stock share".split(" "),
  totals: "mass power-maximum power-typical heat panels spares cables pixels area circuit-load".split(" "),
};

/** Where the document has the thing at all. */
const ONLY: Readonly<Record<string, readonly (typeof READY)[number][]>> = {
  "rigging.bars.*": ["over-stage-banner", "side-strips", "harbour-header"],
};

/** Counted or read from a table or the document: they have no steps of their own. */
const READ =
  /\.(columns|rows|panel-count|panels|promised|in-stock|ports-used|needed|bound|length-limit|heaviest|ampacity)$|^totals\.(panels|spares|cables)$/u;

const matching = (all: ReadonlyMap<string, WorkedValue>, pattern: string): readonly [string, WorkedValue][] => {
  const form = new RegExp(`^${pattern.replaceAll(".", "\\.").replaceAll("*", "[^.]+(?:\\.\\d[^.]*)?")}$`, "u");
  return [...all].filter(([path]) => form.test(path));
};

describe.each(READY)("%s", (name) => {
  const all = of.get(name) as ReadonlyMap<string, WorkedValue>;
  const wanted = Object.entries(COMPUTED)
    .filter(([thing]) => ONLY[thing]?.includes(name) ?? true)
    .flatMap(([thing, keys]) => keys.map((key) => `${thing}.${key}`));

  test.each(notEmpty(wanted))("has %s with a value and its working", (pattern) => {
    const found = matching(all, pattern);
    expect(found.length).toBeGreaterThan(0);
    for (const [path, worked] of found) {
      expect(worked.missing, path).toBeUndefined();
      expect(worked.value, path).toBeTypeOf("number");
      if (!READ.test(path)) expect(worked.working.length, path).toBeGreaterThan(0);
    }
  });
});

describe("values that only some builds have", () => {
  test.each([
    ["over-stage-banner", "rigging.bars.header.hangs.H2.worst"],
    ["over-stage-banner", "viewing.banner.cap-height"],
    ["over-stage-banner", "viewing.banner.angle"],
    ["small-screen", "faces.screen.base.overturning-factor"],
    ["small-screen", "faces.screen.base.ballast-needed"],
    ["small-screen", "faces.screen.base.deck-pressure"],
    ["small-screen", "faces.screen.base.foot-load"],
  ] as const)("%s has %s", (name, path) => {
    const worked = of.get(name)?.get(path);
    expect(worked?.value).toBeTypeOf("number");
    expect(worked?.working.length).toBeGreaterThan(0);
  });

  test("what is not written down is named and has no value", () => {
    const draft = workedValues(openRepository(starter(), [], { today: TODAY }).model("builds/gallery-header.md"));
    for (const path of ["power.circuits.gallery-2.continuous-rating", "totals.mass", "totals.spares"]) {
      expect(draft.get(path)?.value, path).toBeUndefined();
      expect(draft.get(path)?.missing?.join(" "), path).toMatch(/written down/u);
    }
  });
});

/** Measured by a rule and not a value of the build: each with the reason. */
const APART: readonly (readonly [rule: string, because: string])[] = [
  ["connectors.", "connectors are compared by their family, not by a figure"],
  ["viewing.depth", "the figure of a part as its data sheet has it, not one of the build"],
  ["document.plausible", "the figure of a part as its data sheet has it, not one of the build"],
  ["rigging.fit", "the size of a pipe or flange as the catalogue or the survey has it, not one of the build"],
  ["rigging.rope-figures", "the figure of a part as its certificate has it, not one of the build"],
];

describe("everything a rule measures can be looked up", () => {
  const record = openRepository(starter(), rules, { today: TODAY, every: true }).all();
  test.each(READY)("in %s", (name) => {
    const all = [...(of.get(name) ?? [])].map(([, { value, unit }]) => `${value} ${unit}`);
    const known = new Set(all);
    const checks = record.documents.find(({ file }) => file === `builds/${name}.md`)?.checks ?? [];
    const lost = checks
      .filter(({ rule }) => !APART.some(([prefix]) => rule.startsWith(prefix)))
      .filter(({ measured }) => measured && !known.has(`${measured.value} ${measured.unit}`))
      .map(({ rule, measured, at }) => `${rule} at ${at.path}: ${measured?.value} ${measured?.unit}`);
    expect(checks.length).toBeGreaterThan(50);
    expect([...new Set(lost)]).toEqual([]);
  });
});
