import {
  connectorCurrent,
  connectorLeastVoltage,
  connectors,
  connectorVoltage,
  hasPoles,
  type Known,
  plugFits,
  receptacleAllowed,
  receptacleLoad,
  type Supplied,
  socketAllows,
  tabled,
  wiresOf,
} from "@plumbmark/calc";
import { atLeast, atMost, type Circuit, is, open, type RawCheck, type Run, rule } from "@plumbmark/kit";

const titleOf = (id: string): string => connectors.get(id)?.title ?? id;

function* plug(run: Run, circuit: Circuit, outlet: string): Generator<RawCheck> {
  const end = run.feed.ends[0];
  const fits = end && plugFits(end.id, outlet);
  if (!end || fits === undefined)
    yield open(run.feed, {
      says: end
        ? `${run.feed.label}: whether ${end.id} goes into ${outlet} is in no table.`
        : `${run.feed.label} has no plug written down.`,
      mend: "State the connectors of the cable in the catalogue.",
      needs: [`${run.feed.path}.part`],
    });
  else
    yield is(run.feed, {
      holds: fits,
      says: `${run.feed.label} has the plug ${titleOf(end.id)}; circuit ${circuit.name} has the outlet ${titleOf(outlet)}.`,
      mend: "Take a feed with the plug of the outlet. An adapter does not change what the plug is rated for.",
    });
}

const suppliedAs = (circuit: Circuit): Supplied =>
  circuit.threePhase ? "three-phase" : circuit.betweenLines ? "line-to-line" : "line-to-neutral";

const SUPPLY = {
  "line-to-neutral": "one line and neutral",
  "line-to-line": "two lines",
  "three-phase": "three lines",
} as const;

/** Poles, neutral and earth of the outlet, and the voltage class it is made for. */
function* poles(circuit: Circuit, outlet: string): Generator<RawCheck> {
  const { contacts } = connectors.get(outlet) ?? {};
  const supplied = suppliedAs(circuit);
  const neutral = circuit.runs.some(({ legs }) => legs?.length === 1);
  if (contacts)
    yield is(circuit, {
      holds: hasPoles(contacts, supplied, neutral) && contacts.earth,
      says: `${circuit.label} is supplied by ${SUPPLY[supplied]}${supplied === "three-phase" && neutral ? " and neutral" : ""}; ${titleOf(outlet)} has ${connectors.get(outlet)?.poles}.`,
      mend: "Take the outlet that belongs to the supply: its poles, its neutral and its earth. Ask the venue's licensed electrician.",
    });
  const least = connectorLeastVoltage(outlet);
  if (least)
    yield atLeast(circuit, {
      measured: circuit.voltage,
      allowed: least,
      says: ({ measured, allowed }) =>
        `${circuit.label} supplies ${measured} through an outlet of a class that begins at ${allowed}.`,
      mend: "Use an outlet of the voltage class of the supply: a plug of the higher class belongs to other equipment.",
    });
}

/** A cord has a wire for every contact of its plug, the earth above all: without it a touched case is live. */
function* wires({ feed }: Run): Generator<RawCheck> {
  const [plugged] = feed.ends;
  const { contacts } = connectors.get(plugged?.id ?? "") ?? {};
  const count = feed.part?.data.conductors;
  // Of several lines a cord may leave some: line, neutral or second line, and earth it always needs.
  const needed = contacts && Math.min(wiresOf(contacts), 3);
  if (needed !== undefined && typeof count === "number")
    yield is(feed, {
      holds: count >= needed,
      says: `${feed.label} has ${count} conductors; its plug needs ${needed}, the earth among them.`,
      mend: "Take a cord with a conductor for every contact of its plug.",
    });
}

const FUSED = "bs-1363";

/** Sockets with fused plugs may be on a larger circuit: the fuse in each plug limits what hangs on it. */
function fused(circuit: Circuit): RawCheck {
  const { layout, breaker } = circuit;
  const amperes = (connectorCurrent(FUSED, "iec") as Known).value;
  const small = breaker.known && breaker.value <= amperes;
  if (layout === undefined && breaker.known && !small)
    return open(circuit, {
      says: `${circuit.label}: whether 13 A sockets may be on a breaker of ${breaker.value} A depends on how they are laid.`,
      mend: `Ask the electrician, and write \`${circuit.path}.layout\`: \`ring\` or \`radial\`.`,
      needs: [`${circuit.path}.layout`],
    });
  const most = layout === undefined ? amperes : socketAllows(layout);
  return atMost(circuit, {
    measured: breaker,
    allowed: tabled(
      most,
      "current",
      layout === "ring" ? "bs-7671-433.1.204" : "bs-7671-app15",
      "greatest breaker ahead of 13 A sockets",
    ),
    says: ({ measured, allowed }) =>
      `${circuit.label}: the breaker is ${measured}; ahead of 13 A sockets${layout ? ` on a ${layout} circuit` : ""} ${allowed} is the most.`,
    mend: "Ask the venue's licensed electrician: outlet and breaker do not belong together as written.",
  });
}

