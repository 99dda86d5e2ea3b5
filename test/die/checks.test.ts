import { describe, expect, test } from "vitest";
import { checkDie, DIE_RULES } from "../../src/die/checks/index.ts";
import { dieFor } from "../../src/die/die.ts";
import { pairDie } from "../../src/die/pairDie.ts";
import { type DieSettings, defaultDie } from "../../src/die/settings.ts";
import {
  arc,
  closedPath,
  line,
  type Path,
  polyline,
  rectanglePath,
  slotPath,
  turned,
} from "../../src/geometry/index.ts";
import type { Cutout, Piece } from "../../src/model/piece.ts";
import { roundedRectangle } from "../geometry/shapes.ts";
import { orderPieces } from "../support/dies.ts";
import { given } from "../support/quantities.ts";
import { roundHole, samplePiece, strapOutline } from "../support/samplePieces.ts";

const settings = defaultDie();
const shop = (over: Partial<DieSettings>): DieSettings => ({ ...settings, ...over });
const found = (piece: Piece, s = settings) => checkDie(dieFor(piece, s), "mm");
const of = (rule: string, piece: Piece, s = settings) => found(piece, s).filter((f) => f.rule === rule);
const plate = (over: Partial<Piece> = {}): Piece => samplePiece("plate", roundedRectangle(120, 60, 6), over);
const slot = (id: string, x: number, y: number, length = 20, width = 4, angle = 0): Cutout => ({
  id,
  use: "strap slot",
  outline: slotPath([x, y], length, width, angle),
  length,
  width,
});
const STEEL = 0.71;

/** A plate with a notch 10 mm wide whose inner corners have radius r; 0 for sharp ones. */
function notched(r: number): Path {
  const corner = (x: number, y: number, cx: number, cy: number) =>
    r === 0 ? [] : [arc([x, y], [cx, cy], false)];
  return closedPath(
    [0, 0],
    [
      line([60, 0]),
      line([60, 40]),
      line([40, 40]),
      line([40, 20 + r]),
      ...corner(40 - r, 20, 40 - r, 20 + r),
      line([20 + r, 20]),
      ...corner(20, 20 + r, 20 + r, 20 + r),
      line([20, 40]),
      line([0, 40]),
    ],
  );
}

describe("a sound die", () => {
  test("has nothing to remark", () => {
    expect(found(plate({ holes: [roundHole("h", -40, 5)], cutouts: [slot("s", 0, 0)] }))).toEqual([]);
  });
  test("rules have names of their own, and say what they ask for", () => {
    expect(new Set(DIE_RULES.map(({ name }) => name)).size).toBe(DIE_RULES.length);
    for (const { means } of DIE_RULES) expect(means.length).toBeGreaterThan(10);
  });
});

describe("bend radius", () => {
  test("inner corners: sharp and too tight are seen, round ones pass", () => {
    expect(of("die-bend-radius", samplePiece("n", notched(1)))).toEqual([]);
    const tight = of("die-bend-radius", samplePiece("n", notched(0.6)));
    expect(tight.map(({ severity, value, limit }) => [severity, value, limit])).toEqual([
      ["caution", "0.6 mm", "at least 1 mm"],
      ["caution", "0.6 mm", "at least 1 mm"],
    ]);
    const sharp = of("die-bend-radius", samplePiece("n", notched(0)));
    expect(sharp.map(({ at }) => at)).toEqual([
      [40, 20],
      [20, 20],
    ]);
    expect(sharp[0]!.message).toContain("mitred joint");
  });
  test("a corner that turns so little that a bend keeps it within a fifth of the tolerance is no joint", () => {
    // r (1 ÷ cos(θ/2) − 1) = 0.05 mm for r = 1 mm at θ = 35.5°, 0.02 mm at θ = 22.7°.
    const dent = (degrees: number): Path => {
      const depth = 20 * Math.tan((degrees * Math.PI) / 360);
      return polyline(
        [
          [0, -80],
          [40, -80],
          [40, 0],
          [20, -depth],
          [0, 0],
        ],
        true,
      );
    };
    expect(of("die-bend-radius", samplePiece("d", dent(34)))).toEqual([]);
    expect(of("die-bend-radius", samplePiece("d", dent(37))).length).toBe(1);
    expect(
      of("die-bend-radius", samplePiece("d", dent(34)), shop({ tolerance: given("t", 0.1) })).length,
    ).toBe(1);
  });
  test("a draft horse's cheek: every inner corner of its scalloped edges is counted, however it turns", () => {
    const { piece } = orderPieces(["draft.yaml"]).find((one) => one.piece.id === "cheek")!;
    // Three scallops on either edge meet the edge, and each other, in four inner corners a side.
    const sharp = of("die-bend-radius", piece).filter(({ message }) => message.includes("sharp"));
    expect(sharp.map(({ at }) => at![0].toFixed(1)).sort()).toEqual([
      "285.6",
      "285.6",
      "296.0",
      "296.0",
      "306.4",
      "306.4",
      "316.7",
      "316.7",
    ]);
    for (const { message } of sharp) expect(message).toMatch(/^8 inner corners of the outline on/);
  });
  test("what the shop bends is what counts", () => {
    expect(
      of("die-bend-radius", samplePiece("n", notched(0.6)), shop({ leastRadius: given("r", 0.5) })),
    ).toEqual([]);
  });
  test("outer corners may be sharp; an outer arc that can't be bent is noted", () => {
    expect(of("die-bend-radius", samplePiece("r", rectanglePath([0, 0], 60, 30)))).toEqual([]);
    expect(
      of("die-bend-radius", samplePiece("r", roundedRectangle(60, 30, 0.5))).map(({ severity }) => severity),
    ).toEqual(["note", "note", "note", "note"]);
  });
  test("the corners of an opening are inner ones", () => {
    const window = { id: "w", use: "opening", outline: rectanglePath([-10, -5], 20, 10) };
    expect(of("die-bend-radius", plate({ cutouts: [window] })).length).toBe(4);
  });
});

