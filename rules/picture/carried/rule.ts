import { ctaTiming, gapsOf, type PictureSignal } from "@plumbmark/calc";
import { atLeast, atMost, type Build, is, open, type RawCheck, rule, type SourceId } from "@plumbmark/kit";

type Hop = Build["picture"]["hops"][number];

function judgeLink(hop: Hop, picture: PictureSignal): RawCheck {
  if (hop.unstated.length > 0)
    return open(hop, {
      says: `${hop.label}: which signals they have in common cannot be told.`,
      sources: ["part"],
      mend: "Write the device the link starts at into the path, and `inputs`, `outputs` or `carries` of its parts in the catalogue.",
      needs: hop.unstated,
    });
  if (hop.common.length === 0)
    return is(hop, {
      holds: false,
      says: `${hop.label} has no signal that both devices and its cable carry.`,
      sources: ["part"],
      mend: "Put a converter between them, or take the cable that belongs to both.",
    });
  const result = hop.carries(picture);
  if (!result)
    return open(hop, {
      says: `${hop.label}: this picture needs more than both carry for certain, and less than the most there is.`,
      sources: ["hdmi-2.1"],
      mend: "State the rate in the catalogue, such as `hdmi-2.1-40`, or ask the makers of both devices and keep their answer with the build.",
      needs: [hop.path],
    });
  const { link, timing, measured, allowed, sense, why, undecided } = result;
  const sources: readonly SourceId[] = [...new Set([link.source, ...(timing ? [timing.source] : [])])];
  const says = `${hop.label}: ${why}`;
  const mend = result.instead ?? "Send a picture this link carries.";
  if (undecided) return open(hop, { says, mend, needs: [`picture.${undecided}`], sources });
  if (!measured || !allowed) return is(hop, { holds: result.carried, says, mend, sources });
  return (sense === "at least" ? atLeast : atMost)(hop, { measured, allowed, says: () => says, mend, sources });
}

/** Ends of a link that have to be made to take a timing of nobody's list: what sends it, and what it is sent to. */
function* judgeCustom(hop: Hop): Generator<RawCheck> {
  for (const end of [hop.from, hop.to]) {
    if (!end) continue;
    const thing = { path: end.path, label: end.name };
    const custom = end.part?.data["custom-rasters"];
    if (typeof custom !== "boolean")
      yield open(thing, {
        says: `Whether ${end.name} takes custom rasters is not written down; widened blanking and totals of one's own are no timing of a list.`,
        sources: ["detailed-timing", "part"],
        mend: "Look it up in the maker's data sheet, and state `custom-rasters` of the part in the catalogue.",
        needs: [end.path],
      });
    else
      yield is(thing, {
        holds: custom,
        says: `${end.name} ${custom ? "takes" : "takes no"} custom rasters.`,
        sources: ["detailed-timing", "part"],
        mend: "Send a standard raster and place the faces on it.",
      });
  }
}

/** A source has to be able to make a raster that is in no list. */
function* judgeSource(hop: Hop | undefined, picture: PictureSignal): Generator<RawCheck> {
  const source = hop?.from;
  if (source?.part?.kind !== "source" || ctaTiming(picture.width, picture.height, picture.rate)) return;
  // Of a timing of nobody's list both ends are asked anyway.
  if (picture.totals || picture.blanking === "widened") return;
  const custom = source.part.data["custom-rasters"];
  const what = `${picture.width} × ${picture.height} at ${picture.rate} Hz is not in our list of standard rasters (CTA-861)`;
  if (custom === undefined)
    yield open(
      { path: source.path, label: source.name },
      {
        says: `${what}, and whether ${source.name} sends others is not written down.`,
        sources: ["cta-861", "part"],
        mend: "State `custom-rasters` of the source in the catalogue, or send a standard raster and place the faces on it.",
        needs: [source.path],
      },
    );
  else
    yield is(
      { path: source.path, label: source.name },
      {
        holds: custom === true,
        says:
          custom === true
            ? `${what}; ${source.name} can send it.`
            : `${what}; ${source.name} sends standard ones only.`,
        sources: ["cta-861", "part"],
        mend: "Send a standard raster and place the faces on it.",
      },
    );
}

