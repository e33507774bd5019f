import { counted } from "@plumbmark/calc";
import { atMost, is, open, rule } from "@plumbmark/kit";

export default rule({
  id: "data.processor-load",
  states: "The processor has the ports and the total pixels.",
  level: "shall",
  why: "A drawing with five chains on a processor of four ports is found out on site, with the last face dark.",
  judged:
    "Every port of every chain, those that close a loop among them, against the ports the processor has, each used once; and the pixels of all chains against its total.",
  sources: ["part", "arithmetic"],
  *checks({ build }) {
    if (build.chains.length === 0) return;
    const load = build.processorLoad;
    yield atMost(load, {
      measured: load.pixelsAsked,
      allowed: load.pixels,
      says: ({ measured, allowed }) => `All chains together have ${measured}; the processor drives ${allowed}.`,
      mend: "Take a second processor, or one that drives more pixels.",
    });
    const { uses } = load;
    if (!uses) {
      const without = build.chains.filter((chain) => chain.port === undefined);
      yield open(load, {
        says: `${without.map((chain) => chain.label).join(" and ")} ${without.length === 1 ? "names" : "name"} no port.`,
        mend: "Write the `port` of every chain.",
        needs: without.map((chain) => `${chain.path}.port`),
      });
      return;
    }
    const highest = Math.max(...uses.map(({ port }) => port));
    yield atMost(load, {
      measured: counted(highest, "highest port used"),
      allowed: load.ports,
      says: ({ measured, allowed }) => `The highest port used is ${measured}; the processor has ${allowed}.`,
      mend: "Take fewer chains, close fewer loops, or take a processor with more ports.",
    });
    const twice = [...new Set(uses.map(({ port }) => port))].filter(
      (port) => uses.filter((use) => use.port === port).length > 1,
    );
    yield is(load, {
      holds: twice.length === 0,
      says:
        twice.length === 0 ? "Every port is used once." : `Port ${twice.join(" and port ")} is used more than once.`,
      mend: "Give every chain, and every end of a loop, a port of its own.",
    });
  },
});
