import {
  type CarriedSignal,
  carries,
  coaxLength,
  hdmiCopper,
  type Link,
  missing,
  SDI_LOSS,
  type PictureSignal as Signal,
  sum,
  tabled,
  times,
  type Value,
} from "@plumbmark/calc";
import type { Part } from "../../repository/parts.js";
import { partGap, partOptional } from "../reading/reader.js";
import type { PictureDesign } from "./picture-design.js";
import { type Bounds, inCommon } from "./signals.js";

/** A part in the picture path, with its place in the document. */
export interface Station {
  readonly path: string;
  readonly name: string;
  readonly part: Part | undefined;
}

/** Undefined where the part does not list them; a slip in the catalogue is told there. */
function signals(station: Station | undefined, key: "outputs" | "inputs" | "carries"): readonly string[] | undefined {
  const listed = station?.part?.data[key];
  return Array.isArray(listed) ? listed.filter((each) => typeof each === "string") : undefined;
}

/** Whether a picture is carried, and over which signal. */
type OverLink = CarriedSignal & { readonly link: Link };

/** One link of the picture path: a device, the cables behind it, and the next device. */
export class Hop {
  constructor(
    readonly build: PictureDesign,
    readonly from: Station | undefined,
    readonly cables: readonly Station[],
    readonly to: Station,
  ) {}

  get path(): string {
    return (this.cables[0] ?? this.to).path;
  }

  get label(): string {
    return `The link from ${this.from?.name ?? "an unknown source"} to ${this.to.name}`;
  }

  /** Places of the parts that do not say which signals they have. */
  get unstated(): readonly string[] {
    const { from, cables, to } = this;
    return [
      ...(signals(from, "outputs") ? [] : [from?.path ?? "picture.path"]),
      ...cables.filter((each) => !signals(each, "carries")).map(({ path }) => path),
      ...(signals(to, "inputs") ? [] : [to.path]),
    ];
  }

  /** Signals that both devices and every cable between them have. */
  get common(): readonly Bounds[] {
    const { from, cables, to } = this;
    return inCommon([
      signals(from, "outputs") ?? [],
      ...cables.map((each) => signals(each, "carries") ?? []),
      signals(to, "inputs") ?? [],
    ]);
  }

  /** Whether it carries a picture; undefined where it may, and only the makers can say. */
  carries(picture: Signal): OverLink | undefined {
    const over = (link: Link): OverLink => ({ ...carries(link, this.#before(link, picture)), link });
    const tries = this.common.map(({ link }) => over(link));
    const good = tries.find(({ carried }) => carried);
    // Below the floor of the clock no higher rate helps.
    const low = tries.find(({ sense }) => sense === "at least");
    if (good ?? low) return good ?? low;
    const most = this.common.flatMap(({ most: link }) => (link ? [over(link)] : []));
    const told = tries.find(({ undecided }) => undecided !== undefined);
    if (told) return told;
    return most.some(({ carried, undecided }) => carried || undecided) ? undefined : (most[0] ?? tries.at(-1));
  }

  /** DVI carries full colour only: what is 4:2:2 on the SDI behind it becomes so in the converter. */
  #before(link: Link, picture: Signal): Signal {
    const reduced = picture.sampling === "4:2:2" && link.source.startsWith("dvi");
    const thinned = this.build.picture.hops.some(({ common }) => common.some((each) => each.link.sort === "sdi"));
    return reduced && thinned ? { ...picture, sampling: "4:4:4" } : picture;
  }

  /** Cables of the link in one: without a device between them their losses add up. */
  get length(): Value<"length"> {
    const { reader } = this.build;
    return sum(
      this.cables.map(({ path, name }) => reader.value(`${path}.length`, "length", "length", `The cable ${name}`)),
      "length",
      "L",
    );
  }

  /** How long one of its cables may be for a picture; what its maker states is for any. */
  limit(cable: Station, picture: Signal | undefined): Value {
    const { part, name } = cable;
    const stated = partOptional(part, "longest", "length", "longest length stated by the maker");
    if (stated) return stated;
    const carried = picture && this.carries(picture);
    if (part?.data.medium === "coax" && carried?.link.sort === "sdi") return coaxLimit(part, carried);
    const copper =
      part?.data.medium === "copper" && carried?.link.sort === "tmds" && carried.measured?.known
        ? hdmiCopper(carried.measured.value)
        : undefined;
    return (
      copper ??
      missing(
        "length",
        part
          ? partGap(part, "longest", "longest length stated by the maker")
          : { path: cable.path, what: "known part", of: `The cable ${name}` },
      )
    );
  }
}

/** By loss at half the clock. A loss stated at a higher frequency is larger than the one that counts: the safe side. */
function coaxLimit(part: Part, { measured }: CarriedSignal): Value<"length"> {
  const whose = `The part ${part.name} (${part.file})`;
  const rate = measured?.known ? measured.value : undefined;
  const [loss, over, at] = ["decibels", "over", "at"].map((key) => part.quantities.get(`loss.${key}`));
  if (!loss || !over || !at) return missing("length", partGap(part, "loss", "loss with its length and frequency"));
  if (rate === undefined)
    return missing("length", {
      path: "picture.raster",
      what: "raster",
      because: "SDI has no such raster, so how far it carries cannot be told.",
    });
  if (at.value < (rate / 2) * (1 - 1e-9))
    return missing("length", {
      ...partGap(part, "loss", "loss at half the clock"),
      because: `${whose} states its loss at ${at.value / 1e6} MHz; it counts at ${rate / 2e6} MHz.`,
    });
  const allowed =
    rate > 2.97e9
      ? tabled(SDI_LOSS.uhd, "loss", "smpte-st-2081", "loss the receiver allows")
      : tabled(SDI_LOSS.hd, "loss", "smpte-st-292", "loss the receiver allows");
  return coaxLength.of({ A: allowed, a: times(loss, 100 / over.value, `100 m ÷ ${over.value} m`) });
}

/** Links of the picture path in order, the last one into the processor; none when no path is written. */
export function hopsOf(build: PictureDesign): readonly Hop[] {
  const { reader } = build;
  const written = reader.data("picture.path");
  if (!Array.isArray(written) || written.length === 0) return [];
  const stations = written.map((_, index): Station => {
    const path = `picture.path.${index + 1}`;
    const name = reader.text(`${path}.part`) ?? "an unnamed part";
    return { path, name, part: reader.parts.get(name) };
  });
  const hops: Hop[] = [];
  let from: Station | undefined;
  let cables: Station[] = [];
  for (const [index, station] of stations.entries()) {
    if (station.part?.kind === "video-cable") cables.push(station);
    else {
      if (index > 0) hops.push(new Hop(build, from, cables, station));
      from = station;
      cables = [];
    }
  }
  if (from?.part?.kind === "processor") return hops;
  const name = reader.text("data.processor.part") ?? "the processor";
  return [...hops, new Hop(build, from, cables, { path: "data.processor", name, part: build.processor })];
}
