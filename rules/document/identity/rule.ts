import { is, open, rule } from "@plumbmark/kit";

export default rule({
  id: "document.identity",
  states: "`build` is unique in the repository.",
  level: "shall",
  why: "Two documents of one name are taken for each other on a ladder.",
  judged: "The key `build` of every document of the repository is compared.",
  sources: ["house"],
  *checks({ build }) {
    const name = build.reader.text("build");
    const where = { path: "build", label: "The build" };
    const others = build.context.sameName.filter((file) => file !== build.context.file);
    if (name === undefined)
      yield open(where, {
        says: "The build has no name written down.",
        mend: "Write `build:` with a name of its own.",
        needs: ["build"],
      });
    else
      yield is(where, {
        holds: others.length === 0,
        says:
          others.length === 0
            ? `No other document is called ${name}.`
            : `${others.join(" and ")} ${others.length === 1 ? "is" : "are"} called ${name}, too.`,
        mend: "Give each build a name of its own.",
      });
  },
});
