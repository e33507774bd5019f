import {
  bitsPerPixel,
  counted,
  FRAME_OVERHEAD,
  FRAME_PAYLOAD,
  greatestOf,
  type Kind,
  type Known,
  leastOf,
  missing,
  panelPixels,
  portBound,
  portCapacity,
  STATED_AT,
  sum,
  tabled,
  type Value,
} from "@plumbmark/calc";
import { Cable } from "../cabling/cable.js";
import { type Panel, panelsAt } from "../faces/panels.js";
import { lengthsOwned } from "../reading/lengths-owned.js";
import { once } from "../reading/once.js";
import { partGap, partValue } from "../reading/reader.js";
import { type FeedWay, neededFor } from "../venue/needed.js";
import type { DataDesign } from "./data-design.js";

/** Pixels of a port by its maker, with the depth of a pixel and the frame rate they are stated for. */
interface PortFigure {
  readonly n: Value<"pixels">;
  readonly b0: Value<"colour-depth">;
  readonly f0: Value<"frequency">;
}

/** Panels sent data one after another from one processor port. */
export class Chain {
  /** Its place in the document: `data.chains.D1`. */
  readonly path: string;
  /** What messages call it: `Chain D1`. */
  readonly label: string;
  /** Its panels, in cable order. */
  readonly panels: readonly Panel[] | undefined;
  /** The cable from the processor to the first panel. */
  readonly feed: Cable;
  /** The cable from one panel to the next. */
  readonly jumper: Cable;
  /** The cable that closes the loop, where one is written. */
  readonly closing: Cable | undefined;

  constructor(
    /** The build it belongs to. */
    readonly build: DataDesign,
    /** Its name in the document. */
    readonly name: string,
  ) {
    this.path = `data.chains.${name}`;
    this.label = `Chain ${name}`;
    this.panels = panelsAt(build, `${this.path}.panels`);
    this.feed = new Cable(
      build.reader,
      `${this.path}.feed`,
      `The feed of chain ${name}`,
      "data-cable",
      () => this.reachOf(this.feedWay),
      () => lengthsOwned(build, `${this.path}.feed`),
    );
    this.jumper = new Cable(build.reader, `${this.path}.jumper`, `The jumper of chain ${name}`, "data-cable");
    const back = `${this.path}.return`;
    if (build.reader.has(back))
      this.closing = new Cable(
        build.reader,
        back,
        `The return of chain ${name}`,
        "data-cable",
        () => this.reachOf(this.returnWay),
        () => lengthsOwned(build, back),
      );
  }

  /** The way its feed takes, where the venue was surveyed. */
  get feedWay(): FeedWay | undefined {
    return once(this, "feed way", () => this.build.wayOfChain(this.panels?.[0]));
  }

  /** The way of the cable that closes its loop. */
  get returnWay(): FeedWay | undefined {
    return once(this, "return way", () => this.build.wayOfChain(this.panels?.at(-1)));
  }

  /** Length a cable needs for such a way; undefined where only a straight line is known, or nothing. */
  readonly reachOf = (way: FeedWay | undefined): Value<"length"> | undefined =>
    way && way.how !== "straight" ? neededFor(this.build, "data.feed-reach", way.length) : undefined;

  /** The port it is on; undefined when it is not written down. */
  get port(): number | undefined {
    return this.#portAt("port");
  }

  /** The port the loop comes back to. */
  get backUpPort(): number | undefined {
    return this.#portAt("back-up-port");
  }

  /** How many panels it has. */
  get panelCount(): Value<"count"> {
    return this.panels ? counted(this.panels.length, `panels of chain ${this.name}`) : this.#unlisted("count");
  }

  /** Pixels of all its panels. */
  get pixels(): Value<"pixels"> {
    if (!this.panels) return this.#unlisted("pixels");
    return sum(
      this.panels.map(({ face, part }) =>
        panelPixels.of({
          n: counted(1, "one panel"),
          x: partValue(part, "pixels.1", "pixels", "pixels", face.named),
          y: partValue(part, "pixels.2", "pixels", "pixels", face.named),
        } as never),
      ),
      "pixels",
      "N",
    );
  }

