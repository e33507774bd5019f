import { printQuantity } from "@plumbmark/calc";
import type { HouseStandardSettings, Setting, SettingDefinition } from "@plumbmark/core";
import { type Content, h } from "../../html/html.js";
import { table } from "../../html/table.js";
import type { PublishedRule } from "../../site/stated-rule.js";

export type OwnSettings = HouseStandardSettings["requirements"][string] | undefined;

/** A setting's value in words; a quantity in metric units. */
export const settingWords = (value: Setting, { kind }: SettingDefinition): string =>
  kind && typeof value === "number"
    ? printQuantity(value, kind, "metric")
    : Array.isArray(value)
      ? value.join(", ")
      : String(value);

/** What the house standard writes for a setting; undefined where the default applies. */
export const ownText = (own: OwnSettings, key: string): string | undefined =>
  own?.[key] === undefined || own[key] === null
    ? undefined
    : Array.isArray(own[key])
      ? own[key].join(", ")
      : String(own[key]);

const COLUMNS = ["Setting", "Meaning", "Default, us", "Default, iec", "In force"];

/** The settings of a rule: what they mean, their defaults, and what is in force here. */
export function settingsTable({ settings = {} }: PublishedRule, own: OwnSettings, practice: "us" | "iec"): Content {
  const all = Object.entries(settings);
  if (all.length === 0) return h("p", "It has no settings but its level.");
  return table(
    "Settings",
    COLUMNS,
    all.map(([key, setting]) => [
      h("code", key),
      setting.describe,
      settingWords(setting.us, setting),
      settingWords(setting.iec, setting),
      ownText(own, key) ?? `${settingWords(setting[practice], setting)} (the default)`,
    ]),
  );
}
