import { is, open, rule } from "@plumbmark/kit";

export default rule({
  id: "document.tasks",
  states: "An as-built document has no open task.",
  level: "should",
  why: "As built means done. A box that is still empty is either work that was forgotten or a record nobody can rely on.",
  judged:
    "When the status is `as-built`, every line of a task list in the body has to be ticked. The path of a task is `tasks` and its number in the body.",
  sources: ["practice"],
  *checks({ build }) {
    const status = build.reader.text("status");
    if (status === undefined) {
      yield open(build, {
        says: "Whether the document is as built is not written down.",
        mend: "Write the `status`.",
        needs: ["status"],
      });
      return;
    }
    if (status !== "as-built") return;
    const undone = build.tasks
      .map((task, index) => ({ ...task, path: `tasks.${index + 1}` }))
      .filter(({ done }) => !done);
    if (undone.length === 0)
      yield is({ path: "status", label: build.label }, { holds: true, says: "No task is open." });
    for (const task of undone)
      yield is(
        { path: task.path, label: build.label, place: task.place },
        {
          holds: false,
          says: `The task “${task.text}” is open.`,
          mend: "Do it and tick it, or say in the text why it fell away.",
        },
      );
  },
});
