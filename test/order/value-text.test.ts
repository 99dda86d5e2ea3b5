import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { scalarText } from "../../src/order/scalar.ts";
import { measuredText } from "../../src/order/value-text.ts";
import {
  readAngle,
  readCount,
  readHands,
  readLength,
  readRatio,
  readStitchPitch,
  readThickness,
} from "../../src/units/index.ts";

const read = {
  length: (t: string) => readLength(t),
  thickness: (t: string) => {
    const r = readThickness(t);
    return r.ok ? { ok: true as const, value: r.value.middle } : r;
  },
  hands: readHands,
  pitch: readStitchPitch,
  count: readCount,
  angle: readAngle,
  ratio: readRatio,
};

describe("a value's text", () => {
  test.each([
    ["length", 25.4 * 41.5, "41 1/2 in"],
    ["length", 8, "8 mm"],
    ["length", 27.348261, "27.35 mm"],
    ["length", 0, "0 mm"],
    ["thickness", (9 * 25.4) / 64, "9 oz"],
    ["thickness", 3.5, "3.5 mm"],
    ["hands", 58 * 25.4, "14.2 hands"],
    ["hands", 60 * 25.4, "15 hands"],
    ["pitch", 25.4 / 8, "8 per inch"],
    ["pitch", 3.4, "3.4 mm"],
    ["count", 7, "7"],
    ["angle", Math.PI / 4, "45 deg"],
    ["ratio", 0.125, "0.125"],
  ] as const)("%s %d is %s", (kind, value, text) => {
    expect(measuredText(value, kind)).toBe(text);
  });

  test("is rounded to the side that the range allows", () => {
    expect(measuredText(10.123, "length", { least: 10.123, most: 20 })).toBe("10.13 mm");
    expect(measuredText(10.127, "length", { least: 1, most: 10.127 })).toBe("10.12 mm");
    // No hundredth fits between these two: as fine as it must be.
    expect(measuredText(10.1234567, "length", { least: 10.1234567, most: 10.1234567 })).toBe("10.1234567 mm");
  });

  test("reads back to the value, in its range", () => {
    const kind = fc.constantFrom(...(["length", "thickness", "pitch", "angle", "ratio"] as const));
    fc.assert(
      fc.property(kind, fc.double({ min: 0.5, max: 6, noNaN: true }), fc.boolean(), (k, value, low) => {
        const range = low ? { least: value, most: 2 * value } : { least: value / 2, most: value };
        const back = read[k](measuredText(value, k, range));
        expect(back.ok && Math.abs(back.value - value)).toBeLessThanOrEqual(0.01);
        expect(back.ok && back.value).toBeGreaterThanOrEqual(range.least - 1e-6);
        expect(back.ok && back.value).toBeLessThanOrEqual(range.most + 1e-6);
      }),
      { seed: 6, numRuns: 400 },
    );
    for (const inches of [44, 45, 58, 60, 71]) {
      const back = read.hands(measuredText(inches * 25.4, "hands"));
      expect(back.ok && back.value).toBeCloseTo(inches * 25.4, 9);
    }
    for (const n of [1, 7, 15])
      expect(read.count(measuredText(n, "count"))).toMatchObject({ ok: true, value: n });
  });
});

describe("a value in an order", () => {
  test.each([
    ["41 1/2 in", "41 1/2 in"],
    ['41.5"', '41.5"'],
    ["8-9 oz", "8-9 oz"],
    ["Wren, for the fair", "Wren, for the fair"],
    ["Ærø's Ñandú", "Ærø's Ñandú"],
    ["Wren: bay", '"Wren: bay"'],
    ["strap #2", '"strap #2"'],
    ["#2", '"#2"'],
    ["@home", '"@home"'],
    ["- 5", '"- 5"'],
    ["", '""'],
    [" 5", '" 5"'],
    ["a:", '"a:"'],
  ])("%j is written %s", (value, text) => {
    expect(scalarText(value, false)).toBe(text);
  });
  test("in brackets has quotes where a comma or a bracket would end it", () => {
    expect(scalarText("Wren, for the fair", true)).toBe('"Wren, for the fair"');
    expect(scalarText("5/8 in", true)).toBe("5/8 in");
  });
  test("is what yaml reads back, wherever it stands", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme", maxLength: 12 }), (value) => {
        const written = { schema: "failsafe" } as const;
        expect(parse(`a: ${scalarText(value, false)}\nb: 1\n`, written)).toEqual({ a: value, b: "1" });
        expect(parse(`{ a: ${scalarText(value, true)}, b: 1 }\n`, written)).toEqual({ a: value, b: "1" });
      }),
      { seed: 7, numRuns: 500 },
    );
  });
});
