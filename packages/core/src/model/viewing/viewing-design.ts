import type { PictureDesign } from "../picture/picture-design.js";
import type { Viewing } from "./viewing.js";

/** Who looks at which picture. */
export interface ViewingDesign extends PictureDesign {
  /** Distances of the audience and the luminance aimed at. */
  readonly viewing: Viewing;
}
