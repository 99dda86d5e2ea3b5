import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  arcCosine,
  arcTangent,
  cosine,
  greatest,
  leaf,
  least,
  minus,
  named,
  nextOdd,
  type Operand,
  over,
  type Quantity,
  root,
  roundedDown,
  roundedNear,
  roundedUp,
  sine,
  square,
  sum,
  tangent,
  times,
} from "../../src/model/quantity.ts";
import { given } from "../support/quantities.ts";
import { readExpression } from "../support/readExpression.ts";

const a = given("a", 7);
const b = given("b", 3);
const c = given("c", 2);
const t = given("t", 4, "thickness");
const turn = given("turn", 0.5, "angle");

/** The text with names in it. */
const textOf = (q: Quantity): string => q.parts.map((p) => (typeof p === "string" ? p : p.name)).join("");
const inputsOf = (q: Quantity): readonly (string | undefined)[] => q.inputs.map((i) => i.name);

describe("the text of an expression", () => {
  const cases: readonly (readonly [string, Quantity, number])[] = [
    ["a + b + 2 mm", sum(a, b, 2), 12],
    ["a − b − 2 mm", minus(a, b, 2), 2],
    ["a − (b + c)", minus(a, sum(b, c)), 2],
    ["a − b + c", sum(minus(a, b), c), 6],
    ["a × b × 2", times(a, b, 2), 42],
    ["a × (b + c)", times(a, sum(b, c)), 35],
    ["(a − b) × (b + c)", times(minus(a, b), sum(b, c)), 20],
    ["a × b + c", sum(times(a, b), c), 23],
    ["a ÷ b", over(a, given("b", 2)), 3.5],
    ["(a + b) ÷ c", over(sum(a, b), c), 5],
    ["a × b ÷ c", over(times(a, b), c), 10.5],
    ["a ÷ (b × c)", over(given("a", 12), times(b, c)), 2],
    ["a ÷ (b ÷ c)", over(a, over(b, c)), 14 / 3],
    ["(a ÷ b) × c", times(over(a, b), c), 14 / 3],
    ["√(a + c)", root(sum(a, c)), 3],
    ["a²", square(a), 49],
    ["(a + c)²", square(sum(a, c)), 81],
    ["√(a² + b²)", root(sum(square(given("a", 4)), square(b))), 5],
    ["sin(turn)", sine(turn), 0.479425538604203],
    ["cos(turn)", cosine(turn), 0.8775825618903728],
    ["tan(turn)", tangent(turn), 0.5463024898437905],
    ["acos(b ÷ a)", arcCosine(over(b, given("a", 6))), Math.PI / 3],
    ["atan2(b, a)", arcTangent(b, given("a", 3)), Math.PI / 4],
    ["atan2(b, a − b)", arcTangent(b, minus(given("a", 0), b)), (3 * Math.PI) / 4],
    ["2 × π × a", times(2, Math.PI, a), 43.982297150257104],
    ["the greatest of (a; b; 2 mm)", greatest(a, b, 2), 7],
    ["the least of (a; b × 2; 20 mm)", least(a, times(b, 2), 20), 6],
    ["(a ÷ c) rounded up to a whole 0.5", roundedUp(over(given("a", 7.3), c), 0.5), 4],
    ["a rounded up to a whole b", roundedUp(a, b), 9],
    ["(a ÷ c) rounded down", roundedDown(over(a, c)), 3],
    ["(a ÷ c) rounded to the nearest 1", roundedNear(over(a, c), 1), 4],
    ["the next odd number from a", nextOdd(given("a", 7.2)), 9],
  ];
  test.each(cases)("%s", (text, q, value) => {
    expect(textOf(q)).toBe(text);
    expect(q.value).toBeCloseTo(value, 12);
  });

  test.each(cases)("a reader with a calculator gets the value of %s", (_, q) => {
    expect(readExpression(q)).toBeCloseTo(q.value, 9);
  });

  test("a constant is written with 4 places, π as π", () => {
    expect(textOf(sum(a, 1 / 3, Math.PI))).toBe("a + 0.3333 mm + π");
  });

  test("a named step stands by its name, an unnamed one by its expression", () => {
    const half = named("half", over(a, 2));
    expect(textOf(sum(half, over(b, 2)))).toBe("half + b ÷ 2");
    expect(textOf(half)).toBe("a ÷ 2");
  });
});

test("the reader with a calculator would see a wrong bracket", () => {
  // As `over` once wrote it: a ÷ b × c for a ÷ (b × c).
  const wrong: Quantity = {
    ...over(given("a", 12), times(b, c)),
    parts: [given("a", 12), " ÷ ", b, " × ", c],
  };
  expect(readExpression(wrong)).not.toBeCloseTo(wrong.value, 3);
});

