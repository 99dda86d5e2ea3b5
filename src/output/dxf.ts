// Outlines and holes as a DXF file: ASCII, release 2000 (AC1015), millimetres, arcs as arcs.
// A writer of our own: the file needs closed polylines with bulges, circles, layers, declared units and safe
// text, in a release that old cutters read; that is less than a library and needs no other bytes.
import { boundsOf, unionBox } from "../geometry/bounds.ts";
import { type ArcCurve, curvesOf } from "../geometry/curve.ts";
import type { Box, Path, Point } from "../geometry/path.ts";
import { apart, between } from "../geometry/vector.ts";
import { blocks, handles, header, objects, type Spaces, section, tables } from "./dxfFrame.ts";
import { DXF_LAYERS, type DxfLayer } from "./dxfLayers.ts";
import { at, at3, BULGE_DECIMALS, mm, type Pair, real, whole } from "./dxfPairs.ts";
import { dxfText, lettersIn } from "./dxfText.ts";

export { DXF_LAYERS, type DxfLayer } from "./dxfLayers.ts";

/**
 * The most that a letter advances in a reader's font, and the most that it hangs below the base line, as shares
 * of a capital's height: the file names no font of its own. Stroke fonts and common sans-serifs stay within.
 */
const LETTER_WIDTH = 1.2;
const LETTER_DROP = 0.4;
const LETTER_RISE = 1.2;

export type DxfItem =
  | { readonly kind: "path"; readonly layer: DxfLayer; readonly path: Path }
  | { readonly kind: "circle"; readonly layer: DxfLayer; readonly centre: Point; readonly radius: number }
  | {
      readonly kind: "words";
      readonly layer: DxfLayer;
      /** Where the base line starts. */
      readonly at: Point;
      /** Height of the capitals, mm. */
      readonly height: number;
      readonly text: string;
    };

/**
 * Tangent of a quarter of an arc's turn, negative clockwise: half the chord ÷ (radius + the centre's
 * distance from the chord), or the inverse beyond half a turn. Square roots alone, the same in every engine.
 */
function bulge({ p0, p1, centre, radius, sweep }: ArcCurve): number {
  const half = apart(p0, p1) / 2;
  const far = radius + apart(centre, between(p0, p1, 0.5));
  const size = Math.abs(sweep) > Math.PI ? far / half : half / far;
  return sweep > 0 ? size : -size;
}

function polyline(path: Path): readonly Pair[] {
  const curves = curvesOf(path);
  const corners = curves.flatMap((curve): readonly Pair[] => {
    if (curve.kind === "cubic") throw new Error("dxf: a curve must be fitted by arcs first");
    const arc: readonly Pair[] = curve.kind === "arc" ? [[42, real(bulge(curve), BULGE_DECIMALS)]] : [];
    return [...at(curve.p0), ...arc];
  });
  const end = path.closed ? [] : at(curves.at(-1)?.p1 ?? path.start);
  const count = curves.length + (path.closed ? 0 : 1);
  const head: readonly Pair[] = [[100, "AcDbPolyline"], whole(90, count), whole(70, path.closed ? 1 : 0)];
  return [...head, mm(43, 0), ...corners, ...end];
}

const TYPES = { path: "LWPOLYLINE", circle: "CIRCLE", words: "TEXT" } as const;

function geometry(item: DxfItem): readonly Pair[] {
  if (item.kind === "path") return polyline(item.path);
  if (item.kind === "circle") return [[100, "AcDbCircle"], ...at3(item.centre), mm(40, item.radius)];
  return [
    [100, "AcDbText"],
    ...at3(item.at),
    mm(40, item.height),
    [1, dxfText(item.text)],
    [7, "Standard"],
    [100, "AcDbText"],
  ];
}

const entity = (item: DxfItem, handle: string, owner: string): readonly Pair[] => [
  [0, TYPES[item.kind]],
  [5, handle],
  [330, owner],
  [100, "AcDbEntity"],
  [8, item.layer],
  ...geometry(item),
];

function boxOf(item: DxfItem): Box {
  if (item.kind === "path") return boundsOf(item.path);
  if (item.kind === "circle") {
    const [[x, y], r] = [item.centre, item.radius];
    return { minX: x - r, minY: y - r, maxX: x + r, maxY: y + r };
  }
  const [[x, y], h] = [item.at, item.height];
  return {
    minX: x,
    minY: y - LETTER_DROP * h,
    maxX: x + lettersIn(item.text) * LETTER_WIDTH * h,
    maxY: y + LETTER_RISE * h,
  };
}

/**
 * The items as the text of a DXF file at true size, in millimetres. Paths have lines and arcs only and become
 * one polyline each, with bulges for the arcs; a closed path is a closed polyline. Only layers that hold
 * something are there. The extents hold everything, words too. The same items give the same text. Throws when there are none, when a path has a cubic or a
 * number is not finite: that is our own fault.
 */
export function dxf(items: readonly DxfItem[]): string {
  const box = unionBox(items.map(boxOf));
  const next = handles();
  const spaces: Spaces = { model: next(), paper: next() };
  const layers = (Object.keys(DXF_LAYERS) as DxfLayer[]).filter((name) =>
    items.some(({ layer }) => layer === name),
  );
  const body = [
    ...section("CLASSES", []),
    ...tables(box, layers, next, spaces),
    ...blocks(next, spaces),
    ...section(
      "ENTITIES",
      items.flatMap((item) => entity(item, next(), spaces.model)),
    ),
    ...objects(next),
  ];
  const pairs: readonly Pair[] = [...header(box, next()), ...body, [0, "EOF"]];
  return `${pairs.map(([code, value]) => `${String(code).padStart(3)}\n${value}`).join("\n")}\n`;
}
