import type { Rule } from "@plumbmark/core";
import { Names } from "./names.js";

/** What a rule states, without the code that judges it. */
export type PublishedRule = Omit<Rule, "checks"> & {
  /** Stated by the house standard itself, without code. */
  readonly own?: boolean;
};

/** Path of every rule's page by the rule's id. */
export function rulePaths(rules: readonly PublishedRule[]): ReadonlyMap<string, string> {
  const names = new Names("index");
  return new Map(rules.map(({ id }) => [id, `rules/${names.take(id)}.html`]));
}

export const ruleTopic = (id: string): string => id.split(".")[0] ?? id;

const TOPICS: Readonly<Record<string, string>> = {
  connectors: "Connectors",
  data: "Data",
  document: "The document",
  panels: "Panels and stock",
  picture: "Picture",
  power: "Power",
  rigging: "Rigging",
  viewing: "Viewing",
};

/** A topic in words; a plugin's own stands as it is. */
export const topicName = (topic: string): string => TOPICS[topic] ?? topic;
