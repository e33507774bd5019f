import { isDay } from "../document/days.js";
import { type Person, person } from "../document/person.js";
import type { Approvable } from "./approvable.js";
import { codeRead } from "./code.js";
import { codeOfContent, contentOf } from "./content.js";

/** The approval a document carries, and the code of what it is now. */
export interface Approval {
  /** `approved`: of this very content. `changed`: of another. `missing`: nobody approved it, or not all of it is written. */
  readonly state: "approved" | "changed" | "missing";
  /** The code of the content as it is now; undefined where the front matter cannot be read. */
  readonly code: string | undefined;
  readonly by: Person | undefined;
  /** Its day; undefined too where what is written is no day. */
  readonly on: string | undefined;
  /** The code that was approved. */
  readonly given: string | undefined;
}

/** What a build says under `approved`. */
export function approvalOf(build: Approvable): Approval {
  const { reader } = build;
  const text = (key: string): string | undefined => reader.text(`approved.${key}`)?.trim() || undefined;
  const readable = reader.placed.mistakes.length === 0 && reader.placed.data !== null;
  const code = readable ? codeOfContent(contentOf(build)) : undefined;
  const by = person(text("by"));
  const day = text("on");
  const on = day !== undefined && isDay(day) ? day : undefined;
  const written = text("code");
  const given = written === undefined ? undefined : codeRead(written);
  const whole = by !== undefined && on !== undefined && given !== undefined && code !== undefined;
  return { state: !whole ? "missing" : given === code ? "approved" : "changed", code, by, on, given };
}
