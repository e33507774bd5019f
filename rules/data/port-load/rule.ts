import { atMost, rule } from "@plumbmark/kit";

export default rule({
  id: "data.port-load",
  states: "A port drives no more pixels than it can at this rate and depth.",
  level: "shall",
  why: "A port that is given too many pixels drops some of them: part of the face stays dark or freezes.",
  judged:
    "Pixels of the chain against two bounds. The maker's figure, taken as stated for 60 Hz and 24 bit a pixel, is scaled to the picture: floor(n × (24 bit × 60 Hz) ÷ (b × f)). That pixels go with bits a second is an assumption, and no maker's word: at a lower rate or depth it gives more than the figure stated, which the maker has to confirm before it is relied on. And whatever the maker states, the link itself: floor(r × 1500 ÷ 1538 ÷ (b × f)), its rate less what a full frame costs beside its payload, with every pixel sent in every frame.",
  sources: ["part", "practice", "ieee-802.3"],
  *checks({ build }) {
    for (const chain of build.chains)
      for (const [whose, allowed, sources] of [
        ["the maker's figure, scaled to this rate and depth,", chain.stated, ["part", "practice"]],
        ["the link", chain.bound, ["ieee-802.3"]],
      ] as const)
        yield atMost(chain, {
          measured: chain.pixels,
          allowed,
          sources,
          says: (words) => `${chain.label} has ${words.measured}; ${whose} allows ${words.allowed}.`,
          turns: { path: "picture.rate", sense: "at most" },
          mend: "Split the chain over two ports, or lower the frame rate or the bit depth.",
        });
  },
});
