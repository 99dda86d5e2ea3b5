import { describe, expect, test } from "vitest";
import {
  type DimensionTable,
  declaredInputs,
  from,
  isFormula,
  isMeasured,
  orderKey,
  workingOrder,
} from "../../src/model/dimension.ts";
import { leaf, times } from "../../src/model/quantity.ts";
import { resolve } from "../../src/model/resolve.ts";

const about = { means: "a width", source: "common practice, no source" };
const half = (of: string) => from([of], (k) => times(0.5, k.q(of)));

const work = (table: DimensionTable) =>
  resolve({ table, section: "pieces.x", label: "x", given: {}, units: "mm", file: "x.yaml" });

describe("working order", () => {
  test("inputs first, of defaults and of bounds; declared order otherwise", () => {
    const table: DimensionTable = {
      inset: { ...about, kind: "length", default: 2, least: 1, most: half("pitch") },
      width: { ...about, kind: "length", default: half("length"), least: 1, most: 50 },
      length: { ...about, kind: "length", default: 100, least: 1, most: 200 },
      pitch: { ...about, kind: "length", default: 9, least: half("width"), most: 99 },
    };
    expect(workingOrder(table)).toEqual(["length", "width", "pitch", "inset"]);
  });

  test("a cycle throws, a short one and a long one", () => {
    const self: DimensionTable = { a: { ...about, kind: "length", default: half("a"), least: 0, most: 1 } };
    expect(() => workingOrder(self)).toThrow("dimension a depends on itself");
    const ring: DimensionTable = {
      a: { ...about, kind: "length", default: half("b"), least: 0, most: 1 },
      b: { ...about, kind: "length", default: 1, least: half("c"), most: 1 },
      c: { ...about, kind: "length", default: 1, least: 0, most: half("a") },
    };
    expect(() => workingOrder(ring)).toThrow("dimension a depends on itself");
    expect(() => work(ring)).toThrow("dimension a depends on itself");
  });

  test("a value that two others need is no cycle", () => {
    const table: DimensionTable = {
      a: { ...about, kind: "length", default: half("c"), least: 0, most: half("b") },
      b: { ...about, kind: "length", default: half("c"), least: 0, most: 9 },
      c: { ...about, kind: "length", default: 1, least: 0, most: 9 },
    };
    expect(workingOrder(table)).toEqual(["c", "b", "a"]);
  });

  test("an unknown input throws, and says who names it", () => {
    const table: DimensionTable = {
      width: { ...about, kind: "length", default: half("lenght"), least: 0, most: 1 },
    };
    expect(() => workingOrder(table)).toThrow("dimension width names lenght, which its table lacks");
  });
});

describe("a formula", () => {
  const a = { ...about, kind: "length", default: 4, least: 0, most: 9 } as const;
  const word = { ...about, kind: "choice", choices: ["plain", "fancy"], default: "plain" } as const;
  const yes = { ...about, kind: "flag", default: true } as const;

  test("that looks at what it didn't declare throws, though the value is there", () => {
    const table: DimensionTable = {
      a,
      b: { ...about, kind: "length", default: from([], (k) => k.q("a")), least: 0, most: 9 },
    };
    expect(() => work(table)).toThrow("a formula looks at a without declaring it");
  });

  test("that looks at a choice as at a size throws; so does one at a flag", () => {
    const asSize: DimensionTable = {
      word,
      b: { ...about, kind: "length", default: half("word"), least: 0, most: 9 },
    };
    expect(() => work(asSize)).toThrow("a formula looks at word as a quantity, which it is not");
    const asWord: DimensionTable = {
      a,
      b: { ...about, kind: "flag", default: from<boolean>(["a"], (k) => k.choice("a") === "x") },
    };
    expect(() => work(asWord)).toThrow("a formula looks at a as a choice, which it is not");
    const asFlag: DimensionTable = {
      word,
      b: { ...about, kind: "flag", default: from<boolean>(["word"], (k) => k.flag("word")) },
    };
    expect(() => work(asFlag)).toThrow("a formula looks at word as a flag, which it is not");
  });

  test("may ask whether an optional size was given, and must ask that way", () => {
    const spare = { ...about, kind: "length", optional: true, least: 0, most: 9 } as const;
    const asks = from(
      ["spare"],
      (k) => k.maybe("spare") ?? leaf("none", 1, "length", { kind: "fact", source: "test" }),
    );
    expect(
      work({ spare, b: { ...about, kind: "length", default: asks, least: 0, most: 9 } }).values,
    ).toMatchObject({ b: { value: 1 } });
    expect(() =>
      work({ spare, b: { ...about, kind: "length", default: half("spare"), least: 0, most: 9 } }),
    ).toThrow("a formula looks at spare as a quantity, which it is not");
  });

  test("sees sizes, choices and flags that it declared", () => {
    const table: DimensionTable = {
      a,
      word,
      yes,
      b: {
        ...about,
        kind: "length",
        least: 0,
        most: 9,
        default: from(["a", "word", "yes"], (k) =>
          times(k.choice("word") === "plain" && k.flag("yes") ? 2 : 1, k.q("a")),
        ),
      },
    };
    expect(work(table).values).toMatchObject({ b: { value: 8 } });
  });

  test("is told from a plain value", () => {
    expect(isFormula(half("a"))).toBe(true);
    expect([
      isFormula(3),
      isFormula("x"),
      isFormula(undefined),
      isFormula(leaf("a", 1, "length", { kind: "fact", source: "" })),
    ]).toEqual([false, false, false, false]);
  });
});

test("declared inputs are those of the default and both bounds, each once", () => {
  const d = { ...about, kind: "length", default: half("a"), least: half("b"), most: half("a") } as const;
  expect(declaredInputs(d)).toEqual(["a", "b"]);
  expect(
    declaredInputs({ ...about, kind: "choice", choices: ["x"], default: from<string>(["c"], () => "x") }),
  ).toEqual(["c"]);
});

test("keys are hyphenated in orders", () => {
  expect(orderKey("overPoll")).toBe("over-poll");
  expect(orderKey("width")).toBe("width");
  expect(orderKey("firstHoleToTip")).toBe("first-hole-to-tip");
});

test("what is measured has a range; choices, flags and words have none", () => {
  expect(isMeasured({ ...about, kind: "hands", least: 0, most: 1 })).toBe(true);
  expect(isMeasured({ ...about, kind: "text", longest: 9 })).toBe(false);
});
