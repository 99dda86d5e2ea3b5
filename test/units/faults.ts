import { expect } from "vitest";
import type { Reading } from "../../src/units/index.ts";

/** A text that must not be read, with the exact words of its message. */
export type FaultRow = readonly [text: string, problem: string, mend: string];

/**
 * Checks the words of every row, and that whatever its mend offers in quotes can itself be read.
 * `readMended` is the reader with a unit for bare numbers, for a mend keeps a bare number bare.
 */
export function checkFaults<T>(
  rows: readonly FaultRow[],
  reader: (text: string) => Reading<T>,
  readMended: (text: string) => Reading<T> = reader,
): void {
  for (const [text, problem, mend] of rows) {
    expect(reader(text), text).toEqual({ ok: false, problem, mend });
    const offered = /^(?:write|measure)/.test(mend) ? [...mend.matchAll(/"([^"]+)"/g)] : [];
    for (const [, way = ""] of offered)
      expect(readMended(way), `${text}: mended to ${way}`).toHaveProperty("value");
  }
}

/** The value that was read; fails with the message when there is none. */
export function valueIn<T>(reading: Reading<T>): T {
  if (!reading.ok) throw new Error(`${reading.problem}; ${reading.mend}`);
  return reading.value;
}
