import { is, open, rule } from "@plumbmark/kit";

export default rule({
  id: "document.sections",
  states: "The sections the house standard asks for are there and not empty.",
  level: "shall",
  why: "A crew looks for the lift plan and the cautions where they always stand.",
  judged:
    "Headings of the body are compared with the house standard's list; below each something has to stand. Where only a comment stands, what belongs there is still to be written.",
  sources: ["house"],
  *checks({ build }) {
    for (const wanted of build.context.standard.sections) {
      const thing = { path: `sections.${wanted}`, label: build.label };
      const found = build.sections.filter((section) => section.title.toLowerCase() === wanted.toLowerCase());
      const holds = found.map((section) => section.holds);
      const filled = holds.includes("text");
      if (!filled && holds.includes("comment")) {
        yield open(thing, {
          says: `Only a comment stands in the section “${wanted}”.`,
          mend: "Write below its heading what belongs there.",
        });
        continue;
      }
      const says =
        found.length === 0
          ? `There is no section “${wanted}”.`
          : filled
            ? `The section “${wanted}” is there.`
            : `The section “${wanted}” is empty.`;
      yield is(thing, { holds: filled, says, mend: `Write the section “${wanted}”.` });
    }
  },
});
