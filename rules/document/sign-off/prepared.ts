import type { Build, RawCheck } from "@plumbmark/kit";
import { named } from "./named.js";

/** Who prepared it. */
export const prepared = (build: Build): Iterable<RawCheck> =>
  named(build, { path: "prepared-by", act: "prepare", did: "prepared" });
