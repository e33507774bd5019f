import { CABLE_ALLOWANCE } from "@plumbmark/calc";
import { atLeast, type Cable, open, type RawCheck, type Value } from "@plumbmark/kit";

/** A cable whose way is judged: as it is written, or the shortest that reaches. */
interface Reaching {
  readonly cable: Cable;
  readonly way: {
    readonly how: "measured" | "led" | "straight";
    readonly length: Value<"length">;
    readonly from: string;
    readonly to: string;
  };
  /** What the cable has to be, with the house's allowance; undefined where only the straight line is known. */
  readonly needed: Value<"length"> | undefined;
}

/** What the house allows for bends, ties and both ends of a cable over its way. */
export const reachSettings = {
  share: {
    us: CABLE_ALLOWANCE.share,
    iec: CABLE_ALLOWANCE.share,
    kind: "ratio",
    stricter: "more",
    describe: "allowance for bends and ties, as a share of the way",
  },
  ends: {
    us: CABLE_ALLOWANCE.ends,
    iec: CABLE_ALLOWANCE.ends,
    kind: "length",
    stricter: "more",
    describe: "allowance for both ends",
  },
} as const;

/** How the way of a cable is found, in the words of the rules that judge it. */
export const WAY =
  "× (1 + `share`) + `ends` for bends, ties and both ends. A way is known where it was measured, or where somebody looked and led it by places, straight from each to the next. To a face under a structure of the survey it goes to the end of that which is nearer, along it to the bar, down to the middle of the bar and along that to the middle of the panel's column; to any other face it goes to the place the face says it stands at. A way that is neither is the straight line: a cable that is shorter fails, and no other passes by it. A feed may leave its length out where the way is known and its part says in which `lengths` it comes: the shortest that reaches is taken, counted, and used for";

const MEASURE = "Measure the way, or lead it by places: say `via` and who looked, under `routes` of the survey.";

/** Of a way that nobody measured only the straight line is known: it can be too long for a cable, and shows no more. */
function* straight({ cable, way }: Reaching): Iterable<RawCheck> {
  const thing = { path: `${cable.path}.length`, label: cable.label };
  const { length } = cable;
  if (!way.length.known || !length.known) {
    yield atLeast(thing, {
      measured: length,
      allowed: way.length,
      says: () => `${cable.label} reaches.`,
      mend: MEASURE,
    });
    return;
  }
  if (length.value < way.length.value - 1e-9)
    yield atLeast(thing, {
      measured: length,
      allowed: way.length,
      says: ({ measured, allowed }) =>
        `${cable.label} is ${measured}; in a straight line from ${way.from} to ${way.to} it is already ${allowed}.`,
      turns: { path: `${cable.path}.length`, sense: "at least" },
      mend: "Take a longer cable.",
    });
  else
    yield open(thing, {
      says: `${cable.label} is longer than the straight line from ${way.from} to ${way.to}, and whether it is as long as the way nobody has measured.`,
      mend: MEASURE,
      needs: ["routes"],
    });
}

/** Whether a cable is as long as its way, with what the house allows for bends, ties and ends. */
export function* reaches(reaching: Reaching): Iterable<RawCheck> {
  const { cable, way, needed } = reaching;
  if (!cable.written) return;
  if (!needed) {
    yield* straight(reaching);
    return;
  }
  const thing = { path: `${cable.path}.length`, label: cable.label };
  const isWritten = cable.reader.has(`${cable.path}.length`);
  if (!isWritten && needed.known && !cable.length.known) {
    const { longestStocked } = cable;
    yield longestStocked
      ? atLeast(thing, {
          measured: longestStocked,
          allowed: needed,
          says: ({ measured, allowed }) =>
            `${cable.label}: its part comes in lengths up to ${measured}; the way from ${way.from} to ${way.to} asks for ${allowed}.`,
          mend: "Take a part that comes longer, or feed it from a nearer place.",
        })
      : open(thing, {
          says: `${cable.label} has no length written down, and its part no \`lengths\` it comes in.`,
          mend: "Write the length, or the lengths of the part in the catalogue.",
          needs: [`${cable.path}.length`],
        });
    return;
  }
  const how = way.how === "measured" ? "measured" : "led by places";
  const stocked = needed.known ? cable.stockedFrom(needed.value) : undefined;
  yield atLeast(thing, {
    measured: cable.length,
    allowed: needed,
    mends: stocked === undefined ? [] : [{ at: thing.path, becomes: stocked, sure: true }],
    says: ({ measured, allowed }) =>
      `${cable.label} is ${measured}; the way from ${way.from} to ${way.to}, as it was ${how}, asks for ${allowed}.`,
    turns: { path: `${cable.path}.length`, sense: "at least" },
    mend: "Take a longer cable, or feed it from a nearer place.",
  });
}
