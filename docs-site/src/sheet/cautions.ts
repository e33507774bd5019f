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
const FIRST = [
  "",
  "Local codes and the makers' instructions come before this page. Where they disagree with it, stop and ask.",
] as const;

/** The box of cautions of a build that lifts or uses mains, with those of its author. */
export function cautions({ lifts, mains }: Pick<PublishedDocument, "lifts" | "mains">, own?: Element): Content {
  if (!lifts && !mains && !own) return undefined;
  const lines = [...(lifts ? [LIFTS] : []), ...(mains ? [MAINS] : []), FIRST];
  return h("section", { class: "caution", ariaLabelledby: "Cautions" }, [
    h("h2", { id: "Cautions" }, "Cautions"),
    h(
      "ul",
      lines.map(([lead, line]) => h("li", [...(lead === "" ? [] : [h("b", lead), " "]), line])),
    ),
    own,
  ]);
}
