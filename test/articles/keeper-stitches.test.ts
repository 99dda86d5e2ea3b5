import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { articles } from "../../src/articles/index.ts";
import { boundsOf } from "../../src/geometry/bounds.ts";
import { readOrder } from "../../src/order/read.ts";
import { orderFiles } from "../support/orders.ts";

// "At least two stitches each side" through the ends of a loop that meet under the strap: P. N. Hasluck,
// Harness Making (1904), pp. 57-58. A stitch goes from hole to hole.
const book = JSON.parse(readFileSync("fixtures/published/harness-making-1904.json", "utf8")) as {
  figures: { H23: { stitches: number } };
};

const stitchedKeepers = orderFiles.flatMap(({ name, text }) => {
  const order = readOrder(text, name, articles).order!;
  const pieces = order.article.make(order.values).pieces;
  return pieces.flatMap((piece) =>
    piece.zones
      .filter(
        (z) => z.kind === "keeper" && piece.seams.some((s) => s.turnBack && z.id.startsWith(s.turnBack)),
      )
      .map((zone) => ({ name: `${name}, ${piece.id}`, piece, zone })),
  );
});

describe("stitches through the ends of a caught keeper", () => {
  test("are found", () => expect(stitchedKeepers.length).toBeGreaterThan(3));
  test.each(stitchedKeepers)("$name", ({ piece, zone }) => {
    const { minX, maxX } = boundsOf(zone.outline);
    for (const seam of piece.seams.filter((s) => s.turnBack && zone.id.startsWith(s.turnBack))) {
      const xs = piece.holes.filter((h) => seam.holes.includes(h.id)).map((h) => h.at[0]);
      const under = xs.slice(1).filter((x, i) => Math.max(x, xs[i]!) > minX && Math.min(x, xs[i]!) < maxX);
      expect(under.length, seam.id).toBeGreaterThanOrEqual(book.figures.H23.stitches);
    }
  });
});
