import { is, open, rule } from "@plumbmark/kit";

export default rule({
  id: "data.loop",
  states: "A build people depend on closes its loops.",
  level: "note",
  why: "When a jumper comes out in a chain without a return, every panel behind it goes dark. With a return they are fed from the other end.",
  judged:
    "Every chain needs a back-up port other than its port, a return cable to it, and a processor that closes loops.",
  sources: ["practice"],
  *checks({ build }) {
    for (const chain of build.chains) {
      const { port, backUpPort } = chain;
      if (backUpPort === undefined || backUpPort === port) {
        const says =
          backUpPort === undefined
            ? `${chain.label} has no back-up port; one bad joint darkens all behind it.`
            : `${chain.label} comes back to the port it starts from.`;
        yield is(chain, {
          holds: false,
          says,
          mend: "Bring the chain back to a second port, and write it as `back-up-port`.",
        });
        continue;
      }
      const closes = build.processor?.data.loops;
      if (closes === false) {
        yield is(chain, {
          holds: false,
          says: `${chain.label} is meant to close a loop; the processor cannot.`,
          mend: "Take a processor that closes loops.",
        });
        continue;
      }
      const needs = [
        ...(port === undefined ? [`${chain.path}.port`] : []),
        ...(build.reader.text(`${chain.path}.return.part`) === undefined ? [`${chain.path}.return`] : []),
        ...(closes === true ? [] : ["data.processor.part"]),
      ];
      if (needs.length > 0)
        yield open(chain, {
          says: `${chain.label} has a back-up port, but whether its loop is closed cannot be told.`,
          mend: "Write the port, the return cable, and `loops` of the processor in the catalogue.",
          needs,
        });
      else yield is(chain, { holds: true, says: `${chain.label} comes back to port ${backUpPort}.` });
    }
  },
});
