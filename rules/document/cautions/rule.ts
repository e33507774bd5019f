import { type Build, is, open, rule } from "@plumbmark/kit";

interface Danger {
  readonly name: string;
  /** Whether the build has it; undefined when that cannot be told. */
  readonly present: (build: Build) => boolean | undefined;
  readonly words: RegExp;
  readonly mend: string;
}

const DANGERS: readonly Danger[] = [
  {
    name: "lifting",
    present: ({ faces, bars }) =>
      bars.length > 0 || faces.some((face) => face.support === "flown")
        ? true
        : faces.length > 0 && faces.every((face) => face.support !== undefined)
          ? false
          : undefined,
    words: /\b(?:lift(?:s|ed|ing)?|rig(?:gers?|ging|ged)|hang(?:s|ing)?|hung|hoist\w*|overhead|suspen\w+)\b/iu,
    mend: "Say under “Cautions” what hangs over whom, that qualified riggers hang it, and who stands for the structure.",
  },
  {
    name: "mains",
    present: ({ faces, circuits, runs }) =>
      circuits.length > 0 ||
      runs.length > 0 ||
      faces.some((face) => face.panel?.data.supply !== undefined || face.panel?.data.power !== undefined)
        ? true
        : undefined,
    words: /\b(?:mains|electric|breaker|outlet|circuit|voltage)/iu,
    mend: "Say under “Cautions” what stays live, and that outlets, breakers and wiring are work for licensed electricians.",
  },
];

export default rule({
  id: "document.cautions",
  states: "A build that lifts or uses mains carries the caution for it.",
  level: "shall",
  why: "Whoever opens the sheet on site may never have met this build. What can hurt them has to stand where they look first.",
  judged:
    "Flown faces and bars make a build that lifts; circuits, runs and panels with a supply make one that uses mains. The section “Cautions” has to speak of each, in words for it.",
  sources: ["practice"],
  *checks({ build }) {
    const text = build.textUnder("Cautions") ?? "";
    const place = build.sections.find(({ title }) => title.toLowerCase() === "cautions")?.place;
    const thing = { path: "cautions", label: build.label, ...(place ? { place } : {}) };
    for (const { name, present, words, mend } of DANGERS) {
      const has = present(build);
      if (has === false) continue;
      const spoken = words.test(text);
      const at = { ...thing, path: `cautions.${name}` };
      if (has === undefined && !spoken)
        yield open(at, {
          says: `Whether the build ${name === "mains" ? "uses mains" : "lifts"} cannot be told, and its cautions do not speak of ${name}.`,
          mend: "Write the faces with their panels and how they are held, and the power.",
          needs: ["faces", ...(name === "mains" ? ["power"] : ["rigging"])],
        });
      else
        yield is(at, {
          holds: spoken,
          says: spoken
            ? `The cautions speak of ${name}.`
            : `The build ${name === "mains" ? "uses mains" : "lifts"}; its cautions do not speak of it.`,
          mend,
        });
    }
  },
});
