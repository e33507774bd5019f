/** What is made of a thing once, however often it is asked for while the thing is there. */
export function onceFor<Thing extends object, Made>(make: (thing: Thing) => Made): (thing: Thing) => Made {
  const made = new WeakMap<Thing, { readonly made: Made }>();
  return (thing) => {
    const known = made.get(thing) ?? { made: make(thing) };
    made.set(thing, known);
    return known.made;
  };
}
