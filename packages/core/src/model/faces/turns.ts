import type { Data } from "../../document/yaml/yaml.js";
import type { Part } from "../../repository/parts.js";

/** Turns a part's sheet states, in degrees: none of them for `none`; undefined where it does not say. */
export function turnsStated(data: Data | undefined): readonly number[] | undefined {
  if (data === "none") return [];
  return Array.isArray(data) ? data.filter((each): each is number => typeof each === "number") : undefined;
}

/** Turns the maker of a panel allows, besides upright; undefined where its part does not say. */
export const turnsAllowed = (panel: Part | undefined): readonly number[] | undefined => turnsStated(panel?.data.turns);