describe("space between rules", () => {
  // Centre bevel: half of each rule's 0.71 mm stands in the gap, so 3/32 in clear asks for 2.38 + 0.71 mm.
  const least = (3 / 32) * 25.4 + STEEL;
  const near = (gap: number): Piece =>
    plate({ cutouts: [slot("a", 0, 2 + gap / 2), slot("b", 0, -2 - gap / 2)] });
  // Holes of one size are named from left to right and from below: b lies below a.
  test("two slots with a neck of leather between them", () => {
    expect(of("die-rule-spacing", near(least + 0.02))).toEqual([]);
    const [f, ...others] = of("die-rule-spacing", near(least - 0.1));
    expect(others).toEqual([]);
    expect(f).toMatchObject({ severity: "caution", place: "b and a" });
    expect(f!.message).toContain("leather");
    expect(Math.abs(f!.at![1])).toBeLessThan(1e-6);
    expect(of("die-rule-spacing", near(STEEL))[0]).toMatchObject({ severity: "error" });
  });
  test("ground on the waste's side the rules stand in the waste, and the leather needs less", () => {
    expect(of("die-rule-spacing", near(2.5), shop({ bevel: "waste side" }))).toEqual([]);
    expect(of("die-rule-spacing", near(least + 0.02), shop({ bevel: "leather side" })).length).toBe(1);
  });
  test("a slot near the edge", () => {
    expect(of("die-rule-spacing", plate({ cutouts: [slot("a", 0, 30 - 2 - least + 0.1)] }))[0]).toMatchObject(
      { place: "outline and a" },
    );
    expect(of("die-rule-spacing", plate({ cutouts: [slot("a", 0, 30 - 2 - least - 0.02)] }))).toEqual([]);
  });

  /** Two lobes joined by a neck, or a plate with a slit from its edge, `gap` wide. */
  const neck = (gap: number): Path =>
    polyline(
      [
        [0, 0],
        [30, 0],
        [30, 20 - gap / 2],
        [60, 20 - gap / 2],
        [60, 0],
        [90, 0],
        [90, 40],
        [60, 40],
        [60, 20 + gap / 2],
        [30, 20 + gap / 2],
        [30, 40],
        [0, 40],
      ],
      true,
    );
  const slit = (gap: number): Path =>
    polyline(
      [
        [0, 0],
        [90, 0],
        [90, 40],
        [45 + gap / 2, 40],
        [45 + gap / 2, 10],
        [45 - gap / 2, 10],
        [45 - gap / 2, 40],
        [0, 40],
      ],
      true,
    );
  test.each([
    ["neck", neck, "leather"],
    ["slit", slit, "waste"],
  ] as const)("a %s of the outline itself", (_, shape, across) => {
    for (const angle of [0, 0.6]) {
      expect(of("die-rule-spacing", samplePiece("n", turned(shape(least + 0.05), angle)))).toEqual([]);
      const narrow = of("die-rule-spacing", samplePiece("n", turned(shape(2), angle)));
      expect(narrow.length).toBe(1);
      expect(narrow[0]!.message).toContain(`${across} between`);
      expect(narrow[0]!.message).toContain("2 mm from edge to edge");
    }
  });
  test("corners and points are no necks", () => {
    expect(of("die-rule-spacing", samplePiece("s", strapOutline(240, 25)))).toEqual([]);
    expect(
      of(
        "die-rule-spacing",
        samplePiece(
          "s",
          polyline(
            [
              [0, 0],
              [90, 0],
              [20, 40],
            ],
            true,
          ),
        ),
      ),
    ).toEqual([]);
    expect(of("die-rule-spacing", samplePiece("s", roundedRectangle(120, 60, 6)))).toEqual([]);
  });

  test("a tube near the edge, near another, near a slot", () => {
    const at = (y: number) => plate({ holes: [roundHole("h", 0, 5, y)] });
    expect(of("die-tube-spacing", at(30 - 2.5 - least - 0.02))).toEqual([]);
    expect(of("die-tube-spacing", at(30 - 2.5 - least + 0.1))[0]).toMatchObject({ place: "outline and h" });
    const pair = (gap: number) => plate({ holes: [roundHole("h", 0, 5), roundHole("k", 5 + gap, 5)] });
    expect(of("die-tube-spacing", pair(least + 0.02))).toEqual([]);
    expect(of("die-tube-spacing", pair(2.4))[0]).toMatchObject({ place: "h and k", severity: "caution" });
    expect(
      of("die-tube-spacing", plate({ holes: [roundHole("h", 0, 5)], cutouts: [slot("s", 0, 6)] }))[0],
    ).toMatchObject({ place: "h and s" });
    // What is made by hand stands in nobody's way.
    expect(of("die-tube-spacing", plate({ holes: [roundHole("h", 0, 2), roundHole("k", 3, 2)] }))).toEqual(
      [],
    );
  });
});

