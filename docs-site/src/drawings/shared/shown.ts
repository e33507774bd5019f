import { gapsOf, printQuantity, type System, type Value } from "@plumbmark/calc";

export const UNWRITTEN = "not written down";

export const UNTOLD = "cannot be told";

/** A value as its author wrote it, or as it was computed, in the document's units; never a guess. */
export function shown(value: Value, system: System, otherwise = UNWRITTEN): string {
  if (!value.known) return otherwise;
  if (value.origin.from === "written" && value.origin.text.trim() !== "") return value.origin.text.trim();
  return printQuantity(value.value, value.kind, system);
}

/** A computed value: without what it needs it cannot be told. */
export const told = (value: Value, system: System): string => shown(value, system, UNTOLD);

/** What is missing for these values, in words for the foot of a drawing. */
export function gapNotes(values: readonly Value[]): readonly string[] {
  return [
    ...new Set(gapsOf(values).map((gap) => gap.because ?? `${gap.of ?? "The document"}: ${gap.what} ${UNWRITTEN}.`)),
  ];
}
