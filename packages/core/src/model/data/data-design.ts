import type { Part } from "../../repository/parts.js";
import type { FacesDesign } from "../faces/faces-design.js";
import type { Chain } from "./chain.js";

/** How the panels are sent data: what chains are given, and what they give. */
export interface DataDesign extends FacesDesign {
  /** The part that is its processor; undefined when none is named, or none of that name exists. */
  readonly processor: Part | undefined;
  /** Its chains: panels sent data one after another from one port. */
  readonly chains: readonly Chain[];
}
