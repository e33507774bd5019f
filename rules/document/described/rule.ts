import { type Build, is, open, type RawCheck, rule } from "@plumbmark/kit";

type Face = Build["faces"][number];

/** What of a face the document says nothing of. */
function missingOf(face: Face, build: Build): readonly (readonly [what: string, where: string])[] {
  const { name, path, support } = face;
  const { bars, runs, chains, picture, reader } = build;
  const on = (lines: readonly { readonly panels: readonly { readonly face: Face }[] | undefined }[]): boolean =>
    lines.some(({ panels }) => panels?.some((panel) => panel.face === face));
  const held =
    support === "flown"
      ? bars.some(({ carries }) => carries.some((carried) => carried.face === face))
      : support === "wall"
        ? reader.has(`${path}.fixings`)
        : reader.has(`${path}.base`);
  const where = support === "flown" ? "rigging.bars" : support === "wall" ? `${path}.fixings` : `${path}.base`;
  return [
    ...(held ? [] : [["what holds it", where] as const]),
    ...(on(runs) ? [] : [["what powers it", "power.runs"] as const]),
    ...(on(chains) ? [] : [["what drives it", "data.chains"] as const]),
    ...(picture.placements.some((each) => each.face.name === name && each.isPlaced)
      ? []
      : [["where it is on the raster", `picture.at.${name}`] as const]),
  ];
}

function judgeFace(face: Face, build: Build): RawCheck {
  const unsaid = missingOf(face, build);
  if (unsaid.length === 0) return is(face, { holds: true, says: `${face.label} is held, powered, driven and placed.` });
  return open(face, {
    says: `${face.label}: ${unsaid.map(([what]) => what).join(", ")} is not written down.`,
    mend: "Write it: what is not described is not judged.",
    needs: unsaid.map(([, where]) => where),
  });
}

export default rule({
  id: "document.described",
  states:
    "A document for building has faces, each held, powered, driven and placed, and days on site; where venues are surveyed, a venue.",
  level: "shall",
  why: "A document that says nothing has nothing wrong with it. It is taken to the site all the same.",
  judged:
    "In a document that is no draft: there is at least one face; each face is carried by a bar, stands on a base or has fixings; it has panels on a run and on a chain, and a place on the raster; the days on site are written; and, in a repository with surveys, so is the venue.",
  sources: ["house"],
  *checks({ build }) {
    if (build.reader.text("status") === "draft") return;
    const thing = { path: "status", label: build.label };
    if (build.faces.length === 0)
      yield open(thing, {
        says: "The document describes no face.",
        mend: "Write the faces, and what holds, powers and drives them; or keep it as a `draft`.",
        needs: ["faces"],
      });
    for (const face of build.faces) yield judgeFace(face, build);
    if (build.stay === undefined)
      yield open(thing, {
        says: "The document has no days on site.",
        mend: "Write them under `on-site`: `2027-03-05 to 2027-03-08`, or `from 2027-03-05`.",
        needs: ["on-site"],
      });
    else yield is(thing, { holds: true, says: `The build is on site from ${build.stay.from}.` });
    if (build.venue.text === undefined && build.context.surveys.size > 0)
      yield open(thing, {
        says: "The document does not say in which venue the build stands, and venues are surveyed here.",
        mend: "Write the name of a survey under `venue`, or in words where it is.",
        needs: ["venue"],
      });
  },
});
