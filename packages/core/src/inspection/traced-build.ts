import type { Build } from "../model/build.js";
import type { BuildContext } from "../model/reading/build-context.js";
import type { Trace } from "./trace.js";

/** What a document is given of the repository around it: it says nothing of what else is written in the document. */
const AROUND: ReadonlySet<PropertyKey> = new Set<keyof BuildContext>([
  "file",
  "standard",
  "standards",
  "stock",
  "surveys",
  "sameName",
  "files",
  "linkTargets",
  "today",
  "promises",
  "ownPromises",
  "promisedOf",
  "sharing",
  "rules",
]);
/** What every build has alike. */
const ALIKE: ReadonlySet<PropertyKey> = new Set<keyof Build>(["path", "label", "context"]);

/** The same object, of which everything but some properties is noted when it is looked at. It cannot be changed. */
function watched<T extends object>(
  target: T,
  unnoted: ReadonlySet<PropertyKey>,
  note: () => void,
  instead: ReadonlyMap<PropertyKey, unknown> = new Map(),
): T {
  const bound = new Map<PropertyKey, unknown>();
  const read = (key: PropertyKey): unknown => {
    if (instead.has(key)) return instead.get(key);
    const value: unknown = Reflect.get(target, key, target);
    if (typeof value !== "function") return value;
    // Private fields are those of the object itself, so its methods are called on it.
    if (!bound.has(key)) bound.set(key, value.bind(target));
    return bound.get(key);
  };
  const noted = <R>(found: R): R => {
    note();
    return found;
  };
  return new Proxy(Object.create(null) as T, {
    get: (_, key) => (unnoted.has(key) ? read(key) : noted(read(key))),
    has: (_, key) => noted(Reflect.has(target, key)),
    ownKeys: () => noted(Reflect.ownKeys(target)),
    getOwnPropertyDescriptor: (_, key) => {
      const found = noted(Reflect.getOwnPropertyDescriptor(target, key));
      return found && { ...found, configurable: true };
    },
    getPrototypeOf: () => Reflect.getPrototypeOf(target),
    // What is frozen refuses these itself, in its own words.
    set: (_, key, value) => {
      (target as Record<PropertyKey, unknown>)[key] = value;
      return true;
    },
    defineProperty: (_, key, descriptor) => Boolean(Object.defineProperty(target, key, descriptor)),
    deleteProperty: (_, key) => delete (target as Record<PropertyKey, unknown>)[key],
    setPrototypeOf: (_, prototype) => Boolean(Object.setPrototypeOf(target, prototype)),
  });
}

/**
 * A build as a rule of a plugin is given it, so that it is known whether the rule looked at what is written in the
 * document. Its file, and what it shares with other documents, are no part of that.
 * @param trace where it is noted, by the file, that something of the document itself was looked at
 */
export function tracedBuild(build: Build, trace: () => Trace): Build {
  const note = (): void => void trace().contents.add(build.context.file);
  const context = watched(build.context, AROUND, note);
  return watched(build, ALIKE, note, new Map([["context", context]]));
}
