import { stayOf } from "@plumbmark/core";
import type { Brief } from "../brief.js";
import { structureOf } from "../decide/cables.js";
import { placesOfDevices, RACK } from "../decide/picture.js";

/** What a wish leaves unsaid, and what was taken instead: it comes before the options, for it decides them. */
export function notSaid(brief: Brief): readonly string[] {
  const { wish, facts, practice, offers, desk } = brief;
  const { processor } = placesOfDevices(brief);
  const said: string[] = [];
  const tell = (missing: boolean, what: string): void => {
    if (missing) said.push(what);
  };
  tell(
    wish.venueName === undefined && facts.survey === undefined,
    "The venue: nothing is known of circuits, structure or distances.",
  );
  const { today } = desk.repository.model(desk.path).build.context;
  const stay = stayOf(wish.onSite);
  tell(
    stay?.to !== undefined && stay.to < today,
    `Days that are to come: those on site were over on ${stay?.to}, and what is free, inspected and stated is told of then.`,
  );
  tell(wish.onSite === undefined, "The days on site: panels count as free on every day, and the draft has no dates.");
  tell(wish.shows === undefined, "What it shows: text was not laid out, and legibility was not judged.");
  tell(
    wish.shows === "text" && wish.text.lines === undefined,
    "How many lines of text are shown at once: capitals were not sized.",
  );
  tell(
    wish.width === undefined && wish.height === undefined,
    "The size: every face of the panels on offer was a possible one.",
  );
  const isPicture = wish.shows === "picture";
  tell(
    wish.width !== undefined && wish.height === undefined,
    `How high it is: ${isPicture ? "about as 16 to 9" : "as low as does"}.`,
  );
  tell(
    wish.width === undefined && wish.height !== undefined,
    `How wide it is: ${isPicture ? "about as 16 to 9" : "as narrow as does"}.`,
  );
  tell(wish.support === undefined, "How it is held: it was taken as flown.");
  const flown = (wish.support ?? "flown") === "flown";
  tell(flown && wish.right === undefined, "Where its middle is: it was put on the line the venue is measured from.");
  tell(
    flown && facts.structures.length > 0 && structureOf(brief) === undefined,
    `What it hangs under: bar and hangs are not laid out. \`over: {under: …}\` says which of ${facts.structures.map(({ name }) => name).join(", ")}.`,
  );
  tell(flown && wish.trim === undefined, "The height of its lower edge: it hangs as low as its hardware lets it.");
  tell(wish.overPeople === undefined, "Whether people are below: it was taken that they are.");
  tell(!flown && wish.on === undefined, "What it stands on or is fixed to: no floor, deck or wall was judged.");
  tell(
    wish.powerFrom.length === 0 && facts.circuits.length > 0,
    "Which circuits feed it: all of the venue's were taken as free for it.",
  );
  tell(
    wish.dataAt === undefined,
    processor === RACK
      ? "Where the processor stands: it was put at a rack without a place."
      : `Where the processor stands: it was put at ${processor}, where a circuit has its outlet.`,
  );
  tell(
    wish.panel === undefined && new Set(offers.map(({ panel }) => panel)).size > 1,
    "Which panel: every one on offer was looked at.",
  );
  tell(
    wish.practice === undefined && facts.survey === undefined,
    `The electrical practice: ${practice}, as in the house standard.`,
  );
  return said;
}
