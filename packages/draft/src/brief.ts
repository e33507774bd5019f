import type { System } from "@plumbmark/calc";
import type { Catalogue, Free, Part, Stock } from "@plumbmark/core";
import type { Desk } from "./desk/desk.js";
import type { VenueFacts } from "./venue/facts.js";
import type { Wish } from "./wish/wish.js";

/** Panels of one lot, or as many as one likes of the catalogue. */
export interface PanelsOnOffer {
  readonly panel: string;
  readonly lot: string | undefined;
  /** Free on the days of the wish; unbounded out of the catalogue. */
  readonly free: number;
  /** Whether they are on the shelf: what is not has to be bought. */
  readonly owned: boolean;
}

/** Everything a draft is made from. */
export interface Brief {
  readonly wish: Wish;
  readonly facts: VenueFacts;
  /** The survey a drafted build names: what it states need not be written. Undefined for facts of the wish. */
  readonly surveyed: string | undefined;
  readonly desk: Desk;
  readonly catalogue: Catalogue;
  readonly stock: Stock;
  readonly practice: "us" | "iec";
  readonly system: System;
  /** What is free on the days of the wish; undefined where it has none. */
  readonly free: Free | undefined;
  /** Whether it is made of what is owned. */
  readonly outOfHoldings: boolean;
  readonly offers: readonly PanelsOnOffer[];
}

/** Whether most of what a part states is in feet, inches and pounds, or its section is called by inches. */
function isInFeet({ quantities, data, kind }: Part): boolean {
  if (kind === "bar" && typeof data.section === "string") return !/\dx\d/u.test(data.section);
  const systems = [...quantities.values()].map(({ unit }) => unit?.system);
  const [us, metric] = (["us", "metric"] as const).map((system) => systems.filter((each) => each === system).length);
  return (us ?? 0) > (metric ?? 0);
}

/** Parts of a kind, those that are made in the units of the build first: what a house there has on its shelf. */
export const partsInUnits = (brief: Pick<Brief, "catalogue" | "system">, kind: string): readonly Part[] => {
  const other = (part: Part): number => (isInFeet(part) === (brief.system === "us") ? 0 : 1);
  return [...partsOfKind(brief, kind)].sort((a, b) => other(a) - other(b));
};

/** Parts of a kind, in the catalogue's order. */
export const partsOfKind = ({ catalogue }: Pick<Brief, "catalogue">, kind: string): readonly Part[] =>
  [...catalogue.parts.values()].filter((part) => part.kind === kind);
