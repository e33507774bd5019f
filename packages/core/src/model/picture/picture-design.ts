import type { Part } from "../../repository/parts.js";
import type { FacesDesign } from "../faces/faces-design.js";
import type { Picture } from "./picture.js";

/** What the picture is made of: faces, raster, and what leads to it. */
export interface PictureDesign extends FacesDesign {
  /** The part that is its processor; undefined when none is named, or none of that name exists. */
  readonly processor: Part | undefined;
  /** Raster, rate, depth, the path of the picture, and where each face is on the raster. */
  readonly picture: Picture;
}
