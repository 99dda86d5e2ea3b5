import polygonClipping, { type Polygon } from "polygon-clipping";
import { describe, expect, test } from "vitest";
import { checkPieces } from "../../src/checks/index.ts";
import {
  arc,
  boundsOf,
  closedPath,
  endPoint,
  flatten,
  line,
  type Point,
  pathLength,
  pointAt,
  rectanglePath,
  signedArea,
  slotPath,
} from "../../src/geometry/index.ts";
import type { Piece } from "../../src/model/piece.ts";
import type { Quantity } from "../../src/model/quantity.ts";
import * as lining from "../../src/pieces/lining.ts";
import * as patch from "../../src/pieces/patch.ts";
import * as pocket from "../../src/pieces/pocket.ts";
import { anyValues, valuesOf } from "../support/anyValues.ts";
import { areaOf, ring } from "../support/polygonAreas.ts";
import { given } from "../support/quantities.ts";
import { randomFrom } from "../support/random.ts";
import { faultsOfHistory } from "../support/sensitivity.ts";
import { bareJob, barePiece, punched, stitched } from "../support/soundPiece.ts";

type Numbers = Readonly<Record<string, number>>;

const errorsOf = (piece: Piece) =>
  checkPieces(bareJob([piece]), { units: "mm" }).filter((f) => f.severity === "error");
/** Sizes of a piece, worked from numbers by name, whose history is at fault. */
const faultsOfSizes = (sizes: (n: Numbers) => readonly Quantity[], n: Numbers): readonly string[] =>
  sizes(n).flatMap((_, i) => faultsOfHistory((v) => sizes(v)[i]!, n));

const ORDER = { leather: "body", count: 1 };
const LEATHER = {
  thickness: given("thickness", 2, "thickness"),
  thickest: given("thickest", 2.1, "thickness"),
  neutral: given("neutral", 0.4, "ratio"),
};

