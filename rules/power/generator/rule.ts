import { CLASS_A, connectorCurrent, tabled } from "@plumbmark/calc";
import { atLeast, atMost, type Build, type Circuit, is, open, type RawCheck, rule } from "@plumbmark/kit";

type Generator = NonNullable<Build["supplies"][number]["generator"]>;

/** Receptacles and sets that the code asks for ground-fault protection of. */
const SMALL_RECEPTACLE = 20;
const SMALL_SET = 15_000;

/** Voltage of a receptacle, not of its class: 120 V stands on one of 125 V. */
const TO_NEUTRAL = 125;

function* judgeLoad(generator: Generator): Iterable<RawCheck> {
  const { label, supply, legs } = generator;
  const where = { path: `${generator.path}.rated`, label };
  yield atMost(where, {
    measured: generator.load,
    allowed: generator.gives,
    says: ({ measured, allowed }) => `${label} feeds ${measured}; it gives ${allowed}.`,
    turns: { path: where.path, sense: "at least" },
    mend: "Hire a larger set, or take circuits from another supply. What the set gives for an hour in an emergency does not count.",
  });
  if (legs === 1) return;
  yield atMost(supply, {
    measured: supply.current,
    allowed: generator.legGives,
    says: ({ measured, allowed }) => `${label} carries ${measured} on its fullest leg; each gives ${allowed}.`,
    mend: "Move circuits from the fullest leg to the emptiest, or hire a larger set.",
  });
}

const ASK =
  "Have a licensed electrician settle how neutral, frame and earth are connected and test the set that is used, and write `earthing: {by: …, licence: …, on: …, file: …}`.";

function* judgeEarthing(generator: Generator, first: string | undefined): Iterable<RawCheck> {
  const { label, named, earthing } = generator;
  const path = `${generator.path}.earthing`;
  const thing = { path, label };
  const needs = earthing ? earthing.absent : [path];
  if (!earthing || needs.length > 0)
    yield open(thing, {
      says: `${label}: how its neutral, its frame and the earth are connected is not stated${earthing ? " in full" : ""}.`,
      mend: ASK,
      needs,
    });
  else if (earthing.wrong.length > 0)
    for (const wrong of earthing.wrong)
      yield is({ path: wrong.path, label }, { holds: false, says: `${label}: ${wrong.says}.`, mend: ASK });
  else {
    const { by, licence, on, file } = earthing;
    const inTime = first === undefined || on === undefined || on <= first;
    yield is(thing, {
      holds: inTime,
      says: `${by?.name} (${licence}) states in ${file}, ${on}, how ${named} is earthed${inTime ? "" : `; the first day on site is ${first}`}.`,
      mend: "Have it stated before the first day on site, and tested again where the set stands.",
    });
  }
}

/** Whether the code asks for ground-fault protection of a circuit's outlet, by its rating and voltage. */
function isSmall({ outlet, voltage, betweenLines, threePhase }: Circuit): boolean {
  const rated = outlet === undefined ? undefined : connectorCurrent(outlet, "us");
  const low = !betweenLines && !threePhase && (!voltage.known || voltage.value <= TO_NEUTRAL);
  return low && (!rated?.known || rated.value <= SMALL_RECEPTACLE);
}

function* judgeResidual(generator: Generator): Iterable<RawCheck> {
  const { gives, named } = generator;
  if (gives.known && gives.value > SMALL_SET) return;
  for (const circuit of generator.circuits.filter(isSmall)) {
    if (circuit.saysResidual && !circuit.hasResidual)
      yield is(circuit, {
        holds: false,
        says: `Circuit ${circuit.name} is fed by ${named}, a small one, and has no ground-fault protection.`,
        mend: "Hire a set with ground-fault protection at its receptacles, or take listed cord sets that have it.",
      });
    else
      yield atMost(circuit, {
        measured: circuit.residual,
        allowed: tabled(CLASS_A.trips, "current", "ul-943", "greatest trip current of class A"),
        says: ({ measured, allowed }) =>
          `The residual device of circuit ${circuit.name}, fed by ${named}, trips at ${measured}; ${allowed} is the most that protects people.`,
        mend: "Take a ground-fault circuit interrupter of class A.",
      });
  }
}

