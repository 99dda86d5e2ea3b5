// What flows over the sheets of a drawing: text and the lines of tables, down one column after the other.
import type { Box } from "../../geometry/path.ts";
import type { Item } from "../picture.ts";
import type { Flowing } from "../sheet/flow.ts";

/**
 * Something that flows; `again` is drawn above it where it begins a column: the head of its table. `foot` is
 * drawn once at the foot of the first column of each sheet that it comes on; its height is what it takes of
 * the column.
 */
export type Sheeted = Flowing & { readonly again?: Flowing; readonly foot?: Flowing };

/** How much must find room together with the first: headings with what follows them. */
function neededBy(all: readonly Sheeted[]): number {
  let height = 0;
  for (const { height: own, keep } of all) {
    height += own;
    if (!keep) break;
  }
  return height;
}

/** Fills one column; returns what has not found room. */
function fill(column: Box, all: readonly Sheeted[], onto: Item[]): readonly Sheeted[] {
  let rest = all;
  let top = column.maxY;
  while (rest.length > 0) {
    const fresh = top === column.maxY;
    const [first] = rest;
    if (fresh && first!.again) {
      onto.push(...first!.again.draw(column.minX, top));
      top -= first!.again.height;
    } else if (!fresh && top - neededBy(rest) < column.minY) break;
    onto.push(...first!.draw(column.minX, top));
    top -= first!.height;
    rest = rest.slice(1);
  }
  return rest;
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
    const foot = rest.find((each) => each.foot)?.foot;
    columns(sheets.length).forEach((column, i) => {
      if (i > 0 || !foot) {
        rest = fill(column, rest, items);
        return;
      }
      const minY = column.minY + foot.height;
      rest = fill({ ...column, minY }, rest, items);
      items.push(...foot.draw(column.minX, minY));
    });
    sheets.push(items);
  }
  return sheets;
}
