import type { TextPlace } from "../model/finding.ts";

/** Turns an offset in a text into its line and column, both counted from 1. */
export type PlaceAt = (offset: number) => TextPlace;

/** Finds the places of one text; the lines are counted once. */
export function placesIn(text: string): PlaceAt {
  const starts = [0];
  for (let at = text.indexOf("\n"); at !== -1; at = text.indexOf("\n", at + 1)) starts.push(at + 1);
  return (offset) => {
    let [low, high] = [0, starts.length];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (starts[middle]! <= offset) low = middle;
      else high = middle;
    }
    return { line: low + 1, column: offset - starts[low]! + 1 };
  };
}
