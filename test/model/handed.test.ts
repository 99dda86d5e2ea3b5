import { describe, expect, test } from "vitest";
import { type DimensionTable, from } from "../../src/model/dimension.ts";
import { leaf, minus, times } from "../../src/model/quantity.ts";
import { given as value } from "../support/quantities.ts";
import { source, work } from "../support/resolving.ts";

describe("values that the article hands over", () => {
  const table = {
    inside: {
      kind: "length",
      least: 10,
      most: 40,
      handed: true,
      means: "buckle's inside",
      source: "hardware.buckle",
    },
    width: {
      kind: "length",
      default: 12,
      least: 8,
      most: from(["inside"], (k) => k.q("inside")),
      means: "width",
      source,
    },
    point: { kind: "choice", choices: ["english", "round"], default: "round", means: "point", source },
  } as const satisfies DimensionTable;
  const handed = { inside: value("buckle inside", 16) };

  test("are values like others, the article's", () => {
    const r = work(table, {}, { handed });
    expect(r.values).toMatchObject({ inside: handed.inside, width: { value: 12 } });
    expect(r.resolved[0]).toMatchObject({ origin: "article", value: 16, least: 10, most: 40 });
  });

  test("go before a default, and after what was given", () => {
    const more = { ...handed, width: value("cheek width", 14), point: "english" };
    expect(work(table, {}, { handed: more }).values).toMatchObject({
      width: { value: 14 },
      point: "english",
    });
    expect(work(table, { width: "9" }, { handed: more }).values).toMatchObject({ width: { value: 9 } });
  });

  test("bound what is set by hand, and are named there", () => {
    expect(work(table, { width: "18" }, { handed }).faults).toEqual([
      {
        code: "contradiction",
        key: "pieces.strap.width",
        place: { line: 10, column: 7 },
        problem: "width: got 18 mm",
        allowed: "8 mm to 16 mm (from buckle inside)",
        mend: "lower width to at most 16 mm",
      },
    ]);
  });

  test("out of range: a contradiction of what they follow from, which is what to change", () => {
    expect(work(table, {}, { handed: { inside: value("buckle inside", 50) } }).faults).toEqual([
      {
        code: "contradiction",
        key: "pieces.strap.inside",
        place: { line: 9, column: 1 },
        problem: "buckle's inside: got 50 mm (from buckle inside)",
        allowed: "10 mm to 40 mm",
        mend: "change buckle inside: it must come to at most 40 mm",
      },
    ]);
    const worked = { ...minus(value("over poll", 60), times(2, value("cheek", 28))) };
    expect(work(table, {}, { handed: { inside: worked } }).faults[0]).toMatchObject({
      problem: "buckle's inside: got 4 mm (from over poll, cheek)",
      mend: "change over poll or cheek: it must come to at least 10 mm",
    });
  });

  test("a figure of the article's own, out of range, names nothing that isn't there", () => {
    const inside = leaf("rule of thumb", 5, "length", { kind: "fact", source: "test" });
    expect(work(table, {}, { handed: { inside } }).faults[0]!.mend).toBe(
      "change what it follows from: it must come to at least 10 mm",
    );
    const lost = leaf("rule of thumb", Number.NaN, "length", { kind: "fact", source: "test" });
    expect(work(table, {}, { handed: { ...handed, width: lost } }).faults[0]).toMatchObject({
      problem: "width: no size can be worked out",
      mend: "give width",
    });
  });

  test("a settable one out of range can be given", () => {
    expect(
      work(table, {}, { handed: { ...handed, width: value("cheek width", 5) } }).faults[0],
    ).toMatchObject({
      code: "contradiction",
      problem: "width: got 5 mm (from cheek width)",
      mend: "give width, at least 8 mm",
    });
  });

  test("can't be set in the order", () => {
    expect(work(table, { inside: "20" }, { handed }).faults).toEqual([
      {
        code: "unknown-key",
        key: "pieces.strap.inside",
        place: { line: 10, column: 7 },
        problem: '"inside" follows from other parts of the order and can\'t be set here',
        allowed: "width or point",
        mend: "take the line out",
      },
    ]);
  });

  test("not handed over: told once, without asking the order for it", () => {
    expect(work(table, {}).faults).toEqual([
      {
        code: "missing",
        key: "pieces.strap.inside",
        place: { line: 9, column: 1 },
        problem: "buckle's inside: it follows from hardware.buckle, where it was not found",
        mend: "look at hardware.buckle",
      },
    ]);
  });

  test("of another kind than the dimension's throw: our own fault", () => {
    expect(() => work(table, {}, { handed: { inside: "16" } })).toThrow(
      "pieces.strap.inside: 16 is not a value of its kind, length",
    );
    expect(() => work(table, {}, { handed: { ...handed, point: "oval" } })).toThrow(
      "pieces.strap.point: oval is not a value of its kind, choice",
    );
  });

  test("where nothing can be set, an unknown key is told no choices", () => {
    const fixed = { inside: table.inside } as const satisfies DimensionTable;
    expect("allowed" in work(fixed, { x: "1" }, { handed }).faults[0]!).toBe(false);
  });
});
