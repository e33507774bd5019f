import type { Build } from "../../model/build.js";
import { Reader } from "../../model/reading/reader.js";

const CHANGING = ["set", "add", "delete", "clear"] as const;

function refuse(): never {
  throw new TypeError("what a rule looks at cannot be changed");
}

/** A frozen map can still be filled: what changes it is taken away. */
function closed(collection: Map<unknown, unknown> | Set<unknown>): void {
  for (const name of CHANGING) Object.defineProperty(collection, name, { value: refuse });
}

function visit(value: unknown): void {
  if (typeof value !== "object" || value === null || Object.isFrozen(value)) return;
  const isCollection = value instanceof Map || value instanceof Set;
  if (isCollection) closed(value);
  // Frozen before its parts: what leads back to it then ends there.
  Object.freeze(value);
  if (isCollection)
    for (const [key, each] of value.entries()) {
      visit(key);
      visit(each);
    }
  // A reader notes mistakes as the model is read, which goes on while rules run.
  for (const [key, each] of Object.entries(value)) if (!(value instanceof Reader && key === "mistakes")) visit(each);
}

/** Freezes a model with everything that hangs on it; what it computes later, it still can. */
export function frozen<T extends object>(model: T): T {
  visit(model);
  return model;
}

/** Freezes a build with its body. */
export function frozenBuild(build: Build): void {
  const { reader, faces, circuits, runs, chains, bars, picture, viewing, venue } = build;
  const { placed, implausible, venue: surveyed } = reader;
  const made = [faces, circuits, runs, chains, bars, picture, viewing, venue, placed, implausible];
  for (const each of [build, build.markdown, build.sections, ...made]) frozen(each);
  if (surveyed) frozen(surveyed);
}
