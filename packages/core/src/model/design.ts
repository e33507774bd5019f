import type { ProcessorLoad } from "./data/chain.js";
import type { Lifting } from "./lifting/lifting.js";
import type { Lettering } from "./picture/lettering.js";
import type { Supply } from "./power/supply.js";
import type { RiggingDesign } from "./rigging/rigging-design.js";
import type { LotUse } from "./stock/lot-use.js";
import type { Filming } from "./viewing/camera.js";
import type { Dimming } from "./viewing/dimming.js";
import type { ViewingDesign } from "./viewing/viewing-design.js";

/** The design a document describes, without the document's prose: what values and takeoff are computed from. */
export interface Design extends RiggingDesign, ViewingDesign {
  /** Supplies that circuits say they are taken from. */
  readonly supplies: readonly Supply[];
  /** Ports and pixels that are asked of the processor, against what it has. */
  readonly processorLoad: ProcessorLoad;
  /** The heaviest piece, and what those who lift it may lift. */
  readonly lifting: Lifting;
  /** Text of the faces that are meant to show some. */
  readonly lettering: readonly Lettering[];
  /** Each face before the camera that films it. */
  readonly filming: readonly Filming[];
  /** How far each face is dimmed. */
  readonly dimming: readonly Dimming[];
  /** Lots it takes panels from. */
  readonly lotUses: readonly LotUse[];
}
