import { is, open, rule } from "@plumbmark/kit";

export default rule({
  id: "power.fed-once",
  states: "Every panel is on exactly one run.",
  level: "shall",
  why: "A panel that is on no run stays dark, and one that is on two cannot be cabled as drawn.",
  judged: "Every cell of every face is looked up in the panels of all runs.",
  sources: ["practice"],
  *checks({ build }) {
    const unlisted = build.runs.filter((run) => !run.panels);
    const times = new Map<string, string[]>();
    for (const run of build.runs)
      for (const { name } of run.panels ?? []) times.set(name, [...(times.get(name) ?? []), run.name]);
    for (const face of build.faces) {
      const of = (count: (on: number) => boolean): string[] =>
        face.names.filter((name) => count(times.get(name)?.length ?? 0));
      const [never, often] = [of((on) => on === 0), of((on) => on > 1)];
      if (often.length === 0 && never.length > 0 && (unlisted.length > 0 || build.runs.length === 0)) {
        yield open(face, {
          says: `${face.label}: ${never.length} of ${face.names.length} panels are on no run that is written down.`,
          mend: "Write the panels of every run in cable order.",
          needs: ["power.runs"],
        });
        continue;
      }
      const wrong = [
        ...never.map((name) => `${name} is on no run`),
        ...often.map((name) => `${name} is on ${times.get(name)?.join(" and ")}`),
      ];
      yield is(face, {
        holds: wrong.length === 0,
        says:
          wrong.length === 0
            ? `Every panel of face ${face.name} is powered once.`
            : `${wrong.slice(0, 6).join("; ")}${wrong.length > 6 ? `; and ${wrong.length - 6} more` : ""}.`,
        mend: "Put every panel on exactly one run.",
      });
    }
  },
});
