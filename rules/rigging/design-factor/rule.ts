import { tabled, times, type Value } from "@plumbmark/calc";
import { atLeast, atMost, type Build, type Hang, is, open, type RawCheck, rule } from "@plumbmark/kit";

type Strand = Hang["strands"][number];

/** What the strand carries at worst, and the words for the case. */
function worstOf(hang: Hang, { load }: Strand): { readonly carried: Value; readonly when: string } {
  const { reaction, when } = hang.worst;
  return { carried: load(reaction), when };
}

/** DGUV 215-313: over people at most half the maker's WLL, which doubles the coefficient of every kind of part. */
function half({ path, label, assembly }: Strand, carried: Value, when: string): RawCheck {
  return atMost(
    { path, label },
    {
      measured: carried,
      allowed: times(assembly.weakest, 0.5, "½"),
      says: (words) =>
        `${label} carries ${words.measured}${when}; half the WLL of its weakest part is ${words.allowed}, the most over people.`,
      mend: "Add a hang, or take hardware of a higher WLL.",
    },
  );
}

function factor(strand: Strand, carried: Value, when: string, required: number, people: string): RawCheck {
  const { path, label, assembly } = strand;
  return atLeast(
    { path, label },
    {
      measured: assembly.designFactor(carried),
      allowed: tabled(required, "factor", "house", `design factor${people || " of a static load"}`),
      says: (words) =>
        `${label} breaks at ${words.measured} times what it carries${when}; ${words.allowed} times is the least${people}.`,
      mend: "Add a hang, or take hardware of a higher breaking strength.",
    },
  );
}

/** Whatever is marked on it, a part carries no more than its breaking strength bears out. */
function* marked({ assembly, label }: Strand): Iterable<RawCheck> {
  for (const part of assembly.parts) {
    const [wll, borne] = [assembly.markedWll(part), assembly.borneOut(part)];
    if (wll.known && borne.known && wll.value > borne.value && !assembly.borneOutByPrint(part))
      yield open(
        { path: part.path, label },
        {
          says: `${label}: ${part.name} is entered with a WLL above a fifth of its breaking strength. American textile slings are made to a factor of 5 as far as is known here, and no print of that is at hand.`,
          mend: "Compare WLL and breaking strength with the tag and the certificate. If the catalogue is right, ask the maker which factor the sling is made to.",
          needs: [part.path],
        },
      );
    else if (wll.known && borne.known)
      yield atMost(
        { path: part.path, label },
        {
          measured: wll,
          allowed: borne,
          says: (words) =>
            `${label}: ${part.name} is entered with a WLL of ${words.measured}; from its breaking strength, its termination and the standard's factor it can have ${words.allowed} at most.`,
          mend: "Correct WLL or breaking strength in the catalogue from the marking and the certificate; if they are right, the part is out of order.",
        },
      );
  }
}

function* ofHang(hang: Hang, setting: number | "half-wll", people: string, known: number): Iterable<RawCheck> {
  for (const strand of hang.strands) {
    yield* marked(strand);
    const { carried, when } = worstOf(hang, strand);
    if (carried.known && carried.value === 0)
      yield is(strand, { holds: true, says: `${strand.label} carries nothing.` });
    else if (setting === "half-wll") {
      yield half(strand, carried, when);
      // Half the WLL is taken on trust where no breaking strength is known; where one is, it is held to.
      if (strand.assembly.designFactor(carried).known) yield factor(strand, carried, when, known, people);
    } else yield factor(strand, carried, when, setting, people);
  }
}

const needed = (build: Build): boolean => build.bars.some((bar) => bar.hangs.length > 0);

export default rule({
  id: "rigging.design-factor",
  states:
    "Breaking strength is at least the design factor that is set times the load; over people the factor is higher, or no more than half the WLL is used.",
  level: "shall",
  why: "Wear, knocks, a crooked pull and a jerk of the hoist eat into the strength of hardware. Over people nothing of that may end in a fall.",
  judged:
    "The least breaking strength of every assembly, a rope's reduced by its termination, divided by what it carries, against the factor for a load with or without people below; with `half-wll` instead what it carries against half the least WLL. What the hang carries is its worst over all balances of the bar (rigging.slack-hang). A factor that is known is always held against the one of a static load, also with `half-wll`. A sling that is choked or in a basket has its share of WLL and breaking strength by a table for wire rope, chain and textile. A WLL above breaking strength × termination ÷ the least factor of such a part (wire rope 5, chain 4, textile 7, other metal 4) is a fault of the part. For textile slings in American practice 5 is from memory: above that it is open.",
  sources: ["wac-296-24-29401", "ec-2006-42-4.1.2.5", "dguv-215-313-2.1", "house"],
  settings: {
    static: { us: 5, iec: 5, stricter: "more", describe: "least design factor of a static load with nobody below" },
    "over-people": { us: 8, iec: 10, stricter: "more", describe: "least design factor over people" },
    "half-wll": {
      us: false,
      iec: true,
      describe: "over people at most half the maker's WLL instead, which doubles the coefficient of every kind of part",
    },
  },
  *checks({ build, settings }) {
    if (!needed(build)) return;
    const over = build.reader.data("rigging.over-people");
    const here = { path: "rigging", label: "The rigging" };
    if (typeof over !== "boolean") {
      yield open(here, {
        says: "Whether people are below is not written down, so the design factor is not known.",
        mend: "Write `over-people: true` or `over-people: false` under `rigging`.",
        needs: ["rigging.over-people"],
      });
      return;
    }
    const setting =
      over && settings["half-wll"] === true ? "half-wll" : Number(settings[over ? "over-people" : "static"]);
    for (const hang of build.bars.flatMap((bar) => bar.hangs))
      yield* ofHang(hang, setting, over ? " over people" : "", Number(settings.static));
  },
});
