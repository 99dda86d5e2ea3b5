import type { Box } from "../geometry/path.ts";
import type { UsedCell } from "./cells.ts";
import { boxOnPlate } from "./draw.ts";
import { freeRects, type Rect } from "./pack.ts";
import type { Parts } from "./part.ts";
import type { Settled } from "./settle.ts";

/** The calibration square with its words, mm. */
export const SQUARE_ROOM_MM = { width: 56, height: 62 } as const;

/** True when a sheet that shows `window`, and white paper below it down to `height`, has room for the square. */
function hasSquare(plate: Settled, window: Box, height: number, parts: Parts): boolean {
  const rooms = plate.placed.map((p): Rect => {
    const box = boxOnPlate(p, parts.get(p.piece)!.room);
    return { x: box.minX, y: box.minY, width: box.maxX - box.minX, height: box.maxY - box.minY };
  });
  const shown: Rect = { x: window.minX, y: window.maxY - height, width: plate.tile.width, height };
  const { width: w, height: h } = SQUARE_ROOM_MM;
  return freeRects([shown], rooms).some((f) => f.width >= w && f.height >= h);
}

/** How many sheets have no free place for the calibration square beside the pieces' rooms. */
export const sheetsWithoutSquare = (plate: Settled, cells: readonly UsedCell[], parts: Parts): number =>
  cells.filter(({ window }) => !hasSquare(plate, window, plate.tile.height, parts)).length;

/** True when some page of a roll, cut where its window ends, has no place for the square. */
export const rollLacksSquare = (plate: Settled, cells: readonly UsedCell[], parts: Parts): boolean =>
  cells.some(({ window }) => !hasSquare(plate, window, window.maxY - window.minY, parts));