describe("pocket", () => {
  const handed = (over: object = {}) => ({
    ...LEATHER,
    where: "outside" as const,
    inset: given("inset", 3),
    roomWidth: given("room width", 180),
    roomBase: given("room base", 10),
    roomTop: given("room top", 150),
    roomCorner: given("room corner", 30),
    ...over,
  });
  const SIZES = { width: "120 mm", height: "90 mm", "corner-radius": "20 mm" };
  const made = (texts: Readonly<Record<string, string>> = {}, over: object = {}) =>
    valuesOf(pocket.dimensions, { ...SIZES, ...texts }, handed(over));

  test("its outline: area w h − (2 − π/2) r²; its seam: 2h + w − (4 − π) r of the line inside", () => {
    const d = made({ "seam-start": "5 mm" });
    const { piece, edge } = pocket.shape(d, ORDER);
    expect(signedArea(piece.outline)).toBeCloseTo(120 * 90 - (2 - Math.PI / 2) * 400, 8);
    const [h, w, r] = [90 - 5 - 3, 120 - 6, 20 - 3];
    expect(pathLength(edge.path)).toBeCloseTo(2 * h + w - (4 - Math.PI) * r, 8);
    expect(edge).toMatchObject({ piece: "pocket", inset: 3 });
    expect(edge.path.start).toEqual([-57, 85]);
    expect(pointAt(edge.path, pathLength(edge.path))).toEqual([57, 85]);
  });

  test("corners smaller than the inset leave square corners to the seam", () => {
    const d = made({ "corner-radius": "2 mm" });
    expect(pathLength(pocket.edge(d).path)).toBeCloseTo(2 * (90 - 3 - 3) + 114, 8);
  });

  // The middle fibre k t over the flesh side, followed as short chords: up the back, round the fold, down.
  test("a folded hem comes to its depth, and the pocket to its height", () => {
    const d = made({ top: "hemmed", hem: "20 mm", "hem-fold": "1 mm" });
    const { piece } = pocket.shape(d, ORDER);
    const radius = 1 + 0.4 * 2;
    const top = 90 - 2 - 1; // where the fold begins: grain, then flesh, then its round
    const chain: Point[] = [[0, 0]];
    for (let i = 0; i <= 4000; i++) {
      const a = (Math.PI * i) / 4000;
      chain.push([radius - radius * Math.cos(a), top + radius * Math.sin(a)]);
    }
    chain.push([2 * radius, 90 - 20]);
    const length = chain
      .slice(1)
      .reduce((s, [x, y], i) => s + Math.hypot(x - chain[i]![0], y - chain[i]![1]), 0);
    expect(boundsOf(piece.outline).maxY).toBeCloseTo(length, 4);
    const [fold] = piece.folds;
    expect(fold!.from[1]).toBeCloseTo(top + (Math.PI * radius) / 2, 9);
    expect(fold!.bend).toEqual({ inner: 1, angle: Math.PI, thickness: 2, neutral: 0.4, inside: "flesh" });
  });

  test("the seam doesn't go through the hem", () => {
    const random = randomFrom(8);
    for (let n = 0; n < 40; n++) {
      const d = anyValues(pocket.dimensions, handed(), random);
      if (d?.top !== "hemmed") continue;
      const { piece, edge } = pocket.shape(d, ORDER);
      const y0 = piece.folds[0]!.from[1];
      // The hem turned down about its fold: what lies above the fold, mirrored there; nearer the edge than the
      // fold's half bend is the bend itself.
      const half = (Math.PI * (d.hemFold.value + 0.4 * 2)) / 2;
      const down = d.height.value - d.hemFold.value - 2 - (y0 - half);
      expect(down).toBeCloseTo(0, 9);
      const hem = flatten(piece.outline, 0.01)
        .filter(([, y]) => y >= y0 + half)
        .map(([x]) => Math.abs(x));
      expect(Math.max(...hem)).toBeLessThan(d.width.value / 2 - half + 1e-9);
      expect(Math.min(...hem)).toBeCloseTo(d.width.value / 2 - 3 - 2, 9);
      expect(edge.path.start[1]).toBeLessThanOrEqual(d.height.value - 3 - 2 + 1e-9);
    }
  });

  test("laid on its panel, every place of its seam lies on the panel's: outside, inside, turned", () => {
    for (const where of ["outside", "inside"] as const) {
      const d = made({}, { where });
      const { edge } = pocket.shape(d, ORDER);
      for (const [turn, sign] of [
        [0, 1],
        [Math.PI, -1],
      ] as const) {
        const mate = pocket.edgeOn(d, "back", [4, 25], turn);
        const flip = where === "inside" ? -1 : 1;
        for (let s = 0; s <= pathLength(edge.path); s += 7.3) {
          const [x, y] = pointAt(edge.path, s);
          const [u, v] = pointAt(mate.path, s);
          expect(u).toBeCloseTo(4 + sign * flip * x, 9);
          expect(v).toBeCloseTo(25 + sign * y, 9);
        }
        expect(mate.piece).toBe("back");
      }
    }
  });

  test("its place on the panel is its finished shape", () => {
    const d = made({ top: "hemmed" });
    const [mark] = pocket.marksOn(d, [0, 30]).marks!;
    const plain = pocket.shape(made(), ORDER).piece.outline;
    const shifted = flatten(plain, 0.0005).map(([x, y]): [number, number] => [x, y + 30]);
    expect(areaOf(polygonClipping.xor([ring(mark!.path)], [[shifted]]))).toBeLessThan(0.01);
    expect(mark).toMatchObject({ id: "pocket.place", kind: "place" });
  });

  test("any order: within its room, drawn soundly, without a number missing", () => {
    const random = randomFrom(9);
    let none = 0;
    for (let n = 0; n < 120; n++) {
      const room = handed({
        roomWidth: given("room width", 30 + 300 * random()),
        roomTop: given("room top", 60 + 300 * random()),
        roomCorner: given("room corner", 60 * random()),
        inset: given("inset", 2 + 4 * random()),
      });
      const d = anyValues(pocket.dimensions, room, random);
      if (!d) {
        none++;
        continue;
      }
      const { piece } = pocket.shape(d, ORDER);
      expect(errorsOf(piece)).toEqual([]);
      // The room: a rectangle whose lower corners are cut off at 45°.
      const [w, base, top, c] = [room.roomWidth.value / 2, 10, room.roomTop.value, room.roomCorner.value];
      const outline: Polygon = [
        [
          [-w + c, base],
          [w - c, base],
          [w, base + c],
          [w, top],
          [-w, top],
          [-w, base + c],
        ],
      ];
      const [mark] = pocket.marksOn(d, [0, pocket.pocketBase(d).value]).marks!;
      if (c < w)
        expect(areaOf(polygonClipping.difference([ring(mark!.path, 0.01)], [outline]))).toBeLessThan(0.05);
    }
    expect(none).toBeLessThan(24);
  });

  test("sizes name what they change with", () => {
    const d = made({ top: "hemmed", hem: "20 mm", "hem-fold": "1 mm", "seam-start": "6 mm" });
    const names = Object.entries(d).flatMap(([k, v]) =>
      typeof v === "object" ? [[k, v.value] as const] : [],
    );
    const from = (n: Numbers) =>
      ({ ...d, ...Object.fromEntries(names.map(([k]) => [k, given(k, n[k]!)])) }) as pocket.PocketValues;
    const work = (n: Numbers) => [...pocket.shape(from(n), ORDER).piece.sizes, pocket.pocketBase(from(n))];
    expect(faultsOfSizes(work, Object.fromEntries(names))).toEqual([]);
    expect(work(Object.fromEntries(names))[1]!.value).toBeCloseTo(
      boundsOf(pocket.shape(d, ORDER).piece.outline).maxY,
      9,
    );
  });
});

