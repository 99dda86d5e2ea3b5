// Labels beside one another, each as near as can be to where it belongs.

/** A label: where its middle is wished, and how much room it takes along the row. */
export type Wished = { readonly at: number; readonly size: number };

type Pool = { from: number; count: number; size: number; sum: number };

/**
 * The middles of the labels so that none overlaps: in the order given, which is that of their wishes. Labels
 * that would overlap are pooled and stand about the mean of their wishes (pool adjacent violators, the least
 * sum of squares).
 */
export function spread(labels: readonly Wished[]): readonly number[] {
  const pools: Pool[] = [];
  labels.forEach(({ at, size }, from) => {
    pools.push({ from, count: 1, size, sum: at - size / 2 });
    for (;;) {
      const [before, last] = [pools.at(-2), pools.at(-1)!];
      if (!before || before.sum / before.count + before.size <= last.sum / last.count) return;
      // Within a pool each label's wish is counted from the pool's start.
      const sum = before.sum + last.sum - last.count * before.size;
      pools.splice(-2, 2, {
        from: before.from,
        count: before.count + last.count,
        size: before.size + last.size,
        sum,
      });
    }
  });
  return pools.flatMap(({ from, count, sum }) => {
    let start = sum / count;
    return labels.slice(from, from + count).map(({ size }) => {
      const middle = start + size / 2;
      start += size;
      return middle;
    });
  });
}
