import { is, open, rule } from "@plumbmark/kit";

export default rule({
  id: "rigging.rated-hardware",
  states: "Every part of an assembly has a WLL.",
  level: "shall",
  why: "Hardware without a marked working load limit is not made for lifting; nothing tells how much it holds.",
  judged:
    "Every part of every assembly is looked up in the catalogue for its WLL. A `mode` other than straight is for ropes and slings: a shackle, clamp or turnbuckle that is choked round something, or laid in a basket, is pulled across and has no WLL for that.",
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
      for (const { name, part, mode, misused } of assembly.parts) {
        if (misused)
          yield is(here, {
            holds: false,
            says: `${label}: ${name} is no rope and no sling, and \`mode: ${mode}\` is written for it.`,
            mend: "Leave the mode out and let it be pulled in line, or put a sling there. A sling of the catalogue says what it is made of, under `sling`.",
          });
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
    }
  },
});
