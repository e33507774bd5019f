import { atMost, type Chain, open, type RawCheck, rule } from "@plumbmark/kit";

const MEND = "Split the chain over two ports, or lower the frame rate or the bit depth.";

/** By the maker's figures; between a figure and what it comes to at fewer bits only the maker can tell. */
function byMaker(chain: Chain): RawCheck {
  const { pixels, stated, scaledUp } = chain;
  const beyond = pixels.known && stated.known && scaledUp.known && pixels.value > stated.value;
  if (beyond && pixels.value <= scaledUp.value)
    return open(chain, {
      says: `${chain.label} has ${pixels.value.toLocaleString("en")} px, more than any figure its maker states; that the port drives more at this rate and depth is an assumption.`,
      mend: "Ask the maker for the figure at this rate and depth, and write it as `port-pixels: [{rate: …, depth: …, pixels: …}]`.",
      needs: ["data.processor.part"],
      sources: ["part", "practice"],
    });
  return atMost(chain, {
    measured: pixels,
    allowed: stated,
    sources: ["part", "practice"],
    says: (words) =>
      `${chain.label} has ${words.measured}; the maker's figure, scaled to this rate and depth, allows ${words.allowed}.`,
    turns: { path: "picture.rate", sense: "at most" },
    mend: MEND,
  });
}

export default rule({
  id: "data.port-load",
  states: "A port drives no more pixels than it can at this rate and depth.",
  level: "shall",
  why: "A port that is given too many pixels drops some of them: part of the face stays dark or freezes.",
  judged:
    "Pixels of the chain against two bounds. The maker's figures, one for 60 Hz and 24 bit a pixel or several with their rate and depth, are taken to the picture: floor(n × (b0 × f0) ÷ (b × f)), downward only. That a port drives more at a lower rate or depth is an assumption: beyond every figure stated it is open until the maker's own is written. And whatever the maker states, the link itself: floor(r × 1500 ÷ 1538 ÷ (b × f)), its rate less what a full frame costs beside its payload, with every pixel sent in every frame.",
  sources: ["part", "practice", "ieee-802.3"],
  *checks({ build }) {
    for (const chain of build.chains) {
      yield byMaker(chain);
      yield atMost(chain, {
        measured: chain.pixels,
        allowed: chain.bound,
        sources: ["ieee-802.3"],
        says: (words) => `${chain.label} has ${words.measured}; the link allows ${words.allowed}.`,
        turns: { path: "picture.rate", sense: "at most" },
        mend: MEND,
      });
    }
  },
});
