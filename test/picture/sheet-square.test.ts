import { describe, expect, test } from "vitest";
import { boundsOf } from "../../src/geometry/bounds.ts";
import type { Box, Point } from "../../src/geometry/path.ts";
import { TRUE_FACTOR } from "../../src/layout/printer.ts";
import { pdf } from "../../src/output/pdf.ts";
import { flattenPicture } from "../../src/picture/flat.ts";
import type { Picture, Stroke } from "../../src/picture/picture.ts";
import { bold, font } from "../support/fonts.ts";
import { overlaps } from "../support/overlaps.ts";
import { paper } from "../support/papers.ts";
import { measureSquare, renderPdfPage } from "../support/render.ts";
import * as samples from "../support/samplePieces.ts";
import { areasOn, make, pictureOf, SETS, textsOn } from "../support/sheets.ts";

/** The calibration square on a page: its four corners as drawn, from bars or from corner ticks. */
function squareOn(picture: Picture): { readonly box: Box; readonly whole: boolean } {
  const whole = textsOn(picture).includes("50 mm");
  const thin = areasOn(picture).filter((b) => {
    const [w, h] = [b.maxX - b.minX, b.maxY - b.minY];
    return (
      Math.abs(Math.min(w, h) - 0.25) < 0.02 &&
      Math.abs(Math.max(w, h) - (whole ? 50 : 5)) < (whole ? 2 : 0.3)
    );
  });
  expect(thin).toHaveLength(whole ? 4 : 8);
  return {
    whole,
    box: {
      minX: Math.min(...thin.map((b) => b.minX)),
      minY: Math.min(...thin.map((b) => b.minY)),
      maxX: Math.max(...thin.map((b) => b.maxX)),
      maxY: Math.max(...thin.map((b) => b.maxY)),
    },
  };
}

