/** Things in an order that can be done, and those that wait for one another in a circle or for such ones. */
export type Ordered<T> = { readonly done: readonly T[]; readonly left: readonly T[] };

/**
 * The items in an order in which each comes after all that must precede it. Where that leaves a choice the one
 * of least rank is taken, of equal rank the one that was given first. Items that wait for one another in a
 * circle, and what waits for those, are `left`, as given. An item never waits for itself.
 */
export function dependOrder<T>(
  items: readonly T[],
  mustPrecede: (first: T, then: T) => boolean,
  rank: (item: T) => number = () => 0,
): Ordered<T> {
  const waitsFor = items.map(
    (then) => new Set(items.flatMap((first, i) => (first !== then && mustPrecede(first, then) ? [i] : []))),
  );
  const ranks = items.map(rank);
  const left = new Set(items.keys());
  const done: T[] = [];
  while (left.size > 0) {
    const ready = [...left].filter((i) => waitsFor[i]!.size === 0);
    if (ready.length === 0) break;
    const next = ready.reduce((a, b) => (ranks[b]! < ranks[a]! ? b : a));
    done.push(items[next]!);
    left.delete(next);
    for (const waits of waitsFor) waits.delete(next);
  }
  return { done, left: [...left].map((i) => items[i]!) };
}
