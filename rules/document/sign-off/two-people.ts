import { type Build, is, oneAndTheSame, open, type Person, type RawCheck } from "@plumbmark/kit";
import { approverPath, personAt } from "./named.js";

/** That `approved-by`, where it still stands, names whoever the approval names. */
function* sameAsBefore(build: Build, approver: Person): Iterable<RawCheck> {
  const older = personAt(build, "approved-by");
  if (!older || approverPath(build) === "approved-by" || older.key === approver.key) return;
  yield is(
    { path: "approved-by", label: build.label },
    {
      holds: false,
      says: `${older.name} stands under \`approved-by\`, and ${approver.name} under \`approved\`.`,
      mend: "Take `approved-by` out: the approval says who it was.",
    },
  );
}

/** That two people signed; nothing is said while one of them is not known. */
export function* twoPeople(build: Build): Iterable<RawCheck> {
  const path = approverPath(build);
  const [one, other] = [personAt(build, "prepared-by"), personAt(build, path)];
  if (!one || !other) return;
  yield* sameAsBefore(build, other);
  const thing = { path, label: build.label };
  const same = oneAndTheSame(build.context.standard, one, other);
  if (same === "perhaps") {
    yield open(thing, {
      says: `Whether ${one.name} and ${other.name} are two people cannot be told: one name may be short for the other.`,
      mend: "Write both names in full, or list both under `people` in the house standard.",
      needs: [path],
    });
    return;
  }
  const two = same === "different";
  yield is(thing, {
    holds: two,
    says: two
      ? `${one.name} prepared it and ${other.name} approved it.`
      : `${one.name} prepared it and approved it, too.`,
    mend: "Have it approved by somebody else.",
  });
}
