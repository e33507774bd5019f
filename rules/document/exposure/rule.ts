import { type Build, is, open, type RawCheck, rule } from "@plumbmark/kit";

const ASKED = [
  ["wind", "what the wind does to it and to what holds it"],
  ["ingress", "how its equipment is protected against water and dust"],
  ["residual", "how people are protected by residual devices there"],
] as const;

/** One of the three questions nothing here computes: it holds once a licensed person has answered it, in a file. */
function* judgeStated(build: Build, [name, what]: (typeof ASKED)[number]): Iterable<RawCheck> {
  const path = `exposure-stated.${name}`;
  const thing = { path: "exposure", label: build.label };
  const paper = build.paper(path);
  const mend = `Nothing here computes it: have a licensed person state it, and write \`${path}: {by: …, licence: …, on: …, file: …}\`.`;
  if (!paper || paper.absent.length > 0)
    yield open(thing, {
      says: `The build is not indoors, and ${what} is not stated by anybody licensed${paper ? " in full" : ""}.`,
      mend,
      needs: paper ? paper.absent : [path],
    });
  else if (paper.wrong.length > 0)
    for (const wrong of paper.wrong)
      yield open(thing, {
        says: `The build is not indoors, and who states ${what} does not do it rightly: ${wrong.says}.`,
        mend,
        needs: [wrong.path],
      });
  else
    yield is(thing, {
      holds: true,
      says: `${paper.by?.name} (${paper.licence}) states in ${paper.file}, ${paper.on}, ${what}.`,
    });
}

export default rule({
  id: "document.exposure",
  states: "A build stands indoors, or licensed people state what wind, water and damp do to it.",
  level: "shall",
  why: "A wall that stands safely in a hall is a sail outdoors, and a socket that is harmless on a dry stage kills in the rain.",
  judged:
    "`exposure` says where the build stands. `indoors` holds: everything that is computed here is for that. `sheltered` and `outdoors` leave three questions open that nothing here computes: wind, ingress and residual protection, until each is stated under `exposure-stated` with name, licence, day and a file among the papers of the docs repository.",
  sources: ["practice"],
  *checks({ build }) {
    const exposure = build.reader.text("exposure");
    if (build.faces.length === 0 && exposure === undefined) return;
    if (exposure === "sheltered" || exposure === "outdoors") {
      for (const each of ASKED) yield* judgeStated(build, each);
      return;
    }
    const thing = { path: "exposure", label: build.label };
    if (exposure === "indoors") yield is(thing, { holds: true, says: "The build stands indoors." });
    else
      yield open(thing, {
        says: "Whether the build stands indoors, sheltered or outdoors is not written down.",
        mend: "Write `exposure: indoors`, `sheltered` or `outdoors`. A roof without walls is `sheltered`.",
        needs: ["exposure"],
      });
  },
});
