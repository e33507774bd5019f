import {
  choices,
  type Data,
  LIKE_IN_SURVEY,
  type Mistake,
  nearest,
  type Place,
  type Placed,
  readQuantities,
  readYaml,
  type SourceFile,
  type Survey,
  schemas,
  validate,
  withLike,
} from "@plumbmark/core";
import { keyOf, type Mapping, mappingOf, textOf, textsOf, wholeAt } from "../data.js";
import type { Extent } from "../search/shapes.js";
import { readExtent } from "./extent.js";
import type { SupportOfFace, Wish } from "./wish.js";

/** A file of a wish as it was read: what can be drafted from, and what is wrong with it. */
export interface WishFile {
  readonly file: string;
  readonly name: string | undefined;
  /** Undefined while something is wrong with it. */
  readonly wish: Wish | undefined;
  readonly mistakes: readonly Mistake[];
}

const EXTENTS = ["size.width", "size.height", "over.trim"] as const;
const START: Place = { line: 1, column: 1, endLine: 1, endColumn: 1 } as Place;

const at = (data: Data, path: string): Data | undefined =>
  path.split(".").reduce<Data | undefined>((here, key) => keyOf(here, key), data);

/** VenueFacts of a venue that a wish has of its own, read as a survey is. */
function venueFactsOf(name: string, title: string, file: string, placed: Placed, values: Survey["values"]): Survey {
  const inside = <Kept>(map: ReadonlyMap<string, Kept>): Map<string, Kept> =>
    new Map([...map].flatMap(([path, kept]) => (path.startsWith("venue.") ? [[path.slice(6), kept] as const] : [])));
  const data = { ...mappingOf(keyOf(placed.data, "venue")), survey: name, title };
  const own = { data, places: inside(placed.places), keys: inside(placed.keys), mistakes: [] };
  return { name, title, file, placed: own, values: inside(values), mistakes: [], implausible: [], unsure: [] };
}

const unknownVenue = (name: string, place: Place, surveys: ReadonlyMap<string, Survey>): Mistake => {
  const names = [...surveys.keys()];
  const near = nearest(name, names);
  return {
    rule: "document.parts",
    path: "venue",
    place,
    says: `No venue \`${name}\` is surveyed.`,
    mend: near === undefined ? choices(names, name) : `Write \`${near}\`, or survey the venue.`,
  };
};

/** A hall's wiring is of one practice, whatever is wished for in it. */
const otherPractice = (practice: string, stated: string, { name, file }: Survey, place: Place): Mistake => ({
  rule: "document.front-matter",
  path: "practice",
  place,
  says: `\`practice\` is \`${practice}\`, and the survey ${name} (${file}) says \`${stated}\`.`,
  mend: "Take it out: what a hall is wired by is the survey's to say.",
});

function extentsIn(placed: Placed): {
  readonly extents: ReadonlyMap<string, Extent>;
  readonly mistakes: readonly Mistake[];
} {
  const extents = new Map<string, Extent>();
  const mistakes: Mistake[] = [];
  for (const path of EXTENTS) {
    const written = at(placed.data, path);
    if (written === undefined || written === null || typeof written === "object") continue;
    const extent = readExtent(String(written));
    if (extent) extents.set(path, extent);
    else
      mistakes.push({
        rule: "document.front-matter",
        path,
        place: placed.places.get(path) ?? START,
        says: `\`${path}\` is \`${written}\`, which is no length.`,
        mend: "Write a length such as `10 ft` or `3 m`, with `at most`, `at least`, `about` or `exactly` before it where that is meant.",
      });
  }
  return { extents, mistakes };
}

/**
 * Reads a wish. What is wrong with it is told with its place; a wish with a mistake in it is not drafted from.
 * @param surveys venues a wish may name
 */
export function readWish(file: SourceFile, surveys: ReadonlyMap<string, Survey> = new Map()): WishFile {
  const placed = withLike(
    readYaml(file.text),
    LIKE_IN_SURVEY.map((path) => `venue.${path}`),
  );
  const name = textOf(placed.data, "wish");
  if (placed.data === null && placed.mistakes.length > 0)
    return { file: file.path, name, wish: undefined, mistakes: placed.mistakes };
  const { values, mistakes: unread } = readQuantities(schemas.wishSchema, placed);
  const { extents, mistakes: unmeasured } = extentsIn(placed);
  const told = new Set([...placed.mistakes, ...unread, ...unmeasured].map(({ path }) => path));
  const shape = validate("wish", placed).filter(({ path }) => path === "" || !told.has(path));
  const mistakes = [...placed.mistakes, ...shape, ...unread, ...unmeasured];
  const venueName = textOf(placed.data, "venue");
  const survey = venueName === undefined ? undefined : surveys.get(venueName);
  if (venueName !== undefined && !survey && /^[a-z0-9][a-z0-9-]*$/u.test(venueName) && surveys.size > 0)
    mistakes.push(unknownVenue(venueName, placed.places.get("venue") ?? START, surveys));
  const stated = survey && textOf(survey.placed.data, "practice");
  const practice = textOf(placed.data, "practice");
  if (survey && stated !== undefined && practice !== undefined && practice !== stated)
    mistakes.push(otherPractice(practice, stated, survey, placed.places.get("practice") ?? START));
  if (mistakes.length > 0 || name === undefined) return { file: file.path, name, wish: undefined, mistakes };
  const title = textOf(placed.data, "title") ?? name;
  const facts = Object.keys(mappingOf(keyOf(placed.data, "venue"))).length > 0;
  const venue = facts ? venueFactsOf(name, title, file.path, placed, values) : survey;
  return { file: file.path, name, mistakes, wish: wishOf(placed.data, { name, title, file: file.path, venue }) };

  function wishOf(data: Data, known: Pick<Wish, "name" | "title" | "file" | "venue">): Wish {
    const shows = keyOf(data, "shows");
    const text = at(data, "shows.text");
    const feed = keyOf(data, "feed-from");
    const overPeople = keyOf(data, "over-people");
    return {
      ...known,
      venueName,
      practice: textOf(data, "practice") as Wish["practice"],
      onSite: textOf(data, "on-site"),
      shows: typeof shows === "string" ? (shows as Wish["shows"]) : text === undefined ? undefined : "text",
      text: { lines: wholeAt(text, "lines"), characters: wholeAt(text, "characters") },
      width: extents.get("size.width"),
      height: extents.get("size.height"),
      support: textOf(data, "support") as SupportOfFace | undefined,
      right: values.get("over.middle.right")?.value,
      upstage: values.get("over.middle.upstage")?.value,
      under: textOf(keyOf(data, "over"), "under"),
      on: textOf(keyOf(data, "over"), "on"),
      trim: extents.get("over.trim"),
      outOf: textOf(data, "out-of"),
      panel: textOf(data, "panel"),
      overPeople: typeof overPeople === "boolean" ? overPeople : undefined,
      light: keyOf(data, "light") === undefined ? undefined : (mappingOf(keyOf(data, "light")) as Mapping),
      powerFrom: textsOf(feed, "power"),
      dataAt: textOf(feed, "data"),
      pictureAt: textOf(feed, "picture"),
    };
  }
}
