import type { Brief } from "../brief.js";
import { grouped, keyOf, type Mapping, mappingOf } from "../data.js";
import type { Scheme, ToFindOut } from "../decide/decision.js";
import { frontMatterText } from "./yaml.js";

/** Sections in which people have to decide: a draft writes facts, not procedures. */
const DECIDED: Readonly<Record<string, readonly string[]>> = {
  cautions: [
    "what is dangerous about this build, this place and this crew",
    "who may be under the load, and until when nobody may",
    "which licensed people are on site, and what only they may do",
  ],
  "lift plan": [
    "how the bar comes up, by whom, and who gives the go",
    "in which order panels are hung and taken down",
    "what is measured and looked over, and when it is stopped",
  ],
  "power-up": [
    "who opens, locks and closes which breaker",
    "in which order things are switched on, and what is watched for",
    "what is done when a breaker opens by itself",
  ],
  "load-out": [
    "which breaker is opened, locked and tagged before a plug is touched, and how long is waited",
    "in which order panels come down, who holds them, and that the second suspension comes off last",
    "who counts back what went out",
  ],
};

const SCOPE = "scope";
const SIGN_OFF = "sign-off";

/** The front matter of a drafted build in the order a person would type it. */
export function orderedMatter(
  { wish, facts, practice, surveyed, desk }: Brief,
  name: string,
  { matter }: Scheme,
): Mapping {
  const venue = surveyed === undefined ? facts.survey?.placed.data : undefined;
  return grouped({
    build: name,
    title: wish.title,
    revision: 0,
    status: "draft",
    venue: surveyed ?? wish.venueName,
    "on-site": wish.onSite,
    // What the survey or the house standard says is not said again.
    practice: surveyed === undefined && practice !== (desk.repository.standard.practice ?? "us") ? practice : undefined,
    exposure: keyOf(venue, "exposure"),
    "on-stage": keyOf(venue, "on-stage"),
    faces: matter.faces,
    audience: matter.audience,
    light: matter.light,
    power: matter.power,
    data: matter.data,
    picture: matter.picture,
    rigging: matter.rigging,
  });
}

/** Sentences that quote computed figures: what it is, what it weighs, what it draws. */
function scope({ wish, desk }: Brief, { matter, columns, rows, decisions }: Scheme): readonly string[] {
  const asked = desk.ask(matter);
  const figure = (path: string): string => {
    const text = asked.text(path);
    return text === undefined ? "open" : `[${text}](calc:${path})`;
  };
  const face = `faces.${Object.keys(mappingOf(matter.faces))[0]}`;
  const bars = Object.keys(mappingOf(keyOf(matter.rigging, "bars")));
  const runs = Object.values(mappingOf(keyOf(matter.power, "runs")));
  const named = [
    ...runs.map((run) => String(keyOf(run, "from"))),
    ...Object.keys(mappingOf(keyOf(matter.power, "circuits"))),
  ];
  const circuits = [...new Set(named)];
  const shows = wish.shows === undefined ? "" : ` It shows ${wish.shows === "picture" ? "pictures" : wish.shows}.`;
  return [
    `${rows === 1 ? "One row" : `${rows} rows`} of ${columns} panels, ${figure(`${face}.width`)} wide and ${figure(`${face}.height`)} high, of ${figure(`${face}.pixels-wide`)} by ${figure(`${face}.pixels-high`)}.${shows} Left and right are the audience's.`,
    "",
    "| What | Figure |",
    "|---|---|",
    `| Panels, with what hangs them | ${figure(`${face}.mass`)} |`,
    ...bars.map(
      (bar) =>
        `| **What the structure bears over bar ${bar}, in all** | ${figure(`rigging.bars.${bar}.on-structure`)} |`,
    ),
    `| Most power | ${figure(`${face}.power-maximum`)} |`,
    ...circuits.map((name) => {
      const path = `power.circuits.${name}`;
      return `| Circuit ${name}, of what it carries for hours | ${figure(`${path}.current`)} of ${figure(`${path}.continuous-rating`)} |`;
    }),
    "",
    "Why it is laid out so:",
    "",
    ...decisions.map(({ what, why, gap }) => `- **${what}**: ${why}${gap === undefined ? "" : ` ${gap}`}`),
  ];
}

const commented = (lines: readonly string[]): readonly string[] => [
  "<!-- Somebody has to decide:",
  ...lines.map((line) => `- ${line}`),
  "-->",
];

const SCHEDULES = [
  ["parts", "What goes out, and comes back"],
  ["cables", "Every cable, with its label and where its ends go"],
] as const;

/** Whether its face lies on the raster in parts. */
const isFolded = ({ matter }: Scheme): boolean =>
  Object.values(mappingOf(keyOf(matter.picture, "at"))).some((at) => keyOf(at, "parts") !== undefined);

/** The body: the house's sections, what can be told in figures under Scope, and what is still to be found out. */
export function bodyText(brief: Brief, scheme: Scheme, toFindOut: readonly ToFindOut[]): string {
  const { wish, desk } = brief;
  const { sections } = desk.repository.standard;
  const names = sections.some((each) => each.toLowerCase() === SCOPE) ? sections : ["Scope", ...sections];
  const bars = Object.keys(mappingOf(keyOf(scheme.matter.rigging, "bars")));
  const inSection = (title: string): readonly string[] => {
    const key = title.toLowerCase();
    if (key === SCOPE)
      return [
        ...scope(brief, scheme),
        "",
        ...SCHEDULES.map(([name, words]) => `[${words}](calc:schedules.${name})`).flatMap((each) => [each, ""]),
        ...(isFolded(scheme) ? ["[How the picture is cut](calc:schedules.cut)", ""] : []),
        ...bars.map((bar) => `[Hang plot of bar ${bar}](calc:drawings.hang-plot-${bar})`).flatMap((each) => [each, ""]),
        "### What is still to be found out, by whom",
        "",
        ...(toFindOut.length === 0
          ? ["Nothing that the rules ask for."]
          : toFindOut.map(({ what, by }) => `- [ ] ${what}: ${by}`)),
      ];
    if (key === SIGN_OFF) return ["A draft is not signed."];
    const decide = DECIDED[key];
    return commented(decide ?? [`what belongs under “${title}”`]);
  };
  const text = [`# ${wish.title}`, ...names.flatMap((title) => ["", `## ${title}`, "", ...inSection(title)])];
  return `${text
    .join("\n")
    .replaceAll(/\n{3,}/gu, "\n\n")
    .trimEnd()}\n`;
}

/** The whole document. */
export const draftedText = (brief: Brief, name: string, scheme: Scheme, toFindOut: readonly ToFindOut[]): string =>
  `---\n${frontMatterText(orderedMatter(brief, name, scheme))}---\n\n${bodyText(brief, scheme, toFindOut)}`;
