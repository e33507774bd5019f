import { is, open, rule } from "@plumbmark/kit";

export default rule({
  id: "data.fed-once",
  states: "Every panel is on exactly one chain.",
  level: "shall",
  why: "A panel that is on no chain stays dark, and one that is on two cannot be cabled as drawn.",
  judged: "Every cell of every face is looked up in the panels of all chains.",
  sources: ["practice"],
  *checks({ build }) {
    const unlisted = build.chains.filter((chain) => !chain.panels);
    const times = new Map<string, string[]>();
    for (const chain of build.chains)
      for (const { name } of chain.panels ?? []) times.set(name, [...(times.get(name) ?? []), chain.name]);
    for (const face of build.faces) {
      const of = (count: (on: number) => boolean): string[] =>
        face.names.filter((name) => count(times.get(name)?.length ?? 0));
      const [never, often] = [of((on) => on === 0), of((on) => on > 1)];
      if (often.length === 0 && never.length > 0 && (unlisted.length > 0 || build.chains.length === 0)) {
        yield open(face, {
          says: `${face.label}: ${never.length} of ${face.names.length} panels are on no chain that is written down.`,
          mend: "Write the panels of every chain in cable order.",
          needs: ["data.chains"],
        });
        continue;
      }
      const wrong = [
        ...never.map((name) => `${name} is on no chain`),
        ...often.map((name) => `${name} is on ${times.get(name)?.join(" and ")}`),
      ];
      yield is(face, {
        holds: wrong.length === 0,
        says:
          wrong.length === 0
            ? `Every panel of face ${face.name} is sent data once.`
            : `${wrong.slice(0, 6).join("; ")}${wrong.length > 6 ? `; and ${wrong.length - 6} more` : ""}.`,
        mend: "Put every panel on exactly one chain.",
      });
    }
  },
});
