import { type Known, missing, type StatedIn, type Value } from "@plumbmark/calc";
import { isDay } from "../../document/days.js";
import { asRead } from "../../document/nothing-written.js";
import type { Contradiction } from "../../venue/completion.js";
import { type Survey, surveyData, surveyNames } from "../../venue/survey.js";
import type { DesignSource } from "../reading/design-source.js";
import type { Reader } from "../reading/reader.js";

/** A venue goes by the name of its survey: letters in small, digits, hyphens. */
const NAME = /^[a-z0-9][a-z0-9-]*$/u;

/** By what a venue that was not surveyed is known in every build that names it: its text, blanks and case aside. */
export const venueKey = (text: string): string => asRead(text).toLowerCase();

/** A point of a surveyed structure that a hang names. */
export interface PointUsed {
  readonly structure: string;
  readonly point: string;
}

/** The venue of a build, and what of it the build uses. */
export class Venue {
  /** Where a document names it. */
  readonly path = "venue";
  /** What messages call it. */
  readonly label = "The venue";

  constructor(private readonly build: DesignSource) {}

  /** What the document writes; undefined when it writes nothing. */
  get text(): string | undefined {
    const text = this.build.reader.text("venue");
    return text === undefined || asRead(text) === "" ? undefined : text;
  }

  /** By what builds in the same venue find each other: the name of the survey, else what is written, blanks and case aside. */
  get key(): string | undefined {
    return this.survey?.name ?? (this.text === undefined ? undefined : venueKey(this.text));
  }

  /** Its survey; undefined where the venue is free text, or nothing. */
  get survey(): Survey | undefined {
    return this.build.reader.venue?.survey;
  }

  /** The day it was surveyed, `2026-10-02`; undefined when no day is written. */
  get surveyedOn(): string | undefined {
    const { survey } = this;
    const on = survey && surveyData(survey, "surveyed", "on");
    return typeof on === "string" && isDay(on) ? on : undefined;
  }

  /** What the build writes and the survey says otherwise. */
  get contradictions(): readonly Contradiction[] {
    return this.build.reader.venue?.contradictions ?? [];
  }

  /** Where in the survey something of the build stands. */
  statedAt(path: string): StatedIn | undefined {
    return this.build.reader.venue?.statedAt(path);
  }

  /** A length, width or mass of the way in, as surveyed: `door.1`, `lift.carries`; missing where the survey does not say it. */
  wayIn<const K extends "length" | "mass">(key: string, kind: K, what: string): Value<K> {
    const { survey } = this;
    const path = `way-in.${key}`;
    const found = survey?.values.get(path) as Known<K> | undefined;
    const place = path.replace(/\.[12]$/u, "");
    return found ?? missing(kind, { path: place, ...(survey ? { file: survey.file } : {}), what, of: this.label });
  }

  /** Whether something of the way in is written: `way-in`, `way-in.lift`. */
  hasWayIn(...more: readonly string[]): boolean {
    const { survey } = this;
    return survey !== undefined && surveyData(survey, "way-in", ...more) !== undefined;
  }

  /** Whether stairs lead in; undefined where the survey does not say. */
  get stairs(): boolean | undefined {
    const said = this.survey && surveyData(this.survey, "way-in", "stairs");
    return typeof said === "boolean" ? said : undefined;
  }

  /** A path of the survey with its line. */
  at(path: string): StatedIn | undefined {
    return this.build.reader.venue?.at(path);
  }
}

/** Complains of a venue that is named like a survey and is none, in a repository that has surveys. */
export function checkVenue({ reader, context }: DesignSource): void {
  const name = reader.text("venue");
  if (name === undefined || !NAME.test(name) || context.surveys.has(name)) return;
  const known = [...context.surveys.keys()];
  const says = `No survey of a venue \`${name}\` is in the repository.`;
  if (known.length > 0) reader.unknown("venue", name, says, known, likeliest(reader, [...context.surveys.values()]));
}

/** The survey that has most of the circuits a build takes: what waits for the name of its venue is told by it. */
function likeliest(reader: Reader, surveys: readonly Survey[]): string | undefined {
  const taken = reader.keys("power.runs").flatMap((run) => reader.text(`power.runs.${run}.from`) ?? []);
  const count = (survey: Survey): number => {
    const there = surveyNames(survey, "circuits");
    return taken.filter((each) => there.includes(each)).length;
  };
  return surveys.toSorted((one, other) => count(other) - count(one))[0]?.name;
}
