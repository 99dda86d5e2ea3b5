import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { boundsOf } from "../../src/geometry/bounds.ts";
import { keptOf } from "../../src/layout/ends.ts";
import { roomOf } from "../../src/layout/room.ts";
import type { Piece } from "../../src/model/piece.ts";
import type { Units } from "../../src/model/say.ts";
import { svg } from "../../src/output/svg.ts";
import { flattenPicture } from "../../src/picture/flat.ts";
import type { Item, Picture, Stroke, Words } from "../../src/picture/picture.ts";
import { saySeam } from "../../src/picture/piece/say.ts";
import { pictureOfPiece, piecePicture } from "../../src/picture/piece.ts";
import { textBox } from "../../src/picture/words.ts";
import { cutWords, overlaps } from "../support/overlaps.ts";
import * as samples from "../support/samplePieces.ts";

const PIECES: readonly Piece[] = [
  ...samples.sampleHeadstall(),
  samples.panel(),
  samples.longStrap("broad", 600, 50),
  samples.longStrap("thin", 300, 8),
  samples.longStrap("rough", 500, 20, { rough: samples.strapOutline(500, 32) }),
];

const strokesOf = (picture: Picture): readonly Stroke[] =>
  flattenPicture(picture).flatMap(({ item }) => (item.kind === "stroke" ? [item] : []));
const textsOf = (picture: Picture): readonly string[] =>
  flattenPicture(picture).flatMap(({ item }) => (item.kind === "words" ? [item.text] : []));
const wordsIn = (items: readonly Item[]): readonly Words[] =>
  items.flatMap((i) => (i.kind === "words" ? [i] : i.kind === "group" ? wordsIn(i.items) : []));

describe.each(PIECES.map((p) => [p.id, p] as const))("the picture of %s", (_, piece) => {
  test.each(["mm", "in"] as const)("in %s: words lie on nothing, and nothing is cut off", (units) => {
    const picture = piecePicture(piece, units);
    expect(overlaps(picture)).toEqual([]);
    expect(cutWords(picture)).toEqual([]);
  });

  test("keeps every word inside the room that the layout leaves it, and drops none", () => {
    const room = roomOf(piece);
    const { items, unplaced } = pictureOfPiece(piece, { units: "in", controls: piece.controls });
    expect(unplaced).toEqual([]);
    for (const w of wordsIn(items)) {
      const box = textBox(w);
      expect(box.minX, w.text).toBeGreaterThanOrEqual(room.minX);
      expect(box.minY, w.text).toBeGreaterThanOrEqual(room.minY);
      expect(box.maxX, w.text).toBeLessThanOrEqual(room.maxX);
      expect(box.maxY, w.text).toBeLessThanOrEqual(room.maxY);
      // Smaller can't be read at the bench.
      expect(w.size).toBeGreaterThanOrEqual(2.2);
    }
  });

  test("draws the outline, every cutout and every hole where they are, true to size", () => {
    const picture = piecePicture(piece, "mm");
    const strokes = strokesOf(picture);
    const outline = strokes.find((s) => s.id === "outline")!;
    const [drawn, asked] = [boundsOf(outline.path), boundsOf(piece.outline)];
    expect(drawn.maxX - drawn.minX).toBeCloseTo(asked.maxX - asked.minX, 2);
    expect(drawn.maxY - drawn.minY).toBeCloseTo(asked.maxY - asked.minY, 2);
    expect(outline.line).toBe("01.2");
    const [dx, dy] = [drawn.minX - asked.minX, drawn.minY - asked.minY];
    for (const hole of piece.holes) {
      const mark = strokes.find((s) => s.id === `hole.${hole.id}`)!;
      const box = boundsOf(mark.path);
      expect((box.minX + box.maxX) / 2 - dx).toBeCloseTo(hole.at[0], 2);
      expect((box.minY + box.maxY) / 2 - dy).toBeCloseTo(hole.at[1], 2);
      if (hole.kind === "round") expect(box.maxX - box.minX).toBeCloseTo(hole.size, 2);
    }
    for (const cutout of piece.cutouts)
      expect(strokes.some((s) => s.id === `cutout.${cutout.id}`)).toBe(true);
  });
});

