import { printer, type System } from "@plumbmark/calc";
import { readMarkdown, type Survey, surveyData, surveyNames, surveyWords, wayBetween } from "@plumbmark/core";
import { type Drawing, svg } from "../drawings/shared/drawing.js";
import { venuePlan } from "../drawings/venue-plan.js";
import { type Content, h } from "../html/html.js";
import { state } from "../html/state.js";
import { table } from "../html/table.js";
import { prose } from "../prose/prose.js";
import type { DocumentSummary } from "../site/document-summary.js";
import { Names } from "../site/names.js";
import type { SiteWithDocuments } from "../site/site.js";
import { linkTo, type SitePage } from "./page.js";

const INDEX = "venues/index.html";
/** Path of the page of each venue; no name of an author's leads out of the folder, or is that of the list. */
function pathsOf(surveys: readonly Survey[]): ReadonlyMap<Survey, string> {
  const names = new Names("index");
  return new Map(surveys.map((survey) => [survey, `venues/${names.take(survey.name)}.html`]));
}

const UNSTATED = h("em", "not stated");

/** A day that is broken at a hyphen is read as another. */
const day = (text: string): Content => h("span", { class: "whole" }, text);

const days = (onSite: string | undefined): Content =>
  onSite === undefined
    ? UNSTATED
    : onSite.split(/(\d{4}-\d{2}-\d{2})/u).map((each, index) => (index % 2 === 1 ? day(each) : each));

/** Customary units where most of what was measured is in them. */
function systemOf({ values }: Survey): System {
  const units = [...values.values()].filter(({ kind }) => kind === "length" || kind === "mass");
  return units.filter(({ unit }) => unit?.system === "us").length * 2 >= units.length ? "us" : "metric";
}

/** A value as its surveyor wrote it. */
const written = (survey: Survey, ...steps: readonly string[]): Content => {
  const found = surveyData(survey, ...steps);
  if (found === undefined) return UNSTATED;
  if (typeof found === "object" && found !== null)
    return Array.isArray(found)
      ? found.map(String).join(", ")
      : Object.entries(found)
          .map(([key, value]) => `${key} ${String(value)}`)
          .join(", ");
  return String(found);
};

/** A table of what is under a key; nothing where the survey has none. */
const listed = (
  survey: Survey,
  key: string,
  title: string,
  columns: readonly (readonly [title: string, ...steps: readonly string[]])[],
): Content => {
  const names = surveyNames(survey, key);
  if (names.length === 0) return undefined;
  return table(
    title,
    ["Name", ...columns.map(([name]) => name)],
    names.map((name) => [h("code", name), ...columns.map(([, ...steps]) => written(survey, key, name, ...steps))]),
  );
};

const HOW = { measured: "measured", led: "led by places", straight: "not measured: straight line" } as const;

function ways(survey: Survey, system: System): Content {
  const routes = surveyNames(survey, "routes");
  if (routes.length === 0) return undefined;
  const print = printer(system);
  const rows = routes.map((route) => {
    const [from = "", to = ""] = route.split(" to ");
    const { how, length } = wayBetween(survey, from, to);
    return [
      route,
      HOW[how],
      length.known ? print(length.value, "length") : UNSTATED,
      written(survey, "routes", route, "via"),
    ];
  });
  return table("Ways of cables", ["Way", "How it is known", { title: "Length", align: "right" }, "By way of"], rows);
}

/** Points with what is stated of them, and who states it on which day; the letter itself is nobody's but the client's. */
function points(survey: Survey): Content {
  const rows = surveyNames(survey, "structure").flatMap((structure) =>
    surveyNames(survey, "structure", structure, "points").map((point) => {
      const at = ["structure", structure, "points", point];
      const letter = ["structure", structure, "letter"];
      const by = surveyData(survey, ...letter, "by");
      return [
        h("code", `${structure}.${point}`),
        written(survey, ...at, "at"),
        written(survey, ...at, "structure"),
        written(survey, ...at, "catch"),
        by === undefined ? UNSTATED : [String(by), ", ", written(survey, ...letter, "on")],
        written(survey, ...letter, "until"),
      ];
    }),
  );
  return rows.length === 0
    ? undefined
    : table("Points", ["Point", "Along", "Carries", "Catches", "Stated by, on", "Good until"], rows);
}

const VERDICTS: Readonly<Record<string, readonly string[]>> = {
  ready: ["holds"],
  draft: ["draft"],
  "not ready": ["fails", "shall"],
};

