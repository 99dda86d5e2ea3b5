import { svgPathProperties } from "svg-path-properties";
import { describe, expect, test } from "vitest";
import { defaultDie } from "../../src/die/settings.ts";
import { sidesOf } from "../../src/die/sides.ts";
import { plotterSvg } from "../../src/output/plotterSvg.ts";
import { plotterSheet } from "../../src/picture/die/plotterSheet.ts";
import { orderPieces } from "../support/dies.ts";

// A plotter's sheet, measured by svg-path-properties, which is not ours.

type Spot = { readonly x: number; readonly y: number };

/** A line this near the outline is cut twice, mm; over a length this short it only ends there. */
const NEAR_MM = 0.1;
const END_MM = 1;
const STEP_MM = 0.5;
/** A usual sans-serif's letters advance by less than this share of its size, on the average of a line. */
const LETTER = 0.62;

const ORDERS = ["juniper-headstall.yaml", "bramble-headstall.yaml", "rowan-tool-tote.yaml"];
const files = orderPieces(ORDERS).map(({ name, piece }) => {
  const { die } = sidesOf(piece, defaultDie())[0]!;
  const words = ["HAS ERRORS", `${piece.name}; seen on the grain side`, "a number that is long, revision B"];
  return [name, piece, plotterSvg(plotterSheet(die, { title: "any", words, insideFirst: true }))] as const;
});

function spotsOf(d: string): readonly Spot[] {
  const path = new svgPathProperties(d);
  const count = Math.max(Math.ceil(path.getTotalLength() / STEP_MM), 4);
  return Array.from({ length: count + 1 }, (_, i) =>
    path.getPointAtLength((path.getTotalLength() * i) / count),
  );
}

const layersOf = (svg: string): ReadonlyMap<string, string> =>
  new Map([...svg.matchAll(/<g id="([^"]+)"[^>]*>([\s\S]*?)<\/g>/g)].map((m) => [m[1]!, m[2]!]));
const pathsOf = (content: string | undefined): readonly string[] =>
  [...(content ?? "").matchAll(/ d="([^"]+)"/g)].map((m) => m[1]!);

/** Length of a line's spots that lie near any stretch between two of the other's. */
function lengthNear(spots: readonly Spot[], other: readonly Spot[]): number {
  const near = ({ x, y }: Spot): boolean =>
    other.slice(1).some((b, i) => {
      const a = other[i]!;
      if (Math.abs(a.x - x) > 1 || Math.abs(a.y - y) > 1) return false;
      const [dx, dy] = [b.x - a.x, b.y - a.y];
      const t = Math.min(Math.max(((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy || 1), 0), 1);
      return Math.hypot(a.x + t * dx - x, a.y + t * dy - y) < NEAR_MM;
    });
  return spots.filter(near).length * STEP_MM;
}

const boxOf = (spots: readonly Spot[]) => ({
  left: Math.min(...spots.map(({ x }) => x)),
  right: Math.max(...spots.map(({ x }) => x)),
  top: Math.min(...spots.map(({ y }) => y)),
  bottom: Math.max(...spots.map(({ y }) => y)),
});

const FLESH = ["flesh-skive", "flesh-glue", "flesh-notches"];

describe("a plotter's sheet", () => {
  test.each(files)("%s: no mark runs along the outline", (_, __, svg) => {
    const layers = layersOf(svg);
    const outline = pathsOf(layers.get("outline")).flatMap(spotsOf);
    for (const mark of ["marks", ...FLESH].flatMap((name) => pathsOf(layers.get(name))))
      expect(lengthNear(spotsOf(mark), outline)).toBeLessThanOrEqual(END_MM);
  });

  test("a mark that is the outline again is seen", () => {
    const outline = pathsOf(layersOf(files[0]![2]).get("outline")).flatMap(spotsOf);
    expect(lengthNear(outline, outline)).toBeGreaterThan(100);
  });

  test("a glued field's inner edge is still marked", () => {
    const [, , svg] = files.find(([name]) => name === "rowan-tool-tote.yaml: front")!;
    const long = pathsOf(layersOf(svg).get("flesh-glue")).map((d) =>
      new svgPathProperties(d).getTotalLength(),
    );
    expect(Math.max(...long)).toBeGreaterThan(500);
  });

  test.each(files)(
    "%s: a square of 50 mm in its own layer, clear of the piece; words beside it",
    (_, __, svg) => {
      const layers = layersOf(svg);
      const squares = pathsOf(layers.get("check-square"));
      expect(squares).toHaveLength(1);
      const box = boxOf(spotsOf(squares[0]!));
      expect([box.right - box.left, box.bottom - box.top]).toEqual([
        expect.closeTo(50, 3),
        expect.closeTo(50, 3),
      ]);
      const piece = [...layers]
        .filter(([name]) => name !== "check-square")
        .flatMap(([, content]) => pathsOf(content).flatMap(spotsOf));
      expect(box.top - boxOf(piece).bottom).toBeGreaterThanOrEqual(20);
      const [, width, height] = /viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg)!.map(Number);
      const words = [...svg.matchAll(/<text x="([\d.]+)" y="([\d.]+)" font-size="([\d.]+)">([^<]*)</g)];
      const flesh = FLESH.some((name) => layers.has(name));
      expect(words.length).toBe(flesh ? 5 : 4);
      expect(words.some(([, , , , text]) => text!.includes("do not plot them on the face"))).toBe(flesh);
      for (const [, x, y, size, text] of words) {
        expect(Number(x)).toBeGreaterThan(box.right + 5);
        expect(Number(y)).toBeLessThanOrEqual(height!);
        expect(Number(y) - Number(size)).toBeGreaterThan(boxOf(piece).bottom + 15);
        expect(Number(x) + text!.length * Number(size) * LETTER).toBeLessThanOrEqual(width!);
      }
      expect(box.bottom).toBeLessThan(height!);
    },
  );

  test("work on the flesh side lies on no layer for the face; by hand, notches are marked there and not cut", () => {
    const { piece } = orderPieces(["rowan-tool-tote.yaml"]).find((one) => one.piece.id === "front")!;
    const layersWith = (notches: "by hand" | "in the die") => {
      const { die } = sidesOf(piece, { ...defaultDie(), notches })[0]!;
      return layersOf(plotterSvg(plotterSheet(die, { title: "any", words: [], insideFirst: true })));
    };
    const count = piece.marks.filter(({ kind }) => kind === "notch").length;
    expect(count).toBeGreaterThan(0);
    const [marked, cut] = [layersWith("by hand"), layersWith("in the die")];
    expect([pathsOf(marked.get("flesh-notches")).length, marked.has("notches")]).toEqual([count, false]);
    expect([pathsOf(cut.get("notches")).length, cut.has("flesh-notches")]).toEqual([count, false]);
    const skives = piece.zones.filter(({ kind }) => kind === "skive");
    expect(marked.has("flesh-skive")).toBe(skives.length > 0);
    expect(marked.has("flesh-glue")).toBe(true);
    expect(pathsOf(marked.get("marks")).length).toBeLessThanOrEqual(
      piece.folds.length + piece.marks.length - count,
    );
  });

  test("no text outside the layer of words; its font falls back on any that the system has", () => {
    for (const [, , svg] of files) {
      for (const [name, content] of layersOf(svg)) expect(content.includes("<text")).toBe(name === "words");
      const families = [...svg.matchAll(/font-family="([^"]+)"/g)].map((m) => m[1]!.split(","));
      expect(families.length).toBe(1);
      expect(families[0]!.length).toBeGreaterThan(2);
      expect(families[0]!.at(-1)).toBe("sans-serif");
    }
  });
});
