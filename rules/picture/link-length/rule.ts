import { atMost, open, rule } from "@plumbmark/kit";

export default rule({
  id: "picture.link-length",
  states: "No picture cable is longer than its signal carries.",
  level: "should",
  why: "A picture cable that is a little too long sparkles, drops out now and then, or shows nothing once it is warm.",
  judged:
    "The cables of each link against the maker's longest length; where none is stated, coax by its loss at half the clock against the 20 dB an SDI receiver allows (40 dB above 3 Gb/s), and passive copper HDMI by what practice trusts it with at this clock.",
  sources: ["part", "smpte-st-292", "smpte-st-2081", "practice"],
  *checks({ build }) {
    const { hops, signal } = build.picture;
    for (const hop of hops) {
      if (hop.cables.length === 0)
        yield open(hop, {
          says: `${hop.label} has no cable written down.`,
          mend: `Write the cable and its length before \`${hop.to.path}\` on the picture path.`,
          needs: ["picture.path"],
        });
      for (const cable of hop.cables) {
        const thing = { path: cable.path, label: cable.name };
        if (!signal && !cable.part?.quantities.has("longest")) {
          yield open(thing, {
            says: `How far ${cable.name} carries cannot be told before the raster, the rate and the depth are written down.`,
            mend: "Write the raster, the rate and the depth of the picture.",
            needs: ["picture"],
          });
          continue;
        }
        yield atMost(thing, {
          measured: hop.length,
          allowed: hop.limit(cable, signal),
          says: ({ measured, allowed }) =>
            `${hop.label} has ${measured} of cable; ${cable.name} carries this picture ${allowed}.`,
          turns: { path: `${cable.path}.length`, sense: "at most" },
          mend: "Move the devices closer, take a cable of lower loss, or go over to fibre.",
        });
      }
    }
  },
});
