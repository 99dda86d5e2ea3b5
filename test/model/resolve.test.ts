import { describe, expect, test } from "vitest";
import { type DimensionTable, from } from "../../src/model/dimension.ts";
import { times } from "../../src/model/quantity.ts";
import { CUT, source, strap, work } from "../support/resolving.ts";

describe("a section without faults", () => {
  const r = work(strap, { ...CUT, width: "20 mm", point: "round", crease: "no", remark: " for Juniper " });

  test("has the values that were given, and defaults for the rest", () => {
    expect(r.faults).toEqual([]);
    expect(r.values).toMatchObject({
      width: { value: 20, name: "strap width", origin: { kind: "given", where: "juniper.yaml:11" } },
      leather: { value: 3.5, kind: "thickness", origin: { kind: "default", source } },
      point: "round",
      crease: false,
      remark: "for Juniper",
      holes: { value: 7, kind: "count" },
    });
  });

  test("works a default from what it follows from, and remembers from what", () => {
    expect(r.values?.pitch).toMatchObject({ value: 23, name: "strap pitch", source });
    expect(r.values?.pitch.inputs.map((q) => q.name)).toEqual(["strap width"]);
    expect(r.values?.row.value).toBe(6 * 23);
  });

  test("leaves out what is optional and was not given", () => {
    expect(r.values?.spare).toBeUndefined();
    expect(work(strap, { ...CUT, spare: "4" }).values?.spare?.value).toBe(4);
  });

  test("lists every dimension in the table's order, with its range, meaning and whose it is", () => {
    expect(r.resolved.map((d) => d.key)).toEqual(Object.keys(strap).map((k) => `pieces.strap.${k}`));
    expect(r.resolved.find((d) => d.key === "pieces.strap.pitch")).toEqual({
      key: "pieces.strap.pitch",
      kind: "length",
      value: 23,
      origin: "default",
      least: 20,
      most: 80,
      means: "hole to hole",
    });
    expect(r.resolved.find((d) => d.key === "pieces.strap.width")).toMatchObject({
      origin: "given",
      value: 20,
    });
    expect(r.resolved.find((d) => d.key === "pieces.strap.point")).toEqual({
      key: "pieces.strap.point",
      kind: "choice",
      value: "round",
      origin: "given",
      means: "kind of point",
    });
    expect(r.resolved.find((d) => d.key === "pieces.strap.spare")).toMatchObject({
      value: undefined,
      origin: "default",
    });
  });

  test("reads each kind of measure", () => {
    const kinds = {
      height: { kind: "hands", least: 500, most: 2000, means: "height", source },
      stitch: { kind: "pitch", least: 1, most: 7, means: "stitches", source },
      open: { kind: "angle", least: 0, most: 2, means: "angle", source },
      ease: { kind: "ratio", least: 0, most: 1, means: "ease", source },
    } as const satisfies DimensionTable;
    const { values } = work(kinds, { height: "14.2 hands", stitch: "8 per inch", open: "60", ease: "12 %" });
    expect(values?.height).toMatchObject({ value: 1473.2, kind: "length" });
    expect(values?.stitch).toMatchObject({ value: 3.175, kind: "pitch" });
    expect(values?.open).toMatchObject({ value: Math.PI / 3, kind: "angle" });
    expect(values?.ease).toMatchObject({ value: 0.12, kind: "ratio" });
  });

  test("a text may be as long as its longest", () => {
    expect(work(strap, { ...CUT, remark: "x".repeat(12) }).values?.remark).toHaveLength(12);
    expect(work(strap, { ...CUT, remark: "x".repeat(13) }).faults).toHaveLength(1);
  });

  test("a height by default is a length like any other", () => {
    const horse = {
      height: { kind: "hands", default: 1524, least: 500, most: 2000, means: "height", source },
    } as const satisfies DimensionTable;
    expect(work(horse, {}).values?.height).toMatchObject({ kind: "length", value: 1524 });
    const pony = {
      ...horse,
      pony: {
        kind: "hands",
        default: from(["height"], (k) => times(0.9, k.q("height"))),
        least: 500,
        most: 2000,
        means: "pony",
        source,
      },
    } as const satisfies DimensionTable;
    expect(work(pony, {}).values?.pony.kind).toBe("length");
  });

  test("a bare number means the order's unit", () => {
    expect(work(strap, { cut: "40" }, { units: "in" }).values?.cut.value).toBe(1016);
    expect(work(strap, { cut: "40" }, { units: "cm" }).values?.cut.value).toBe(400);
  });

  test("yes and no, true and false, in any case", () => {
    const read = (text: string) => work(strap, { ...CUT, crease: text }).values?.crease;
    expect(["yes", "True", "NO", "false"].map(read)).toEqual([true, true, false, false]);
  });

  test("a path without a section is the key alone", () => {
    const r = work(strap, { cut: "1" }, { section: "" });
    expect(r.faults[0]?.key).toBe("cut");
    expect(r.resolved[0]?.key).toBe("width");
  });
});

describe("a range of thickness", () => {
  const leather = (text: string) => work(strap, { ...CUT, leather: text });

  test("is its middle, remembers its ends, and says so", () => {
    const r = leather("8-9 oz");
    expect(r.values?.leather.value).toBeCloseTo(8.5 * 0.396875, 9);
    expect(r.values?.leather.range?.map((n) => n / 0.396875)).toEqual([8, 9]);
    expect(r.remarks).toHaveLength(1);
    expect(r.remarks[0]!.key).toBe("pieces.strap.leather");
  });

  test("is judged by its thick end", () => {
    expect(leather("12-13 oz").faults).toEqual([
      {
        code: "range",
        key: "pieces.strap.leather",
        place: { line: 11, column: 7 },
        problem: "leather: got 4.76 mm to 5.16 mm",
        allowed: "2 mm to 5 mm",
        mend: "lower leather to at most 5 mm",
      },
    ]);
  });

  test("is judged by its thin end, though the middle would pass", () => {
    expect(leather("5-6 oz").faults[0]).toMatchObject({
      code: "range",
      problem: "leather: got 1.98 mm to 2.38 mm",
      mend: "raise leather to at least 2 mm",
    });
  });

  test("lives on in a default that is the same leather", () => {
    const table = {
      ...strap,
      fold: {
        kind: "thickness",
        default: from(["leather"], (k) => k.q("leather")),
        least: 1,
        most: 3.3,
        means: "in the fold",
        source,
      },
    } as const satisfies DimensionTable;
    expect(work(table, { ...CUT, leather: "8-9 oz" }).faults[0]).toMatchObject({
      code: "contradiction",
      problem: "in the fold: got 3.18 mm to 3.57 mm (by default, from strap leather)",
    });
  });
});