const WORDS = {
  stands: {
    good: "outdoors",
    holds: "stands outdoors",
    fails: "stands indoors: its exhaust kills, with doors and windows open, too",
    ask: "whether it stands outdoors",
    mend: "Stand it outdoors, and lead the cable in.",
    write: "`outdoors` or `indoors`",
    source: "osha-4105",
  },
  housing: {
    good: "weatherproof",
    holds: "has a housing that keeps rain out",
    fails: "has an open frame, and stands in the rain when it rains",
    ask: "whether its housing keeps rain out",
    mend: "Hire a set with a weatherproof housing. A tarpaulin over it is none: it takes its air and may burn.",
    write: "`weatherproof` or `open`",
    source: "osha-4105",
  },
} as const;

function judgeWord(generator: Generator, key: keyof typeof WORDS): RawCheck {
  const { good, holds, fails, ask, mend, write, source } = WORDS[key];
  const path = `${generator.path}.${key}`;
  const [thing, found] = [{ path, label: generator.label }, generator.word(key)];
  if (found === undefined)
    return open(thing, {
      says: `${generator.label}: ${ask} is not written down.`,
      mend: `Write ${write} under \`${path}\`.`,
      needs: [path],
      sources: [source],
    });
  const so = found === good;
  return is(thing, { holds: so, says: `${generator.label} ${so ? holds : fails}.`, mend, sources: [source] });
}

export default rule({
  id: "power.generator",
  states:
    "A generator gives what is on it, stands outdoors away from openings, and a licensed person has stated its earthing.",
  level: "shall",
  why: "A hired set has no house behind it: nobody has bonded its neutral, nothing opens when a case is live, and its exhaust finds the next door. A set that is overloaded sags, and takes the display and whatever else is on it down.",
  judged:
    "Of a supply that says `generator`: the load of all circuits that name it under `from`, in VA, against its rated VA × its rated power factor, for no load takes more watts than volt-amperes; with several legs the current of the fullest against an even share. How its neutral, frame and the earth are connected and that its devices open: by a licensed person, with licence, day and file, no later than the first day on site. It stands outdoors, no nearer to doors, windows and air inlets than the setting, in a housing that keeps rain out. In us practice, outlets of up to 20 A to neutral of a set that gives at most 15 kW have ground-fault protection; in iec practice power.residual asks for it at every socket. What is not written is open, and so is a generator from which nothing is taken. Voltage drop, breakers and cords are judged as on any supply.",
  sources: [
    "electrical-definition",
    "nec-250.34",
    "nec-445.20",
    "ul-943",
    "bs-7430-generators",
    "osha-4105",
    "generator-20-ft",
  ],
  settings: {
    clear: {
      us: 20 * 0.3048,
      iec: 6,
      kind: "length",
      stricter: "more",
      describe: "least distance to doors, windows and air inlets",
    },
  },
  *checks({ build, settings }) {
    const clear = tabled(Number(settings.clear), "length", "generator-20-ft", "least distance to openings");
    for (const { name, generator } of build.supplies) {
      if (!generator) continue;
      yield* judgeLoad(generator);
      yield* judgeEarthing(generator, build.stay?.from);
      if (build.practice === "us") yield* judgeResidual(generator);
      yield judgeWord(generator, "stands");
      yield atLeast(
        { path: `${generator.path}.from-openings`, label: generator.label },
        {
          measured: generator.fromOpenings,
          allowed: clear,
          says: ({ measured, allowed }) =>
            `Generator ${name} stands ${measured} from the nearest door, window or air inlet; ${allowed} is the least.`,
          mend: "Stand it farther away, downwind, its exhaust pointing away from people and openings.",
        },
      );
      yield judgeWord(generator, "housing");
    }
    const used = new Set(build.supplies.map(({ name }) => name));
    for (const name of build.reader.keys("power.supplies")) {
      const path = `power.supplies.${name}.generator`;
      if (used.has(name) || build.reader.data(path) === undefined) continue;
      yield open(
        { path, label: `Generator ${name}` },
        {
          says: `No circuit is taken from generator ${name}, so what it feeds cannot be told.`,
          mend: `Write \`from: ${name}\` under the circuits that are, or take it out.`,
          needs: ["power.circuits"],
        },
      );
    }
  },
});
