import type { Build } from "@plumbmark/kit";
import { atMost, is, open, type RawCheck, rule } from "@plumbmark/kit";

type Leg = Build["bars"][number]["hangs"][number]["legs"][number];

function* ofLeg(leg: Leg): Iterable<RawCheck> {
  const [first] = leg.assembly.parts;
  // A rope or sling lies along the pull by itself; what is in no catalogue is judged elsewhere.
  if (first?.part?.kind !== "hardware" || leg.assembly.isSling(first)) return;
  const { name, part, path } = first;
  const says = part.data["angular-wll"];
  if (says === undefined)
    yield open(leg, {
      says: `${leg.label}: ${name} is pulled at the angle of the leg; what it may carry so is not written down.`,
      mend: `Look up what its maker lets it carry at this angle, and write it under \`angular-wll\` of ${name} in ${part.file}: a load, \`any\`, or \`none\` where it may be pulled in line only.`,
      needs: [`${path}.angular-wll`],
    });
  else if (says === "any" || says === "none")
    yield is(leg, {
      holds: says === "any",
      says:
        says === "any"
          ? `${leg.label}: ${name} turns into the pull of the leg.`
          : `${leg.label}: ${name} may be pulled in line only, and the leg pulls it at an angle.`,
      mend: "Put something at the structure that its maker lets be pulled at this angle: a swivel, or a shackle in an eye that lies in the plane of the leg. A qualified rigger chooses it.",
    });
  else
    yield atMost(leg, {
      measured: leg.tension(leg.hang.worst.reaction),
      allowed: leg.assembly.angularWll(first),
      says: ({ measured, allowed }) =>
        `${leg.label} pulls ${name} with ${measured}${leg.hang.worst.when}, at an angle; so pulled it is rated ${allowed}.`,
      mend: "Make the legs steeper, take load off the hang, or take hardware that carries more at an angle. A qualified rigger works out the bridle.",
    });
}

export default rule({
  id: "rigging.angular-pull",
  states: "What holds the leg of a bridle to the structure may be pulled at its angle, and carries it so.",
  level: "shall",
  why: "An eyebolt without a shoulder, or a clamp made for a plumb pull, bends and lets go when a leg pulls it to the side, far below the figure stamped on it.",
  judged:
    "The first part of each leg, at the structure, where it is hardware: its `angular-wll` in the catalogue, what its maker lets it carry at the angle of the leg, against the tension of the leg at the worst reaction (rigging.bridle-angle). `any` is for what turns into the pull, such as a bow shackle or a swivel; `none`, for what may be pulled in line only, fails; not written is open. Ropes and slings lie along the pull by themselves. That an eye lies in the plane of the leg is for whoever rigs it to see.",
  sources: ["eyebolts-in-line", "practice"],
  *checks({ build }) {
    for (const leg of build.bars.flatMap(({ hangs }) => hangs).flatMap(({ legs }) => legs)) yield* ofLeg(leg);
  },
});
