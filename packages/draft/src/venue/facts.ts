import type { Survey } from "@plumbmark/core";
import { keyOf, type Mapping, mappingOf, textOf } from "../data.js";

/** A circuit of the venue: what is written of it, as a build document writes it, and the place of its outlets. */
export interface VenueCircuit {
  readonly name: string;
  readonly data: Mapping;
  readonly at: string | undefined;
}

/** A point of a structure, in metres along it from its first end. */
export interface VenuePoint {
  readonly name: string;
  readonly at: number;
  readonly data: Mapping;
}

/** What can be hung from. Lengths in metres; places from where the venue is measured. */
export interface VenueStructure {
  readonly name: string;
  readonly from: VenuePlace;
  readonly to: VenuePlace;
  readonly points: readonly VenuePoint[];
  readonly data: Mapping;
}

export interface VenuePlace {
  readonly right: number;
  readonly upstage: number;
  readonly up: number;
}

/** What is known of a venue, in the order it was written. */
export interface VenueFacts {
  readonly survey: Survey | undefined;
  readonly circuits: readonly VenueCircuit[];
  readonly structures: readonly VenueStructure[];
}

const numberAt = (survey: Survey, path: string): number | undefined => survey.values.get(path)?.value;

function placeAt(survey: Survey, path: string): VenuePlace | undefined {
  const [right, upstage, up] = ["right", "upstage", "up"].map((key) => numberAt(survey, `${path}.${key}`));
  return right === undefined || upstage === undefined || up === undefined ? undefined : { right, upstage, up };
}

function structureOf(survey: Survey, name: string, data: Mapping): readonly VenueStructure[] {
  const path = `structure.${name}`;
  const [from, to] = [placeAt(survey, `${path}.from`), placeAt(survey, `${path}.to`)];
  // Without its ends nobody can tell what of a bar is under it.
  if (!from || !to) return [];
  const points = Object.entries(mappingOf(data.points)).flatMap(([point, written]) => {
    const at = numberAt(survey, `${path}.points.${point}.at`);
    return at === undefined ? [] : [{ name: point, at, data: mappingOf(written) }];
  });
  const own = { name, from, to, data, points: points.sort((a, b) => a.at - b.at) };
  return [to.right < from.right ? turnedRound(own) : own];
}

/** The same structure from its other end: bars are measured from the audience's left. */
function turnedRound(structure: VenueStructure): VenueStructure {
  const whole = lengthOf(structure);
  const points = structure.points.map((point) => ({ ...point, at: whole - point.at })).reverse();
  return { ...structure, from: structure.to, to: structure.from, points };
}

/** What a survey, or the facts a wish has of its venue, say of circuits and structure. */
export function venueFactsOf(survey: Survey | undefined): VenueFacts {
  if (!survey) return { survey, circuits: [], structures: [] };
  const { data } = survey.placed;
  const circuits = Object.entries(mappingOf(keyOf(data, "circuits"))).map(([name, written]) => {
    const { at: _at, like: _like, ...rest } = mappingOf(written);
    return { name, data: rest as Mapping, at: textOf(written, "at") };
  });
  const structures = Object.entries(mappingOf(keyOf(data, "structure"))).flatMap(([name, written]) =>
    structureOf(survey, name, mappingOf(written)),
  );
  return { survey, circuits, structures };
}

/** Length of a structure, in metres. */
export const lengthOf = ({ from, to }: VenueStructure): number =>
  Math.hypot(to.right - from.right, to.upstage - from.upstage, to.up - from.up);

/** Less than this of its length to the side, and a structure has no left and right. */
const LEAST_ACROSS = 0.1;

/** Whether a structure runs across the stage, so that a place to the side tells where along it something is. */
export const isAcross = (structure: VenueStructure): boolean =>
  structure.to.right - structure.from.right > LEAST_ACROSS * lengthOf(structure);

/** Where along a structure something in the middle of the stage is, in metres from its first end. */
export function alongOf({ from, to }: VenueStructure, right: number, upstage: number): number {
  const [across, deep] = [to.right - from.right, to.upstage - from.upstage];
  const length = Math.hypot(across, deep);
  return length === 0 ? 0 : ((right - from.right) * across + (upstage - from.upstage) * deep) / length;
}

/** The place so far along a structure. */
export function stationAlong(structure: VenueStructure, along: number): VenuePlace {
  const { from, to } = structure;
  const share = lengthOf(structure) === 0 ? 0 : along / lengthOf(structure);
  const at = (key: keyof VenuePlace): number => from[key] + (to[key] - from[key]) * share;
  return { right: at("right"), upstage: at("upstage"), up: at("up") };
}