export default rule({
  id: "picture.carried",
  states: "Every link of the picture path carries the raster at its rate and depth.",
  level: "shall",
  why: "A link that cannot carry the raster shows nothing, or the source quietly falls back to another raster and every face is scaled.",
  judged:
    "For each link from the source to the processor: the best signal both devices and the cable have in common, and whether it carries the picture. With a pixel clock: pixels of a line × lines of a frame × frame rate, blanking included, by the timing of CTA-861 where it has the raster, else of VESA CVT; times bits of a pixel ÷ 24 bit, halved in 4:2:0; from 25 MHz up to the bound of the signal. With packets: pixels of a frame with blanking × bits of a pixel × frame rate, against the payload. Where `picture.blanking` is not written, the source may choose standard, reduced or reduced-2 blanking for a raster that CTA-861 does not have: the link holds when all three fit, fails when none does, and is open between. `widened` blanking and `totals` are no timing of a list: of one choice of totals (the least clock in steps of 10 kHz at or over 25 MHz that divides by lines and rate) or of those written, and carried only where both ends of every link say that they take `custom-rasters`; where one does not say, it is open. SDI carries only the rasters SMPTE lists, at the rate listed for 10 bit 4:2:2 and at twice that in 4:4:4; where `picture.sampling` is not written and decides, it is open; on other links a sampling that is not written counts as 4:4:4. Behind SDI, DVI ahead of the converter counts as 4:4:4. Further: a raster in no list against what the source can send, and the raster against the largest the processor takes, where that is stated.",
  sources: [
    "hdmi-1.0",
    "hdmi-1.3",
    "hdmi-2.0",
    "dvi-1.0",
    "dvi-1.0-dual",
    "hdmi-2.1",
    "smpte-st-259",
    "smpte-st-292",
    "smpte-st-424",
    "smpte-st-2081",
    "smpte-st-2082",
    "cta-861",
    "vesa-cvt-1.1",
    "vesa-cvt-1.2",
    "detailed-timing",
    "displayport-1.2",
    "displayport-1.4",
    "hdmi-2.1-correction",
    "part",
  ],
  *checks({ build }) {
    const { hops, signal, needed, width, height } = build.picture;
    if (build.faces.length === 0) return;
    if (hops.length === 0) {
      yield open(build.picture, {
        says: "The build has no picture path written down.",
        mend: "Write the devices and cables from the source to the processor under `picture.path`.",
        needs: ["picture.path"],
      });
      return;
    }
    if (!signal) {
      const gaps = gapsOf(needed);
      yield open(build.picture, {
        says: gaps.map(({ of, what }) => `${of} has no ${what} written down.`).join(" "),
        mend: "Write the raster, the rate and the depth of the picture.",
        needs: gaps.map(({ path }) => path),
      });
      return;
    }
    const scaler = hops.findLastIndex(({ from }) => from?.part?.data.scales === true);
    if (scaler < 0) yield* judgeSource(hops[0], signal);
    for (const [index, hop] of hops.entries())
      if (index < scaler)
        yield open(hop, {
          says: `${hop.label} lies before a converter that changes the raster; what it carries is not written down.`,
          mend: "Leave the raster alone between source and processor.",
          needs: [hop.path],
        });
      else {
        yield judgeLink(hop, signal);
        if (build.picture.isCustom) yield* judgeCustom(hop);
      }
    for (const [side, measured, allowed] of [
      ["wide", width, build.picture.largest(1)],
      ["high", height, build.picture.largest(2)],
    ] as const)
      if (allowed)
        yield atMost(build.picture, {
          measured,
          allowed,
          says: (words) => `The raster is ${words.measured} ${side}; the processor takes ${words.allowed}.`,
          sources: ["part"],
          mend: "Send a smaller raster, or take a processor that takes a larger one.",
        });
  },
});
