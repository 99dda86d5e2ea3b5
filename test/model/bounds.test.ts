import { describe, expect, test } from "vitest";
import { type DimensionTable, from } from "../../src/model/dimension.ts";
import { minus, over, root, sum } from "../../src/model/quantity.ts";
import { source, work } from "../support/resolving.ts";

describe("bounds that leave nothing", () => {
  const table = {
    buckle: { kind: "length", default: 20, least: 5, most: 60, means: "buckle", source },
    tongue: { kind: "length", default: 3, least: 1, most: 40, means: "tongue", source },
    slot: {
      kind: "length",
      default: 5,
      least: from(["tongue"], (k) => sum(k.q("tongue"), 1)),
      most: from(["buckle"], (k) => over(k.q("buckle"), 2)),
      means: "slot",
      source,
    },
    strap: {
      kind: "length",
      default: 5,
      least: from(["slot"], (k) => k.q("slot")),
      most: from(["buckle"], (k) => k.q("buckle")),
      means: "strap",
      source,
    },
  } as const satisfies DimensionTable;

  test("say which values contradict each other", () => {
    expect(work(table, { tongue: "12", buckle: "20" }).faults).toEqual([
      {
        code: "contradiction",
        key: "pieces.strap.slot",
        place: { line: 9, column: 1 },
        problem: "slot: got 5 mm (by default)",
        allowed: "nothing: at least 13 mm (from strap tongue), but at most 10 mm (from strap buckle)",
        mend: "no slot fits; change strap tongue or strap buckle",
      },
    ]);
  });

  test("also where the bound is another value itself", () => {
    const tight = { ...table, slot: { ...table.slot, most: 60 } } as const satisfies DimensionTable;
    expect(work(tight, { slot: "50", buckle: "20" }).faults[0]).toMatchObject({
      code: "contradiction",
      allowed: "nothing: at least 50 mm (from strap slot), but at most 20 mm (from strap buckle)",
      mend: "no strap fits; change strap slot or strap buckle",
    });
  });

  test("of plain numbers are the table's fault, and throw", () => {
    const wrong = {
      a: { kind: "length", default: 5, least: 9, most: 3, means: "a", source },
    } as const satisfies DimensionTable;
    expect(() => work(wrong, {})).toThrow("pieces.strap.a: its least is over its most");
  });

  test("a bound that is met is not crossed, whatever the last bit says", () => {
    const exact = {
      a: { kind: "length", default: 0.1 + 0.2, least: 0, most: 0.3, means: "a", source },
    } as const satisfies DimensionTable;
    expect(work(exact, {}).faults).toEqual([]);
  });

  test("one that is open says only the other", () => {
    const open = {
      a: { kind: "length", default: 5, least: 6, most: Number.POSITIVE_INFINITY, means: "a", source },
      b: { kind: "length", default: 5, least: Number.NEGATIVE_INFINITY, most: 4, means: "b", source },
      c: { kind: "length", default: 5, least: 1, most: Number.POSITIVE_INFINITY, means: "c", source },
    } as const satisfies DimensionTable;
    const r = work(open, {});
    expect(r.faults.map((f) => f.allowed)).toEqual(["at least 6 mm", "at most 4 mm"]);
    expect(r.resolved).toEqual([
      { key: "pieces.strap.c", kind: "length", value: 5, origin: "default", least: 1, means: "c" },
    ]);
  });
});

describe("measures that no arithmetic joins", () => {
  const table = {
    ring: { kind: "length", default: 8, least: 1, most: 90, means: "ring", source },
    clamp: { kind: "length", default: 20, least: 1, most: 90, means: "clamp", source },
    straight: {
      kind: "length",
      default: from(["ring", "clamp"], (k) => root(minus(k.q("clamp"), k.q("ring")))),
      least: 1,
      most: 90,
      means: "straight part",
      source,
    },
    end: {
      kind: "length",
      default: 50,
      least: from(["straight"], (k) => k.q("straight")),
      most: 90,
      means: "end",
      source,
    },
    tail: {
      kind: "length",
      default: 30,
      least: from(["ring"], (k) => root(minus(10, k.q("ring")))),
      most: 90,
      means: "tail",
      source,
    },
  } as const satisfies DimensionTable;

  test("are a contradiction that names them, in a value and in a bound, each told once", () => {
    expect(work(table, { ring: "30" }).faults).toEqual([
      {
        code: "contradiction",
        key: "pieces.strap.straight",
        place: { line: 9, column: 1 },
        problem: "straight part: no size can be worked out from strap clamp, strap ring",
        mend: "change strap clamp or strap ring, or give straight",
      },
      {
        code: "contradiction",
        key: "pieces.strap.tail",
        place: { line: 9, column: 1 },
        problem: "tail: what it may be can't be worked out from strap ring",
        mend: "change strap ring, or give tail",
      },
    ]);
  });
});

describe("a count that needs a middle one", () => {
  const holes = { kind: "count", default: 7, odd: true, means: "holes", source } as const;
  const fault = (text: string, most: number) =>
    work({ holes: { ...holes, least: 1, most } }, { holes: text }).faults[0];

  test("is told the next odd number, up or, at the end of its range, down", () => {
    expect(fault("6", 21)).toEqual({
      code: "range",
      key: "pieces.strap.holes",
      place: { line: 10, column: 7 },
      problem: "holes: got 6",
      allowed: "an odd number, so that one lies in the middle",
      mend: "write holes: 7",
    });
    expect(fault("8", 8)?.mend).toBe("write holes: 7");
    expect(fault("7", 21)).toBeUndefined();
  });

  test("out of range it is told its range first", () => {
    expect(fault("22", 21)?.allowed).toBe("1 to 21");
  });
});
