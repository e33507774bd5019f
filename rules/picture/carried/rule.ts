import { ctaTiming, gapsOf, type Picture, type Value } from "@plumbmark/calc";
import { atMost, type Build, is, open, type RawCheck, rule } from "@plumbmark/kit";

type Hop = Build["picture"]["hops"][number];

function judgeLink(hop: Hop, picture: Picture): RawCheck {
  if (hop.unstated.length > 0)
    return open(hop, {
      says: `${hop.label}: which signals they have in common cannot be told.`,
      mend: "Write the device the link starts at into the path, and `inputs`, `outputs` or `carries` of its parts in the catalogue.",
      needs: hop.unstated,
    });
  if (hop.common.length === 0)
    return is(hop, {
      holds: false,
      says: `${hop.label} has no signal that both devices and its cable carry.`,
      mend: "Put a converter between them, or take the cable that belongs to both.",
    });
  const result = hop.carries(picture);
  if (!result)
    return open(hop, {
      says: `${hop.label}: this picture needs more than both carry for certain, and less than the most there is.`,
      mend: "State the rate in the catalogue, such as `hdmi-2.1-40`, or ask the makers of both devices and keep their answer with the build.",
      needs: [hop.path],
    });
  return is(hop, {
    holds: result.carried,
    says: `${hop.label}: ${result.why}`,
    mend: result.instead ?? "Send a picture this link carries.",
  });
}

/** A source has to be able to make a raster that is in no list. */
function* judgeSource(hop: Hop | undefined, picture: Picture): Generator<RawCheck> {
  const source = hop?.from;
  if (source?.part?.kind !== "source" || ctaTiming(picture.width, picture.height, picture.rate)) return;
  const custom = source.part.data["custom-rasters"];
  const what = `${picture.width} × ${picture.height} at ${picture.rate} Hz is no standard raster`;
  if (custom === undefined)
    yield open(
      { path: source.path, label: source.name },
      {
        says: `${what}, and whether ${source.name} sends others is not written down.`,
        mend: "State `custom-rasters` of the source in the catalogue, or send a standard raster and place the faces on it.",
        needs: [source.path],
      },
    );
  else
    yield is(
      { path: source.path, label: source.name },
      {
        holds: custom === true,
        says: custom === true ? `${what}; ${source.name} can send it.` : `${what}; ${source.name} sends only those.`,
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
    "For each link from the source to the processor: the best signal both devices and the cable have in common, its pixel clock or rate against the bounds of that signal, SDI only in the rasters SMPTE lists; a raster in no list against what the source can send; and the raster against the largest the processor takes, where that is stated.",
  sources: [
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
    "vesa-cvt-1.2",
    "displayport-1.2",
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
      else yield judgeLink(hop, signal);
    const largest = (half: 1 | 2): Value | undefined => build.processor?.quantities.get(`largest-raster.${half}`);
    for (const [side, measured, allowed] of [
      ["wide", width, largest(1)],
      ["high", height, largest(2)],
    ] as const)
      if (allowed)
        yield atMost(build.picture, {
          measured,
          allowed,
          says: (words) => `The raster is ${words.measured} ${side}; the processor takes ${words.allowed}.`,
          mend: "Send a smaller raster, or take a processor that takes a larger one.",
        });
  },
});
