import type { Job } from "../../model/job.ts";
import type { Picture } from "../picture.ts";
import { sheetPictures } from "./sheets.ts";

/** The sheets of a made job as they print, the first sheet before them; `stamp` stands large on each. */
export function jobSheets({ made, layout, order, findings }: Job, stamp?: string): readonly Picture[] {
  return sheetPictures({
    pieces: made.pieces,
    layout,
    words: {
      article: made.article,
      forWhom: order.forWhom,
      file: order.file,
      cautions: made.cautions,
      findings,
    },
    units: order.units,
    ...(made.assembly ? { assembly: made.assembly } : {}),
    ...(made.capacity ? { capacity: made.capacity } : {}),
    ...(stamp === undefined ? {} : { stamp }),
  });
}
