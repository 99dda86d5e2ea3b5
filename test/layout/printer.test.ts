import { expect, test } from "vitest";
import { barLengths, factorFrom } from "../../src/layout/printer.ts";
import { paperFault, tileOf, tilesFor } from "../../src/layout/tile.ts";
import { paper } from "../support/papers.ts";

test("the bars on letter paper measure 180 and 240 mm", () => {
  expect(barLengths(paper("letter"), 10)).toEqual({ x: 180, y: 240 });
});

test("bars are whole 10 mm and fit between the margins, even drawn 3 % longer", () => {
  for (const name of ["letter", "legal", "tabloid", "a4", "a3", "roll 610 mm"]) {
    const p = paper(name);
    const bars = barLengths(p, 10);
    expect(bars.x % 10).toBe(0);
    expect(bars.y % 10).toBe(0);
    expect(bars.x / 0.97).toBeLessThan(p.width - 20);
    expect(bars.y / 0.97).toBeLessThan((p.roll ? 297 : p.height) - 20);
  }
});

test("what the bars measured gives the printer's factor", () => {
  const found = factorFrom({ x: 179.2, y: 239.5 }, paper("letter"), 10);
  expect(found).toMatchObject({ ok: true });
  expect(found.factor.x).toBeCloseTo(0.99556, 5);
  expect(found.factor.y).toBeCloseTo(0.99792, 5);
});

test("beyond 3 % the viewer must have scaled, and the data says so", () => {
  // "Fit to page" of letter on A4-like margins: both ways 94 %.
  const scaled = factorFrom({ x: 169.2, y: 225.6 }, paper("letter"), 10);
  expect(scaled).toMatchObject({ ok: false, even: true, nominal: { x: 180, y: 240 } });
  expect(factorFrom({ x: 180, y: 260 }, paper("letter"), 10)).toMatchObject({ ok: false, even: false });
  expect(factorFrom({ x: Number.NaN, y: 240 }, paper("letter"), 10)).toMatchObject({ ok: false });
  // Just inside, just outside.
  expect(factorFrom({ x: 185.39, y: 232.81 }, paper("letter"), 10)).toMatchObject({ ok: true });
  expect(factorFrom({ x: 185.41, y: 240 }, paper("letter"), 10)).toMatchObject({ ok: false });
});

test("a tile sent to the printer and printed stays between the margins, whichever way it strays", () => {
  for (const [x, y] of [
    [1, 1],
    [0.98, 1.02],
    [1.03, 0.97],
  ] as const) {
    for (const landscape of [false, true]) {
      const tile = tileOf(paper("letter"), 10, { x, y }, landscape, 0);
      const [short, long] = landscape ? [tile.height, tile.width] : [tile.width, tile.height];
      expect(short).toBeLessThanOrEqual(195.9);
      expect(long).toBeLessThanOrEqual(259.4);
      expect(short / x).toBeLessThanOrEqual(195.9 + 1e-9);
      expect(long / y).toBeLessThanOrEqual(259.4 + 1e-9);
    }
  }
});

test("tiles are counted so that they just cover", () => {
  // 259.4 wide, sharing 10: two cover 508.8, three 758.2.
  expect(tilesFor(259.4, 259.4, 10)).toBe(1);
  expect(tilesFor(259.5, 259.4, 10)).toBe(2);
  expect(tilesFor(508.8, 259.4, 10)).toBe(2);
  expect(tilesFor(508.9, 259.4, 10)).toBe(3);
  expect(tilesFor(758.2, 259.4, 10)).toBe(3);
});

test("margins and overlaps that leave nothing to print are refused with their range", () => {
  expect(paperFault(paper("letter"), 10, 10)).toBeUndefined();
  expect(paperFault(paper("letter"), 80, 10)).toMatchObject({ of: "margin", value: 80 });
  expect(paperFault(paper("letter"), -1, 10)).toMatchObject({ of: "margin" });
  expect(paperFault(paper("letter"), 10, 1)).toMatchObject({ of: "overlap", least: 4 });
  expect(paperFault(paper("letter"), 10, 100)).toMatchObject({ of: "overlap" });
});
