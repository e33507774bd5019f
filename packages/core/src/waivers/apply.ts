import type { CheckEntry, WaiverEntry } from "../inspection/record.js";
import type { Build } from "../model/build.js";
import type { BuildWaiver } from "./of-build.js";
import { isAbout, type Waiver } from "./waiver.js";

interface Signed {
  readonly waiver: Waiver;
  readonly words: { readonly because: string; readonly by: string; readonly until: string };
}

/** A waiver that says everything and has not run out, with what it says. */
function signedOn(waiver: Waiver, today: string): readonly Signed[] {
  const { because, by, until, absent } = waiver;
  const whole = absent.length === 0 && because !== undefined && by !== undefined && until !== undefined;
  return whole && until >= today ? [{ waiver, words: { because, by, until } }] : [];
}

/** Marks failed and open checks that a waiver in force covers. */
export function applyWaivers(checks: readonly CheckEntry[], build: Build, today: string): readonly CheckEntry[] {
  const signed = build.waivers.flatMap((waiver) => signedOn(waiver, today));
  return checks.map((check) => {
    if (check.outcome === "holds") return check;
    const found = signed.find(({ waiver }) => isAbout(waiver, check));
    return found ? { ...check, outcome: "waived", waiver: found.words } : check;
  });
}

const texts = ({ rule, where, because, by, until }: BuildWaiver): Partial<WaiverEntry> =>
  Object.fromEntries(Object.entries({ rule, where, because, by, until }).filter(([, text]) => text !== undefined));

/** The register of a document's waivers: what each excuses, and its state. */
export const waiverEntries = (build: Build): readonly WaiverEntry[] =>
  build.waivers.map((waiver) => ({
    ...texts(waiver),
    state: waiver.state,
    at: { path: waiver.path, ...build.reader.place(waiver.path) },
    excuses: waiver.excuses ?? [],
  }));