/** One outlet of a circuit may be larger than the breaker; of several, a table says which may be used. */
function* current(circuit: Circuit, outlet: string, practice: "us" | "iec"): Generator<RawCheck> {
  const rated = connectorCurrent(outlet, practice);
  const { breaker, outletCount } = circuit;
  if (outlet === FUSED) {
    yield fused(circuit);
    return;
  }
  if (!rated.known || !breaker.known || practice === "iec") {
    yield atMost(circuit, {
      measured: breaker,
      allowed: rated,
      says: ({ measured, allowed }) => `${circuit.label}: the breaker is ${measured}, its outlet is rated ${allowed}.`,
      mend: "Use an outlet that its breaker protects.",
    });
    return;
  }
  const several = outletCount === 1 ? undefined : receptacleAllowed(breaker.value, rated.value, false);
  const allowed = outletCount === 1 ? receptacleAllowed(breaker.value, rated.value, true) : several;
  const unsure = outletCount === undefined && several !== receptacleAllowed(breaker.value, rated.value, true);
  if (allowed === undefined || unsure)
    yield open(circuit, {
      says: `${circuit.label}: whether an outlet of ${rated.value} A may be on a breaker of ${breaker.value} A depends on how many there are.`,
      mend: `Write the number of outlets under \`${circuit.path}.outlets\`, and ask a licensed electrician.`,
      needs: [`${circuit.path}.outlets`],
    });
  else
    yield is(circuit, {
      holds: allowed,
      says: `${circuit.label} has ${outletCount === 1 ? "an outlet" : "outlets"} of ${rated.value} A on a breaker of ${breaker.value} A.`,
      mend: "Ask the venue's licensed electrician: outlet and breaker do not belong together as written.",
    });
}

/** One of several outlets carries no more than its table says, whatever the breaker. */
function* share(run: Run, circuit: Circuit, outlet: string): Generator<RawCheck> {
  const rated = connectorCurrent(outlet, "us");
  if (circuit.outletCount === 1 || !rated.known || !circuit.breaker.known) return;
  const most = receptacleLoad(circuit.breaker.value, (rated as Known).value);
  if (most !== undefined)
    yield atMost(run, {
      measured: run.current,
      allowed: tabled(most, "current", "nec-210.21b", "greatest load on one of several outlets"),
      says: ({ measured, allowed }) =>
        `${run.label} draws ${measured} from one of several outlets; ${allowed} is the most.`,
      mend: "Move panels to another run.",
    });
}

export default rule({
  id: "power.plug-fits",
  states: "The feed's plug fits the circuit's outlet, by type, poles, voltage and current.",
  level: "shall",
  why: "A feed that does not fit is found out at load-in, and what is made up on the spot with an adapter is what burns.",
  judged:
    "The plug of every feed against the outlet of its circuit; the outlet's poles, neutral and earth against the supply, its voltage class and rated voltage against the supply voltage, its rated current against the breaker, one of several outlets against the load on it, and the number of runs against the number of outlets where it is written. A 13 A socket of BS 1363 is right on a ring or radial circuit of up to 32 A: there the fuse in the plug limits the run. A cord has a conductor for every contact of its plug.",
  sources: ["nema-wd6", "iec-60309", "nec-210.21b", "bs-7671-433.1.204", "bs-7671-app15", "bs-1362"],
  *checks({ build }) {
    for (const circuit of build.circuits) {
      const { outlet } = circuit;
      if (outlet === undefined) {
        yield open(circuit, {
          says: `${circuit.label} has no outlet written down.`,
          mend: `Write the outlet under \`${circuit.path}.outlet\`.`,
          needs: [`${circuit.path}.outlet`],
        });
        continue;
      }
      yield atMost(circuit, {
        measured: circuit.voltage,
        allowed: connectorVoltage(outlet, build.practice),
        says: ({ measured, allowed }) => `${circuit.label} supplies ${measured} through an outlet rated ${allowed}.`,
        mend: "Use an outlet of the voltage of the supply.",
      });
      yield* poles(circuit, outlet);
      yield* current(circuit, outlet, build.practice);
      const { runs, outletCount } = circuit;
      if (outletCount !== undefined)
        yield is(circuit, {
          holds: runs.length <= outletCount,
          says: `${circuit.label} has ${outletCount} outlet${outletCount === 1 ? "" : "s"} for ${runs.length} run${runs.length === 1 ? "" : "s"}.`,
          mend: "Feed the run from another circuit.",
        });
      for (const run of runs) {
        yield* plug(run, circuit, outlet);
        yield* wires(run);
        if (build.practice === "us") yield* share(run, circuit, outlet);
      }
    }
  },
});
