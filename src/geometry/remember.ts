/**
 * The same function, computed once for each argument. Paths never change, so what was found for one
 * stays true; it is forgotten with the path. Only the time it takes can tell the difference.
 */
export function remembered<A extends object, B>(make: (a: A) => B): (a: A) => B {
  const known = new WeakMap<A, B>();
  return (a) => {
    const before = known.get(a);
    if (before !== undefined) return before;
    const made = make(a);
    known.set(a, made);
    return made;
  };
}
