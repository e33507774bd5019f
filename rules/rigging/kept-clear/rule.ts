import { affirmed, is, open, person, rule, written } from "@plumbmark/kit";

const HERE = { path: "rigging.kept-clear", label: "The floor below" };

export default rule({
  id: "rigging.kept-clear",
  states: "Where nobody is said to be below, it is said how the floor is kept clear and who keeps it so.",
  level: "shall",
  why: "`over-people: false` takes away head room, the higher factor and the second suspension. Somebody has to stand at the barrier.",
  judged:
    "For everything that hangs, and for a face on a wall or base whose lower edge is overhead, with `over-people: false`: `kept-clear` says how, and names a person by whom. A placeholder is nothing written.",
  sources: ["practice"],
  *checks({ build }) {
    const above = build.bars.length > 0 || build.faces.some(({ overhead }) => overhead);
    if (!above || build.reader.data("rigging.over-people") !== false) return;
    const how = affirmed(build.reader.data(`${HERE.path}.how`));
    const by = written(build.reader.data(`${HERE.path}.by`));
    if (how === undefined)
      yield open(HERE, {
        says: "How the floor below is kept clear of people is not written down.",
        mend: "Write how under `rigging.kept-clear.how`, or `over-people: true`.",
        needs: ["rigging.kept-clear.how"],
      });
    else yield is(HERE, { holds: true, says: `The floor below is kept clear: ${how}.` });
    if (by === undefined)
      yield open(HERE, {
        says: "Who keeps the floor below clear is not written down.",
        mend: "Write who under `rigging.kept-clear.by`.",
        needs: ["rigging.kept-clear.by"],
      });
    else
      yield is(HERE, {
        holds: person(by) !== undefined,
        says: person(by) ? `${by} keeps the floor below clear.` : `\`${by}\` names nobody who keeps the floor clear.`,
        mend: "Write the name of a person.",
      });
  },
});
