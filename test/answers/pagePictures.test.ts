import { expect, test } from "vitest";
import { pageFolded, pagePiece } from "../../src/answers/pagePictures.ts";
import { articles } from "../../src/articles/index.ts";
import { alongLeg, folded } from "../../src/checks/measure/folded.ts";
import { pathLength, pointAt } from "../../src/geometry/length.ts";
import { endPoint, type Path } from "../../src/geometry/path.ts";
import type { Made } from "../../src/model/article.ts";
import { readOrder } from "../../src/order/read.ts";
import { flattenPicture } from "../../src/picture/flat.ts";
import type { FoldedPicture } from "../../src/picture/folded/frame.ts";
import { seamRowPictures } from "../../src/picture/folded/seamRows.ts";
import { turnBackPictures } from "../../src/picture/folded/turnBack.ts";
import { orderFiles } from "../support/orders.ts";

const made = orderFiles.map(({ name, text }) => {
  const { order } = readOrder(text, name, articles);
  return { name, text, made: order!.article.make(order!.values), units: order!.units };
});

/** Coordinates of pictures are rounded to 0.001 mm. */
const ROUNDED_MM = 0.002;

const strokesIn = ({ picture }: FoldedPicture): ReadonlyMap<string, Path> =>
  new Map(
    flattenPicture(picture).flatMap(({ item }) =>
      item.kind === "stroke" && item.id ? [[item.id, item.path]] : [],
    ),
  );

const turnBacksOf = (m: Made) => m.pieces.flatMap((piece) => piece.turnBacks.map((t) => ({ piece, t })));

test.each(made)("$name: folded, the leather is as long as it is on the flat", ({ made: m, units }) => {
  const pictures = turnBackPictures(m, units);
  for (const [i, { piece, t }] of turnBacksOf(m).entries()) {
    const lines = strokesIn(pictures[i]!);
    for (const [leg, side] of [
      ["front", 0],
      ["back", 1],
    ] as const) {
      const neutral = lines.get(`${leg}.neutral`)!;
      for (const pair of t.mates) {
        // Along the drawn neutral fibre to the drawn hole, against the hole's place on the flat piece.
        const tick = lines.get(`hole.${pair[side]}`)!;
        const measured = pathLength(neutral) - Math.abs(endPoint(neutral)[0] - tick.start[0]);
        const flat = piece.holes.find((h) => h.id === pair[side])!.at[0];
        expect(measured, `${piece.id} ${pair[side]}`).toBeCloseTo(Math.abs(alongLeg(t, flat)), 2);
      }
    }
    for (const [front, back] of t.mates)
      expect(
        Math.abs(lines.get(`hole.${front}`)!.start[0] - lines.get(`hole.${back}`)!.start[0]),
      ).toBeLessThan(ROUNDED_MM);
  }
});

test.each(made)("$name: the fold lies where walking along the leather comes out", ({ made: m, units }) => {
  const pictures = turnBackPictures(m, units);
  for (const [i, { piece, t }] of turnBacksOf(m).entries()) {
    const walked = folded(t)!;
    const lines = strokesIn(pictures[i]!);
    const [neutral, grain] = [lines.get("front.neutral")!, lines.get("front.grain")!];
    const bar = lines.get("bar")!;
    // The bar's middle, from its far side and what lies round it.
    const wrap = t.neutral * t.wrapThickness + (t.bar.kind === "round" ? t.bar.diameter : t.bar.along) / 2;
    const [ox, oy] = [neutral.start[0] + wrap, neutral.start[1]];
    expect(bar.segments.length).toBeGreaterThan(0);
    // The flat piece's first hole comes to lie as far from the bar as the order's clamp says.
    const first = t.mates[0] && lines.get(`hole.${t.mates[0][0]}`);
    if (first) expect(first.start[0] - ox, `${piece.id} ${t.id}`).toBeCloseTo(t.clamp, 2);
    for (let k = 0; k <= 20; k++) {
      const s = (k / 20) * pathLength(neutral);
      const [p, q] = [pointAt(neutral, s), walked.at(s)];
      expect(Math.hypot(p[0] - ox - q.x, p[1] - oy - q.y), `${piece.id} ${t.id} at ${s}`).toBeLessThan(0.005);
    }
    // The grain is outside, as far from the fibre as the leather is thick there.
    expect(neutral.start[0] - grain.start[0]).toBeCloseTo((1 - t.neutral) * t.wrapThickness, 2);
  }
});

test.each(made)(
  "$name: each row of a seam has the holes that the piece has, at their distances",
  ({ made: m, units }) => {
    const pictures = seamRowPictures(m, units);
    const seams = new Set(m.joins.flatMap((j) => (j.kind === "seam" ? [j.name.split(":")[0]] : [])));
    expect(pictures.map((p) => p.picture.title)).toEqual([...seams].map((s) => `Seam: ${s}`));
    for (const join of m.joins) {
      if (join.kind !== "seam") continue;
      const picture = pictures.find((p) => p.picture.title === `Seam: ${join.name.split(":")[0]}`)!;
      const lines = strokesIn(picture);
      const counts = join.sides.map((side) => {
        const piece = m.pieces.find((p) => p.id === side.piece)!;
        const seam = piece.seams.find((s) => s.id === side.seam)!;
        const row = lines.get(`${piece.id}.${seam.id}`)!;
        expect(pathLength(row)).toBeCloseTo(pathLength(seam.path), 2);
        const xs = seam.holes.map((id) => lines.get(`${piece.id}.hole.${id}`)!.start[0]);
        // Evenly along the row, from end to end: the same as on the piece, whose check is its own.
        for (let i = 1; i + 1 < xs.length - 1; i++) expect(xs[i + 1]! - xs[i]!).toBeCloseTo(seam.pitch, 1);
        return xs.length;
      });
      expect(new Set(counts).size, join.name).toBe(1);
      expect(picture.says).toContain(`holes on`);
    }
  },
);

test("a picture says in words what it shows", () => {
  for (const { name, text, made: m } of made.slice(0, 4)) {
    const all = pageFolded(text, name);
    expect(all.ok).toBe(true);
    if (!all.ok) continue;
    expect(all.value.length).toBe(turnBacksOf(m).length + seamRowPictures(m, "mm").length);
    for (const { says, width, height, items } of all.value) {
      expect(says).toMatch(/\d/);
      expect(width * height).toBeGreaterThan(0);
      expect(items.length).toBeGreaterThan(5);
    }
  }
});

test("a piece by its name, and a name that is none", () => {
  const { text, name, made: m } = made[0]!;
  const piece = m.pieces[0]!;
  const found = pagePiece(text, name, piece.id);
  expect(found.ok && found.value.title).toBe(piece.name);
  expect(found.ok && found.value.items.some(({ item }) => item.kind === "words")).toBe(true);
  const none = pagePiece(text, name, "saddle");
  expect(none.ok).toBe(false);
  expect(!none.ok && none.message).toContain(piece.id);
});
