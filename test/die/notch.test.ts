import { describe, expect, test } from "vitest";
import { checkDie } from "../../src/die/checks/index.ts";
import { dieFor } from "../../src/die/die.ts";
import { ruleFaces } from "../../src/die/ruleBody.ts";
import { ruleLengths } from "../../src/die/rulePaths.ts";
import { type DieSettings, defaultDie } from "../../src/die/settings.ts";
import {
  boundsOf,
  circlePath,
  type Point,
  pathLength,
  polyline,
  rectanglePath,
} from "../../src/geometry/index.ts";
import type { Mark, Piece } from "../../src/model/piece.ts";
import { cutItems } from "../../src/picture/die/cutItems.ts";
import { holesTableOf } from "../../src/picture/die/tables.ts";
import { roundHole, samplePiece } from "../support/samplePieces.ts";

const notch = (id: string, ...path: readonly Point[]): Mark => ({
  id,
  kind: "notch",
  path: polyline(path),
  label: "centre",
});
const settings: DieSettings = { ...defaultDie(), notches: "in the die" };
const panel = (marks: readonly Mark[], over: Partial<Piece> = {}): Piece =>
  samplePiece("panel", rectanglePath([0, 0], 200, 100), { marks, ...over });
const nick = notch("nick", [50, 100], [50, 97]);
const byHand = dieFor(panel([nick]), defaultDie());
const inDie = dieFor(panel([nick]), settings);
const made = (mark: Mark) => dieFor(panel([mark]), settings).features.find(({ id }) => id === mark.id)!.made;

describe("notches in the die", () => {
  test("by hand unless the order says otherwise", () => {
    expect(byHand.features.find(({ id }) => id === "nick")!.made).toBe("by hand afterwards");
    expect(byHand.rules.length).toBe(1);
  });
  test("a slit is a piece of rule: its length counts in the rule, and in the load by rule and rubber", () => {
    expect(ruleLengths(inDie.rules).rule - ruleLengths(byHand.rules).rule).toBeCloseTo(3, 9);
    // 3 mm of rule in leather of 3.6 mm at 22 N/mm², and rubber 10 mm wide along both sides of it.
    const rubber = 3 * 20 * settings.rubberPressure.value;
    expect(inDie.load.value - byHand.load.value).toBeCloseTo(3 * 3.6 * 22 + rubber, 6);
  });
  test("it stands in the table of holes with a letter, its middle, length and direction", () => {
    const row = holesTableOf(inDie).rows.find((cells) => cells.includes("notch"))!;
    expect(row.slice(0, 3)).toEqual(["A1", "50.000", "98.500"]);
    expect(row[3]).toMatch(/^3\b/);
    expect(row[3]).toContain("long");
    expect(row[4]).toContain("90°");
    expect(row.at(-1)).toBe("in the die");
  });
  test("in the file it is steel, and no more by hand", () => {
    const layers = (die: typeof inDie) =>
      cutItems(die, { ruleEdge: false, words: [] }).map(({ layer }) => layer);
    expect(layers(inDie)).toContain("CUT_NOTCHES");
    expect(layers(inDie)).not.toContain("HAND_NOTCH");
    expect(layers(byHand)).toContain("HAND_NOTCH");
    expect(layers(byHand)).not.toContain("CUT_NOTCHES");
  });
  test("its rule has two faces, half the thickness to either side, whatever the bevel", () => {
    const { leather, waste } = ruleFaces(inDie.rules[1]!, { ...settings, bevel: "waste side" });
    expect(waste).toEqual([]);
    const sides = leather.map((face) => boundsOf(face).minX - 50).sort((a, b) => a - b);
    expect(sides).toEqual([expect.closeTo(-0.355, 6), expect.closeTo(0.355, 6)]);
    for (const face of leather) expect(pathLength(face)).toBeCloseTo(3, 6);
  });
  test("standing on the outline's rule it is not too near to it; near a hole it is", () => {
    const apart = (die: typeof inDie) =>
      checkDie(die, "mm").filter(({ rule }) => rule !== "die-notches-show");
    expect(apart(inDie)).toEqual([]);
    const near = dieFor(panel([nick], { holes: [roundHole("h", 50, 5, 92)] }), settings);
    expect(apart(near).map(({ rule, place }) => [rule, place])).toEqual([["die-tube-spacing", "h and nick"]]);
  });
  test("what can't be a piece of rule stays by hand: bent, round, off the edge, outside", () => {
    expect(made(nick)).toBe("in the die");
    expect(made(notch("turned", [50, 97], [50, 100]))).toBe("in the die");
    for (const other of [
      notch("bent", [50, 100], [50, 98], [52, 98]),
      notch("off", [50, 99], [50, 96]),
      notch("outside", [50, 100], [50, 103]),
      { ...nick, id: "round", path: circlePath([50, 98], 1) },
      { ...nick, id: "clip", kind: "clip" as const },
    ])
      expect(made(other), other.id).toBe("by hand afterwards");
  });
  test("a notch to one side takes a mirror image away, one on the axis does not", () => {
    const pair = { hand: "pair", count: 2 } as const;
    const middle = [notch("l", [100, 100], [100, 97]), notch("r", [100, 0], [100, 3])];
    expect(dieFor(panel(middle, pair), settings).axis).toBeDefined();
    expect(dieFor(panel([nick], pair), settings).axis).toBeUndefined();
    expect(dieFor(panel([nick], pair), defaultDie()).axis).toBeDefined();
  });
});
