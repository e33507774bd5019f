import { is, type RawCheck } from "@plumbmark/kit";
import type { DocumentWaiver } from "./misnamed.js";

/** A recommendation: it does not keep the document from being ready. */
const advised = (waiver: DocumentWaiver, path: string, says: string, mend: string): RawCheck => ({
  ...is({ ...waiver, path }, { holds: false, says, mend }),
  level: "should",
});

/** Days from one day to another, both `2027-01-31`. */
const daysBetween = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / 86_400_000;

/** What is left to excuse makes it grave that a waiver ran out; otherwise it is in the way, no more. */
function expired(waiver: DocumentWaiver, until: string): RawCheck {
  const says = `${waiver.label} ran out on ${until}`;
  if (waiver.excuses?.length === 0)
    return advised(waiver, waiver.path, `${says}, and there is nothing left for it to excuse.`, "Take it out.");
  const mend = "Mend what it excuses, or have it signed anew with a later day.";
  return is(waiver, { holds: false, says: `${says}.`, mend });
}

const unused = (waiver: DocumentWaiver): RawCheck =>
  advised(
    waiver,
    waiver.path,
    `${waiver.label} excuses nothing: nothing that ${waiver.rule} judges ${waiver.where === undefined ? "in the document" : `at \`${waiver.where}\``} fails or is open.`,
    "Take it out, or correct its place; left standing it would excuse the next fault unseen.",
  );

/** What is to be said of a waiver that is complete, on a day. */
export function* signed(waiver: DocumentWaiver, until: string, today: string, longest: number): Iterable<RawCheck> {
  const { label, path, where, state, atLarge } = waiver;
  if (state === "expired") {
    yield expired(waiver, until);
    return;
  }
  yield state === "unused" ? unused(waiver) : is(waiver, { holds: true, says: `${label} is in force until ${until}.` });
  const days = daysBetween(today, until);
  if (days > longest)
    yield advised(
      waiver,
      `${path}.until`,
      `${label} runs for ${days} more days; a waiver runs for at most ${longest}.`,
      "Let it end with the season it is for, and have it signed anew then.",
    );
  if (atLarge.length > 1)
    yield advised(
      waiver,
      where === undefined ? `${path}.rule` : `${path}.where`,
      `${label} excuses a requirement in ${atLarge.length} places at once, and would excuse any new one unseen.`,
      `Write one waiver for each place it is signed for: ${atLarge.map((place) => `\`${place}\``).join(", ")}.`,
    );
}
