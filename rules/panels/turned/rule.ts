import { type Face, is, open, type RawCheck, rule, turnsAllowed } from "@plumbmark/kit";

interface Stated {
  /** What it is said of, in words. */
  readonly of: string;
  /** The field of its part. */
  readonly field: "turns" | "takes-turned";
  readonly turns: readonly number[] | undefined;
}

const listed = (turns: readonly number[]): string =>
  turns.length === 0 ? "by none" : `by ${turns.map((each) => `${each}°`).join(" or ")}`;

function judged(face: Face, thing: { readonly path: string; readonly label: string }, stated: Stated): RawCheck {
  const { of, field, turns } = stated;
  const { turn } = face;
  if (turns === undefined)
    return open(thing, {
      says: `${face.label}: its panels are turned by ${turn}°, and whether ${of} may be is not written down in the catalogue.`,
      mend: `Enter what the maker's sheet says under \`${field}\` of its part, or ask the maker; else leave \`rotated\` out.`,
      needs: [thing.path],
    });
  const holds = turns.includes(turn);
  return is(thing, {
    holds,
    says: holds
      ? `${face.label}: its panels are turned by ${turn}°, as the maker of ${of} allows.`
      : `${face.label}: its panels are turned by ${turn}°; the maker of ${of} allows turns ${listed(turns)}.`,
    mend: "Put the panels upright, or turn them as the maker allows.",
    mends: holds ? [] : [{ at: `${face.path}.rotated`, becomes: undefined, sure: false }],
  });
}

export default rule({
  id: "panels.turned",
  states: "Panels are turned only as the makers of panel and attachment allow.",
  level: "shall",
  why: "Locks, hooks and handles are made for one way up. A panel on its side hangs by an edge nobody has loaded, and its vents and drains point where they were not meant to.",
  judged:
    "For each face whose panels are turned (`rotated`): the turn against what the maker of every kind of panel in it allows, and of what hangs from a bar against what its attachment is made for. Upright panels need no leave. What the catalogue does not say is open.",
  sources: ["part"],
  *checks({ build }) {
    for (const face of build.faces.filter(({ turn }) => turn !== 0)) {
      for (const { part } of face.kinds)
        if (part)
          yield judged(
            face,
            { path: `${face.path}.rotated`, label: face.label },
            {
              of: part.name,
              field: "turns",
              turns: turnsAllowed(part),
            },
          );
      const { hungBy } = face;
      if (face.support === "flown" && hungBy?.part)
        yield judged(face, hungBy, { of: hungBy.name, field: "takes-turned", turns: hungBy.takesTurned });
    }
  },
});