/** A panel with round lower corners, a fold across its flap and a slot left of the middle. */
const W = 200;
const panelOutline = closedPath(
  [-W / 2, 260],
  [
    line([-W / 2, 40]),
    arc([-W / 2 + 40, 0], [-W / 2 + 40, 40], true),
    line([W / 2 - 40, 0]),
    arc([W / 2, 40], [W / 2 - 40, 40], true),
    line([W / 2, 260]),
  ],
);
const SIZES = [given("back width", 200), given("back height", 260)];
const back = (over: Partial<Piece> = {}): Piece =>
  barePiece("back", panelOutline, {
    name: "Back",
    folds: [{ id: "flap", from: [-100, 150], to: [100, 150], label: "fold of the flap" }],
    cutouts: [{ id: "slot", use: "strap slot", outline: slotPath([-50, 60], 30, 4), length: 30, width: 4 }],
    grain: Math.PI / 3,
    sizes: SIZES,
    ...over,
  });

describe("lining", () => {
  const LINING = {
    thickness: given("thickness", 1, "thickness"),
    thickest: given("thickest", 1, "thickness"),
  };
  const values = (allowance: string) => valuesOf(lining.dimensions, { allowance }, LINING);
  const made = (allowance: string, of = back()) => lining.shape(values(allowance), ORDER, of, "lining-back");

  test("grown all round, J. Steiner's formula: A + P a + π a² of a convex outline", () => {
    const grown = signedArea(made("4 mm").outline);
    expect(grown).toBeCloseTo(signedArea(panelOutline) + 4 * pathLength(panelOutline) + Math.PI * 16, 4);
  });

  test("cut smaller: the closed form of the smaller panel", () => {
    const piece = made("-5 mm");
    expect(signedArea(piece.outline)).toBeCloseTo(190 * 250 - (2 - Math.PI / 2) * 35 ** 2, 6);
    expect(piece.zones).toEqual([]);
    const [fold] = piece.marks.filter((m) => m.id === "fold.flap");
    expect([fold!.path.start[0], endPoint(fold!.path)[0]].map(Math.abs)).toEqual([95, 95]);
  });

  test("what is trimmed, and the finished edge inside it, are the whole piece; by polygon-clipping 0.15.7", () => {
    const piece = made("3 mm");
    const trims = piece.zones.filter((z) => z.kind === "trim").map((z) => ring(z.outline));
    const finished = ring(piece.marks.find((m) => m.id === "edge")!.path);
    const cut = ring(piece.outline);
    expect(trims).toHaveLength(2);
    const all = polygonClipping.union([finished], ...trims.map((t) => [t]));
    expect(areaOf(polygonClipping.xor(all, [cut]))).toBeLessThan(0.05);
    expect(areaOf(polygonClipping.intersection([trims[0]!], [trims[1]!]))).toBeLessThan(0.01);
    expect(areaOf(polygonClipping.intersection([finished], [trims[0]!]))).toBeLessThan(0.05);
  });

  test("it lies flesh to flesh: seen on its own grain side everything is mirrored", () => {
    const piece = made("3 mm");
    const slot = boundsOf(piece.marks.find((m) => m.id === "slot.slot")!.path);
    expect([slot.minX, slot.maxX, slot.minY]).toEqual([35, 65, 58]);
    expect(piece.grain).toBeCloseTo((2 * Math.PI) / 3, 12);
    expect(piece.holes).toEqual([]);
    expect(piece.cutouts).toEqual([]);
  });

  test("what hardware is set in stays behind the lining", () => {
    const of = back({
      cutouts: [{ id: "p", use: "prong slot", outline: slotPath([0, 60], 5, 1), length: 5, width: 1 }],
    });
    expect(made("3 mm", of).marks.map((m) => m.id)).toEqual(["edge", "fold.flap"]);
  });

  test("any allowance draws a sound piece with a caution for its glue", () => {
    const random = randomFrom(10);
    for (let n = 0; n < 15; n++) {
      const d = anyValues(lining.dimensions, LINING, random)!;
      const piece = lining.shape(d, ORDER, back(), "lining-back");
      expect(errorsOf(piece)).toEqual([]);
      expect(piece.notes.join(" ")).toMatch(/fresh air.*data sheet/);
    }
  });

  test("its sizes are the lined piece's and twice the allowance, with their history", () => {
    const work = (n: Numbers) => {
      const [w, h] = [n.width!, n.height!];
      const of = barePiece("front", rectanglePath([-w / 2, 0], w, h), {
        name: "Front",
        sizes: [given("width", w), given("height", h)],
      });
      return lining.shape({ ...LINING, allowance: given("allowance", n.allowance!) }, ORDER, of, "x").sizes;
    };
    const n = { width: 180, height: 140, allowance: 3 };
    expect(work(n).map((q) => q.value)).toEqual([186, 146, 3]);
    expect(faultsOfSizes(work, n)).toEqual([]);
  });
});

