import { is, open, rule } from "@plumbmark/kit";

export default rule({
  id: "picture.joined",
  states: "Every two devices of the picture path are joined by a cable.",
  level: "shall",
  why: "A cable that is in no list is in no case, and its length and its signal were never looked at.",
  judged:
    "The picture path in order: between two devices, and between the last of them and the processor, stands at least one cable. A device plugged straight into the next is joined by an adapter, which is entered as a cable with a length of its own.",
  sources: ["practice"],
  *checks({ build }) {
    const { hops } = build.picture;
    if (build.faces.length === 0) return;
    if (hops.length === 0)
      yield open(build.picture, {
        says: "The build has no picture path written down.",
        mend: "Write the devices and cables from the source to the processor under `picture.path`.",
        needs: ["picture.path"],
      });
    for (const hop of hops)
      yield is(hop, {
        holds: hop.cables.length > 0,
        says:
          hop.cables.length > 0
            ? `${hop.label} has ${hop.cables.length === 1 ? "a cable" : `${hop.cables.length} cables`}.`
            : `${hop.label} has no cable.`,
        mend: `Write the cable and its length before \`${hop.to.path}\` on the picture path.`,
      });
  },
});
