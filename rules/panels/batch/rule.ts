import { is, open, rule } from "@plumbmark/kit";

export default rule({
  id: "panels.batch",
  states: "A face is made of one batch.",
  level: "shall",
  why: "Panels of different batches differ in colour and brightness, and no adjustment on site takes that out.",
  judged:
    "The lot of the face is looked up in the stock; all its panels and spares have to be of one batch, and the lot has to be of the face's panel.",
  sources: ["practice"],
  *checks({ build }) {
    for (const face of build.faces) {
      const names = face.lots;
      if (names.length === 0) {
        yield open(face, {
          says: `${face.label} has no lot written down.`,
          mend: "Write the lot its panels come from under `lot`.",
          needs: [`${face.path}.lot`],
        });
        continue;
      }
      const lots = names.map((name) => build.context.stock.lots.get(name));
      const unknown = names.filter((_, index) => !lots[index]?.batch);
      if (unknown.length > 0) {
        yield open(face, {
          says: `${face.label}: the batch of ${unknown.join(", ")} is not in the stock list.`,
          mend: "Enter the lot with its batch in the stock list.",
          needs: [`${face.path}.lot`],
        });
        continue;
      }
      const batches = [...new Set(lots.map((lot) => lot?.batch))];
      // Without columns or rows no cell is known yet, and the lot is to be of the panel that is named.
      const cells = face.kinds.map(({ part }) => part?.name);
      const kinds = cells.length > 0 ? cells : [face.panel?.name];
      const strange = lots.filter((lot) => lot && face.panel && !kinds.includes(lot.panel));
      const says =
        batches.length > 1
          ? `${face.label} mixes the batches ${batches.join(" and ")}.`
          : strange.length > 0
            ? `${face.label} is of ${face.panel?.name}; its lot is of ${strange[0]?.panel}.`
            : `${face.label} is of one batch, ${batches[0]}.`;
      const [other] = strange;
      const isNoPart = other !== undefined && !build.reader.parts.has(other.panel);
      yield is(face, {
        holds: batches.length === 1 && strange.length === 0,
        says,
        mend: isNoPart
          ? `No part is called \`${other.panel}\`: correct the panel of the lot in the stock list.`
          : "Take all panels and spares of the face from one batch.",
      });
    }
  },
});