  /** What the maker states of a port: one figure at 60 Hz and 24 bit, or several, each with its rate and depth. */
  get #figures(): readonly PortFigure[] {
    const listed = this.build.processor?.data["port-pixels"];
    if (!Array.isArray(listed))
      return [
        {
          n: this.#processor("port-pixels", "pixels", "pixels of a port"),
          b0: tabled(STATED_AT.bitsPerPixel, "colour-depth", "part", "depth a port's figure is stated for"),
          f0: tabled(STATED_AT.rate, "frequency", "part", "rate a port's figure is stated for"),
        },
      ];
    return listed.map((_, index) => {
      const at = `port-pixels.${index + 1}`;
      return {
        n: this.#processor(`${at}.pixels`, "pixels", "pixels of a port"),
        b0: bitsPerPixel.of({
          d: this.#processor(`${at}.depth`, "colour-depth", "depth a port's figure is stated for"),
        }),
        f0: this.#processor(`${at}.rate`, "frequency", "rate a port's figure is stated for"),
      };
    });
  }

  /** Each of the maker's figures taken to the rate and depth of the picture. */
  get #scaled(): readonly { readonly figure: PortFigure; readonly there: Value<"pixels"> }[] {
    const f = this.build.reader.value("picture.rate", "frequency", "frame rate", "The picture");
    return this.#figures.map((figure) => ({ figure, there: portCapacity.of({ ...figure, b: this.#bits(), f }) }));
  }

  /**
   * What the maker's figures allow at the rate and depth of the picture: scaled down where it is faster or deeper, and
   * never more than a figure itself, for that fewer bits leave room for more pixels is nobody's word.
   */
  get stated(): Value<"pixels"> {
    const allowed = this.#scaled.map(({ figure, there }) =>
      there.known && figure.n.known && there.value > figure.n.value ? leastOf([figure.n, there], "pixels", "N") : there,
    );
    return allowed.length === 1 ? (allowed[0] as Value<"pixels">) : greatestOf(allowed, "pixels", "N");
  }

  /** The same with figures scaled up, too: between the two only the maker can tell. */
  get scaledUp(): Value<"pixels"> {
    const scaled = this.#scaled.map(({ there }) => there);
    return scaled.length === 1 ? (scaled[0] as Value<"pixels">) : greatestOf(scaled, "pixels", "N");
  }

  /** What the link itself can carry, whatever its maker says. */
  get bound(): Value<"pixels"> {
    const share: Known = tabled(
      FRAME_PAYLOAD / (FRAME_PAYLOAD + FRAME_OVERHEAD),
      "ratio",
      "ieee-802.3",
      "payload of a full frame",
    );
    return portBound.of({
      r: this.#processor("port-rate", "data-rate", "rate of a port"),
      η: share,
      b: this.#bits(),
      f: this.build.reader.value("picture.rate", "frequency", "frame rate", "The picture"),
    });
  }

  /** Most panels on one chain by the processor and by each panel; whichever is stated binds. */
  get panelLimit(): Value<"count"> {
    const { processor } = this.build;
    const limits = [
      processor?.data["panels-per-chain"],
      ...(this.panels ?? []).map(({ part }) => part?.data["chain-limit"]),
    ].filter((each): each is number => typeof each === "number");
    if (limits.length === 0)
      return missing(
        "count",
        processor
          ? partGap(processor, "panels-per-chain", "most panels on one chain")
          : { path: "data.processor.part", what: "most panels on one chain", of: "The processor" },
      );
    return tabled(Math.min(...limits), "count", "part", "most panels on one chain");
  }

  #portAt(key: string): number | undefined {
    const port = this.build.reader.data(`${this.path}.${key}`);
    return typeof port === "number" ? port : undefined;
  }

  #bits(): Value<"colour-depth"> {
    return bitsPerPixel.of({
      d: this.build.reader.value("picture.depth", "colour-depth", "bit depth of a colour", "The picture"),
    });
  }

  #processor<const K extends Kind>(path: string, kind: K, what: string): Value<K> {
    if (this.build.reader.text("data.processor.part") === undefined)
      return missing(kind, { path: "data.processor", what: "processor", of: "The build" });
    return partValue(this.build.processor, path, kind, what, { label: "The processor", path: "data.processor.part" });
  }

  #unlisted<const K extends "count" | "pixels">(kind: K): Value<K> {
    return missing(kind, { path: `${this.path}.panels`, what: "panels in cable order", of: this.label });
  }
}

/** What the processor is asked to do over all its chains. */
export class ProcessorLoad {
  readonly path = "data.processor";
  readonly label = "The processor";

  constructor(readonly build: DataDesign) {}

  /** Ports taken, outward and closing, each use with the chain it is of; undefined when a chain names no port. */
  get uses(): readonly { readonly port: number; readonly chain: Chain }[] | undefined {
    const uses = this.build.chains.flatMap((chain) => [chain.port, chain.backUpPort].map((port) => ({ port, chain })));
    if (this.build.chains.some((chain) => chain.port === undefined)) return undefined;
    return uses.filter((use): use is { port: number; chain: Chain } => use.port !== undefined);
  }

  get ports(): Value<"count"> {
    return this.#of("ports", "count", "number of ports");
  }

  get pixels(): Value<"pixels"> {
    return this.#of("pixels", "pixels", "pixels in all");
  }

  get pixelsAsked(): Value<"pixels"> {
    return sum(
      this.build.chains.map((chain) => chain.pixels),
      "pixels",
      "N",
    );
  }

  #of<const K extends "count" | "pixels">(key: string, kind: K, what: string): Value<K> {
    const { processor, reader } = this.build;
    const plain = processor?.data[key];
    if (kind === "count" && typeof plain === "number") return tabled(plain, kind, "part", what);
    if (reader.text("data.processor.part") === undefined)
      return missing(kind, { path: "data.processor", what: "processor", of: "The build" });
    return partValue(processor, key, kind, what, { label: this.label, path: "data.processor.part" });
  }
}
