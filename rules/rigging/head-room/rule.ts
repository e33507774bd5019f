import { headRoom, tabled } from "@plumbmark/calc";
import { atLeast, type Build, rule, written } from "@plumbmark/kit";

/** Whether somebody keeps people from under it. */
const isKeptClear = ({ reader }: Build): boolean =>
  ["how", "by"].every((key) => written(reader.data(`rigging.kept-clear.${key}`)) !== undefined);

export default rule({
  id: "rigging.head-room",
  states: "Trim leaves the head room that is set over where people walk.",
  level: "shall",
  why: "A face that hangs too low is walked into, reached by hands and props, and hit by the next trolley.",
  judged:
    "The trim of every flown face against the least head room, unless the document says that nobody is below, how the floor is kept clear and by whom (rigging.kept-clear).",
  sources: ["ada-307.4", "practice"],
  settings: {
    least: {
      us: headRoom.us,
      iec: headRoom.iec,
      kind: "length",
      stricter: "more",
      describe: "least clear height over where people walk",
    },
  },
  *checks({ build, settings }) {
    if (build.reader.data("rigging.over-people") === false && isKeptClear(build)) return;
    const least = settings.least as number;
    const source = least === headRoom.us ? "ada-307.4" : least === headRoom.iec ? "practice" : "house";
    for (const face of build.faces.filter(({ support }) => support === "flown"))
      yield atLeast(face, {
        measured: build.reader.value(`${face.path}.trim`, "length", "trim", face.label),
        allowed: tabled(least, "length", source, "least head room"),
        sources: [source],
        says: ({ measured, allowed }) =>
          `The lower edge of face ${face.name} hangs at ${measured}; people need ${allowed} to walk under it.`,
        turns: { path: `${face.path}.trim`, sense: "at least" },
        mend: "Raise the trim, or close off the floor below, and write how and by whom under `rigging.kept-clear`.",
      });
  },
});
