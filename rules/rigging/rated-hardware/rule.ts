import { is, open, rule } from "@plumbmark/kit";

export default rule({
  id: "rigging.rated-hardware",
  states: "Every part of an assembly has a WLL.",
  level: "shall",
  why: "Hardware without a marked working load limit is not made for lifting; nothing tells how much it holds.",
  judged: "Every part of every assembly is looked up in the catalogue for its WLL.",
  sources: ["asme-b30.26", "practice"],
  *checks({ build }) {
    for (const { assembly, path, label } of build.bars.flatMap((bar) => bar.hangs).flatMap((hang) => hang.strands)) {
      const here = { path, label };
      if (assembly.parts.length === 0)
        yield open(here, {
          says: `${label} has no assembly written down.`,
          mend: "Write the parts in load order under `assembly`.",
          needs: [`${path}.assembly`],
        });
      for (const { name, part } of assembly.parts)
        if (!part)
          yield open(here, {
            says: `${label}: the part ${name} is not in the catalogue.`,
            mend: "Enter it in the catalogue with its WLL.",
            needs: [`${path}.assembly`],
          });
        else
          yield is(here, {
            holds: part.quantities.has("wll"),
            says: part.quantities.has("wll")
              ? `${label}: ${name} has a WLL.`
              : `${label}: ${name} has no WLL in ${part.file}.`,
            mend: "Use hardware marked with a WLL, and enter it in the catalogue.",
          });
    }
  },
});
