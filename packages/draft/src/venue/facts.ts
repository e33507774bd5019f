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
  return [{ name, from, to, data, points: points.sort((a, b) => a.at - b.at) }];
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

/** Where along a structure something in the middle of the stage is, in metres from its first end. */
export function alongOf({ from, to }: VenueStructure, right: number, upstage: number): number {
  const [across, deep] = [to.right - from.right, to.upstage - from.upstage];
  const length = Math.hypot(across, deep);
  return length === 0 ? 0 : ((right - from.right) * across + (upstage - from.upstage) * deep) / length;
}