describe("thick leather between close rules", () => {
  const of4 = (over: Partial<Piece>) =>
    of("die-thick-leather", plate({ leather: { kind: "harness", thickness: 4, thickest: 4.5 }, ...over }));
  const near = (gap: number) => ({
    cutouts: [slot("a", 0, 3 + gap / 2, 20, 6), slot("b", 0, -3 - gap / 2, 20, 6)],
  });
  test("rules nearer than the leather's thickest place are told, with both figures", () => {
    expect(of4(near(4.6))).toEqual([]);
    const [told, ...others] = of4(near(4.2));
    expect(others).toEqual([]);
    expect(told).toMatchObject({ severity: "caution", place: "b and a", value: "4.2 mm" });
    expect(told!.message).toContain("up to 4.5 mm");
  });
  test("what leaves no room for the rubber is told once, by that rule", () => {
    expect(of4(near(2.5))).toEqual([]);
    const narrow = plate({ leather: { kind: "harness", thickness: 4, thickest: 4.5 }, ...near(2.5) });
    expect(of("die-rule-spacing", narrow).length).toBe(1);
  });
  test.each([8, 40])("a slot %d mm long and narrower than the leather, once", (length) => {
    expect(of4({ cutouts: [slot("s", 0, 0, length, 4.6)] })).toEqual([]);
    const told = of4({ cutouts: [slot("s", 0, 0, length, 4)] });
    expect(told.map(({ place, value }) => [place, value])).toEqual([["s", "4 mm"]]);
  });
  test("a hole near the edge; not one that is made by hand", () => {
    expect(of4({ holes: [roundHole("h", 0, 5, 30 - 2.5 - 4)] })).toMatchObject([{ place: "outline and h" }]);
    expect(of4({ holes: [roundHole("h", 0, 2, 30 - 1 - 4)] })).toEqual([]);
  });
});

describe("left for hand", () => {
  test("many holes of one size are told once", () => {
    const holes = Array.from({ length: 5 }, (_, i) => roundHole(`dot.${i + 1}`, 10 * i - 20, 1.5));
    const [one, ...more] = of("die-left-for-hand", plate({ holes }));
    expect(more).toEqual([]);
    expect(one!.message).toContain("A1 to A5, 5 round holes");
  });
  test("a slot too narrow and a hole too small are told", () => {
    const piece = plate({
      cutouts: [slot("thin", 0, 0, 20, 2)],
      holes: [roundHole("dot", -40, 1.5), roundHole("h", -20, 5)],
    });
    expect(of("die-left-for-hand", piece).map(({ place, severity }) => [place, severity])).toEqual([
      ["dot", "note"],
      ["thin", "note"],
    ]);
    expect(of("die-left-for-hand", piece)[1]!.message).toContain("2 mm wide");
  });
});

