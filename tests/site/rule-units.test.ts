import { describe, expect, it } from "vitest";
import { notEmpty } from "../run/not-empty.js";
import { starterPages } from "./starter-files.js";

const pages = starterPages();

// Who has the page and a pocket calculator has to know what to put in. Units of the SI Brochure, 9th edition, Table 1 to 4:
// power W, electric current A, resistance Ω, apparent power VA as IEC 60050-131 has it.
describe("the formulas of a rule's page", () => {
  it.each([
    ["power.voltage-drop", "power in W"],
    ["power.voltage-drop", "current in the segment in A"],
    ["power.voltage-drop", "resistance per length of one conductor in Ω/m"],
    ["power.voltage-drop", "Gives VA."],
    ["rigging.stack-stability", "Gives N·m."],
    ["rigging.bar-strength", "in Pa (1 MPa is 1,000,000 Pa)"],
    ["rigging.bridle-angle", "Gives °."],
  ])("%s say: %s", (id, words) => expect(pages.get(`rules/${id}.html`)).toContain(words));

  it("name no unit by its code", () => {
    for (const [path, html] of notEmpty(pages))
      if (path.startsWith("rules/") || path === "formulas.html")
        expect(html, path).not.toMatch(/ in (?:Ohm|Cel|deg|[a-z]+[234]|N\.m)\b/u);
  });
});

describe("builds that meet a rule", () => {
  it("are told apart from those of which it cannot be told", () => {
    // The draft of the starter has no breaker written down, all others hold.
    expect(pages.get("rules/power.plug-fits.html")).toMatch(
      /\d meet it, 0 do not; of 1 it cannot be told, because something is not written down\./u,
    );
    expect(pages.get("rules/power.plug-fits.html")).toMatch(/gallery[^/]*<\/a><\/th><td>cannot be told</u);
  });
});
