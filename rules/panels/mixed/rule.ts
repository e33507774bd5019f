import { missing, pixelPitch, type Value } from "@plumbmark/calc";
import { agrees, type Face, is, open, rule } from "@plumbmark/kit";

type Part = NonNullable<Face["panel"]>;

/** A figure of another kind of panel in the face. */
const ofPart = (part: Part, path: string, kind: "length" | "pixels", what: string): Value =>
  part.quantities.get(path) ??
  missing(kind, {
    path: `${part.name}.${path.split(".")[0]}`,
    file: part.file,
    what,
    of: `The part ${part.name} (${part.file})`,
  });

const measures = (
  face: Face,
  part: Part,
): readonly { readonly what: string; readonly own: Value; readonly other: Value }[] => [
  {
    what: "pitch",
    own: pixelPitch.of({
      w: face.panelValue("size.1", "length", "size"),
      n: face.panelValue("pixels.1", "pixels", "pixels"),
    }),
    other: pixelPitch.of({
      w: ofPart(part, "size.1", "length", "size"),
      n: ofPart(part, "pixels.1", "pixels", "pixels"),
    }),
  },
  { what: "width", own: face.panelValue("size.1", "length", "size"), other: ofPart(part, "size.1", "length", "size") },
  { what: "height", own: face.panelValue("size.2", "length", "size"), other: ofPart(part, "size.2", "length", "size") },
];

export default rule({
  id: "panels.mixed",
  states: "A face is made of one kind of panel, or of kinds that share pitch and size.",
  level: "shall",
  why: "Panels of another pitch show the picture at another scale, and panels of another size do not lock to their neighbours.",
  judged: "Pitch, width and height of every other kind of panel in the face against those of its own.",
  sources: ["practice"],
  *checks({ build }) {
    for (const face of build.faces) {
      const { otherPanels } = face;
      if (otherPanels.length === 0) {
        if (face.panel) yield is(face, { holds: true, says: `${face.label} is made of ${face.panel.name} alone.` });
        else
          yield open(face, {
            says: `${face.label} names no known panel.`,
            mend: `Write a panel of the catalogue under \`${face.path}.panel\`.`,
            needs: [`${face.path}.panel`],
          });
        continue;
      }
      for (const { name, part, path } of otherPanels) {
        const thing = { path, label: `Panel ${name} in face ${face.name}` };
        if (!part) {
          yield open(thing, {
            says: `The panel ${name} is not in the catalogue.`,
            mend: "Enter it in the catalogue.",
            needs: [path],
          });
          continue;
        }
        for (const { what, own, other } of measures(face, part))
          yield agrees(thing, {
            measured: other,
            allowed: own,
            says: ({ measured, allowed }) => `${thing.label} has a ${what} of ${measured}; the face has ${allowed}.`,
            mend: "Make the face of one kind of panel, or split it into faces of one kind each.",
          });
      }
    }
  },
});