describe("what a piece says", () => {
  const said = (piece: Piece, units: Units = "mm"): string => textsOf(piecePicture(piece, units)).join("\n");

  test("name, count and hand, cut size, leather, side and backbone", () => {
    const cheek = said(samples.cheekLike());
    for (const part of [
      "Cheek: cut 2: 1 as drawn, 1 turned over",
      "350 × 32 mm",
      "bridle leather, 3.5 mm",
      "grain side up",
      "backbone",
    ])
      expect(cheek).toContain(part);
    expect(said(samples.keeperLike())).toContain("Fixed keeper: cut 2");
    expect(said(samples.keeperLike())).not.toContain("turned over");
  });

  test("folds, slots, skives, keepers, holes and seams by name", () => {
    const cheek = said(samples.cheekLike());
    for (const part of [
      "fold round the buckle bar",
      "fold round the bit ring",
      "tongue slot 28 × 4 mm",
      "skive (flesh side) all to 2 mm",
      "keeper",
      "bit front 1: hole 5 mm",
      "bit back 2: hole 3 mm",
      "10 stitches of 3 mm",
    ])
      expect(cheek).toContain(part);
  });

  test("sizes in the order's units, millimetres beside inches", () => {
    expect(said(samples.longStrap(), "in")).toContain("35 7/16 × 5/8 in (900 × 16 mm)");
    expect(said(samples.longStrap(), "cm")).toContain("90 × 1.6 cm");
  });

  test("holes and slots in millimetres first, and a pitch by its number to the inch", () => {
    const inches = said(samples.cheekLike(), "in");
    // 5 mm is 12.6 sixty-fourths of an inch: 13/64 is 3.2 % off, and a punch of that size another punch.
    expect(inches).toMatch(/bit front 1: hole 5 mm$/m);
    expect(inches).toContain("tongue slot 28 × 4 mm");
    const seam = { ...samples.cheekLike().seams[0]!, stitches: 6 };
    // 25.4 / 8 = 3.175; 3 mm is 8.47 to the inch, no whole number.
    expect(saySeam({ ...seam, pitch: 3.175 })).toBe("6 stitches of 3.18 mm (8 to the inch)");
    expect(saySeam({ ...seam, pitch: 3 })).toBe("6 stitches of 3 mm");
  });

  test("length and width as dimensions", () => {
    const texts = textsOf(piecePicture(samples.longStrap(), "mm"));
    expect(texts).toContain("900 mm");
    expect(texts).toContain("16 mm");
  });

  test("every tenth stitch has its number, where a number can stand", () => {
    const texts = textsOf(piecePicture(samples.panel("p", 400, 300, { seams: [seamOf()] }), "mm"));
    expect(texts).toEqual(expect.arrayContaining(["10", "20", "30"]));
  });
});

/** The left row of the panel's awl marks as one seam. */
const seamOf = () => {
  const holes = samples.panel().holes.filter((h) => h.id.startsWith("side.left"));
  return { ...samples.panel().seams[0]!, holes: holes.map((h) => h.id), stitches: holes.length - 1 };
};

describe("line types", () => {
  const lines = new Map(
    strokesOf(piecePicture(samples.cheekLike(), "mm")).flatMap((s) =>
      s.id ? [[s.id, s.line] as const] : [],
    ),
  );

  test("tell cut, fold, stitch, skive and place apart without colour", () => {
    expect(lines.get("outline")).toBe("01.2");
    expect(lines.get("cutout.tongue-slot")).toBe("01.2");
    expect(lines.get("fold.top")).toBe("02.1");
    expect(lines.get("seam.top.left")).toBe("01.1");
    expect(lines.get("zone.top-skive")).toBe("07.1");
    expect(lines.get("zone.keeper")).toBe("05.1");
  });

  test("are grouped by meaning in the SVG", () => {
    const text = svg(piecePicture(samples.cheekLike(), "mm"));
    for (const id of ["cut", "stitch", "fold", "hole", "skive", "mark", "text"])
      expect(text).toContain(`id="${id}"`);
  });
});

describe("a strap printed ends only", () => {
  const strap = samples.longStrap();
  const kept = keptOf(strap)!;
  const { items } = pictureOfPiece(strap, { units: "mm", kept, controls: strap.controls });
  const picture: Picture = {
    title: "",
    width: 600,
    height: 60,
    items: [{ kind: "group", placement: { at: [10, 30], angle: 0 }, items }],
  };

  test("shows both ends, and says how much is left out", () => {
    expect(textsOf(picture)).toContain("438 mm of plain strap");
    expect(overlaps(picture)).toEqual([]);
  });

  test("draws the far holes where they would be, less what is left out", () => {
    const far = flattenPicture(picture).filter(
      ({ item }) => item.kind === "stroke" && item.id?.endsWith("hole.far.1"),
    );
    const shown = far.filter(({ item, clips }) => {
      const box = boundsOf((item as Stroke).path);
      return clips.every(
        (c) => Math.min(...c.map((p) => p[0])) <= box.minX && Math.max(...c.map((p) => p[0])) >= box.maxX,
      );
    });
    expect(shown).toHaveLength(1);
    const box = boundsOf((shown[0]!.item as Stroke).path);
    // 900 − 90 on the piece; drawn 438 − 60 nearer, on a picture that begins at 10.
    expect((box.minX + box.maxX) / 2).toBeCloseTo(10 + 810 - 378, 2);
  });
});

test("on straps of any size words lie on nothing, and none is lost", () => {
  const label = "fold round the buckle bar; damp before folding";
  fc.assert(
    fc.property(
      fc.integer({ min: 60, max: 900 }),
      fc.integer({ min: 8, max: 70 }),
      fc.integer({ min: 0, max: 9 }),
      (length, width, holes) => {
        const row = Array.from({ length: holes }, (_, i) =>
          samples.roundHole(`row.${i + 1}`, 20 + (i * (length - 40)) / 9, Math.min(5, width / 3)),
        );
        const fold = { id: "f", from: [length / 2, -width / 2], to: [length / 2, width / 2], label } as const;
        const outline = samples.strapOutline(length, width, 0);
        const piece = samples.samplePiece("strap", outline, {
          holes: row,
          folds: [fold],
          notes: ["Edges creased."],
        });
        const picture = piecePicture(piece, "in");
        expect(overlaps(picture)).toEqual([]);
        expect(cutWords(picture)).toEqual([]);
        const texts = textsOf(picture).join(" ");
        for (const part of ["strap: cut 1", "grain side up", label, "Edges creased.", "backbone"])
          expect(texts).toContain(part);
        if (holes > 0) expect(texts).toContain("row 1: hole");
      },
    ),
    { seed: 41, numRuns: 40 },
  );
});
