import { is, open, rule } from "@plumbmark/kit";

export default rule({
  id: "rigging.rated-hardware",
  states: "Every part of an assembly has a WLL.",
  level: "shall",
  why: "Hardware without a marked working load limit is not made for lifting; nothing tells how much it holds.",
  judged: "Every part of every assembly is looked up in the catalogue for its WLL.",
  sources: ["practice"],
  *checks({ build }) {
    for (const hang of build.bars.flatMap((bar) => bar.hangs)) {
      if (hang.bridled) continue;
      if (!hang.assembly || hang.assembly.length === 0) {
        yield open(hang, { says: `${hang.label} has no assembly written down.`, mend: "Write the parts of the hang in load order under `assembly`.", needs: [`${hang.path}.assembly`] });
        continue;
      }
      for (const { name, part } of hang.assembly) {
        if (!part) yield open(hang, { says: `${hang.label}: the part ${name} is not in the catalogue.`, mend: "Enter it in the catalogue with its WLL.", needs: [`${hang.path}.assembly`] });
        else yield is(hang, { holds: part.quantities.has("wll"), says: part.quantities.has("wll") ? `${hang.label}: ${name} has a WLL.` : `${hang.label}: ${name} has no WLL in ${part.file}.`, mend: "Use hardware marked with a WLL, and enter it in the catalogue." });
      }
    }
  },
});
