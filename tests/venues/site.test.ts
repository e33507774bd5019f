import { publish } from "@plumbmark/docs-site";
import { rules } from "@plumbmark/rules";
import { expect, inject, test } from "vitest";
import { ownPagesOf, pageOf } from "../site/page-of.js";
import { BUILD, ferry } from "./hall.js";

const TODAY = "2026-12-01";
const other = BUILD.replace("build: quay-banner", "build: later")
  .replace("title: Banner", "title: Later banner")
  .replace("2027-03-05 to 2027-03-06", "2027-04-30 to 2027-05-01");
const files = ferry({}, {});
const both = { ...files, documents: [...files.documents, { path: "builds/later.md", text: other }] };
/** Without rules in a quick run: their pages, which say nothing of a house, take longer than all others. */
const { deep } = inject("effort");
const pages = publish({ files: both, rules: deep ? rules : [], today: TODAY });
const publishOwn = deep ? publish : ownPagesOf;
const page = pages.get("venues/ferry-hall.html") ?? "";
const words = (html: string): string => html.replace(/<[^>]*>/gu, " ").replace(/\s+/gu, " ");

test("a venue has a page with who surveyed it, its builds and what it has", () => {
  expect(words(page)).toContain("the survey of 2026-10-02 by R. Tallow");
  expect(words(page)).toContain("I. Brandt, 2026-10-12");
  for (const title of ["Banner", "Later banner"]) expect(page).toContain(`>${title}</a>`);
  expect(words(page)).toContain("stage-4, stage-5");
  expect(words(page)).toContain("front-beam.F1, front-beam.F2");
  expect(words(pages.get("venues/index.html") ?? "")).toMatch(/Ferry Hall 2026-10-02 2 2027-03-05/u);
});

/** The days on which a month's table has somebody, by the title of the build. */
const daysIn = (title: string): readonly string[] =>
  [...page.matchAll(/<td class="(?:one|several)"><time datetime="([^"]+)">\d+<\/time>(.*?)<\/td>/gu)]
    .filter(([, , who = ""]) => who.includes(`>${title}</a>`))
    .map(([, day = ""]) => day);

test("the calendar has each build on its days and on no other", () => {
  expect(daysIn("Banner")).toEqual(["2027-03-05", "2027-03-06"]);
  expect(daysIn("Later banner")).toEqual(["2027-04-30", "2027-05-01"]);
  // ISO 8601 begins the week on Monday; 1 March 2027 is one (a calendar of 2027).
  expect(page).toMatch(/<caption>March 2027<\/caption>.*?<tbody><tr><td class="free"><time datetime="2027-03-01">/su);
});

const attribute = (element: string, name: string): number =>
  Number(new RegExp(`${name}="([^"]*)"`, "u").exec(element)?.[1]);
const element = (of: string): string => new RegExp(`<[a-z]+[^>]*${of}[^>]*>`, "u").exec(page)?.[0] ?? "";

test("the plan is to scale: the rack, the booth and the beam are as far apart as they were measured", () => {
  const ratio = attribute(element('data-scale="\\d+"'), "data-scale");
  const millimetres = (feet: number): number => (feet * 304.8) / ratio;
  const at = (place: string): readonly [number, number] => {
    const found = element(`data-place="${place}"`);
    return [attribute(found, "data-x"), attribute(found, "data-y")];
  };
  const [rack, booth] = [at("rack-a"), at("booth")];
  // The rack 18 ft to the left and 2 ft upstage, the booth 70 ft towards the audience: upstage is up the page.
  expect(booth[0] - rack[0]).toBeCloseTo(millimetres(18), 1);
  expect(booth[1] - rack[1]).toBeCloseTo(millimetres(72), 1);
  const beam = element('data-structure="front-beam"');
  expect(attribute(beam, " x2") - attribute(beam, " x1")).toBeCloseTo(millimetres(24), 1);
  const point = element('data-point="front-beam.F2"');
  expect(attribute(point, " x") + 1 - attribute(beam, " x1")).toBeCloseTo(millimetres(12), 1);
});

test("prose and letters of a venue stand nowhere on the site, nor does anybody find them", () => {
  expect([...pages.keys()].length).toBeGreaterThan(50);
  const told = [...pages].filter(([, text]) => /4711|alarm code|key hangs/u.test(text)).map(([path]) => path);
  expect(told).toEqual([]);
  // The paths of letters are told where they are judged; the letters themselves are no files of the site.
  expect([...pages.keys()].filter((path) => path.endsWith(".pdf"))).toEqual([]);
});

test("a survey with a mistake tells it, and not its prose", () => {
  const wrong = publishOwn({ files: ferry({ hall: [["breaker: 100 A", "braker: 100 A"]] }), rules, today: TODAY });
  expect([...wrong].filter(([, text]) => text.includes("braker")).length).toBeGreaterThan(0);
  expect([...wrong].filter(([, text]) => /4711|alarm code/u.test(text))).toEqual([]);
});

test("its prose is published where somebody asks for it, on its own page alone", () => {
  const asked = publishOwn({ files: both, rules, today: TODAY, venueProse: true });
  expect([...asked].filter(([, text]) => text.includes("4711")).map(([path]) => path)).toEqual([
    "venues/ferry-hall.html",
  ]);
});

test("what a build needs and the survey lacks is listed by place", () => {
  const files = ferry({ hall: [["supply: 120 V, breaker: 20 A", "supply: 120 V"]] });
  const lacking = pageOf({ files, rules, today: TODAY }, "venues/ferry-hall.html");
  expect(words(lacking ?? "")).toContain(
    "at rack-a: the breaker rating of circuit stage-4 ( circuits.stage-4.breaker )",
  );
});

test("a bar is drawn where it is under its structure, to scale", () => {
  const plan = pages.get("drawings/quay-banner/hang-plan-header.svg") ?? "";
  const part = (of: string): string => new RegExp(`<[a-z]+[^>]*${of}[^>]*>`, "u").exec(plan)?.[0] ?? "";
  const ratio = attribute(part('data-scale="\\d+"'), "data-scale");
  const millimetres = (feet: number): number => (feet * 304.8) / ratio;
  const beam = part('data-structure="front-beam"');
  expect(attribute(beam, " width")).toBeCloseTo(millimetres(24), 1);
  const bar = part('data-bar="header"');
  // F1 is 8 ft from the left end of the beam and 1 ft from that of the bar; the bar is 8 ft long.
  expect(attribute(bar, " x1") - attribute(beam, " x")).toBeCloseTo(millimetres(7), 1);
  expect(attribute(bar, " x2") - attribute(bar, " x1")).toBeCloseTo(millimetres(8), 1);
  const hang = part('data-hang="H2"');
  expect(attribute(hang, " x") + 1 - attribute(beam, " x")).toBeCloseTo(millimetres(12), 1);
});