describe("the calibration square", () => {
  test.each(Object.entries(SETS))("stands on every sheet of %s, and crosses nothing", (_, pieces) => {
    for (const factor of [TRUE_FACTOR, { x: 1.01, y: 0.99 }]) {
      const made = make(pieces, { paper: paper("letter"), factor });
      for (const sheet of made.layout.sheets) {
        const picture = pictureOf(made, sheet.name);
        const { box, whole } = squareOn(picture);
        const [fx, fy] = sheet.landscape ? [factor.y, factor.x] : [factor.x, factor.y];
        expect(box.maxX - box.minX).toBeCloseTo(50 / fx, 2);
        expect(box.maxY - box.minY).toBeCloseTo(50 / fy, 2);
        expect(box.minX).toBeGreaterThanOrEqual(10 - 1e-6);
        expect(box.maxX).toBeLessThanOrEqual(picture.width - 10 + 1e-6);
        // Cut lines, holes and stitches: none inside a whole square, none in the corners of a ticked one.
        const parts: readonly Box[] = whole
          ? [box]
          : [box.minX, box.maxX - 5].flatMap((x) =>
              [box.minY, box.maxY - 5].map((y) => ({ minX: x, minY: y, maxX: x + 5, maxY: y + 5 })),
            );
        const crossing = flattenPicture(picture).filter(({ item, clips }) => {
          if (item.kind === "words" || item.layer === "sheet") return false;
          const shown = clips.map((c) => ({
            minX: Math.min(...c.map((p) => p[0])),
            maxX: Math.max(...c.map((p) => p[0])),
            minY: Math.min(...c.map((p) => p[1])),
            maxY: Math.max(...c.map((p) => p[1])),
          }));
          return parts.some((part) => crossesBox(item, part, shown));
        });
        expect(
          crossing.map(({ item }) => item.id ?? item.layer),
          `${sheet.name}`,
        ).toEqual([]);
      }
    }
  });

  test("a roll's page is long enough for it, however small the piece", () => {
    for (const pieces of [SETS["a washer"]!, [samples.longStrap("browband", 380, 20)]]) {
      const made = make(pieces, { paper: paper("roll 610 mm") });
      expect(squareOn(pictureOf(made, "A1")).whole).toBe(true);
    }
  });

  test("a page too full for it still gets its four corners, off every hole", () => {
    // One piece fills a sheet: 180 × 240 mm with holes every 20 mm.
    const holes = Array.from({ length: 99 }, (_, i) =>
      samples.roundHole(`h.${i}`, 10 + (i % 9) * 20, 4, 10 + Math.floor(i / 9) * 20),
    );
    const outline = samples.panel("full", 185, 240).outline;
    const made = make([samples.samplePiece("full", outline, { holes })], { paper: paper("letter") });
    expect(made.layout.sheets).toHaveLength(1);
    const picture = pictureOf(made, "A1");
    const { box, whole } = squareOn(picture);
    expect(whole).toBe(false);
    const [cx, cy] = [boundsOf(outlineOf(picture)).minX, boundsOf(outlineOf(picture)).minY];
    for (const h of holes) {
      for (const x of [box.minX, box.maxX - 5]) {
        for (const y of [box.minY, box.maxY - 5]) {
          const [dx, dy] = [
            Math.max(x - (cx + h.at[0]), 0, cx + h.at[0] - x - 5),
            Math.max(y - (cy + h.at[1]), 0, cy + h.at[1] - y - 5),
          ];
          expect(Math.hypot(dx, dy)).toBeGreaterThan(2);
        }
      }
    }
    expect(overlaps(picture)).toEqual([]);
  });

  test("rendered at 300 dpi it is 590.55 px over its outer edges, times the correction", async () => {
    for (const factor of [TRUE_FACTOR, { x: 0.99, y: 1.01 }]) {
      const made = make(SETS["a washer"]!, { paper: paper("letter"), factor });
      const picture = pictureOf(made, "A1");
      const { box } = squareOn(picture);
      const image = await renderPdfPage(await pdf([picture], { font, bold, title: "t", id: "1" }), 1, 300);
      const px = 300 / 25.4;
      const inside: readonly [number, number] = [
        Math.round((box.minX + 5) * px),
        Math.round((picture.height - box.minY - 45) * px),
      ];
      const { x, y } = measureSquare(image, inside);
      const lying = made.layout.sheets[0]!.landscape;
      expect(Math.abs(x.outer - 590.55 / (lying ? factor.y : factor.x))).toBeLessThan(1);
      expect(Math.abs(y.outer - 590.55 / (lying ? factor.x : factor.y))).toBeLessThan(1);
    }
  });
});

const outlineOf = (picture: Picture) => {
  const found = flattenPicture(picture).find(
    ({ item }) => item.kind === "stroke" && item.id?.endsWith(".outline"),
  )!;
  return (found.item as Stroke).path;
};

/** True when some point of a stroke, shown through its clips, lies inside a box. */
function crossesBox(item: Stroke, box: Box, shown: readonly Box[]): boolean {
  const b = boundsOf(item.path);
  if (b.maxX < box.minX || b.minX > box.maxX || b.maxY < box.minY || b.minY > box.maxY) return false;
  const inside = (p: Point, w: Box): boolean =>
    p[0] > w.minX && p[0] < w.maxX && p[1] > w.minY && p[1] < w.maxY;
  return sampled(item).some((p) => inside(p, box) && shown.every((w) => inside(p, w)));
}

function sampled({ path }: Stroke): readonly Point[] {
  let from = path.start;
  return path.segments.flatMap((s): readonly Point[] => {
    const start = from;
    from = s.to;
    // Chords are enough: what is asked is whether a line comes by at all.
    const n = 200;
    return Array.from({ length: n }, (_, i): Point => {
      const t = i / n;
      return [start[0] + (s.to[0] - start[0]) * t, start[1] + (s.to[1] - start[1]) * t];
    });
  });
}
