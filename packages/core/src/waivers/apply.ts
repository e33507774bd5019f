import type { CheckEntry, WaiverEntry } from "../inspection/record.js";
import type { Build } from "../model/build.js";
import { coverProblems } from "./cover.js";
import type { BuildWaiver } from "./of-build.js";
import { isAbout } from "./waiver.js";

/** What a check that is waived says of its waiver. */
function wordsOf({ because = "", signer, until = "", accepts }: BuildWaiver): NonNullable<CheckEntry["waiver"]> {
  return { because, by: signer?.name ?? "", until, ...(accepts === undefined ? {} : { accepts: String(accepts) }) };
}

/** Marks failed and open checks that a waiver in force covers. */
export function applyWaivers(checks: readonly CheckEntry[], build: Build): readonly CheckEntry[] {
  const standing = build.waivers.filter(({ problems }) => problems.length === 0);
  return checks.map((check) => {
    if (check.outcome === "holds") return check;
    const found = standing.find((waiver) => isAbout(waiver, check) && coverProblems(waiver, check).length === 0);
    return found ? { ...check, outcome: "waived", waiver: wordsOf(found) } : check;
  });
}

const texts = ({ rule, where, because, by, until, accepts, of }: BuildWaiver): Partial<WaiverEntry> =>
  Object.fromEntries(
    Object.entries({
      ...{ rule, where, because, by, until },
      accepts: accepts === undefined ? undefined : String(accepts),
      of: of === "fails" ? undefined : of,
    }).filter(([, text]) => text !== undefined),
  );

/** The register of a document's waivers: what each excuses, and its state. */
export const waiverEntries = (build: Build): readonly WaiverEntry[] =>
  build.waivers.map((waiver) => ({
    ...texts(waiver),
    state: waiver.state,
    at: { path: waiver.path, ...build.reader.place(waiver.path) },
    excuses: waiver.excuses ?? [],
  }));
