import type { Blanking, RasterTotals, PictureSignal as Signal, Value } from "@plumbmark/calc";
import { partOptional } from "../reading/reader.js";
import type { PictureDesign } from "./picture-design.js";
import { type Hop, hopsOf } from "./picture-path.js";
import { Placement } from "./placement.js";

/** Blanking a source may be set to. */
const BLANKINGS: readonly Blanking[] = ["standard", "reduced", "reduced-2", "widened"];

/** The raster and what leads to it. */
export class Picture {
  readonly path = "picture";
  readonly label = "The picture";
  readonly placements: readonly Placement[];

  constructor(readonly build: PictureDesign) {
    this.placements = build.faces.map((face) => new Placement(build.reader, face));
  }

  /** The largest raster the processor takes, across or down; undefined when its part says nothing of it. */
  largest(half: 1 | 2): Value<"pixels"> | undefined {
    return partOptional(this.build.processor, `largest-raster.${half}`, "pixels", "largest raster");
  }

  get width(): Value<"pixels"> {
    return this.build.reader.value("picture.raster.1", "pixels", "raster", this.label);
  }

  get height(): Value<"pixels"> {
    return this.build.reader.value("picture.raster.2", "pixels", "raster", this.label);
  }

  get rate(): Value<"frequency"> {
    return this.build.reader.value("picture.rate", "frequency", "frame rate", this.label);
  }

  get depth(): Value<"colour-depth"> {
    return this.build.reader.value("picture.depth", "colour-depth", "bit depth of a colour", this.label);
  }

  /** Links from the source to the processor. */
  get hops(): readonly Hop[] {
    return hopsOf(this.build);
  }

  /** Raster, rate and depth that have to be known before a link can be judged. */
  get needed(): readonly Value[] {
    return [this.width, this.height, this.rate, this.depth];
  }

  /** Pixels of a line and lines of a frame its source is set to, blanking included; undefined when they are not written. */
  get totals(): RasterTotals | undefined {
    const [width, height] = [1, 2].map((half) => this.build.reader.quantities.get(`picture.totals.${half}`)?.value);
    return width === undefined || height === undefined ? undefined : { width, height };
  }

  /** Whether its timing is of nobody's list: widened blanking, or totals somebody set. Both ends have to take it. */
  get isCustom(): boolean {
    return this.totals !== undefined || this.build.reader.text("picture.blanking") === "widened";
  }

  /** What is sent; undefined when a part of it is not written down. */
  get signal(): Signal | undefined {
    const [width, height, rate, depth] = this.needed.map((each) => (each.known ? each.value : undefined));
    if (width === undefined || height === undefined || rate === undefined || depth === undefined) return undefined;
    const sampling = this.build.reader.text("picture.sampling");
    const blanking = BLANKINGS.find((each) => each === this.build.reader.text("picture.blanking"));
    const { totals } = this;
    return {
      width,
      height,
      rate,
      depth,
      ...(sampling === "4:2:0" || sampling === "4:2:2" || sampling === "4:4:4" ? { sampling } : {}),
      ...(blanking ? { blanking } : {}),
      ...(totals ? { totals } : {}),
    };
  }
}