const byDays = (one: DocumentSummary, other: DocumentSummary): number =>
  (one.stay?.from ?? "9999") < (other.stay?.from ?? "9999") ? -1 : 1;

const buildRows = (documents: readonly DocumentSummary[], page: string) =>
  documents.map(({ page: sheet, title, onSite, entry, uses }) => [
    h("a", { href: linkTo(page, sheet) }, title),
    days(onSite),
    state(VERDICTS[entry.verdict] ?? [], entry.verdict),
    uses && uses.circuits.length > 0 ? uses.circuits.join(", ") : "none",
    uses && uses.points.length > 0 ? uses.points.join(", ") : "none",
  ]);

const MONTHS = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
];

/** Months are shown as far as this from the first day on. */
const MOST_MONTHS = 24;

const twoDigits = (number: number): string => String(number).padStart(2, "0");

/** The months in which somebody is there, each `2027-03`. */
function monthsOf(documents: readonly DocumentSummary[]): readonly string[] {
  const found = new Set<string>();
  for (const { stay } of documents) {
    if (!stay) continue;
    const last = (stay.to ?? stay.from).slice(0, 7);
    for (let month = stay.from.slice(0, 7); month <= last && found.size < MOST_MONTHS; ) {
      found.add(month);
      const [year = 0, of = 0] = month.split("-").map(Number);
      month = of === 12 ? `${year + 1}-01` : `${year}-${twoDigits(of + 1)}`;
    }
  }
  return [...found].sort().slice(0, MOST_MONTHS);
}

/** A month as weeks from Monday on (ISO 8601): who is there on each day. */
function month(name: string, documents: readonly DocumentSummary[], page: string): Content {
  const [year = 0, of = 0] = name.split("-").map(Number);
  const first = (new Date(Date.UTC(year, of - 1, 1)).getUTCDay() + 6) % 7;
  const count = new Date(Date.UTC(year, of, 0)).getUTCDate();
  const cells = Array.from({ length: Math.ceil((first + count) / 7) * 7 }, (_, index) => {
    const number = index - first + 1;
    if (number < 1 || number > count) return h("td");
    const date = `${name}-${twoDigits(number)}`;
    const there = documents.filter(({ stay }) => stay && stay.from <= date && date <= (stay.to ?? "9999"));
    return h("td", { class: there.length > 1 ? "several" : there.length === 1 ? "one" : "free" }, [
      h("time", { datetime: date }, String(number)),
      ...there.map(({ page: sheet, title }) => h("a", { href: linkTo(page, sheet) }, title)),
    ]);
  });
  const weeks = Array.from({ length: cells.length / 7 }, (_, week) => h("tr", cells.slice(week * 7, week * 7 + 7)));
  const caption = `${MONTHS[of - 1]} ${year}`;
  return h("section", { class: "wide", tabindex: 0, ariaLabel: caption }, [
    h("table", { class: "month" }, [
      h("caption", caption),
      h(
        "thead",
        h(
          "tr",
          ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"].map((each) => h("th", { scope: "col" }, each)),
        ),
      ),
      h("tbody", weeks),
    ]),
  ]);
}

/** What builds need and the survey does not state, by the place where somebody has to look. */
function lacking(documents: readonly DocumentSummary[]): Content {
  const found = new Map<string, string>();
  for (const { lacks } of documents)
    for (const { place, what, of, path } of lacks ?? [])
      found.set(
        path,
        `${place === undefined ? "" : `at ${place}: `}the ${what}${of === undefined ? "" : ` of ${of.charAt(0).toLowerCase()}${of.slice(1)}`}`,
      );
  if (found.size === 0) return undefined;
  return [
    h("h2", "What builds still need to know"),
    h(
      "ul",
      [...found]
        .sort(([, one], [, other]) => (one < other ? -1 : 1))
        .map(([path, text]) => h("li", [text, " (", h("code", path), ")"])),
    ),
  ];
}

/** The prose of a survey, where it was asked for: links and pictures of its author are left as words. */
function proseOf(survey: Survey, { files }: SiteWithDocuments["repository"]): Content {
  const text = files.surveys?.find(({ path }) => path === survey.file)?.text ?? "";
  return prose(readMarkdown(text, true).tree, survey.title, {
    link: () => undefined,
    quote: () => undefined,
    picture: () => undefined,
    figure: () => undefined,
  });
}

