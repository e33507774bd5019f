import type { Level, Setting, SettingDefinition } from "./setting.js";

export const LEVELS: readonly Level[] = ["shall", "should", "note", "none"];

/** How a face is held; a house standard may ask for more of one than of another. */
export const SUPPORTS = ["flown", "wall", "deck", "stacked"] as const;
export type Support = (typeof SUPPORTS)[number];

export const isLevel = (data: unknown): data is Level => LEVELS.includes(data as Level);
export const isSupport = (data: unknown): data is Support => SUPPORTS.includes(data as Support);

/** The part before the point: `power.circuit-load` is of the topic `power`. */
export const topicOf = (rule: string): string => rule.split(".")[0] as string;

export const stricterLevel = (one: Level, other: Level): Level =>
  LEVELS.indexOf(one) <= LEVELS.indexOf(other) ? one : other;

export const isLooserLevel = (is: Level, was: Level): boolean => LEVELS.indexOf(is) > LEVELS.indexOf(was);

const same = (one: Setting, other: Setting): boolean => JSON.stringify(one) === JSON.stringify(other);

/** Whether a setting asks for less than another; where nothing tells which way is stricter, any change may do so. */
export function isLooser({ stricter }: SettingDefinition, is: Setting, was: Setting): boolean {
  if (same(is, was)) return false;
  if (stricter === undefined || typeof is !== "number" || typeof was !== "number") return true;
  return stricter === "less" ? is > was : is < was;
}
