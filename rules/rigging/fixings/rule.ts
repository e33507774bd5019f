import { atMost, open, rule, tabled, times, written } from "@plumbmark/kit";
import { askedCheck } from "../asked.js";

/** Boards in front of something: what a fixing carries is the framing's, not theirs (common practice). */
const BOARD = /\b(?:plasterboards?|drywall|gypsum|gipskarton\w*|wallboards?|fibreboard|chipboard)\b/iu;

/** The frame of a face reaches beyond it, and not by as much again: then a unit or a point has slipped (common practice). */
const FARTHEST_APART = 2;

/** What stands behind a board. */
const FRAMING = /\b(?:studs?|joists?|beams?|rails?|framing|battens?|masonry|brick|concrete|timber|steel)\b/iu;

export default rule({
  id: "rigging.fixings",
  states: "A face on a wall is held by fixings that carry its weight and its lever in that wall, as somebody states.",
  level: "shall",
  why: "A bolt is as strong as what it is in. Plaster holds a picture; a wall of tiles pulls its top row out and comes down as one piece.",
  judged:
    "For a face of `support: wall`: the weight stands off the wall by half the panel's depth and the stand-off, and turns the face about the lowest row of fixings, or with one row about the lower edge that bears: the pull on the top row is W × e ÷ z. A stiff rail may leave pull and weight to the two worst fixings of the row; to one where there is only one in it, or where the face is not alike on both sides of its middle. Pull ÷ allowable + shear ÷ allowable is at most 1, which lies inside the curves of every design method. The allowables are those of one fixing in this wall, with this stand-off, as its maker's table for the ground or a letter states them. A board in front of something carries nothing by itself: it is open what is behind it. Rows farther apart than twice the height of the face are a slip, which would make the pull look small. Who states them, and on which day, before the build; where the lower edge is overhead, or its height is not written, a licensed person, with licence and file.",
  sources: ["statics", "aci-318-17.8", "practice"],
  *checks({ build }) {
    for (const face of build.faces.filter(({ support }) => support === "wall")) {
      const fixings = build.fixingsOf(face);
      if (!fixings.exists) {
        yield open(face, {
          says: `What holds face ${face.name} to its wall is not written down.`,
          mend: `Write the fixings, what one may carry in this wall and who states it under \`${fixings.path}\`.`,
          needs: [fixings.path],
        });
        continue;
      }
      const where = { path: fixings.path, label: fixings.label };
      yield atMost(where, {
        measured: fixings.share,
        allowed: tabled(1, "ratio", "aci-318-17.8", "pull and shear together"),
        says: ({ measured, allowed }) =>
          `${fixings.label} are used to ${measured} of what the worst may carry, pull and shear together; ${allowed} is the most.`,
        mend: "Take more or stronger fixings, set the rows farther apart, or bring the face closer to the wall. Whoever states what they carry decides.",
      });
      if (fixings.apart.known && face.height.known)
        yield atMost(where, {
          measured: fixings.apart,
          allowed: times(face.height, FARTHEST_APART, "2"),
          says: ({ measured, allowed }) =>
            `${fixings.label} have rows ${measured} apart; behind a face this high ${allowed} is the most that is plausible.`,
          mend: "Correct `apart` or its unit: it is the distance of the top row from the lowest. If it is right, waive this with the paper of whoever designed the frame.",
        });
      if (written(build.reader.data(`${fixings.path}.ground`)) === undefined)
        yield open(where, {
          says: `${fixings.label}: what the wall is made of is not written down.`,
          mend: `Write it under \`${fixings.path}.ground\`: what a fixing carries depends on it.`,
          needs: [`${fixings.path}.ground`],
        });
      const ground = written(build.reader.data(`${fixings.path}.ground`)) ?? "";
      if (BOARD.test(ground) && !FRAMING.test(ground))
        yield open(where, {
          says: `${fixings.label} are in ${ground}, which carries nothing by itself; what is behind it is not written down.`,
          mend: `Fix into what is behind the board, and name it under \`${fixings.path}.ground\`: \`steel studs behind plasterboard\`.`,
          needs: [`${fixings.path}.ground`],
        });
      for (const each of fixings.asked(fixings.overhead)) yield askedCheck(each);
    }
  },
});
