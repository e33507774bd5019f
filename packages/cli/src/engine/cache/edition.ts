/** Replaced by a hash of the whole bundle when it is made. */
const MARK = "@@PLUMBMARK-EDITION@@";

/** Which Plumbmark this is, to the letter of its code; undefined when it runs unbundled and nobody can tell. */
export const edition: string | undefined = MARK.startsWith("@@") ? undefined : MARK;
