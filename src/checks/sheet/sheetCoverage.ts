import type { Made } from "../../model/article.ts";
import type { Layout } from "../../model/sheet.ts";
import { type OnPlate, piecesOnPlates } from "../measure/drawn.ts";
import { firstUnseen } from "../measure/windows.ts";
import { BAD_SHEETS, sayLength } from "../measure/words.ts";
import { type Context, type Remark, sheetRule } from "../rule.ts";

/** A line that passes a sheet's edge by less than a pen's width is still seen; mm. */
const SEEN_MM = 0.1;

const fault = (piece: string, place: string, message: string, value: string, limit: string): Remark => ({
  severity: "error",
  piece,
  place,
  message,
  value,
  limit,
  mend: BAD_SHEETS,
});

/** Pieces that lie on no plate, or on more than one. */
function placedOnce(job: Made, layout: Layout): readonly Remark[] {
  const places = (id: string): number =>
    layout.plates.reduce((sum, plate) => sum + plate.placed.filter((p) => p.piece === id).length, 0);
  const strangers = [...new Set(layout.plates.flatMap((p) => p.placed.map((x) => x.piece)))].filter(
    (id) => !job.pieces.some((p) => p.id === id),
  );
  return [
    ...job.pieces
      .filter((p) => places(p.id) !== 1)
      .map((p) =>
        fault(
          p.id,
          "sheets",
          `${p.name} is drawn ${places(p.id)} times on the sheets.`,
          `${places(p.id)}`,
          "1",
        ),
      ),
    ...strangers.map((id) =>
      fault(id, "sheets", `The sheets show a piece ${id} that is not made.`, id, "a piece of the article"),
    ),
  ];
}

/** Parts of a placed piece that no sheet's window shows; one finding for each part. */
function unseen({ plate, piece, strokes }: OnPlate, layout: Layout, context: Context): readonly Remark[] {
  const windows = layout.sheets.filter((s) => s.plate === plate.id).map((s) => s.window);
  const lost = new Map<string, Remark>();
  for (const { what, a, b } of strokes) {
    const at = lost.has(what) ? undefined : firstUnseen(windows, a, b, SEEN_MM);
    if (!at) continue;
    const place = `${sayLength(at[0], context)} across and ${sayLength(at[1], context)} up the plate ${plate.id}`;
    lost.set(
      what,
      fault(
        piece.id,
        what,
        `The ${what} of ${piece.name} is on no sheet at ${place}.`,
        "on no sheet",
        "on a sheet",
      ),
    );
  }
  return [...lost.values()];
}

/** Every drawn millimetre of every piece is on a sheet; of a strap printed ends only, what is drawn of it. */
export const sheetCoverage = sheetRule(
  "sheet-coverage",
  "every drawn millimetre is on some sheet",
  (job, layout, context) => [
    ...placedOnce(job, layout),
    ...piecesOnPlates(job, layout).flatMap((on) => unseen(on, layout, context)),
  ],
);
