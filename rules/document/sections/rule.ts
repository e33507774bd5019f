import { is, rule } from "@plumbmark/kit";

export default rule({
  id: "document.sections",
  states: "The sections the house standard asks for are there and not empty.",
  level: "shall",
  why: "A crew looks for the lift plan and the cautions where they always stand.",
  judged: "Headings of the body are compared with the house standard's list; below each something has to stand.",
  sources: ["house"],
  *checks({ build }) {
    for (const wanted of build.around.standard.sections) {
      const found = build.sections.filter((section) => section.title.toLowerCase() === wanted.toLowerCase());
      const filled = found.some((section) => section.content.length > 0);
      const says = found.length === 0 ? `There is no section “${wanted}”.` : filled ? `The section “${wanted}” is there.` : `The section “${wanted}” is empty.`;
      yield is(build, { holds: filled, says, mend: `Write the section “${wanted}”.` });
    }
  },
});
