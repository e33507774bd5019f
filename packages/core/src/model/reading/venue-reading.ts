import type { Gap, Known, StatedIn } from "@plumbmark/calc";
import { fieldsAt } from "../../document/field.js";
import { placeName } from "../../document/place-name.js";
import type { Placed } from "../../document/yaml/yaml.js";
import { surveySchema } from "../../generated/schemas.js";
import { type Completion, type Contradiction, completedBy } from "../../venue/completion.js";
import { type Survey, surveyData, surveyLine, surveyWords } from "../../venue/survey.js";

/** What a build says of a circuit and no survey does: what is on it this time. */
const OF_THE_BUILD = new Set(["serves", "stepped", "stays-on", "other-load", "other-inrush"]);

const statements = new WeakMap<Survey, Map<string, StatedIn>>();

/** Who states what, by path of a survey, for all who read it: a build is read anew at every keystroke, its survey is not. */
function toldOf(survey: Survey): Map<string, StatedIn> {
  const told = statements.get(survey) ?? new Map<string, StatedIn>();
  statements.set(survey, told);
  return told;
}

/** What the survey of a build's venue states of it, by the path it has in the build. */
export class VenueReading {
  readonly survey: Survey;
  readonly contradictions: readonly Contradiction[];
  readonly #completion: Completion;

  constructor(survey: Survey, completion: Completion) {
    this.survey = survey;
    this.#completion = completion;
    this.contradictions = completion.contradictions;
  }

  /** Whether what stands at a path, or in a list or pair there, comes from the survey. */
  states(path: string): boolean {
    return this.#statedPath(path) !== undefined;
  }

  /** Where in the survey it stands; undefined for what the build writes itself. */
  statedAt(path: string): StatedIn | undefined {
    const found = this.#statedPath(path);
    return found === undefined ? undefined : this.at(found);
  }

  /** A path of the survey with its line and who surveyed it. */
  at(path: string): StatedIn {
    const { survey } = this;
    const told = toldOf(survey);
    const known = told.get(path);
    if (known) return known;
    const made = { file: survey.file, path, line: surveyLine(survey, path), by: surveyWords(survey) };
    told.set(path, made);
    return made;
  }

  /** Where something that is not written belongs, if that is the survey: it describes what it is of. */
  belongs(path: string): Pick<Gap, "path" | "file" | "place"> | undefined {
    const found = this.#describedPath(path);
    if (found === undefined || fieldsAt(surveySchema, found).length === 0) return undefined;
    const place = this.#placeOf(found);
    return { path: found, file: this.survey.file, ...(place === undefined ? {} : { place }) };
  }

  /** Whether another reading of the same survey comes to the same for every path. */
  statesAs(other: VenueReading): boolean {
    return this.survey === other.survey && this.#told() === other.#told();
  }

  #told(): string {
    const { stated, described } = this.#completion;
    return JSON.stringify([this.contradictions, [...stated], [...described]]);
  }

  /** Values with whoever states them. */
  withOrigins(values: ReadonlyMap<string, Known>): ReadonlyMap<string, Known> {
    const made = new Map(values);
    for (const [path, value] of values) {
      const stated = value.origin.from === "written" ? this.statedAt(path) : undefined;
      if (stated && value.origin.from === "written") made.set(path, { ...value, origin: { ...value.origin, stated } });
    }
    return made;
  }

  #statedPath(path: string): string | undefined {
    const { stated } = this.#completion;
    for (let here = path; here !== ""; here = here.slice(0, Math.max(0, here.lastIndexOf(".")))) {
      const found = stated.get(here);
      if (found !== undefined) return found;
    }
    return undefined;
  }

  #describedPath(path: string): string | undefined {
    const { described } = this.#completion;
    for (let here = path; here !== ""; here = here.slice(0, Math.max(0, here.lastIndexOf(".")))) {
      const found = described.get(here);
      if (found === undefined) continue;
      const rest = path.slice(here.length + 1);
      return OF_THE_BUILD.has(rest.split(".", 1)[0] as string) ? undefined : rest === "" ? found : `${found}.${rest}`;
    }
    return undefined;
  }

  /** Where in the hall somebody has to look: where a circuit's outlet is, else what it is of. */
  #placeOf(path: string): string | undefined {
    const [group, name] = path.split(".");
    if (name === undefined) return undefined;
    if (group !== "circuits")
      return group === "structure" || group === "floors" || group === "walls" ? name : undefined;
    const at = surveyData(this.survey, "circuits", name, "at");
    return typeof at === "string" ? placeName(at) : undefined;
  }
}

/** A build with what the survey of its venue states; as it is where it names no venue that was surveyed. */
export function withVenue(
  placed: Placed,
  surveys: ReadonlyMap<string, Survey>,
): { readonly placed: Placed; readonly venue: VenueReading | undefined } {
  const { data } = placed;
  const name =
    data !== null && typeof data === "object" && !Array.isArray(data) ? Reflect.get(data, "venue") : undefined;
  const survey = typeof name === "string" ? surveys.get(name) : undefined;
  if (!survey) return { placed, venue: undefined };
  const completion = completedBy(placed, survey);
  return { placed: completion.placed, venue: new VenueReading(survey, completion) };
}
