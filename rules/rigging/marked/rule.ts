import { tabled } from "@plumbmark/calc";
import { atMost, type Bar, type Build, is, open, type RawCheck, rule, written } from "@plumbmark/kit";

type Strand = Bar["hangs"][number]["strands"][number]["assembly"];
type Each = Strand["parts"][number];

/** A file, and no number of one. */
const FILE = /\.(?:pdf|txt|md|png|jpe?g)$/iu;

function* certificate(bar: Bar, { name, part, path }: Each, build: Build): Iterable<RawCheck> {
  const paper = written(part?.data.certificate);
  const { papers } = build.context;
  if (paper === undefined)
    yield open(bar, {
      says: `${bar.label}: no certificate or tag of rope ${name} is written down.`,
      mend: `Write the number on its tag, or its certificate, under \`certificate\` of ${name} in ${part?.file}. A rope without either is taken out of service.`,
      needs: [`${path}.certificate`],
      sources: ["wac-296-24-29425", "practice"],
    });
  else if (FILE.test(paper) && !papers)
    yield open(bar, {
      says: `${bar.label}: whether the certificate of rope ${name}, ${paper}, is there cannot be told: nobody looked for papers.`,
      mend: "Inspect it in its repository.",
      needs: [`${path}.certificate`],
      sources: ["wac-296-24-29425", "practice"],
    });
  else if (FILE.test(paper) && papers)
    yield is(bar, {
      holds: papers.includes(paper.replace(/^\.\//u, "")),
      says: `${bar.label}: the certificate of rope ${name} is ${paper}, ${papers.includes(paper.replace(/^\.\//u, "")) ? "among" : "which is not among"} the papers of the repository.`,
      mend: "Put the file where `papers` of the house standard says they are kept, or write the number on the rope's tag.",
      sources: ["wac-296-24-29425", "practice"],
    });
  else
    yield is(bar, {
      holds: true,
      says: `${bar.label}: the certificate or tag of rope ${name} is ${paper}.`,
      sources: ["wac-296-24-29425", "practice"],
    });
}

function* marking(bar: Bar, assembly: Strand, each: Each): Iterable<RawCheck> {
  const { name, part, path } = each;
  const found = assembly.markingOf(each);
  if (!found) {
    yield open(bar, {
      says: `${bar.label}: what is marked on ${name} is not written down.`,
      mend: `Read it off the piece and write it under \`marking\` of ${name} in ${part?.file}. What has no marking is taken out of service.`,
      needs: [`${path}.marking`],
    });
    return;
  }
  if (found.load === undefined) {
    yield is(bar, { holds: true, says: `${bar.label}: ${name} is marked ${found.text}.` });
    return;
  }
  yield atMost(bar, {
    measured: assembly.markedWll(each),
    allowed: tabled(found.load, "mass", "part", `the marking ${found.text}`),
    says: ({ measured, allowed }) =>
      `${bar.label}: ${name} has a WLL of ${measured} in the catalogue; it is marked ${found.text}, ${allowed}.`,
    mend: `Write the load that is marked under \`wll\` of ${name} in ${part?.file}, or its marking as it reads: in us practice T is a short ton, and t a tonne.`,
  });
}

/** Each part once, in whichever hang it is first. */
function* ofBar(bar: Bar, build: Build): Iterable<RawCheck> {
  const seen = new Set<string>();
  const { second } = bar;
  const assemblies = [
    ...bar.hangs.flatMap(({ strands }) => strands.map(({ assembly }) => assembly)),
    ...(second ? [second.assembly] : []),
  ];
  for (const assembly of assemblies)
    for (const each of assembly.parts) {
      if (seen.has(each.name)) continue;
      seen.add(each.name);
      if (each.part?.kind === "rope") yield* certificate(bar, each, build);
      else if (each.part?.kind === "hardware") yield* marking(bar, assembly, each);
    }
}

export default rule({
  id: "rigging.marked",
  states: "Hardware carries a marking that bears its WLL out, and a rope a tag or certificate.",
  level: "shall",
  why: "Whoever rigs it has nothing but the marking to go by. A clamp that is stamped 250 and entered as 1000 is loaded fourfold by the book.",
  judged:
    "Every part of every hang, leg and second suspension once for each bar. Hardware has its `marking` in the catalogue, as it is stamped or written on its tag; where a load is in it, the one after `WLL`, else the last, the WLL of the catalogue is not above that. T and TON are short tons in us practice and tonnes in iec practice, `t` is a tonne, and kN are taken at standard gravity. A marking without a load, a size or a grade, tells no more than that it is marked. A rope names its tag or certificate under `certificate`; a file has to be among the papers of the repository. Nothing written, or a placeholder, is open.",
  sources: ["asme-b30.26-marking", "wac-296-24-29425", "practice"],
  *checks({ build }) {
    for (const bar of build.bars) yield* ofBar(bar, build);
  },
});
