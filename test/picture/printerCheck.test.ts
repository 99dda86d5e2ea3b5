import { describe, expect, test } from "vitest";
import { boundsOf } from "../../src/geometry/bounds.ts";
import { pdf } from "../../src/output/pdf.ts";
import { flattenPicture } from "../../src/picture/flat.ts";
import type { Picture } from "../../src/picture/picture.ts";
import { printerCheck } from "../../src/picture/sheet/printerCheck.ts";
import { bold, font } from "../support/fonts.ts";
import { cutWords, overlaps } from "../support/overlaps.ts";
import { paper } from "../support/papers.ts";
import { darkness, renderPdfPage } from "../support/render.ts";

const said = (picture: Picture): string =>
  flattenPicture(picture)
    .flatMap(({ item }) => (item.kind === "words" ? [item.text] : []))
    .join(" ");

describe.each(["letter", "legal", "tabloid", "a4", "a3", "roll 610 mm"])(
  "the printer check on %s",
  (name) => {
    const picture = printerCheck(paper(name), 10);

    test("fits between the margins, its words clear of everything", () => {
      expect(overlaps(picture)).toEqual([]);
      expect(cutWords(picture)).toEqual([]);
      for (const { item } of flattenPicture(picture)) {
        if (item.kind !== "stroke") continue;
        const box = boundsOf(item.path);
        expect(box.minX).toBeGreaterThanOrEqual(10 - 1e-6);
        expect(box.minY).toBeGreaterThanOrEqual(10 - 1e-6);
        expect(box.maxX).toBeLessThanOrEqual(picture.width - 10 + 1e-6);
        expect(box.maxY).toBeLessThanOrEqual(picture.height - 10 + 1e-6);
      }
    });

    test("says what to measure and how to give it", () => {
      expect(said(picture)).toContain("--printed");
      expect(said(picture)).toContain("actual size");
    });
  },
);

test("says that it is always the one to measure for a correction", () => {
  expect(said(printerCheck(paper("letter"), 10))).toContain(
    "Always uncorrected: measure this one for --printed.",
  );
});

test("rendered at 300 dpi the lower bar is 180 mm and the left bar 240 mm, outer edge to outer edge", async () => {
  const image = await renderPdfPage(
    await pdf([printerCheck(paper("letter"), 10)], { font, bold, title: "t", id: "1" }),
    1,
    300,
  );
  const px = 300 / 25.4;
  /** First and last dark pixel of a row or column. */
  const ends = (dark: (i: number) => boolean, length: number): readonly [number, number] => {
    const found = Array.from({ length }, (_, i) => i).filter(dark);
    return [found[0]!, found.at(-1)!];
  };
  // Half-way up the bars' end marks, 5 mm from their lines: nothing else stands at that height there.
  const row = Math.round(image.height - 15.2 * px);
  const [left, right] = ends((x) => x > 16.5 * px && darkness(image, x, row) > 0.5, image.width);
  expect(Math.abs(right - left + 1 - (180 / 25.4) * 300)).toBeLessThan(1.5);
  const column = Math.round(15.2 * px);
  const [top, foot] = ends(
    (y) => y < image.height - 16.5 * px && darkness(image, column, y) > 0.5,
    image.height,
  );
  expect(Math.abs(foot - top + 1 - (240 / 25.4) * 300)).toBeLessThan(1.5);
});