describe("left and right", () => {
  const hole = roundHole("h", 20, 5, 8);
  test("a pair with a hole off its middle needs two dies, or one on which it is its own image", () => {
    expect(of("die-left-and-right", plate({ hand: "pair", count: 2, holes: [hole] })).length).toBe(1);
    expect(
      of("die-left-and-right", plate({ hand: "pair", count: 2, holes: [{ ...hole, at: [20, 0] }] })),
    ).toEqual([]);
    expect(of("die-left-and-right", plate({ holes: [hole] }))).toEqual([]);
  });
  test("what is made by hand does not matter to the die", () => {
    expect(
      of("die-left-and-right", plate({ hand: "pair", count: 2, holes: [{ ...hole, size: 1 }] })),
    ).toEqual([]);
  });
});

test("notches that the die cuts are a caution: in an edge that shows they stay visible", () => {
  const nick = {
    id: "n",
    kind: "notch",
    path: polyline([
      [0, -25],
      [0, -22],
    ]),
    label: "centre",
  } as const;
  const bare = plate({ outline: rectanglePath([-60, -25], 120, 50), marks: [nick] });
  const [one, ...more] = of("die-notches-show", bare, shop({ notches: "in the die" }));
  expect([one!.severity, more]).toEqual(["caution", []]);
  expect(one!.message).toContain("visible");
  expect(one!.mend).toContain("die.notches");
  expect(of("die-notches-show", bare)).toEqual([]);
});

describe("press", () => {
  const rated = (press: string) => of("die-press-load", plate(), shop({ press }));
  test("nothing is said of a press that is not known", () => {
    expect(rated("")).toEqual([]);
    expect(rated("20 tons")).toEqual([]);
  });
  test("too small a press is an error that names what mends it; a larger one takes several", () => {
    expect(rated("20 kN")[0]).toMatchObject({ severity: "error", limit: "up to 20 kN" });
    expect(rated("20 kN")[0]!.mend).toContain("die.press");
    const load = dieFor(plate(), settings).load.value;
    expect(rated(`${Math.ceil(load / 1000) * 4} kN`)[0]!.message).toContain("3 dies");
    expect(rated(`${Math.ceil(load / 1000)} kN`)[0]!.message).toContain("1 die ");
  });
  test("less than a fifth of the rating in reserve is a caution; the load is an estimate", () => {
    const load = dieFor(plate(), settings).load.value;
    const at = (share: number): string => rated(`${(load / share / 1000).toFixed(4)} kN`)[0]!.severity;
    expect([at(0.79), at(0.81), at(1.01)]).toEqual(["note", "caution", "error"]);
  });
  test("US and metric tons are told apart: a load between both", () => {
    const load = dieFor(plate(), settings).load.value;
    const amount = load / 9806.65 + 0.05;
    expect(rated(`${amount.toFixed(3)} t`)[0]!.severity).toBe("caution");
    expect(rated(`${amount.toFixed(3)} US tons`)[0]!.severity).toBe("error");
  });
});

test("arcs that stray further than a drawing promises are an error", () => {
  const die = dieFor(plate(), settings);
  const straying = (error: number) => checkDie({ ...die, rules: [{ ...die.rules[0]!, error }] }, "mm");
  expect(straying(0.05)).toEqual([]);
  expect(straying(0.06)[0]).toMatchObject({ rule: "die-arcs-fit", severity: "error", value: "0.06 mm" });
});

describe("a pair on one board", () => {
  const gapOf = (thickest: number, over: Partial<DieSettings> = {}): number =>
    pairDie(dieFor(plate({ leather: { kind: "harness", thickness: thickest, thickest } }), shop(over))).gap;
  test("3/32 in is left clear between the steel: 2.38 + 0.71 mm from edge to edge", () => {
    expect(Math.abs(gapOf(2) - 3.09125)).toBeLessThan(0.02);
    expect(Math.abs(gapOf(2, { bevel: "leather side" }) - 2.38125)).toBeLessThan(0.02);
  });
  test("thick leather lies as far apart as it is thick", () => {
    expect(Math.abs(gapOf(5) - 5)).toBeLessThan(0.02);
  });
  test("the second is turned over only where the die is not its own mirror image", () => {
    const hole = roundHole("h", 20, 5, 8);
    const second = (over: Partial<Piece>) => pairDie(dieFor(plate(over), settings)).second.mirrored ?? false;
    expect(second({ hand: "pair", holes: [hole] })).toBe(true);
    expect(second({ hand: "pair" })).toBe(false);
    expect(second({ holes: [hole] })).toBe(false);
  });
});