/** The plan, which scrolls by itself where the screen is narrower. */
const planFigure = (plan: Drawing): Content =>
  h("figure", { class: "drawn" }, [
    h("p", { class: "hint" }, "The drawing scrolls sideways."),
    h("section", { class: "wide", tabindex: 0, ariaLabel: plan.title }, svg(plan, "Drawing-venue-plan")),
  ]);

function venuePage(survey: Survey, path: string, site: SiteWithDocuments): SitePage {
  const system = systemOf(survey);
  const plan = venuePlan(survey, system);
  const there = site.documents.filter(({ venueName }) => venueName === survey.name).toSorted(byDays);
  const dated = there.filter(({ stay }) => stay);
  const content: Content = [
    h("p", [
      `As in ${surveyWords(survey)}. Measured from: `,
      written(survey, "measured-from"),
      ". What a structure carries is stated by whoever signs for it; a survey only says who did, and when.",
    ]),
    plan ? planFigure(plan) : h("p", "The survey has no places to draw."),
    h("h2", "Builds here"),
    there.length === 0
      ? h("p", "No build is planned here.")
      : table("Builds", ["Build", "On site", "Verdict", "Circuits", "Points"], buildRows(there, path)),
    ...(dated.length > 0
      ? [
          h("h2", "Calendar"),
          h(
            "div",
            { class: "months" },
            monthsOf(dated).map((each) => month(each, dated, path)),
          ),
        ]
      : []),
    lacking(there),
    h("h2", "As surveyed"),
    listed(survey, "places", "Places", [
      ["To the right", "right"],
      ["Upstage", "upstage"],
      ["Up", "up"],
    ]),
    ways(survey, system),
    listed(survey, "circuits", "Circuits", [
      ["At", "at"],
      ["From", "from"],
      ["Supply", "supply"],
      ["Breaker", "breaker"],
      ["Outlet", "outlet"],
      ["Control", "control"],
    ]),
    listed(survey, "supplies", "Supplies", [
      ["System", "system"],
      ["Breaker", "breaker"],
      ["Generator", "generator", "rated"],
    ]),
    listed(survey, "structure", "Structures", [
      ["Flange", "flange"],
      ["Pipe", "pipe"],
      ["Girth", "girth"],
      ["Carries in all", "structure"],
    ]),
    points(survey),
    listed(survey, "floors", "Floors and decks", [
      ["Rating", "rating"],
      ["Under a foot", "foot-rating"],
      ["Length", "length"],
      ["Depth", "depth"],
    ]),
    listed(survey, "walls", "Walls", [
      ["Of", "ground"],
      ["Fixing, shear", "allowable", "shear"],
      ["Fixing, tension", "allowable", "tension"],
      ["Stated by", "by"],
      ["On", "on"],
    ]),
    site.venueProse ? [h("h2", "Notes"), proseOf(survey, site.repository)] : undefined,
  ];
  return { path, title: survey.title, number: "0.20", cells: [["Surveyed", surveyText(survey)]], content };
}

const surveyText = (survey: Survey): string => {
  const on = surveyData(survey, "surveyed", "on");
  return typeof on === "string" ? on : "not stated";
};

function indexPage(paths: ReadonlyMap<Survey, string>, site: SiteWithDocuments): SitePage {
  const rows = [...paths].map(([survey, path]) => {
    const there = site.documents.filter(({ venueName }) => venueName === survey.name);
    const next = there.flatMap(({ stay }) => (stay && (stay.to ?? "9999") >= site.today ? [stay.from] : [])).sort()[0];
    return [
      h("a", { href: linkTo(INDEX, path) }, survey.title),
      surveyText(survey),
      String(there.length),
      next === undefined ? "none" : day(next),
    ];
  });
  const content: Content =
    rows.length === 0
      ? h("p", [
          "No venue was surveyed. ",
          h("code", "plumbmark start venue NAME"),
          " writes a form, and the same to print; builds that name the venue then leave to it what it states.",
        ])
      : table("Venues", ["Venue", "Surveyed", { title: "Builds", align: "right" }, "Next day on site"], rows);
  return { path: INDEX, title: "Venues", number: "0.19", content };
}

/** A page of all venues that were surveyed, and one of each. */
export function* venuePages(site: SiteWithDocuments): Generator<SitePage> {
  const surveys = [...site.repository.surveys.byName.values()].toSorted((one, other) =>
    one.title < other.title ? -1 : 1,
  );
  const paths = pathsOf(surveys);
  yield indexPage(paths, site);
  for (const [survey, path] of paths) yield venuePage(survey, path, site);
}
