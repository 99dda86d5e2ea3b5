import { describe, expect, test } from "vitest";
import { clearWidth } from "../../src/die/clearWidth.ts";
import type { DieFeature } from "../../src/die/feature.ts";
import { dieFeatures } from "../../src/die/features.ts";
import { holeTable } from "../../src/die/holeTable.ts";
import { type DieSettings, defaultDie } from "../../src/die/settings.ts";
import { circlePath, polyline, rectanglePath, slotPath, turned } from "../../src/geometry/index.ts";
import type { Hole, Piece } from "../../src/model/piece.ts";
import { given } from "../support/quantities.ts";
import { roundHole, samplePiece, strapOutline } from "../support/samplePieces.ts";

const awl = (id: string, x: number): Hole => ({
  id,
  kind: "awl",
  at: [x, 4],
  size: 2,
  angle: 0.8,
  use: "stitch",
});
const row = (id: string, holes: readonly string[]) => ({
  id,
  path: polyline([
    [120, 4],
    [140, 4],
  ]),
  pitchAsked: 3,
  pitch: 3,
  stitches: holes.length - 1,
  inset: 2,
  holes,
});
const slot = (id: string, x: number, length: number, width: number) => ({
  id,
  use: "strap slot",
  outline: slotPath([x, 0], length, width),
  length,
  width,
});

const piece: Piece = samplePiece("cheek", strapOutline(240, 25), {
  holes: [
    roundHole("h1", 20, 5),
    roundHole("h2", 40, 5),
    roundHole("screw", 60, 3.5),
    roundHole("tiny", 70, 1.5),
    { ...roundHole("staple", 80, 2), kind: "staple" },
    awl("s1", 120),
    awl("s2", 123),
    awl("s3", 126),
    awl("lone", 180),
  ],
  cutouts: [
    slot("wide", 100, 20, 4),
    slot("narrow", 150, 18, 2),
    { id: "window", use: "opening", outline: rectanglePath([190, -5], 15, 10) },
  ],
  seams: [row("left", ["s1", "s2"]), row("right", ["s2", "s3"])],
  folds: [{ id: "fold", from: [90, -12], to: [90, 12], label: "fold round the bar" }],
  marks: [
    {
      id: "crease",
      kind: "crease",
      path: polyline([
        [0, 10],
        [200, 10],
      ]),
      label: "crease",
    },
    {
      id: "middle",
      kind: "centre",
      path: polyline([
        [0, 0],
        [240, 0],
      ]),
      label: "centre",
    },
    {
      id: "nick",
      kind: "notch",
      path: polyline([
        [50, 12],
        [50, 10],
      ]),
      label: "notch",
    },
  ],
  zones: [
    { id: "thin", kind: "skive", outline: rectanglePath([85, -12], 20, 24), label: "skive" },
    { id: "here", kind: "keeper", outline: rectanglePath([200, -12], 10, 24), label: "keeper" },
  ],
});

const settings = defaultDie();
const features = dieFeatures(piece, settings);
const of = (id: string): DieFeature => features.find((f) => f.id === id)!;
const made = (id: string): boolean => of(id).made === "in the die";

