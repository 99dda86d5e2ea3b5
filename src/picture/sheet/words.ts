import { type Box, rectanglePath } from "../../geometry/path.ts";
import type { Finding } from "../../model/finding.ts";
import type { Layout } from "../../model/sheet.ts";
import { printNumber } from "../../units/index.ts";
import type { Item } from "../picture.ts";
import { type Block, blockBox, blockWords } from "../piece/block.ts";
import { stroke } from "../piece/strokes.ts";

/** What every sheet says about the job. */
export type SheetWords = {
  readonly article: string;
  /** Customer, horse: as the order says. */
  readonly forWhom: string;
  /** The order's file. */
  readonly file: string;
  readonly cautions: readonly string[];
  /** What the checks found, gravest first; errors and cautions are printed, twins once. */
  readonly findings?: readonly Finding[];
  /** Set where the sheets go with a die to its maker, who has neither the order nor the program. */
  readonly die?: ForDie;
};

export type ForDie = {
  /** `for die drawing juniper-cheek, revision A` */
  readonly says: string;
  /** The die cuts the notches. */
  readonly notches: boolean;
};

/** How a printer's correction is said; undefined when there is none. */
export function sayCorrection({ factor }: Pick<Layout, "factor">): string | undefined {
  if (factor.x === 1 && factor.y === 1) return undefined;
  const percent = (f: number): string => printNumber(f * 100, 2);
  return `corrected for a printer at ${percent(factor.x)} % (short edge) by ${percent(factor.y)} % (long edge)`;
}

/** The sizes that a stamp is tried in, mm. */
export const STAMP_SIZES_MM = [8, 6, 4] as const;
const STAMP_ROUND_MM = 1.5;

const stampBlock = (stamp: string, size: number): Block => [{ text: stamp.toUpperCase(), size, bold: true }];

/** The framed stamp's size. */
export function stampSize(stamp: string, size: number): { readonly width: number; readonly height: number } {
  const words = blockBox(stampBlock(stamp, size), 0);
  return { width: words.width + 2 * STAMP_ROUND_MM, height: words.height + 2 * STAMP_ROUND_MM };
}

/** The stamp in its frame. */
export function stampIn(stamp: string, size: number, box: Box): readonly Item[] {
  const { width, height } = stampSize(stamp, size);
  const inner = {
    minX: box.minX + STAMP_ROUND_MM,
    minY: box.minY + STAMP_ROUND_MM,
    maxX: box.minX + width - STAMP_ROUND_MM,
    maxY: box.minY + height - STAMP_ROUND_MM,
  };
  const frame = stroke("sheet", "01.2", rectanglePath([box.minX, box.minY], width, height));
  return [frame, ...blockWords(stampBlock(stamp, size), inner)];
}

/** A stamp whose upper right corner is given; nothing when there is none. */
export function stampItems(
  stamp: string | undefined,
  corner: { readonly x: number; readonly y: number },
): readonly Item[] {
  if (stamp === undefined) return [];
  const { width, height } = stampSize(stamp, STAMP_SIZES_MM[0]);
  return stampIn(stamp, STAMP_SIZES_MM[0], {
    minX: corner.x - width,
    minY: corner.y - height,
    maxX: corner.x,
    maxY: corner.y,
  });
}
