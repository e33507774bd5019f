import { type Kind, kinds } from "../quantity/kinds.js";
import type { Value } from "./value.js";

/** The kinds a value, or the values of a list, may be of. */
type KindIn<V> = V extends readonly (infer Each)[] ? KindIn<Each> : V extends { readonly kind: infer K } ? K : never;

/**
 * Whether something may stand where a value of kind `K` is wanted, as far as its type tells: a value whose kind is only
 * known when it runs may, and is looked at then. `unknown` where it may, the value that is wanted where it may not.
 */
export type OfKind<K extends Kind, V> =
  Kind extends KindIn<V>
    ? unknown
    : [KindIn<V>] extends [K]
      ? unknown
      : V extends readonly unknown[]
        ? readonly Value<K>[]
        : Value<K>;

/** @throws TypeError when a value is of another kind: what is computed from it would mean nothing */
export function refuseOtherKind(value: Value, kind: Kind, what: string): void {
  if (value.kind !== kind)
    throw new TypeError(`${what} has to be ${kinds[kind].name}; it is ${kinds[value.kind].name}`);
}
