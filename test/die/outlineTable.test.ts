import fc from "fast-check";
import { svgPathProperties } from "svg-path-properties";
import { describe, expect, test } from "vitest";
import { fitArcs } from "../../src/die/fitArcs.ts";
import { OUTLINE_COLUMNS, outlineCells, readOutlineCells } from "../../src/die/outlineCells.ts";
import { type OutlineRow, outlineFromTable, outlineTable } from "../../src/die/outlineTable.ts";
import {
  arc,
  circlePath,
  closedPath,
  distanceToPath,
  line,
  type Path,
  selfCrossings,
} from "../../src/geometry/index.ts";
import { anyOutline, ellipse, roundedRectangle, svgData, swelledStrap } from "../geometry/shapes.ts";

/** The furthest of either from the other, at points that svg-path-properties finds. */
function furthest(a: Path, b: Path): number {
  const from = (p: Path, q: Path): number => {
    const outside = new svgPathProperties(svgData(p));
    const total = outside.getTotalLength();
    const each = Array.from({ length: 200 }, (_, i) => {
      const { x, y } = outside.getPointAtLength((total * i) / 200);
      return distanceToPath([x, y], q);
    });
    return Math.max(...each);
  };
  return Math.max(from(a, b), from(b, a));
}

/** What a person does with the sheet: its words alone, typed in again. */
const typedAgain = (path: Path): Path =>
  outlineFromTable(
    outlineTable(path)
      .map((row) => outlineCells(row).join("\t"))
      .map((text) => readOutlineCells(text.split("\t"))),
  );

describe("the table that defines an outline", () => {
  test("a rounded rectangle by hand", () => {
    const [first, second] = outlineTable(roundedRectangle(80, 40, 6));
    expect(first).toEqual({ number: 1, kind: "line", start: [-34, -20], end: [34, -20] });
    expect(second).toEqual({
      number: 2,
      kind: "arc",
      start: [34, -20],
      end: [40, -14],
      radius: 6,
      centre: [34, -14],
      sense: "anticlockwise",
    });
    expect(outlineCells(second!)).toEqual([
      "2",
      "arc",
      "34.000",
      "-20.000",
      "40.000",
      "-14.000",
      "6.000",
      "34.000",
      "-14.000",
      "anticlockwise",
    ]);
    expect(outlineCells(first!).length).toBe(OUTLINE_COLUMNS.length);
  });

  test.each([
    ["swelled strap", swelledStrap()],
    ["ellipse", ellipse(50, 30)],
    ["flat ellipse", ellipse(300, 12, 8)],
  ])("%s: words alone give the piece back within 0.05 mm", (_, path) => {
    const { path: fitted } = fitArcs(path);
    expect(furthest(typedAgain(fitted), fitted)).toBeLessThan(0.003);
    expect(furthest(typedAgain(fitted), path)).toBeLessThanOrEqual(0.05);
  });

  test("any outline comes back from its words", () => {
    fc.assert(
      fc.property(anyOutline, (outline) => {
        fc.pre(selfCrossings(outline).length === 0);
        expect(furthest(typedAgain(fitArcs(outline).path), outline)).toBeLessThanOrEqual(0.05);
      }),
      { seed: 12, numRuns: 6 },
    );
  }, 20000);

  test.each([
    ["254° is one row", [6, 8], 1],
    ["286° is two", [8, 6], 2],
  ] as const)("an arc of more than three quarters of a turn is given in two: %s", (_, [x, y], count) => {
    const keyhole = closedPath([x, -y], [arc([x, y], [0, 0], false), line([20, y]), line([20, -y])]);
    const rows = outlineTable(keyhole);
    expect(rows.filter(({ kind }) => kind === "arc").length).toBe(count);
    expect(furthest(outlineFromTable(rows), keyhole)).toBeLessThan(0.003);
    expect(furthest(typedAgain(keyhole), keyhole)).toBeLessThan(0.003);
    expect(outlineTable(circlePath([0, 0], 5)).length).toBe(2);
  });

  test("an arc too small to round is a line", () => {
    const tiny = closedPath(
      [0, 0],
      [line([10, 0]), arc([10.004, 0.004], [10, 0.004], true), line([10.004, 9]), line([0, 9])],
    );
    expect(outlineTable(tiny).map(({ kind }) => kind)).toEqual(["line", "line", "line", "line", "line"]);
  });

  test("cubics are refused", () => {
    expect(() => outlineTable(swelledStrap())).toThrow("fitted by arcs");
  });

  const rows = outlineTable(roundedRectangle(80, 40, 6));
  const spoilt = (index: number, over: object): readonly OutlineRow[] =>
    rows.map((row, i) => (i === index ? ({ ...row, ...over } as OutlineRow) : row));
  test.each([
    ["a start that is not the end before it", spoilt(2, { start: [40, -13.9] }), "does not start"],
    [
      "a last end that is not the first start",
      spoilt(rows.length - 1, { end: [-33, -20], centre: [-33, -14] }),
      "does not end",
    ],
    ["a radius that is not that of its circle", spoilt(1, { radius: 6.1 }), "radius"],
    ["a centre misread", spoilt(1, { centre: [34, -14.2] }), "radius"],
    ["nothing at all", [], "at least one row"],
  ])("a misread table is not rebuilt: %s", (_, bad, words) => {
    expect(() => outlineFromTable(bad)).toThrow(words);
  });

  test.each([
    [["1", "arc", "0", "0", "1", "1", "1", "0", "1", "left"]],
    [["1", "curve", "0", "0", "1", "1"]],
    [["1", "line", "0", "", "1", "1"]],
    [["1", "line", "0", "x", "1", "1"]],
  ])("cells that say no row: %j", (cells) => {
    expect(() => readOutlineCells(cells)).toThrow(RangeError);
  });
});
