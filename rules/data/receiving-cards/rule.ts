import { is, open, rule, written } from "@plumbmark/kit";

export default rule({
  id: "data.receiving-cards",
  states: "Panels of several kinds on one chain have the same receiving card.",
  level: "shall",
  why: "Cards of two makes on one chain do not pass on each other's data: the picture ends where the kind changes, and that is found out when everything hangs.",
  judged:
    "The kinds of panel on each chain; where there are several, the receiving card of each, `chip-sets` in the catalogue, letter case, blanks, points and hyphens aside. One that is not written is open. A chain of one kind is not asked.",
  sources: ["practice"],
  *checks({ build }) {
    for (const chain of build.chains) {
      const parts = [...new Set((chain.panels ?? []).flatMap(({ part }) => part ?? []))];
      if (parts.length < 2) continue;
      const cards = parts.map(({ data }) => written(data["chip-sets"]));
      const kinds = new Set(cards.map((card) => card?.toLowerCase().replace(/[\s_.-]+/gu, "")));
      const without = parts.filter((_, index) => cards[index] === undefined);
      if (without.length > 0)
        yield open(chain, {
          says: `${chain.label} has ${parts.map(({ name }) => name).join(" and ")} on it; the receiving card of ${without.map(({ name }) => name).join(" and ")} is not written down.`,
          mend: "Look it up in the makers' data sheets, and write it under `chip-sets` of the panels; or give each kind a chain of its own.",
          needs: [`${chain.path}.panels`],
        });
      else
        yield is(chain, {
          holds: kinds.size === 1,
          says:
            kinds.size === 1
              ? `${chain.label} has panels of one receiving card, ${cards[0]}.`
              : `${chain.label} mixes the receiving cards ${[...new Set(cards)].join(" and ")}.`,
          mend: "Give each kind of panel a chain of its own.",
        });
    }
  },
});
