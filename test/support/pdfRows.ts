// The text of a PDF as a reader of the paper has it: lines of cells, by where they stand, through pdfjs.
import { withPdf } from "./render.ts";

/** Cells of one line, from left to right. */
export type TextRow = readonly string[];

/** Words whose base lines differ by less than this stand on one line, pt. */
const SAME_LINE_PT = 1;

type Bit = { readonly text: string; readonly x: number; readonly y: number };

function rowsOf(bits: readonly Bit[]): readonly TextRow[] {
  const lines: Bit[][] = [];
  for (const bit of [...bits].sort((a, b) => b.y - a.y)) {
    const line = lines.at(-1);
    if (line && Math.abs(line[0]!.y - bit.y) < SAME_LINE_PT) line.push(bit);
    else lines.push([bit]);
  }
  return lines.map((line) => [...line].sort((a, b) => a.x - b.x).map(({ text }) => text));
}

/** The lines of every page, from its top. */
export const pdfRows = (bytes: Uint8Array): Promise<readonly (readonly TextRow[])[]> =>
  withPdf(bytes, async (file) => {
    const pages: (readonly TextRow[])[] = [];
    for (let n = 1; n <= file.numPages; n++) {
      const { items } = await (await file.getPage(n)).getTextContent();
      const bits = items.flatMap((i): readonly Bit[] => {
        if (!("str" in i) || i.str.trim() === "") return [];
        const [, , , , x, y] = i.transform as number[];
        return [{ text: i.str, x: x!, y: y! }];
      });
      pages.push(rowsOf(bits));
    }
    return pages;
  });
