import type { DesignSource } from "../reading/design-source.js";
import type { Face } from "./face.js";

/** What the faces give to everything that is said of their panels. */
export interface FacesDesign extends DesignSource {
  /** The faces, as they are written. */
  readonly faces: readonly Face[];
}