describe("patch", () => {
  const values = (texts: Readonly<Record<string, string>> = {}) => valuesOf(patch.dimensions, texts, LEATHER);
  const row = stitched("root", 0, 0, 4, 3);
  const parts = {
    holes: [punched("a", [40, 100], 3.4, "rivet"), punched("b", [52, 104], 3.4, "rivet"), ...row.holes],
    seams: [row.seam],
    cutouts: [
      { id: "slot", use: "prong slot", outline: slotPath([46, 110], 6, 1, 0.4), length: 6, width: 1 },
    ],
  };
  const where = (over: Partial<patch.Backed> = {}): patch.Backed => ({
    id: "patch-lock",
    name: "Patch behind the lock",
    width: given("across", 30),
    height: given("down", 20),
    at: [46, 102],
    parts,
    ...over,
  });

  test("a rounded rectangle with its border on every side: area by the closed form", () => {
    const piece = patch.shape(values({ border: "8 mm", "corner-radius": "6 mm" }), ORDER, where());
    expect(signedArea(piece.outline)).toBeCloseTo(46 * 36 - (4 - Math.PI) * 36, 9);
    expect(boundsOf(piece.outline)).toEqual({ minX: -23, maxX: 23, minY: -18, maxY: 18 });
    const square = patch.shape(values({ "corner-radius": "0 mm" }), ORDER, where());
    expect(square.corners).toHaveLength(4);
    expect(signedArea(square.outline)).toBeCloseTo(44 * 34, 9);
  });

  test("turned over on to the back of the leather, each hole lies on the hole it backs", () => {
    for (const angle of [0, 0.7]) {
      const piece = patch.shape(values(), ORDER, where({ angle }));
      for (const hole of piece.holes) {
        const [x, y] = [-hole.at[0], hole.at[1]];
        const on = [
          46 + x * Math.cos(angle) - y * Math.sin(angle),
          102 + x * Math.sin(angle) + y * Math.cos(angle),
        ];
        const backed = parts.holes.find((h) => h.id === hole.id)!;
        expect(on[0]).toBeCloseTo(backed.at[0], 9);
        expect(on[1]).toBeCloseTo(backed.at[1], 9);
      }
      expect(piece.holes).toHaveLength(parts.holes.length);
      // A slit leans to the other side; its seam goes with it.
      const slit = piece.holes.find((h) => h.id === "root.1")!;
      expect(Math.tan(slit.angle)).toBeCloseTo(-Math.tan(Math.PI / 4 - angle), 9);
      expect(piece.seams[0]!.path.start).toEqual(slit.at);
      expect(signedArea(piece.cutouts[0]!.outline)).toBeCloseTo(5 + Math.PI / 4, 9);
    }
  });

  test("any order is sound; sizes name what they change with", () => {
    const random = randomFrom(11);
    for (let n = 0; n < 30; n++) {
      const d = anyValues(patch.dimensions, LEATHER, random)!;
      expect(errorsOf(patch.shape(d, ORDER, where({ parts: {} })))).toEqual([]);
    }
    const work = (n: Numbers) =>
      patch.shape(
        { ...values(), border: given("border", n.border!), cornerRadius: given("corner", n.corner!) },
        ORDER,
        where({ width: given("across", n.across!), height: given("down", n.down!), parts: {} }),
      ).sizes;
    expect(faultsOfSizes(work, { border: 7, corner: 5, across: 30, down: 20 })).toEqual([]);
  });
});
