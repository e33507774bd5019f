/** A house standard that sets a rule wrongly cannot be inspected against: the caller has to mend it first. */
export class StandardError extends Error {
  override readonly name = "StandardError";
}
