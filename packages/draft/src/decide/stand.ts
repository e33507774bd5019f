import type { Data } from "@plumbmark/core";
import type { Brief } from "../brief.js";
import { grouped, keyOf, type Mapping, mappingOf } from "../data.js";
import { lengthAsWritten } from "../write/length.js";
import { type Decided, type Decision, decided, fallen, type Scheme } from "./decision.js";
import { rigged } from "./power.js";
import { FACE, sizeIn } from "./size.js";
import { withFace } from "./viewing.js";

/** Depths of a base that are tried, the shallowest first, as they are written. */
const DEPTHS = {
  us: ["2 ft", "3 ft", "4 ft", "5 ft", "6 ft"],
  metric: ["0.6 m", "0.9 m", "1.2 m", "1.5 m", "1.8 m"],
} as const;
const METRES = { us: [0.6096, 0.9144, 1.2192, 1.524, 1.8288], metric: [0.6, 0.9, 1.2, 1.5, 1.8] } as const;
/** Steps ballast comes in, and the most that is still carried in by hand. */
const PLATE = { us: { step: 30, unit: "lb", most: 60 }, metric: { step: 15, unit: "kg", most: 60 } } as const;
/** Panels stand a third of the depth behind the toe, so that nobody stumbles over a long one … */
const TOE = 1 / 3;
/** … and ballast lies behind the middle, where it helps over both edges alike. */
const BALLAST = 0.6;
/** Times of what stands there that lie on the base: as little as that where a base can be deep enough, else more. */
const TIMES = [2, 6] as const;

const RULES = ["rigging.stack-stability", "rigging.stack-height", "rigging.deck-load"] as const;

/** What a floor or deck of the venue bears. */
const floorOf = ({ wish, facts, surveyed }: Brief): Mapping => {
  if (surveyed !== undefined) return {};
  const floors = keyOf(facts.survey?.placed.data, "floors");
  return wish.on === undefined ? {} : mappingOf(keyOf(floors, wish.on));
};

function baseOf(brief: Brief, scheme: Scheme, depth: number, plates: number): Mapping {
  const { system } = brief;
  const size = sizeIn(brief, scheme) as { readonly width: number; readonly height: number };
  const metres = METRES[system][depth] as number;
  const { step, unit } = PLATE[system];
  const width = lengthAsWritten(scheme.columns * size.width, system);
  const text = DEPTHS[system][depth] as string;
  const floor = floorOf(brief);
  return grouped({
    depth: text,
    width,
    toe: lengthAsWritten(metres * TOE, system),
    // What a base weighs is on its marking: a light one until then.
    mass: system === "us" ? "20 lb ?" : "10 kg ?",
    ballast: plates === 0 ? undefined : `${plates * step} ${unit}`,
    "ballast-arm": plates === 0 ? undefined : lengthAsWritten(metres * BALLAST, system),
    deck: grouped({
      rating: keyOf(floor, "rating"),
      "foot-rating": keyOf(floor, "foot-rating"),
      footprint: `${width} x ${text}`,
    }) as Data,
  });
}

/** A face that stands: how deep its base is and how much lies on it; on a wall, what is asked of whoever states the fixings. */
export function stood(brief: Brief, scheme: Scheme): Decided {
  const { wish, desk, system } = brief;
  if (wish.support === "wall") return onWall(brief, scheme);
  const above = wish.trim ? lengthAsWritten(wish.trim.length, system) : system === "us" ? "6 in ?" : "150 mm ?";
  const rigging = { rigging: rigged(brief) } as Mapping;
  const { most, step, unit } = PLATE[system];
  const matterOf = (depth: number, plates: number): Mapping => ({
    ...withFace(scheme, { "height-above": above, base: baseOf(brief, scheme, depth, plates) }),
    ...rigging,
  });
  const failsWith = (depth: number, plates: number) =>
    desk.ask({ ...scheme.matter, ...matterOf(depth, plates) }).fails(...RULES);
  const mass = desk.ask(scheme.matter).known(`faces.${FACE}.mass`);
  const kilograms = system === "us" ? step * 0.45359237 : step;
  let worst: ReturnType<typeof failsWith> = [];
  for (const times of TIMES) {
    const enough = mass === undefined ? most : Math.min(most, Math.max(2, Math.ceil((times * mass) / kilograms)));
    for (const [depth, text] of DEPTHS[system].entries()) {
      worst = failsWith(depth, enough);
      if (worst.length > 0) continue;
      let [low, high] = [-1, enough];
      while (high - low > 1) {
        const middle = Math.floor((low + high) / 2);
        if (failsWith(depth, middle).length === 0) high = middle;
        else low = middle;
      }
      const lies = high === 0 ? "nothing on it" : `${high * step} ${unit} on it, in plates of ${step} ${unit}`;
      const decision: Decision = {
        what: "standing",
        why: `A base ${text} deep with ${lies}: the shallowest that stands with no more on it than ${times} times what it carries, and the least that does there. What the base itself weighs is a guess.`,
        exact: true,
        figures: [`faces.${FACE}.mass`],
      };
      return { ok: true, scheme: decided(scheme, matterOf(depth, high), decision) };
    }
  }
  const [first] = worst;
  return fallen(first?.rule ?? "rigging.stack-stability", first?.says ?? "It does not stand.");
}

function onWall(brief: Brief, scheme: Scheme): Decided {
  const { wish, facts, surveyed } = brief;
  const wall =
    surveyed !== undefined || wish.on === undefined
      ? {}
      : mappingOf(keyOf(keyOf(facts.survey?.placed.data, "walls"), wish.on));
  const fixings = Object.keys(wall).length === 0 ? undefined : (wall as Data);
  const above = wish.trim === undefined ? undefined : lengthAsWritten(wish.trim.length, brief.system);
  return {
    ok: true,
    scheme: decided(
      scheme,
      { ...withFace(scheme, grouped({ "height-above": above, fixings })), rigging: rigged(brief) },
      {
        what: "wall",
        why: "How many fixings hold it, how they stand and what each may carry in this wall is for a licensed engineer to state; nothing of it is proposed.",
        exact: true,
        figures: [`faces.${FACE}.mass`],
      },
    ),
  };
}
