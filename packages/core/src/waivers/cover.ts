import { type Kind, kinds, readQuantity, siUnit } from "@plumbmark/calc";
import type { CheckEntry } from "../inspection/record.js";
import { topicOf } from "../standard/levels.js";
import type { WaiverProblem } from "./problem.js";
import type { Waiver } from "./waiver.js";

/** Half of the fourth digit: what a figure is printed to, and so what somebody can have signed for. */
const slipOf = (value: number): number => (value === 0 ? 0 : 0.5 * 10 ** (Math.floor(Math.log10(Math.abs(value))) - 3));

/** Whether what is measured is no worse than what was accepted. */
function isNoWorse(measured: number, accepts: number, allowed: NonNullable<CheckEntry["allowed"]>): boolean {
  const slip = slipOf(measured);
  const [most, least] = [measured <= accepts + slip, measured >= accepts - slip];
  if (allowed.sense === "within") return measured > allowed.most ? most : least;
  if (allowed.sense === "at least") return least;
  if (allowed.sense === "exactly") return measured > allowed.value ? most : least;
  return most;
}

function* accepted({ label, path, accepts }: Waiver, check: CheckEntry): Iterable<WaiverProblem> {
  const { measured, allowed, says } = check;
  if (!measured || !allowed) return;
  const at = `${path}.accepts`;
  const mend = "Write the worst figure it is signed for, in a unit of what is measured.";
  if (accepts === undefined) {
    yield {
      ...{ path, kind: "absent", mend, needs: [at] },
      says: `${label} does not say what it accepts: ${says}`,
    };
    return;
  }
  const fitting = (Object.keys(kinds) as Kind[]).filter((kind) => siUnit(kind) === measured.unit);
  const reading = readQuantity(accepts, fitting);
  if (!reading.ok)
    yield {
      ...{ path: at, kind: "refused" },
      says: `${label} accepts ${reading.found}.`,
      mend: `Write ${reading.allowed}.`,
    };
  else if (!isNoWorse(measured.value, reading.quantity.value, allowed))
    yield {
      ...{ path: at, kind: "exceeded" },
      says: `${label} accepts ${accepts}, and what is found is worse: ${says}`,
      mend: "Mend what it excuses, or have it signed anew for what is there.",
    };
}

/** A requirement on what hangs or is live is not for whoever runs the job to waive. */
function* licensedFor({ label, path, licensed }: Waiver, { rule, level }: CheckEntry): Iterable<WaiverProblem> {
  if (level !== "shall" || !["rigging", "power"].includes(topicOf(rule))) return;
  const at = `${path}.licensed`;
  const who = topicOf(rule) === "rigging" ? "engineer" : "electrician or engineer";
  const mend = `Have a licensed ${who} put it on paper, and write \`licensed: {by, licence, on, file}\`.`;
  if (!licensed) {
    const says = `${label} waives a requirement of ${rule} without a licensed ${who}.`;
    yield { path, kind: "absent", says, mend, needs: [at] };
    return;
  }
  if (licensed.absent.length > 0)
    yield {
      ...{ path: at, kind: "absent", mend, needs: licensed.absent },
      says: `${label} does not say of the licensed ${who}: ${licensed.absent.map((each) => `\`${each.slice(at.length + 1)}\``).join(", ")}.`,
    };
  for (const wrong of licensed.wrong)
    yield { path: wrong.path, kind: "refused", says: `${label}: ${wrong.says}.`, mend };
  if (licensed.file !== undefined && licensed.filed === undefined)
    yield {
      ...{ path: `${at}.file`, kind: "absent", needs: [`${at}.file`] },
      says: `${label}: nobody looked whether \`${licensed.file}\` is there.`,
      mend: "Inspect the docs repository as a whole, with its papers.",
    };
}

/** Why a waiver that stands does not cover a check it is about; none when it does. */
export const coverProblems = (waiver: Waiver, check: CheckEntry): readonly WaiverProblem[] => [
  ...accepted(waiver, check),
  ...licensedFor(waiver, check),
];
