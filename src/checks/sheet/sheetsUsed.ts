import { boundsOf } from "../../geometry/bounds.ts";
import { containsPoint } from "../../geometry/contains.ts";
import type { Box, Point } from "../../geometry/path.ts";
import { placed as laid, placedPoint } from "../../geometry/transform.ts";
import type { Layout, Sheet } from "../../model/sheet.ts";
import { type OnPlate, piecesOnPlates } from "../measure/drawn.ts";
import { stretchIn } from "../measure/windows.ts";
import { BAD_SHEETS } from "../measure/words.ts";
import { type Remark, sheetRule } from "../rule.ts";

/** A piece that shows less than this at a sheet's edge may go unnamed there; mm. */
const EDGE_MM = 0.5;

const fault = (sheet: string, message: string, value: string, limit: string): Remark => ({
  severity: "error",
  piece: "",
  place: `sheet ${sheet}`,
  message,
  value,
  limit,
  mend: BAD_SHEETS,
});

const middleOf = (box: Box): Point => [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2];

/** The printed ends of a strap with the gap between them, in which its words stand. */
function endsBox({ placed, piece }: OnPlate): Box | undefined {
  if (!placed.kept) return undefined;
  const { minY, maxY } = boundsOf(piece.outline);
  const xs = placed.kept.flatMap(([from, to, moved]) => [from - moved, to - moved]);
  const [a, b] = [
    placedPoint([Math.min(...xs), minY], placed.placement),
    placedPoint([Math.max(...xs), maxY], placed.placement),
  ];
  return {
    minX: Math.min(a[0], b[0]),
    minY: Math.min(a[1], b[1]),
    maxX: Math.max(a[0], b[0]),
    maxY: Math.max(a[1], b[1]),
  };
}

const share = (a: Box, b: Box, least: number): boolean =>
  Math.min(a.maxX, b.maxX) - Math.max(a.minX, b.minX) > least &&
  Math.min(a.maxY, b.maxY) - Math.max(a.minY, b.minY) > least;

/** True when a window shows a line of the piece at least `inside` from its edge, or leather all over. */
function shows(window: Box, on: OnPlate, inside: number): boolean {
  const ends = endsBox(on);
  if (ends && share(window, ends, inside)) return true;
  const seen = on.strokes.some(({ a, b }) => stretchIn(window, a, b, -inside) !== undefined);
  return seen || (!ends && containsPoint(laid(on.piece.outline, on.placed.placement), middleOf(window)));
}

function misnamed(sheet: Sheet, all: readonly OnPlate[]): readonly Remark[] {
  const here = all.filter((on) => on.plate.id === sheet.plate);
  const shown = here.filter((on) => shows(sheet.window, on, EDGE_MM)).map((on) => on.piece.id);
  const perhaps = here.filter((on) => shows(sheet.window, on, -EDGE_MM)).map((on) => on.piece.id);
  const unnamed = shown.filter((id) => !sheet.pieces.includes(id));
  const strangers = sheet.pieces.filter((id) => !perhaps.includes(id));
  if (perhaps.length === 0)
    return [fault(sheet.name, `Sheet ${sheet.name} is empty.`, "nothing", "a part of a piece")];
  return [
    ...unnamed.map((id) =>
      fault(sheet.name, `Sheet ${sheet.name} shows ${id} and doesn't name it.`, sheet.pieces.join(", "), id),
    ),
    ...strangers.map((id) =>
      fault(sheet.name, `Sheet ${sheet.name} names ${id} and doesn't show it.`, id, shown.join(", ")),
    ),
  ];
}

/** Names of sheets are given once, every plate they are cut from exists, and every plate is cut. */
function wellNamed(layout: Layout): readonly Remark[] {
  const names = layout.sheets.map((s) => s.name);
  const plates = layout.plates.map((p) => p.id);
  return [
    ...[...new Set(names.filter((n, i) => names.indexOf(n) !== i))].map((n) =>
      fault(n, `Two sheets have the name ${n}.`, "2", "1"),
    ),
    ...layout.sheets
      .filter((s) => !plates.includes(s.plate))
      .map((s) =>
        fault(s.name, `Sheet ${s.name} shows a drawing that is not there.`, s.plate, plates.join(", ")),
      ),
  ];
}

/** No sheet is empty, and each names the pieces it shows. */
export const sheetsUsed = sheetRule(
  "sheets-used",
  "no sheet is empty, and each names what it shows",
  (job, layout) => {
    const all = piecesOnPlates(job, layout);
    const known = layout.sheets.filter((s) => layout.plates.some((p) => p.id === s.plate));
    return [...wellNamed(layout), ...known.flatMap((sheet) => misnamed(sheet, all))];
  },
);
