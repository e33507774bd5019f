import type { Element } from "hast";
import { type Content, h } from "../html/html.js";
import type { PublishedDocument } from "../site/published-document.js";

const LIFTS = [
  "Lifting.",
  "What hangs or stands above people can kill. It is hung, changed and taken down by qualified riggers; the structure carries only what a licensed engineer has put in writing. Keep the ground below clear.",
] as const;
const MAINS = [
  "Mains.",
  "Panels stay live inside after switching off. Circuits, outlets and breakers are work for licensed electricians. Make and break no power plug under load.",
] as const;
const GENERATOR = [
  "Generator.",
  "Its exhaust kills: it stands outdoors, away from doors, windows and air inlets. Its earthing and its protective devices are settled and tested by licensed electricians where it stands. It is refuelled stopped and cold, and nobody joins it to the wiring of a house.",
] as const;
const LOAD_OUT = [
  "Load-out.",
  "It goes backwards: picture off, breakers open, locked and tagged, wait until it is cold and as long as the maker says, and only then touch a plug. Panels come down with nobody below; a second suspension comes off last. What went out is counted back.",
] as const;
const FIRST = [
  "",
  "Local codes and the makers' instructions come before this page. Where they disagree with it, stop and ask.",
] as const;

/** The box of cautions of a build that lifts, uses mains or has a generator, with those of its author. */
export function cautions(
  { lifts, mains, generator }: Pick<PublishedDocument, "lifts" | "mains" | "generator">,
  own?: Element,
): Content {
  if (!lifts && !mains && !own) return undefined;
  const lines = [
    ...(lifts ? [LIFTS] : []),
    ...(mains ? [MAINS] : []),
    ...(generator ? [GENERATOR] : []),
    ...(lifts || mains ? [LOAD_OUT] : []),
    FIRST,
  ];
  return h("section", { class: "caution", ariaLabelledby: "Cautions" }, [
    h("h2", { id: "Cautions" }, "Cautions"),
    h(
      "ul",
      lines.map(([lead, line]) => h("li", [...(lead === "" ? [] : [h("b", lead), " "]), line])),
    ),
    own,
  ]);
}
