import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fitArcs } from "../../src/die/fitArcs.ts";
import {
  arc,
  circlePath,
  closedPath,
  distanceToPath,
  line,
  openPath,
  type Path,
  type Point,
  pathLength,
  pointAt,
  selfCrossings,
} from "../../src/geometry/index.ts";
import { type DxfItem, dxf } from "../../src/output/dxf.ts";
import { anyOutline, ellipse, roundedRectangle, swelledStrap } from "../geometry/shapes.ts";

type Group = { readonly code: number; readonly value: string };

/** The file's groups: a code on one line and its value on the next (DXF Reference, "DXF File Format"; from memory). */
function groups(text: string): readonly Group[] {
  const lines = text.split("\n");
  expect(lines.at(-1)).toBe("");
  expect(lines.length % 2).toBe(1);
  return Array.from({ length: (lines.length - 1) / 2 }, (_, i) => ({
    code: Number(lines[2 * i]),
    value: lines[2 * i + 1]!,
  }));
}

/** The entities, each from its type to the next code 0. */
function entities(text: string): readonly (readonly Group[])[] {
  const all = groups(text);
  const start = all.findIndex(({ code, value }) => code === 2 && value === "ENTITIES");
  const found: Group[][] = [];
  for (const group of all.slice(start + 1)) {
    if (group.code === 0 && group.value === "ENDSEC") break;
    if (group.code === 0) found.push([]);
    found.at(-1)!.push(group);
  }
  return found;
}

const value = (entity: readonly Group[], code: number): string => entity.find((g) => g.code === code)!.value;
const setting = (text: string, name: string): string => {
  const all = groups(text);
  return all[all.findIndex((g) => g.code === 9 && g.value === name) + 1]!.value;
};

/** A polyline rebuilt by the definition of a bulge: the tangent of a quarter of the angle that the arc turns by. */
function rebuilt(entity: readonly Group[]): Path {
  const corners: { at: Point; bulge: number }[] = [];
  entity.forEach(({ code, value: text }, i) => {
    if (code === 10) corners.push({ at: [Number(text), Number(entity[i + 1]!.value)], bulge: 0 });
    if (code === 42) corners.at(-1)!.bulge = Number(text);
  });
  expect(corners.length).toBe(Number(value(entity, 90)));
  const segments = corners.map(({ at, bulge }, i) => {
    const to = corners[(i + 1) % corners.length]!.at;
    if (bulge === 0) return line(to);
    const turn = 4 * Math.atan(bulge);
    const [dx, dy] = [to[0] - at[0], to[1] - at[1]];
    // The centre stands on the middle of the chord, c ÷ 2 ÷ tan(turn ÷ 2) to the left.
    const off = 1 / (2 * Math.tan(turn / 2));
    return arc(to, [(at[0] + to[0]) / 2 - dy * off, (at[1] + to[1]) / 2 + dx * off], bulge > 0);
  });
  return closedPath(corners[0]!.at, segments);
}

function furthest(a: Path, b: Path): number {
  const from = (p: Path, q: Path): number =>
    Math.max(
      ...Array.from({ length: 300 }, (_, i) => distanceToPath(pointAt(p, (pathLength(p) * i) / 300), q)),
    );
  return Math.max(from(a, b), from(b, a));
}

const outline = (path: Path): DxfItem => ({ kind: "path", layer: "CUT", path });
const words = (text: string): DxfItem => ({ kind: "words", layer: "TEXT", at: [0, -20], height: 3, text });
const textOf = (text: string): string => value(entities(dxf([words(text)]))[0]!, 1);

