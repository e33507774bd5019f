import type { Part } from "../../repository/parts.js";
import type { FacesDesign } from "../faces/faces-design.js";
import type { Panel } from "../faces/panels.js";
import type { FeedWay } from "../venue/needed.js";
import type { Chain } from "./chain.js";

/** How the panels are sent data: what chains are given, and what they give. */
export interface DataDesign extends FacesDesign {
  /** The way of a feed or return of a chain, to or from a panel; undefined where the venue was not surveyed. */
  readonly wayOfChain: (panel: Panel | undefined) => FeedWay | undefined;
  /** The part that is its processor; undefined when none is named, or none of that name exists. */
  readonly processor: Part | undefined;
  /** Its chains: panels sent data one after another from one port. */
  readonly chains: readonly Chain[];
}
