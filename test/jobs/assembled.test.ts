import { describe, expect, test } from "vitest";
import { bag } from "../../src/articles/bag.ts";
import type { Piece } from "../../src/model/piece.ts";
import { anyOrder } from "../support/anyOrder.ts";
import { assemble } from "../support/assemble.ts";
import { asked, type Flat, insideDepth, makeFlat, type Off } from "../support/assembleJob.ts";
import { orderFiles } from "../support/orders.ts";
import { randomFrom } from "../support/random.ts";

// Bags put together in space from their flat pieces as job.json has them, by bending and rolling that know
// nothing of how the pieces were developed: a bend keeps its neutral fibre's length (sheet-metal bend allowance),
// a strip is rolled by arc length along a line that is drawn anew, in closed form, from what was ordered.

const RUNS = 60;
const FEWEST_MADE = 50;

const flats = orderFiles
  .filter((o) => /^article: bag$/m.test(o.text))
  .map(({ name, text }) => {
    const flat = makeFlat(text);
    if (!flat) throw new Error(`${name} can't be made`);
    return { name, flat };
  });

const misses = (offs: readonly Off[]): readonly string[] =>
  offs.filter((o) => !(o.off <= o.most)).map((o) => `${o.what}: ${o.off.toFixed(3)} mm off`);

type Change = (piece: Piece) => Piece;
const withPiece = (f: Flat, id: string, change: Change): Flat => ({
  ...f,
  pieces: f.pieces.map((p) => (p.id === id ? change(p) : p)),
});

/** One hole moved by 0.5 mm. */
const withHoleMoved = (f: Flat, piece: string, id: string): Flat =>
  withPiece(f, piece, (p) => ({
    ...p,
    holes: p.holes.map((h) => (h.id === id ? { ...h, at: [h.at[0] + 0.3, h.at[1] + 0.4] } : h)),
  }));

/** Anything drawn, longer along x by a factor. */
const stretched =
  (by: number) =>
  <T>(drawn: T): T =>
    JSON.parse(JSON.stringify(drawn), (_, v: unknown) =>
      Array.isArray(v) && v.length === 2 && v.every((n) => typeof n === "number")
        ? [(v[0] as number) * by, v[1]]
        : v,
    ) as T;

const withFoldMoved =
  (id: RegExp, by: number): Change =>
  (p) => ({
    ...p,
    folds: p.folds.map((d) =>
      id.test(d.id) ? { ...d, from: [d.from[0], d.from[1] + by], to: [d.to[0], d.to[1] + by] } : d,
    ),
  });

const withFoldRadius =
  (id: RegExp, by: number): Change =>
  (p) => ({
    ...p,
    folds: p.folds.map((d) =>
      d.bend && id.test(d.id) ? { ...d, bend: { ...d.bend, inner: d.bend.inner + by } } : d,
    ),
  });

describe.each(flats)("$name", ({ flat }) => {
  test("put together from its flat pieces, all that is mated meets and all sizes are as ordered", () => {
    const offs = assemble(flat);
    expect(misses(offs)).toEqual([]);
    expect(offs.length).toBeGreaterThan(8);
  });

  test("a hole 0.5 mm off is seen, on either side of every seam and of every row of rivets", () => {
    const rows = flat.joins.flatMap((j) => {
      if (j.kind === "fixed") return j.sides.filter((s) => s.holes.length > 1);
      if (j.kind !== "seam") return [];
      return j.sides.map((s) => ({
        piece: s.piece,
        holes: flat.pieces.find((p) => p.id === s.piece)!.seams.find((l) => l.id === s.seam)!.holes,
      }));
    });
    expect(rows.length).toBeGreaterThan(3);
    const unseen = rows.filter(({ piece, holes }) => {
      const moved = withHoleMoved(flat, piece, holes[Math.floor(holes.length / 2)]!);
      return misses(assemble(moved)).length === 0;
    });
    expect(unseen).toEqual([]);
  });
});

const named = (name: string): Flat => flats.find((o) => o.name === `${name}.yaml`)!.flat;
const lengthOf = (f: Flat, id: string): number => {
  const xs = f.pieces.find((p) => p.id === id)!.outline.segments.map((s) => s.to[0]);
  return Math.max(...xs) - Math.min(...xs);
};

