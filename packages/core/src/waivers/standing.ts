import { person } from "../document/person.js";
import type { DesignSource } from "../model/reading/design-source.js";
import { stayOf } from "../model/stock/bookings.js";
import { may, oneAndTheSame, whoMay } from "../standard/people.js";
import type { WaiverProblem } from "./problem.js";
import type { Waiver } from "./waiver.js";

/** Most days a waiver may still run in a build that stays: it is looked at once a year. Common practice, no source. */
const LONGEST_OF_A_STAY = 366;

const DAY = 86_400_000;

/** The last day on site, `stays` for a build without one; undefined where nothing is written that can be read. */
function lastDayOnSite({ reader }: DesignSource): string | undefined {
  const stay = stayOf(reader.data("on-site"));
  return stay && (stay.to ?? "stays");
}

function* notWritten({ label, path, absent, until }: Waiver): Iterable<WaiverProblem> {
  const mend = "Write the rule, the reason, the person and the last day.";
  if (absent.length > 0)
    yield {
      ...{ path, kind: "absent", mend },
      says: `${label} does not say ${absent.map((field) => `\`${field}\``).join(", ")}.`,
      needs: absent.map((field) => `${path}.${field}`),
    };
  else if (until === undefined)
    yield {
      ...{ path: `${path}.until`, kind: "refused", says: `${label} has a last day that is no day.` },
      mend: "Write it as year, month and day, such as 2027-06-30.",
    };
}

function* inTime(build: DesignSource, { label, path, until }: Waiver): Iterable<WaiverProblem> {
  const { today } = build.context;
  if (until === undefined) return;
  if (until < today) {
    const mend = "Mend what it excuses, or have it signed anew with a later day.";
    yield { path, kind: "expired", says: `${label} ran out on ${until}.`, mend };
    return;
  }
  const last = lastDayOnSite(build);
  if (last === "stays") {
    const days = (Date.parse(until) - Date.parse(today)) / DAY;
    if (days > LONGEST_OF_A_STAY)
      yield {
        ...{ path: `${path}.until`, kind: "refused" },
        says: `${label} runs for ${days} more days; in a build that stays a waiver runs for at most ${LONGEST_OF_A_STAY}.`,
        mend: "Let it end within a year, and have it signed anew then.",
      };
  } else if (last !== undefined && until < last)
    yield {
      ...{ path: `${path}.until`, kind: "refused" },
      says: `${label} ends on ${until}, before the last day on site, ${last}.`,
      mend: `Have it signed for as long as the build stands: ${last} or later.`,
    };
}

function* signedBy(build: DesignSource, { label, path, signer }: Waiver): Iterable<WaiverProblem> {
  const { standard } = build.context;
  if (!signer) return;
  const by = `${path}.by`;
  const preparer = person(build.reader.text("prepared-by"));
  if (preparer && oneAndTheSame(standard, preparer, signer) !== "different")
    yield {
      ...{ path: by, kind: "refused" },
      says: `${label} is signed by ${signer.name}, and ${preparer.name} prepared the build.`,
      mend: "Have it signed by somebody else.",
    };
  if (!may(standard, signer, "waive")) {
    const those = whoMay(standard, "waive")
      ?.map((name) => `\`${name}\``)
      .join(", ");
    yield {
      ...{ path: by, kind: "refused" },
      says: `${label} is signed by ${signer.name}, whom the house standard does not let waive.`,
      mend: those ? `Have it signed by somebody who may: ${those}.` : "Let somebody waive under `people`.",
    };
  }
}

/** Why a waiver waives nothing at all; none when it stands. */
export const standingProblems = (build: DesignSource, waiver: Waiver): readonly WaiverProblem[] => [
  ...notWritten(waiver),
  ...inTime(build, waiver),
  ...signedBy(build, waiver),
];
