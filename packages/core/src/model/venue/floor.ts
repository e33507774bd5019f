import type { Value } from "@plumbmark/calc";
import { surveyData } from "../../venue/survey.js";
import { surveyValue } from "../../venue/ways.js";
import type { Face } from "../faces/face.js";
import type { DesignSource } from "../reading/design-source.js";

/** A floor or deck of a venue, as it was surveyed. */
export interface Floor {
  readonly name: string;
  readonly length: Value<"length">;
  readonly depth: Value<"length">;
  readonly rating: Value<"areal-load">;
}

/** The floor a face stands on; undefined where it names none that was surveyed. */
export function floorOf({ reader }: DesignSource, face: Face): Floor | undefined {
  const survey = reader.venue?.survey;
  const name = reader.text(`${face.path}.on`);
  if (!survey || name === undefined || surveyData(survey, "floors", name) === undefined) return undefined;
  const at = `floors.${name}`;
  return {
    name,
    length: surveyValue(survey, `${at}.length`, "length", `length of ${name}`),
    depth: surveyValue(survey, `${at}.depth`, "length", `depth of ${name}`),
    rating: surveyValue(survey, `${at}.rating`, "areal-load", `rating of ${name}`),
  };
}
