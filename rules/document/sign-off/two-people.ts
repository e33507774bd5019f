import { type Build, is, oneAndTheSame, open, type RawCheck } from "@plumbmark/kit";
import { personAt } from "./named.js";

/** That two people signed; nothing is said while one of them is not known. */
export function* twoPeople(build: Build): Iterable<RawCheck> {
  const [one, other] = [personAt(build, "prepared-by"), personAt(build, "approved-by")];
  if (!one || !other) return;
  const thing = { path: "approved-by", label: build.label };
  const same = oneAndTheSame(build.context.standard, one, other);
  if (same === "perhaps") {
    yield open(thing, {
      says: `Whether ${one.name} and ${other.name} are two people cannot be told: one name may be short for the other.`,
      mend: "Write both names in full, or list both under `people` in the house standard.",
      needs: ["approved-by"],
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