describe("DXF", () => {
  test("says that it is millimetres, and which release", () => {
    const file = dxf([outline(roundedRectangle(80, 40, 6))]);
    expect(setting(file, "$ACADVER")).toBe("AC1015");
    expect(setting(file, "$INSUNITS")).toBe("4");
    expect(setting(file, "$MEASUREMENT")).toBe("1");
    expect(Number(setting(file, "$EXTMIN"))).toBe(-40);
    expect(file.endsWith("  0\nEOF\n")).toBe(true);
  });

  test("a rounded rectangle: closed, corners as quarter turns, tan(90° ÷ 4)", () => {
    const [entity] = entities(dxf([outline(roundedRectangle(80, 40, 6))]));
    expect(value(entity!, 0)).toBe("LWPOLYLINE");
    expect(value(entity!, 8)).toBe("CUT");
    expect(value(entity!, 70)).toBe("1");
    const bulges = entity!.filter(({ code }) => code === 42).map((g) => Number(g.value));
    expect(bulges.length).toBe(4);
    for (const bulge of bulges) expect(bulge).toBeCloseTo(Math.tan(Math.PI / 8), 8);
  });

  const keyhole = closedPath([6, -8], [arc([6, 8], [0, 0], false), line([20, 8]), line([20, -8])]);
  test.each([
    ["rounded rectangle", roundedRectangle(80, 40, 6)],
    ["circle", circlePath([3, 4], 12.345)],
    ["arc over half a turn, clockwise", keyhole],
    ["swelled strap", fitArcs(swelledStrap()).path],
    ["ellipse", fitArcs(ellipse(50, 30)).path],
  ])("%s comes back within 0.001 mm", (_, path) => {
    expect(furthest(rebuilt(entities(dxf([outline(path)]))[0]!), path)).toBeLessThan(0.001);
  });

  test("any outline comes back within 0.001 mm of its arcs and 0.05 mm of the piece", () => {
    fc.assert(
      fc.property(anyOutline, (piece) => {
        fc.pre(selfCrossings(piece).length === 0);
        const { path } = fitArcs(piece);
        const back = rebuilt(entities(dxf([outline(path)]))[0]!);
        expect(furthest(back, path)).toBeLessThan(0.001);
        expect(furthest(back, piece)).toBeLessThan(0.05);
      }),
      { seed: 13, numRuns: 6 },
    );
  }, 20000);

  test("holes are circles, open lines stay open, each on its layer", () => {
    const file = dxf([
      outline(roundedRectangle(80, 40, 6)),
      { kind: "circle", layer: "CUT_TUBES", centre: [10.5, -2], radius: 2.25 },
      {
        kind: "path",
        layer: "HAND_CREASE",
        path: openPath([0, 0], [line([5, 5]), arc([7, 5], [6, 5], false)]),
      },
    ]);
    const [, tube, crease] = entities(file);
    expect([0, 8, 10, 20, 40].map((code) => value(tube!, code))).toEqual([
      "CIRCLE",
      "CUT_TUBES",
      "10.5",
      "-2.0",
      "2.25",
    ]);
    expect([0, 8, 70, 90].map((code) => value(crease!, code))).toEqual([
      "LWPOLYLINE",
      "HAND_CREASE",
      "0",
      "3",
    ]);
    expect(Number(crease!.find(({ code }) => code === 42)!.value)).toBeCloseTo(-1, 8);
    const names = groups(file).flatMap(({ code, value: v }, i, all) =>
      code === 100 && v === "AcDbLayerTableRecord" ? [all[i + 1]!.value] : [],
    );
    expect(names).toEqual(["0", "CUT", "CUT_TUBES", "HAND_CREASE"]);
  });

  test("every handle is its own, and the next is free", () => {
    const file = dxf([outline(roundedRectangle(80, 40, 6)), words("one"), words("two")]);
    const handles = groups(file)
      .filter(({ code }, i, all) => code === 105 || (code === 5 && all[i - 1]!.value !== "$HANDSEED"))
      .map((g) => g.value);
    expect(new Set(handles).size).toBe(handles.length);
    const seed = Number.parseInt(setting(file, "$HANDSEED"), 16);
    for (const handle of handles) expect(Number.parseInt(handle, 16)).toBeLessThan(seed);
  });

  test.each([
    ["line breaks", "a\r\n  0\nEOF\nb", "a    0 EOF b"],
    ["commands for signs", "50 %%d %%% 5 %", "50 % %d % % % 5 %"],
    ["control characters by caret", "^J ^", "^ J ^ "],
    ["numbers of characters as text", "\\U+0041\\P", "\\U+005CU+0041\\U+005CP"],
    ["letters beyond ASCII", "Жé", "\\U+0416\\U+00E9"],
    ["beyond four digits", "🐴", "(U+1F434)"],
    ["reading direction and unseen characters", "a\u202eb\u0000\u001bc", "abc"],
  ])("text is safe: %s", (_, text, expected) => {
    expect(textOf(text)).toBe(expected);
  });

  test("hostile text changes nothing but its own line", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 400 }), (text) => {
        const file = dxf([words(text), outline(roundedRectangle(80, 40, 6))]);
        expect(file).toMatch(/^[\x20-\x7e\n]*$/);
        const found = entities(file);
        expect(found.map((e) => value(e, 0))).toEqual(["TEXT", "LWPOLYLINE"]);
        expect(value(found[0]!, 1).length).toBeLessThanOrEqual(250);
        expect(value(found[0]!, 1)).not.toContain("%%");
      }),
      { seed: 14, numRuns: 60 },
    );
  });

  test("numbers have a point, no exponent, no minus before zero", () => {
    const file = dxf([outline(openPath([-0, 1e-10], [line([123456.789, -1e-9])]))]);
    const numbers = entities(file)[0]!
      .filter(({ code }) => code === 10 || code === 20)
      .map((g) => g.value);
    expect(numbers).toEqual(["0.0", "0.0", "123456.789", "0.0"]);
  });

  test("the same items give the same text", () => {
    const items = [outline(fitArcs(swelledStrap()).path), words("cheek, left")];
    expect(dxf(items)).toBe(dxf([...items]));
  });

  test("curves, nothing at all and what is not finite are refused", () => {
    expect(() => dxf([outline(swelledStrap())])).toThrow("fitted by arcs");
    expect(() => dxf([])).toThrow();
    expect(() => dxf([{ kind: "circle", layer: "CUT_TUBES", centre: [0, 0], radius: Number.NaN }])).toThrow();
  });
});
