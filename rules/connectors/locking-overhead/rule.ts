import { is, type Joint, open, rule } from "@plumbmark/kit";

export default rule({
  id: "connectors.locking-overhead",
  states: "No connector at a panel overhead is held by friction alone.",
  level: "shall",
  why: "Movement and heat work a friction plug loose. Overhead it takes the picture, or falls on someone.",
  judged:
    "The retention of every joint at a panel overhead is that of its weaker side: the class of the connector's standard, unless the part states a better one with its reason.",
  sources: ["practice"],
  *checks({ build }) {
    for (const joints of alike(build.joints.filter((each) => each.overhead))) {
      const joint = joints[0] as Joint;
      const where = joints.length === 1 ? joint.panel : `${joint.panel} and ${joints.length - 1} more`;
      if (joint.retention === undefined) {
        yield open(joint, {
          says: `${joint.label}: ${joint.unknown}.`,
          mend: "State the connectors of the part in the catalogue.",
          needs: [joint.path],
        });
        continue;
      }
      const loose = joint.retention === "none" || joint.retention === "friction";
      yield is(joint, {
        holds: !loose,
        says: `${joint.label}: ${joint.what} of ${where} ${joints.length === 1 ? "is" : "are"} overhead and ${loose ? "held by friction alone" : `held (${joint.retention})`}.`,
        mend: "Use a locking connector, or one whose part states what retains it.",
      });
    }
  },
});

/** Joints of one cable that are alike make one check, so that a plug that is wrong is told once a run. */
function alike(joints: readonly Joint[]): readonly (readonly Joint[])[] {
  const groups = new Map<string, Joint[]>();
  for (const joint of joints) {
    const key = [joint.path, joint.what, joint.retention ?? "unknown"].join(" ");
    groups.set(key, [...(groups.get(key) ?? []), joint]);
  }
  return [...groups.values()];
}
