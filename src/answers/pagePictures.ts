import { articles } from "../articles/index.ts";
import type { Made } from "../model/article.ts";
import type { Piece } from "../model/piece.ts";
import type { Units } from "../model/say.ts";
import { readPaper } from "../order/paper.ts";
import { readOrder } from "../order/read.ts";
import { flattenPicture } from "../picture/flat.ts";
import { seamRowPictures } from "../picture/folded/seamRows.ts";
import { turnBackPictures } from "../picture/folded/turnBack.ts";
import type { Picture } from "../picture/picture.ts";
import { sayCount, sayCutSize, sayLeather } from "../picture/piece/say.ts";
import { piecePicture } from "../picture/piece.ts";
import { jobSheets } from "../picture/sheet/jobSheets.ts";
import type { JobOptions, JobResult } from "./jobResult.ts";
import type { PagePicture } from "./pageData.ts";
import { partsOf } from "./pageParts.ts";
import { notMade, refused, type Said, said } from "./said.ts";

// Pictures that take their time: asked for when the maker looks, not on every keystroke.

const pagePicture = (picture: Picture, says: string): PagePicture => ({
  title: picture.title,
  width: picture.width,
  height: picture.height,
  items: flattenPicture(picture),
  says,
});

type Drawn = { readonly made: Made; readonly units: Units };

function drawn(text: string, file: string): Said<Drawn> {
  const { order, faults } = readOrder(text, file, articles);
  return order ? said({ made: order.article.make(order.values), units: order.units }) : notMade(faults, file);
}

/** A piece in a paragraph: its size, how many, what of, and what stands on it. */
function sayPiece(piece: Piece, units: Units): string {
  const parts = partsOf(piece, units)
    .filter(({ id, says }) => !id.startsWith("corner.") && !says.startsWith("stitch hole"))
    .map(({ says }) => says);
  return [
    `${piece.name}: ${sayCutSize(piece, units)} over all, ${sayCount(piece)}, ${sayLeather(piece, units)}.`,
    ...(parts.length === 0 ? [] : [`On it: ${parts.join("; ")}.`]),
    ...piece.notes.map((note) => (/[.!?]$/.test(note) ? note : `${note}.`)),
  ].join(" ");
}

/** One piece with its labels, as its file has it. */
export function pagePiece(text: string, file: string, id: string): Said<PagePicture> {
  const found = drawn(text, file);
  if (!found.ok) return found;
  const { made, units } = found.value;
  const piece = made.pieces.find((p) => p.id === id);
  if (!piece)
    return refused(
      `This order has no piece ${id}; its pieces are ${made.pieces.map((p) => p.id).join(", ")}.`,
    );
  return said(pagePicture(piecePicture(piece, units), sayPiece(piece, units)));
}

/** Each turn-back folded, seen from the side, and each seam of a bag laid end to end. */
export function pageFolded(text: string, file: string): Said<readonly PagePicture[]> {
  const found = drawn(text, file);
  if (!found.ok) return found;
  const { made, units } = found.value;
  const all = [...turnBackPictures(made, units), ...seamRowPictures(made, units)];
  return said(all.map(({ picture, says }) => pagePicture(picture, says)));
}

export type SheetsAsked = {
  /** "letter"; the order's own unless said. */
  readonly paper?: string | undefined;
  /** What the bars of the printer check measured, "179.2x239.5". */
  readonly printed?: string | undefined;
};

/** The sheets as they will print, through `make`, which makes a whole order. */
export function sheetsThrough(
  make: (text: string, file: string, options: JobOptions) => JobResult,
  text: string,
  file: string,
  { paper, printed }: SheetsAsked,
): Said<readonly PagePicture[]> {
  const asked = paper === undefined ? undefined : readPaper(paper);
  if (asked && !asked.ok)
    return refused(`The paper: ${asked.problem}; allowed: ${asked.allowed}. To mend: ${asked.mend}.`);
  const result = make(text, file, {
    ...(asked ? { paper: asked.paper } : {}),
    ...(printed === undefined ? {} : { printed }),
  });
  if (!result.made) return notMade(result.faults, file);
  const { layout, made } = result.job;
  const pictures = jobSheets(result.job, result.status === 0 ? undefined : "has errors");
  const fronts = pictures.length - layout.sheets.length;
  return said(
    pictures.map((picture, i) => {
      const sheet = layout.sheets[i - fronts];
      const names = sheet?.pieces.map((id) => made.pieces.find((p) => p.id === id)?.name ?? id) ?? [];
      const what = sheet
        ? `on it: ${names.length === 0 ? "no piece" : names.join(", ")}`
        : "how to print and join the sheets, and what the lines mean";
      return pagePicture(picture, `Sheet ${i + 1} of ${pictures.length}, ${picture.title}; ${what}.`);
    }),
  );
}
