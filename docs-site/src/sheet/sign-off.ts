import { type Content, h } from "../html/html.js";
import type { PublishedDocument } from "../site/published-document.js";

const COLUMNS = ["Name", "Signature", "Date and time"];

const row = (role: string, name: string | undefined) =>
  h("tr", [h("th", { scope: "row" }, role), h("td", name), h("td"), h("td")]);

/** Boxes to sign on paper: who made and who approved the sheet, and who accepts the work on site. */
export function signOff({ build, lifts, mains }: PublishedDocument): Content {
  if (!build) return undefined;
  return h("section", { class: "wide", tabindex: 0, ariaLabel: "Boxes to sign" }, [
    h("table", { class: "sign" }, [
      h(
        "thead",
        h("tr", [h("th", { scope: "col" }, "Role"), ...COLUMNS.map((each) => h("th", { scope: "col" }, each))]),
      ),
      h("tbody", [
        row("Prepared by", build.reader.text("prepared-by")),
        row("Approved by", build.approval.by?.name),
        ...(lifts ? [row("Hang accepted by the qualified rigger", undefined)] : []),
        ...(mains ? [row("Circuits accepted by the licensed electrician", undefined)] : []),
        row("Picture accepted by the client", undefined),
      ]),
    ]),
  ]);
}