describe("what is in the die and what is made by hand", () => {
  test("in the die: outline, wide slots and openings, round holes that are large enough", () => {
    expect(features.filter(({ made: by }) => by === "in the die").map(({ id }) => id)).toEqual([
      "outline",
      "screw",
      "h1",
      "h2",
      "wide",
      "window",
    ]);
  });

  test("by hand: awl holes, narrow slots, small holes, staple holes, creases, notches, folds, skives", () => {
    for (const id of [
      "tiny",
      "staple",
      "narrow",
      "left",
      "right",
      "lone",
      "crease",
      "nick",
      "fold",
      "thin",
    ]) {
      expect(made(id), id).toBe(false);
      expect(of(id).why.length, id).toBeGreaterThan(4);
    }
    expect(of("narrow").why).toContain("2 mm wide");
    expect(of("narrow").why).toContain("2.38 mm");
  });

  test("every hole and cutout is somewhere, once", () => {
    const all = features.flatMap(({ holes }) => holes);
    expect([...all].sort()).toEqual([...piece.holes, ...piece.cutouts].map(({ id }) => id).sort());
  });

  test("what nobody makes is no feature: centre lines, a keeper's place", () => {
    expect(of("middle")).toBeUndefined();
    expect(of("here")).toBeUndefined();
  });

  test("letters by kind and size, the smallest first, numbers from left to right", () => {
    expect(holeTable(features).map(({ letter, id }) => `${letter} ${id}`)).toEqual([
      "A1 screw",
      "B1 h1",
      "B2 h2",
      "C1 wide",
      "D1 window",
      "E1 tiny",
      "F1 narrow",
      "G1 staple",
    ]);
  });

  test("the table of holes counts from the datum", () => {
    const [first] = holeTable(features, [10, -12.5]);
    expect(first).toMatchObject({
      letter: "A1",
      x: 50,
      y: 12.5,
      size: { diameter: 3.5 },
      kind: "round hole",
    });
    const wide = holeTable(features).find(({ id }) => id === "wide")!;
    expect(wide.size).toEqual({ length: 20, width: 4 });
    expect(wide.angle).toBe(0);
  });

  test("a row of stitches is one feature, also where it was punched round and belongs to no seam", () => {
    const punched = Array.from({ length: 12 }, (_, i) => ({
      ...roundHole(`box.${i + 1}`, 10 + 4 * i, 3, 5),
      use: "stitch",
    }));
    const sewn = dieFeatures({ ...piece, holes: punched, seams: [] }, settings).filter(
      ({ kind }) => kind === "stitch holes",
    );
    expect(sewn.map(({ id, holes, made, letter }) => [id, holes.length, made, letter])).toEqual([
      ["box", 12, "by hand afterwards", undefined],
    ]);
    expect(of("left")).toMatchObject({ kind: "stitch holes", holes: ["s1", "s2"] });
    expect(of("right").holes).toEqual(["s3"]);
  });

  test("a slot's size and direction are those of what is drawn", () => {
    const drawn = {
      ...piece,
      cutouts: [
        { id: "s", use: "strap slot", outline: turned(slotPath([0, 0], 20, 4), 1.2), length: 30, width: 9 },
      ],
    };
    const s = dieFeatures(drawn, settings).find(({ id }) => id === "s")!;
    expect(s.angle).toBeCloseTo(1.2, 9);
    expect(s.size && "length" in s.size && [s.size.length, s.size.width]).toEqual([
      expect.closeTo(20, 9),
      expect.closeTo(4, 9),
    ]);
    const upright = {
      ...piece,
      cutouts: [{ ...slot("s", 0, 20, 4), outline: turned(slotPath([0, 0], 20, 4), -Math.PI / 2) }],
    };
    expect(dieFeatures(upright, settings).find(({ id }) => id === "s")!.angle).toBeCloseTo(Math.PI / 2, 9);
  });

  test.each([
    ["leastSlot", "narrow", 1.9],
    ["leastTube", "tiny", 1.5],
  ] as const)("a shop that can do smaller says so in %s", (name, id, mm) => {
    const shop: DieSettings = { ...settings, [name]: given(name, mm) };
    expect(dieFeatures(piece, shop).find((f) => f.id === id)!.made).toBe("in the die");
  });

  test("letters go on after Z, without I, O and Q", () => {
    const holes = Array.from({ length: 25 }, (_, i) => roundHole(`h${i}`, i * 9, 3 + i / 10));
    const letters = holeTable(
      dieFeatures(samplePiece("many", strapOutline(300, 25), { holes }), settings),
    ).map(({ letter }) => letter);
    expect(letters.slice(20)).toEqual(["X1", "Y1", "Z1", "AA1", "AB1"]);
    expect(letters.join("")).not.toMatch(/[IOQ]/);
  });
});

describe("how wide an opening is", () => {
  test.each([
    ["slot", slotPath([3, 4], 20, 2.38, 0.4), 2.38],
    ["circle", circlePath([0, 0], 7), 14],
    ["rectangle", rectanglePath([0, 0], 30, 5), 5],
    [
      "right triangle: 2 × (a + b − c) ÷ 2",
      polyline(
        [
          [0, 0],
          [30, 0],
          [0, 40],
        ],
        true,
      ),
      20,
    ],
    [
      "a wide hall with a narrow one",
      polyline(
        [
          [0, 0],
          [50, 0],
          [50, 2],
          [20, 2],
          [20, 20],
          [0, 20],
        ],
        true,
      ),
      20,
    ],
  ])("%s", (_, path, width) => {
    expect(Math.abs(clearWidth(path) - width)).toBeLessThanOrEqual(0.01);
  });
});
