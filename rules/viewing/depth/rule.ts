import { atLeast, missing, rule } from "@plumbmark/kit";

export default rule({
  id: "viewing.depth",
  states: "The driver of every panel has at least the bits of the picture.",
  level: "should",
  why: "A picture of 10 bit on a driver of 8 is sent with a quarter more data and shown with a quarter of its greys: bands in every fade.",
  judged:
    "The bits of the driver, `depth-bits` of every kind of panel in the face, against the bits of a colour of the picture. That a driver of as many bits shows every step is the least that can be said: where it dims by time the dark steps need more.",
  sources: ["part", "practice"],
  *checks({ build }) {
    for (const face of build.faces)
      for (const { part } of face.kinds) {
        if (!part) continue;
        const own = part.quantities.get("depth-bits");
        yield atLeast(face, {
          measured:
            own ??
            missing("colour-depth", {
              path: `${part.name}.depth-bits`,
              file: part.file,
              what: "bit depth of the driver",
              of: `The part ${part.name} (${part.file})`,
            }),
          allowed: build.picture.depth,
          says: ({ measured, allowed }) =>
            `${face.label}: the driver of ${part.name} has ${measured}; the picture has ${allowed}.`,
          mend: "Send the picture with the bits the panel shows, or take a panel with a deeper driver.",
        });
      }
  },
});
