/** The number between `no` and `yes` from which on `fits` is true, to 1e-9. */
export function leastThatFits(fits: (x: number) => boolean, no: number, yes: number): number {
  if (fits(no) || !fits(yes)) throw new Error("leastThatFits: the ends don't hold the answer");
  let [low, high] = [no, yes];
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (fits(middle)) high = middle;
    else low = middle;
  }
  return high;
}
