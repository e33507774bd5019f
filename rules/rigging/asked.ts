import { is, open, type RawCheck } from "@plumbmark/kit";

interface Asked {
  readonly path: string;
  readonly holds: boolean | undefined;
  readonly says: string;
  readonly mend: string;
  readonly needs?: string;
}

/** What is asked of a statement, as a check: what nobody can tell is open. */
export function askedCheck({ path, holds, says, mend, needs = path }: Asked): RawCheck {
  const thing = { path, label: says };
  return holds === undefined ? open(thing, { says, mend, needs: [needs] }) : is(thing, { holds, says, mend });
}
