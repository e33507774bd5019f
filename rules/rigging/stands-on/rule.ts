import { atMost, type Build, is, open, type RawCheck, rule } from "@plumbmark/kit";

type Face = Build["faces"][number];
type Floor = NonNullable<ReturnType<Build["floorOf"]>>;

function* onFloor(face: Face, stand: NonNullable<Face["stand"]>, floor: Floor): Iterable<RawCheck> {
  const thing = { path: `${face.path}.on`, label: face.label };
  const where = `${floor.name} of the venue`;
  yield atMost(thing, {
    measured: stand.baseWidth,
    allowed: floor.length,
    says: ({ measured, allowed }) => `${stand.label} is ${measured} wide; ${where} is ${allowed} long.`,
    mend: "Stand it elsewhere, or on decks side by side that are surveyed as one.",
  });
  yield atMost(thing, {
    measured: stand.depth,
    allowed: floor.depth,
    says: ({ measured, allowed }) => `${stand.label} is ${measured} deep; ${where} is ${allowed} deep.`,
    mend: "Take a base that is less deep and more ballast, or stand it elsewhere.",
  });
  yield atMost(thing, {
    measured: stand.pressure,
    allowed: floor.rating,
    says: ({ measured, allowed }) => `${stand.label} presses ${measured}; ${where} is rated ${allowed}.`,
    mend: "Spread the load over a larger footprint, or stand it elsewhere.",
  });
}

/** What a floor that moves is called, in its name or in the name a build gives it. */
const MOVES = /wagon|rolling|castor|caster|revolve|turntable|trolley|dolly|scissor|(?:stage|orchestra)-lift/iu;

export default rule({
  id: "rigging.stands-on",
  states: "A face that stands fits what it stands on, in length and depth, and is not too heavy for it.",
  level: "shall",
  why: "A base that hangs over the edge of a riser by a hand's breadth tips with the first person who leans on it.",
  judged:
    "In a venue that was surveyed, of a face that is stacked or on a deck: the floor or deck it names under `on`; the width of its base, or its own where none is written, against the length of that; the depth of the base against its depth; and the weight of all that stands over its footprint against its rating. A floor whose name says that it moves is open: wagon, revolve, lift. That base and floor are level and touch is for whoever builds to see. In a venue without a survey rigging.deck-load alone judges the deck.",
  sources: ["geometry", "practice"],
  *checks({ build }) {
    const { survey } = build.venue;
    if (!survey) return;
    for (const face of build.faces.filter(({ support }) => support === "stacked" || support === "deck")) {
      const floor = build.floorOf(face);
      if (!floor) {
        yield open(face, {
          says: `${face.label} does not say which floor or deck of the venue it stands on.`,
          mend: `Write a floor of ${survey.file} under \`${face.path}.on\`.`,
          needs: [`${face.path}.on`],
        });
        continue;
      }
      if (MOVES.test(floor.name))
        yield open(face, {
          says: `${face.label} stands on ${floor.name}, which moves, it seems; what starting and stopping does to the face is computed by nothing here.`,
          mend: "Stand it on a floor that does not move. Where it has to travel, a licensed engineer states base and fixing, and a waiver says so.",
          needs: [`${face.path}.on`],
        });
      else yield is(face, { holds: true, says: `${face.label} stands on ${floor.name} of the venue.` });
      if (face.stand) yield* onFloor(face, face.stand, floor);
    }
  },
});