describe("any expression of these", () => {
  const grow = (q: fc.Arbitrary<Operand>): fc.Arbitrary<Quantity> =>
    fc.oneof(
      fc.tuple(q, q).map(([x, y]) => sum(x, y)),
      fc.tuple(q, q).map(([x, y]) => minus(x, y)),
      fc.tuple(q, q).map(([x, y]) => times(x, y)),
      fc.tuple(q, q).map(([x, y]) => over(x, y)),
      fc.tuple(q, q).map(([x, y]) => greatest(x, y)),
      fc.tuple(q, q).map(([x, y]) => least(x, y)),
      fc.tuple(q, q).map(([x, y]) => arcTangent(x, y)),
      q.map((x) => square(x)),
      q.map((x) => root(square(x))),
      q.map((x) => named("step", sum(x, 1))),
    );
  const first: fc.Arbitrary<Operand> = fc.oneof(
    fc.integer({ min: 1, max: 9 }),
    fc.constantFrom<Operand>(a, b, c, t),
  );
  const anyQuantity = grow(fc.oneof(first, grow(fc.oneof(first, grow(first)))));

  test("its text, read by school's rules, is its value", () => {
    fc.assert(
      fc.property(anyQuantity, (q) => {
        if (!Number.isFinite(q.value) || Math.abs(q.value) > 1e9) return;
        expect(Math.abs(readExpression(q)! - q.value)).toBeLessThan(1e-6 * Math.max(1, Math.abs(q.value)));
      }),
      { seed: 7, numRuns: 500 },
    );
  });
});

describe("inputs", () => {
  test("each named value once, in reading order", () => {
    expect(inputsOf(sum(b, times(a, b), 3))).toEqual(["b", "a"]);
  });

  test("a named step hides what it was made of", () => {
    expect(inputsOf(sum(named("half", over(a, 2)), b))).toEqual(["half", "b"]);
  });

  test("of a greatest or least, only what decides it; the rest stands in the text", () => {
    expect(inputsOf(greatest(a, b))).toEqual(["a"]);
    expect(inputsOf(least(a, sum(b, c)))).toEqual(["b", "c"]);
    expect(textOf(least(a, sum(b, c)))).toBe("the least of (a; b + c)");
    expect(inputsOf(greatest(b, 8))).toEqual([]);
  });

  test("the first of equals decides", () => {
    const twin = given("twin", 7);
    expect(inputsOf(greatest(a, twin))).toEqual(["a"]);
    expect(inputsOf(least(twin, a))).toEqual(["twin"]);
  });
});

describe("what a number counts", () => {
  test.each([
    ["a sum keeps its first measured kind", sum(t, a), "thickness"],
    ["a factor doesn't decide", times(given("k", 0.5, "ratio"), t), "thickness"],
    ["a count doesn't decide", times(given("n", 3, "count"), a), "length"],
    ["like over like is a ratio", over(a, b), "ratio"],
    ["a count over a count stays one", over(given("n", 6, "count"), given("m", 2, "count")), "count"],
    ["a length over a number is a length", over(a, 2), "length"],
    ["a sine is a number", sine(turn), "number"],
    ["an arc is an angle", arcTangent(a, b), "angle"],
    ["bare numbers are a number", sum(1, 2), "number"],
    ["an odd number is a count", nextOdd(a), "count"],
  ])("%s", (_, q, kind) => expect(q.kind).toBe(kind));

  test("a name can set it", () =>
    expect(named("stitches", over(a, b), { kind: "count" }).kind).toBe("count"));
});

describe("rounding", () => {
  test("what is a hair over a whole step is no step more", () => {
    expect(roundedUp(given("x", 0.1 + 0.2), 0.1).value).toBeCloseTo(0.3, 12);
    expect(roundedDown(given("x", 2.9999999999)).value).toBe(3);
    expect(nextOdd(given("x", 7.0000000001)).value).toBe(7);
  });
  test("what is clearly over is", () => expect(roundedUp(given("x", 0.31), 0.1).value).toBeCloseTo(0.4, 12));
  test("halves go upward", () => {
    expect(roundedNear(given("x", 2.5), 1).value).toBe(3);
    expect(roundedNear(given("x", 2.4), 1).value).toBe(2);
  });
  test("odd numbers", () => {
    expect([6, 7, 7.1, 0].map((n) => nextOdd(given("x", n)).value)).toEqual([7, 7, 9, 1]);
  });
});

describe("a name", () => {
  test("carries its source, and none is made up", () => {
    expect(named("x", sum(a, b), { source: "geometry" }).source).toBe("geometry");
    expect("source" in named("x", sum(a, b))).toBe(false);
  });

  test("over a name is a line that repeats it", () => {
    const again = named("cheek", a);
    expect(textOf(again)).toBe("a");
    expect(inputsOf(again)).toEqual(["a"]);
    expect(again.value).toBe(7);
  });

  test("keeps a leather's range", () => {
    const leather: Quantity = { ...t, range: [3.6, 4.4] };
    expect(named("strap", leather).range).toEqual([3.6, 4.4]);
    expect("range" in named("strap", t)).toBe(false);
  });

  test("a value that wasn't computed has its origin and no expression", () => {
    const origin = { kind: "fact", source: "ASTM" } as const;
    expect(leaf("x", 3, "length", origin)).toEqual({
      value: 3,
      kind: "length",
      name: "x",
      origin,
      parts: [],
      inputs: [],
    });
  });
});
