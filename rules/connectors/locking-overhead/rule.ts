import { is, open, rule } from "@plumbmark/kit";

export default rule({
  id: "connectors.locking-overhead",
  states: "No connector overhead is held by friction alone.",
  level: "shall",
  why: "Movement and heat work a friction plug loose. Overhead it takes the picture, or falls on someone.",
  judged: "The retention of every joint at a panel overhead is that of its weaker side: the class of the connector's standard, unless the part states a better one with its reason.",
  sources: ["practice"],
  *checks({ build }) {
    for (const joint of build.joints.filter((each) => each.overhead)) {
      if (joint.retention === undefined) yield open(joint, { says: `${joint.label}: ${joint.unknown}.`, mend: "State the connectors of the part in the catalogue.", needs: [joint.path] });
      else yield is(joint, { holds: joint.retention !== "none" && joint.retention !== "friction", says: joint.retention === "none" || joint.retention === "friction" ? `${joint.label}: ${joint.what} is overhead and held by friction alone.` : `${joint.label}: ${joint.what} is held (${joint.retention}).`, mend: "Use a locking connector, or one whose part states what retains it." });
    }
  },
});
