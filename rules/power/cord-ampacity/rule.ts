import { atMost, type Circuit, type RawCheck, type Run, rule } from "@plumbmark/kit";

type Cord = Run["cords"][number];

/** What a cord carries, and the breaker or fuse it may be on. */
const CORD = ["nec-400.5a1", "nec-400.5a", "nec-240.5", "bs-1362", "part"] as const;
const RATING = ["bs-7671-4f3a", "part"] as const;
const WIRING = ["nec-310.16", "nec-110.14c", "nec-240.4d", "iec-60364-5-52-b", "bs-7671-433.1.204"] as const;

/** The table is from memory: it makes somebody look at the cord, and refuses nothing. */
function* ofRating({ cable, rating, tabled }: Cord): Iterable<RawCheck> {
  if (!rating.known || !tabled) return;
  yield atMost(cable, {
    level: "should",
    measured: rating,
    allowed: tabled,
    says: ({ measured, allowed }) =>
      `${cable.label} is rated ${measured} on its part; a table gives a flexible cord of its size ${allowed}.`,
    mend: `Read rating and size off the jacket of ${cable.part?.name}, and correct its part. Where its maker states so much, for warmer conductors, waive this with the name of whoever looked.`,
    sources: RATING,
  });
}

function* ofCord(run: Run, { cable, current, allows, breaker }: Cord): Iterable<RawCheck> {
  yield atMost(cable, {
    measured: current,
    allowed: allows,
    says: ({ measured, allowed }) => `${cable.label} passes ${measured}; its conductors carry ${allowed}.`,
    mend: "Take a cord of a larger conductor, or put fewer panels on the run.",
    sources: CORD,
  });
  const { protection, circuit } = run;
  const fuse = run.feed.ends[0]?.id === "bs-1363";
  if (protection)
    yield atMost(cable, {
      measured: protection,
      allowed: breaker,
      says: ({ measured, allowed }) =>
        `${cable.label} is ${fuse ? "behind a fuse" : "on a breaker"} of ${measured}; a cord like it may be ${fuse ? "behind" : "on"} ${allowed}.`,
      ...(circuit && !fuse
        ? { turns: { path: `${circuit.path}.breaker`, sense: "at most", asks: "electrician" } as const }
        : {}),
      mend: fuse
        ? "Put a smaller fuse into the plug, or take a cord of a larger conductor."
        : "Take a cord of a larger conductor, or a circuit with a smaller breaker.",
      sources: CORD,
    });
}

const ofWiring = (circuit: Circuit): RawCheck =>
  atMost(circuit, {
    // Wiring that stands in the building is its electrician's work, and an integrator cannot look into the wall.
    level: "should",
    measured: circuit.breaker,
    allowed: circuit.wiringBreaker,
    says: ({ measured, allowed }) => `${circuit.label}: the breaker is ${measured}; its wiring may be on ${allowed}.`,
    turns: { path: `${circuit.path}.breaker`, sense: "at most", asks: "electrician" },
    mend: "Ask the venue's licensed electrician: breaker and wiring do not belong together as written.",
    sources: WIRING,
  });

export default rule({
  id: "power.cord-ampacity",
  states: "Feed and jumper conductors suit the current, and cords and wiring suit the breaker they are on.",
  level: "shall",
  why: "A breaker protects only conductors that are large enough for it. A thin cord behind a large breaker burns before the breaker opens.",
  judged:
    "Every cord by its gauge and its conductors without the equipment ground (ambient 30 °C unless written), a metric cord by the rating on its part, which should be no more than a table gives for its size: the table is from memory, and 60 °C at the conductor. A cord has one ampacity for its gauge; the temperature marked on it softens the ambient factor only. In us practice a cord of 16 AWG or larger may be on 20 A. Behind a BS 1363 plug its fuse is what protects the cords. Building wiring by gauge: the column of its `insulation` with the factors for ambient temperature and circuits that run together, and no more than the column of its `terminals` gives; either is 60 °C where it is not written. A metric size by how it is laid; a ring of 2.5 mm² that carries 20 A may be on 32 A.",
  sources: [...new Set([...CORD, ...RATING, ...WIRING])],
  *checks({ build }) {
    for (const run of build.runs)
      for (const cord of run.cords) {
        yield* ofRating(cord);
        yield* ofCord(run, cord);
      }
    for (const circuit of build.circuits) yield ofWiring(circuit);
  },
});
