import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { DimensionTable, MeasuredDimension } from "../../src/model/dimension.ts";
import { saidBound, writtenBound } from "../../src/model/limit.ts";
import { resolve } from "../../src/model/resolve.ts";
import { sayFigure, sayHands, sayValue, type Units } from "../../src/model/say.ts";
import { readLength, readThickness } from "../../src/units/index.ts";

const KINDS = ["length", "thickness", "pitch", "angle", "ratio", "count"] as const;
const UNITS: readonly Units[] = ["in", "mm", "cm"];

/** Sizes that a dimension of that kind may have, in its own unit. */
const SPAN: Record<(typeof KINDS)[number], readonly [number, number]> = {
  length: [1, 2000],
  thickness: [0.5, 12],
  pitch: [1, 20],
  angle: [0.1, 6],
  ratio: [0.01, 5],
  count: [1, 50],
};

/** Resolves one dimension from the text that a mend told to write. */
function faultsWith(d: MeasuredDimension, text: string, units: Units) {
  const table: DimensionTable = { size: d };
  const given = { size: { text, place: { line: 1, column: 1 } } };
  return resolve({ table, section: "s", label: "s", given, units, file: "f" }).faults;
}

describe("a bound as it is written in an order", () => {
  test("is told by a mend, and written as told it passes: any kind, any unit, both sides", () => {
    const input = fc.record({
      kind: fc.constantFrom(...KINDS),
      units: fc.constantFrom(...UNITS),
      from: fc.double({ min: 0, max: 1, noNaN: true }),
      width: fc.double({ min: 0.003, max: 0.5, noNaN: true }),
      side: fc.constantFrom("least" as const, "most" as const),
    });
    fc.assert(
      fc.property(input, ({ kind, units, from, width, side }) => {
        const [low, high] = SPAN[kind];
        const whole = (n: number): number => (kind === "count" ? Math.ceil(n) : n);
        const least = whole(low + from * (high - low));
        const most = whole(least + width * (high - low));
        const d: MeasuredDimension = { kind, least, most, means: "size", source: "test" };
        expect(faultsWith(d, writtenBound(side, { least, most }, kind, units), units)).toEqual([]);
      }),
      { seed: 7, numRuns: 1000 },
    );
  });

  test("is the handiest that lies inside", () => {
    expect(writtenBound("least", { least: 12.7, most: 50 }, "length", "in")).toBe("1/2 in");
    expect(writtenBound("least", { least: 12.72, most: 50 }, "length", "in")).toBe("17/32 in");
    expect(writtenBound("most", { least: 1, most: 12.72 }, "length", "in")).toBe("1/2 in");
    // No 1/32 in lies between these.
    expect(writtenBound("least", { least: 12.72, most: 12.9 }, "length", "in")).toBe("12.8 mm");
    expect(writtenBound("least", { least: 12.721, most: 12.724 }, "length", "in")).toBe("12.721 mm");
    expect(writtenBound("most", { least: 1, most: 4.76 }, "thickness", "in")).toBe("11.9 oz");
    expect(writtenBound("least", { least: 0.16, most: 1 }, "ratio", "mm")).toBe("0.16");
    expect(writtenBound("least", { least: Math.PI / 3, most: 2 }, "angle", "mm")).toBe("60°");
    expect(writtenBound("least", { least: 1219.2, most: 1900 }, "hands", "in")).toBe("12 hands");
    expect(writtenBound("most", { least: 1219.2, most: 1899 }, "hands", "mm")).toBe("18.2 hands");
    expect(writtenBound("least", { least: 12.72, most: 50 }, "length", "cm")).toBe("1.28 cm");
  });
});

