import { atMost, rule } from "@plumbmark/kit";

export default rule({
  id: "data.port-load",
  states: "A port drives no more pixels than it can at this rate and depth.",
  level: "shall",
  why: "A port that is given too many pixels drops some of them: part of the face stays dark or freezes.",
  judged:
    "Pixels of the chain against the maker's figure scaled by frame rate and bit depth, and against what the link itself can carry.",
  sources: ["part", "ieee-802.3"],
  *checks({ build }) {
    for (const chain of build.chains)
      for (const [whose, allowed] of [
        ["the maker's figure", chain.stated],
        ["the link", chain.bound],
      ] as const)
        yield atMost(chain, {
          measured: chain.pixels,
          allowed,
          says: (words) => `${chain.label} has ${words.measured}; ${whose} allows ${words.allowed}.`,
          mend: "Split the chain over two ports, or lower the frame rate or the bit depth.",
        });
  },
});
