import type { AssemblyStep, Capacity } from "../../model/article.ts";
import type { Piece } from "../../model/piece.ts";
import type { Units } from "../../model/say.ts";
import type { Layout } from "../../model/sheet.ts";
import type { Picture } from "../picture.ts";
import { spaceOf } from "../piece/space.ts";
import { frontPictures } from "./front.ts";
import { joiningMarks } from "./marks.ts";
import { drawPlate } from "./plate.ts";
import { type SheetTask, sheetPicture } from "./sheet.ts";
import type { SheetWords } from "./words.ts";

export type SheetsInput = {
  readonly pieces: readonly Piece[];
  readonly layout: Layout;
  readonly words: SheetWords;
  readonly units: Units;
  /** How it is put together, and what it holds: said on the first sheet. */
  readonly assembly?: readonly AssemblyStep[];
  readonly capacity?: Capacity;
  /** Printed large on every sheet, e.g. "has errors". */
  readonly stamp?: string;
};

/** Draws every plate with its joining marks, numbered through the whole job. */
export function drawPlates({
  pieces,
  layout,
  units,
}: SheetsInput): ReadonlyMap<string, Pick<SheetTask, "pieces" | "marks">> {
  const drawn = new Map<string, Pick<SheetTask, "pieces" | "marks">>();
  let next = 1;
  for (const plate of layout.plates) {
    const onPlate = drawPlate(plate, pieces, layout, units);
    const space = spaceOf(
      onPlate.flatMap((p) => p.lines),
      onPlate.flatMap((p) => p.words),
    );
    const marks = joiningMarks(
      layout.sheets.filter((s) => s.plate === plate.id),
      { space, leather: onPlate.flatMap((p) => p.edges) },
      next,
    );
    next = marks.next;
    drawn.set(plate.id, { pieces: onPlate, marks: marks.items });
  }
  return drawn;
}

/** The pictures of every sheet, in the order they are printed: the first sheet, then the pieces row by row. */
export function sheetPictures(input: SheetsInput): readonly Picture[] {
  const { layout, words, stamp } = input;
  const plates = drawPlates(input);
  const drawn = [...plates.values()].flatMap((p) => p.pieces);
  const unplaced = new Map(drawn.map((p) => [p.piece.id, p.unplaced]));
  const sheets = layout.sheets.map((sheet) =>
    sheetPicture(sheet, {
      layout,
      words,
      ...plates.get(sheet.plate)!,
      ...(stamp === undefined ? {} : { stamp }),
    }),
  );
  return [...frontPictures({ ...input, unplaced }), ...sheets];
}