test.each(["wren-flap-purse", "rowan-tool-tote", "child-turned-purse", "sagging-pouch", "travel-bag"])(
  "%s: a strip 1 mm longer or shorter is seen, and a panel 1 mm wider",
  (name) => {
    const flat = named(name);
    for (const by of [1, -1]) {
      const strip = withPiece(flat, "gusset", stretched(1 + by / lengthOf(flat, "gusset")));
      expect(misses(assemble(strip)).join()).toMatch(/to gusset/);
    }
    const wide = withPiece(flat, "front", stretched(1 + 1 / lengthOf(flat, "front")));
    expect(misses(assemble(wide)).join()).toMatch(/size that was ordered/);
  },
);

test.each([
  ["wren-flap-purse", "gusset", withFoldMoved(/front\.flange/, 0.5), /flange from the web/],
  ["wren-flap-purse", "gusset", withFoldRadius(/flange/, 1), /depth between/],
  ["wren-flap-purse", "back", withFoldRadius(/flap/, 1), /press stud/],
  ["wren-flap-purse", "back", withFoldMoved(/flap\.front/, 0.5), /the flap lies on the front/],
  ["post-satchel", "body", withFoldMoved(/base\.front/, 0.5), /to side gussets/],
  ["post-satchel", "side-gusset", withFoldRadius(/flange/, 1), /to side gussets/],
  ["post-satchel", "side-gusset", withFoldMoved(/foot/, 0.5), /to side gussets/],
  ["box-bag", "body", withFoldMoved(/base\.back/, 0.5), /to end panels/],
  ["box-bag", "body", withFoldRadius(/base/, 1), /rim on the body/],
  ["box-bag", "body", withFoldMoved(/flap\.back/, 0.5), /turn lock/],
] as const)("%s, %s: a fold drawn wrong is seen", (name, piece, change, seen) => {
  expect(misses(assemble(withPiece(named(name), piece, change))).join()).toMatch(seen);
});

test("a closure's half, and a pocket, 0.5 mm off are seen", () => {
  const stud = withHoleMoved(named("wren-flap-purse"), "front", "closure.front");
  expect(misses(assemble(stud)).join()).toMatch(/the halves meet/);
  const billet = withHoleMoved(named("buckled-satchel"), "closure-billet", "right.2");
  expect(misses(assemble(billet)).join()).toMatch(/the halves meet/);
  const pocket = withPiece(named("sagging-pouch"), "back", (p) => ({
    ...p,
    marks: p.marks.map((m) => (m.id === "pocket.place" ? stretched(1.01)(m) : m)),
  }));
  expect(misses(assemble(pocket)).join()).toMatch(/pocket/);
});

type Made = { readonly seed: number; readonly flat: Flat; readonly offs: readonly Off[] };
const any: readonly Made[] = Array.from({ length: RUNS }, (_, seed) => ({
  seed,
  flat: makeFlat(anyOrder(bag, randomFrom(seed)).text),
})).flatMap(({ seed, flat }) => (flat ? [{ seed, flat, offs: assemble(flat) }] : []));

test(`of ${RUNS} in-range orders at least ${FEWEST_MADE} are made, of every construction`, () => {
  expect(any.length).toBeGreaterThanOrEqual(FEWEST_MADE);
  for (const made of ["flanged gusset", "turned gusset", "side gussets", "end panels"])
    expect(any.filter(({ flat }) => flat.order.get("bag.made") === made).length, made).toBeGreaterThan(5);
});

test("any in-range order goes together from its flat pieces", () => {
  const all = any.flatMap(({ seed, flat, offs }) =>
    misses(offs).map((m) => `seed ${seed}, ${String(flat.order.get("bag.made"))}: ${m}`),
  );
  expect(all).toEqual([]);
  expect(any.flatMap(({ offs }) => offs).length).toBeGreaterThan(500);
});

// What this assembly has found before must have been among what it looked at.
test.each([
  ["iron", (f: Flat) => isWrapped(f) && f.order.get("stitching.mode") === "iron"],
  ["a tapering side gusset", (f: Flat) => isWrapped(f) && tapers(f)],
  ["a tapering strip", (f: Flat) => !isWrapped(f) && tapers(f)],
  ["a turned bag", (f: Flat) => f.order.get("bag.made") === "turned gusset"],
] as const)("%s is among them", (_, is) => {
  expect(any.filter(({ flat }) => is(flat)).length).toBeGreaterThan(2);
});
const isWrapped = (f: Flat): boolean => f.pieces.some((p) => p.id === "body");
const tapers = (f: Flat): boolean => Math.abs(asked(f, "pieces.gusset.top-width") - insideDepth(f)) > 0.01;
