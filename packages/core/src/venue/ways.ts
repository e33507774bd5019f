import { difference, type Kind, type Known, ledWay, missing, straightLine, type Value } from "@plumbmark/calc";
import { placeName } from "../document/place-name.js";
import type { Data } from "../document/yaml/yaml.js";
import { type Survey, surveyLine, surveyWords } from "./survey.js";

/** A place of a venue, in metres from where it is measured: to the audience's right, upstage and up. */
export interface SurveyedPlace {
  readonly right: Value<"length">;
  readonly upstage: Value<"length">;
  readonly up: Value<"length">;
}

/** The way a cable takes between two places. */
export interface Way {
  /**
   * `measured` with a tape, `led` by places by somebody who looked, or `straight`: the straight line, which a cable can
   * be too short for and never long enough by.
   */
  readonly how: "measured" | "led" | "straight";
  readonly length: Value<"length">;
  /** Where it is written in the survey: `routes.booth to rack-a`; undefined for a straight line. */
  readonly path: string | undefined;
}

const entriesOf = (data: Data | undefined): readonly (readonly [string, Data])[] =>
  data !== null && typeof data === "object" && !Array.isArray(data)
    ? Object.entries(data as Readonly<Record<string, Data>>)
    : [];

const at = (data: Data, key: string): Data | undefined => entriesOf(data).find(([name]) => name === key)?.[1];

/** A quantity of a survey with where it stands there; missing by name when it is not written. */
export function surveyValue<const K extends Kind>(survey: Survey, path: string, kind: K, what: string): Value<K> {
  const found = survey.values.get(path) as Known<K> | undefined;
  if (!found) return missing(kind, { path, file: survey.file, what, of: `The survey ${survey.name}` });
  if (found.origin.from !== "written") return found;
  const stated = { file: survey.file, path, line: surveyLine(survey, path), by: surveyWords(survey) };
  return { ...found, origin: { ...found.origin, stated } };
}

const lengthAt = (survey: Survey, path: string, what: string): Value<"length"> =>
  surveyValue(survey, path, "length", what);

const pointAt = (survey: Survey, path: string): SurveyedPlace => ({
  right: lengthAt(survey, `${path}.right`, "distance to the audience's right"),
  upstage: lengthAt(survey, `${path}.upstage`, "distance upstage"),
  up: lengthAt(survey, `${path}.up`, "height"),
});

/** A place by its name; undefined when the survey has none of that name. */
export function pointOf(survey: Survey, place: string): SurveyedPlace | undefined {
  const name = placeName(place);
  const found = entriesOf(at(survey.placed.data, "places")).find(([key]) => placeName(key) === name);
  return found && pointAt(survey, `places.${found[0]}`);
}

/** Both ends of a structure; undefined when the survey has none of that name. */
export function endsOf(survey: Survey, structure: string): readonly [SurveyedPlace, SurveyedPlace] | undefined {
  const found = entriesOf(at(survey.placed.data, "structure")).find(([key]) => key === structure);
  if (!found) return undefined;
  return [pointAt(survey, `structure.${structure}.from`), pointAt(survey, `structure.${structure}.to`)];
}

/** How far apart two figures are, whichever is the greater. */
const apart = (one: Value<"length">, other: Value<"length">, symbol: string): Value<"length"> =>
  one.known && other.known && one.value < other.value
    ? difference(other, one, "length", symbol)
    : difference(one, other, "length", symbol);

/** Straight line between two places, with its working. */
export const between = (from: SurveyedPlace, to: SurveyedPlace): Value<"length"> =>
  straightLine.of({
    Δr: apart(to.right, from.right, "Δr"),
    Δs: apart(to.upstage, from.upstage, "Δs"),
    Δh: apart(to.up, from.up, "Δh"),
  });

/** The nearer end of a structure, as the crow flies; the first where that cannot be told. */
export function nearestEnd(survey: Survey, structure: string, from: SurveyedPlace): SurveyedPlace | undefined {
  const ends = endsOf(survey, structure);
  if (!ends) return undefined;
  const [first, second] = ends.map((end) => between(from, end));
  return first?.known && second?.known && second.value < first.value ? ends[1] : ends[0];
}

const stationOf = (survey: Survey, name: string, from: SurveyedPlace | undefined): SurveyedPlace | undefined =>
  pointOf(survey, name) ?? (from ? nearestEnd(survey, name, from) : endsOf(survey, name)?.[0]);

interface Route {
  readonly path: string;
  readonly data: Data;
  readonly from: string;
  readonly to: string;
}

function routeBetween(survey: Survey, one: string, other: string): Route | undefined {
  const names = [placeName(one), placeName(other)];
  for (const [key, data] of entriesOf(at(survey.placed.data, "routes"))) {
    const [from, to, more] = key.split(" to ").map(placeName);
    if (from === undefined || to === undefined || more !== undefined) continue;
    if (names.includes(from) && names.includes(to) && from !== to) return { path: `routes.${key}`, data, from, to };
  }
  return undefined;
}

/** Whether somebody put a name and a day to it: a way drawn on paper is not one that was looked at. */
const isLed = (data: Data): boolean => {
  const led = at(data, "led");
  return typeof at(led ?? null, "by") === "string" && typeof at(led ?? null, "on") === "string";
};

/**
 * The way between two places or structures of a venue. What is not measured and not led is the straight line.
 * Missing with its reason when a place is not in the survey.
 */
export function wayBetween(survey: Survey, one: string, other: string): Way {
  const route = routeBetween(survey, one, other);
  if (route && survey.values.has(`${route.path}.length`)) {
    const length = lengthAt(survey, `${route.path}.length`, "measured length of the way");
    return { how: "measured", length, path: route.path };
  }
  const via = route && at(route.data, "via");
  const stops = Array.isArray(via) ? (via as readonly Data[]).map(String) : [];
  const known = route ? [route.from, ...stops, route.to] : [one, other];
  const points = known.map((name) => pointOf(survey, name));
  const whole = known.map(
    (name, index) => points[index] ?? stationOf(survey, name, points[index - 1] ?? points[index + 1]),
  );
  const gap = known.find((_, index) => whole[index] === undefined);
  if (gap !== undefined) {
    const because = `The survey ${survey.name} has no place \`${gap}\`.`;
    return {
      how: "straight",
      path: route?.path,
      length: missing("length", { path: "places", what: `place ${gap}`, because }),
    };
  }
  const pieces = whole.slice(1).map((to, index) => between(whole[index] as SurveyedPlace, to as SurveyedPlace));
  const led = route !== undefined && stops.length > 0 && isLed(route.data);
  if (led) return { how: "led", length: ledWay.of({ l: pieces }), path: route.path };
  return {
    how: "straight",
    length: between(whole[0] as SurveyedPlace, whole.at(-1) as SurveyedPlace),
    path: undefined,
  };
}