describe("a bound as a message says it", () => {
  const readIn = (kind: "length" | "thickness", text: string): number => {
    const read = kind === "length" ? readLength(text) : readThickness(text);
    if (!read.ok) throw new Error(read.problem);
    return typeof read.value === "number" ? read.value : read.value.middle;
  };
  /** The writings of a bound: the first, and the one beside it in brackets. */
  const writings = (said: string): readonly string[] =>
    said
      .replace(/\)$/, "")
      .split(" (")
      .filter((text) => text !== "");

  test("typed as it stands, first or in brackets, lies within the range and near its end", () => {
    const input = fc.record({
      kind: fc.constantFrom("length" as const, "thickness" as const),
      units: fc.constantFrom(...UNITS),
      // From a hundredth of a millimetre to 2 m, as many small ones as large ones.
      power: fc.double({ min: -2, max: 3.3, noNaN: true }),
      width: fc.double({ min: 1.1, max: 20, noNaN: true }),
      decimals: fc.constantFrom(2, 5),
      side: fc.constantFrom("least" as const, "most" as const),
    });
    fc.assert(
      fc.property(input, ({ kind, units, power, width, decimals, side }) => {
        const least = Number((10 ** power).toFixed(decimals));
        const most = Number((least * width).toFixed(decimals));
        const said = saidBound(side, { least, most }, kind, units);
        const end = side === "least" ? least : most;
        for (const [i, text] of writings(said).entries()) {
          const mm = readIn(kind, text);
          const d: MeasuredDimension = { kind, least, most, means: "size", source: "test" };
          expect(faultsWith(d, text, units), said).toEqual([]);
          // The first tells the range; beside it a mark of the rule may stand a little inside.
          const share = i === 0 ? 0.03 : 0.125;
          // A thousandth of a millimetre is the finest that is written.
          expect(Math.abs(mm - end), `${said} for ${end}`).toBeLessThanOrEqual(share * end + 0.001);
        }
      }),
      { seed: 7, numRuns: 2000 },
    );
  });

  test.each([
    ["least", 0.05, "0.05 mm"],
    ["least", 0.1, "0.1 mm"],
    ["least", 0.4, "0.4 mm"],
    ["least", 0.5, "0.5 mm"],
    ["least", 0.79375, "1/32 in (0.8 mm)"],
    ["least", 1.5, "1.5 mm (1/16 in)"],
    ["least", 2, "2 mm"],
    ["most", 10, "10 mm (3/8 in)"],
    ["most", 20, "25/32 in (20 mm)"],
    ["least", 0, "0 in (0 mm)"],
  ] as const)("at %s %f mm for an inch order: %s", (side, end, words) => {
    const bounds = side === "least" ? { least: end, most: 1000 } : { least: 0, most: end };
    expect(saidBound(side, bounds, "length", "in")).toBe(words);
  });

  test("a value and its bound never read alike", () => {
    const d: MeasuredDimension = { kind: "length", least: 2.3, most: 50, means: "size", source: "test" };
    const [fault] = faultsWith(d, "2.2 mm", "in");
    expect([fault?.problem, fault?.mend]).toEqual([
      "size: got 0.087 in (2.2 mm)",
      "raise size to at least 3/32 in, or did you mean 2.2 cm?",
    ]);
  });
});

describe("a value in words", () => {
  test.each([
    [1054.1, "length", "in", "41 1/2 in (1054.1 mm)"],
    [1054.1, "length", "mm", "1054.1 mm"],
    [1473.2, "hands", "mm", "14.2 hands"],
    [3.571875, "thickness", "in", "9 oz (3.57 mm)"],
    [3.571875, "thickness", "cm", "3.57 mm"],
    [3.175, "pitch", "in", "3.18 mm"],
    [Math.PI / 3, "angle", "in", "60°"],
    [1234, "area", "in", "12.3 cm²"],
    [1064.4, "force", "in", "1064 N"],
    [20, "stress", "in", "20 N/mm²"],
    [0.45, "ratio", "in", "0.45"],
    [7, "count", "in", "7"],
  ] as const)("%s as %s in %s: %s", (value, kind, units, words) =>
    expect(sayValue(value, kind, units)).toBe(words),
  );

  test("inside an expression a length is short", () => {
    expect(sayFigure(1054.1, "length", "in")).toBe("41 1/2 in");
    expect(sayFigure(3.571875, "thickness", "in")).toBe("9 oz (3.57 mm)");
  });

  test("whole hands have no point", () => expect(sayHands(1422.4)).toBe("14 hands"));
});
