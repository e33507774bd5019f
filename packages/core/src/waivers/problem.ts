/** Why a waiver waives nothing, or not this check. */
export interface WaiverProblem {
  readonly path: string;
  /** `expired` and `exceeded` are states of their own; `absent` is not written; anything else is `refused`. */
  readonly kind: "absent" | "expired" | "refused" | "exceeded";
  readonly says: string;
  readonly mend: string;
  /** What has to be written down. */
  readonly needs?: readonly string[];
}
