// Linear equations, a handful at a time.

/** Below this share of a row's largest figure a pivot says nothing. */
const NO_PIVOT = 1e-14;

/**
 * The solution of n equations, each row its n factors and then what they must come to: Gauss's elimination with
 * the largest pivot of each column. undefined when the rows don't decide it.
 */
export function solved(given: readonly (readonly number[])[]): readonly number[] | undefined {
  const count = given.length;
  const rows = given.map((row) => {
    const most = Math.max(...row.slice(0, count).map(Math.abs));
    return most > 0 ? row.map((n) => n / most) : [...row];
  });
  for (let k = 0; k < count; k++) {
    let best = k;
    for (let i = k + 1; i < count; i++) if (Math.abs(rows[i]![k]!) > Math.abs(rows[best]![k]!)) best = i;
    const pivot = rows[best]!;
    if (!(Math.abs(pivot[k]!) > NO_PIVOT)) return undefined;
    [rows[k], rows[best]] = [pivot, rows[k]!];
    for (let i = k + 1; i < count; i++) {
      const row = rows[i]!;
      const factor = row[k]! / pivot[k]!;
      if (factor !== 0) for (let j = k; j <= count; j++) row[j]! -= factor * pivot[j]!;
    }
  }
  const found = new Array<number>(count).fill(0);
  for (let k = count - 1; k >= 0; k--) {
    let sum = rows[k]![count]!;
    for (let j = k + 1; j < count; j++) sum -= rows[k]![j]! * found[j]!;
    found[k] = sum / rows[k]![k]!;
  }
  return found;
}
