// What flows over the sheets of a drawing: text and the lines of tables, down one column after the other.
import type { Box } from "../../geometry/path.ts";
import type { Item } from "../picture.ts";
import type { Flowing } from "../sheet/flow.ts";

/** Something that flows; `again` is drawn above it where it begins a column: the head of its table. */
export type Sheeted = Flowing & { readonly again?: Flowing };

/** How much must find room together with the first: headings with what follows them. */
function neededBy(all: readonly Sheeted[]): number {
  let height = 0;
  for (const { height: own, keep } of all) {
    height += own;
    if (!keep) break;
  }
  return height;
}

/**
 * Fills the columns of as many sheets as it takes; `columns` gives those of the sheet with that number, from
 * 0. What is taller than a whole column stands in one of its own: nothing is dropped.
 */
export function overSheets(
  all: readonly Sheeted[],
  columns: (sheet: number) => readonly Box[],
): readonly (readonly Item[])[] {
  const sheets: Item[][] = [];
  let rest = all;
  while (rest.length > 0) {
    const items: Item[] = [];
    for (const column of columns(sheets.length)) {
      let top = column.maxY;
      while (rest.length > 0) {
        const fresh = top === column.maxY;
        const [first] = rest;
        if (fresh && first!.again) {
          items.push(...first!.again.draw(column.minX, top));
          top -= first!.again.height;
        } else if (!fresh && top - neededBy(rest) < column.minY) break;
        items.push(...first!.draw(column.minX, top));
        top -= first!.height;
        rest = rest.slice(1);
      }
    }
    sheets.push(items);
  }
  return sheets;
}
