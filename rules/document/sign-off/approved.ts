import type { Build, RawCheck } from "@plumbmark/kit";
import { named } from "./named.js";

/** Who approved it. */
export const approved = (build: Build): Iterable<RawCheck> =>
  named(build, { path: "approved-by", act: "approve", did: "approved" });
