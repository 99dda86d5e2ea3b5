import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { articles } from "../../src/articles/index.ts";
import { checkPieces } from "../../src/checks/index.ts";
import { readOrder } from "../../src/order/read.ts";
import { buckleEnd } from "../../src/trade/buckleEnd.ts";
import { developRoundBar } from "../../src/trade/turnBack.ts";
import { buckleFrom } from "../support/ends.ts";

// A fixed keeper next to the buckle parts the legs by its ends; one past the first fixing does not.

const ENDS = {
  neutral: 0.5,
  front: 3.5,
  back: 2.1,
  wrap: 2.1,
  caught: 0,
  bar: 4,
  tongue: 3,
  breadth: 3.5,
  open: Math.PI / 3,
  overhang: 3,
  pitch: 3.175,
  hole: 4.2,
  head: 8,
  spacing: 14,
  keeper: 9,
  feather: 8,
  ring: 8,
} as never;

describe("where the fixed keeper lies", () => {
  const past = buckleEnd(buckleFrom(ENDS, "stitched", true));
  const next = buckleEnd(buckleFrom(ENDS, "stitched", "next to the buckle"));

  test("past the first fixing: slot, fixing, keeper in that order, nothing caught at the clamp", () => {
    expect(past.clamp.value).toBeLessThan(past.keeperNear!.value);
    expect([past.liftOff.value, past.caught]).toEqual([
      past.clamp.value,
      expect.objectContaining({ value: 0 }),
    ]);
  });

  test("next to the buckle: slot, keeper, fixing; the legs part at the keeper's near edge", () => {
    expect(next.keeperFar!.value).toBeLessThan(next.clamp.value);
    expect(next.liftOff.value).toBe(next.keeperNear!.value);
    expect(next.caught).toEqual(expect.objectContaining({ value: 1 }));
  });

  test("the keeper's thickness makes the turn-back longer than the same clamp without it", () => {
    const { legs, bar } = buckleFrom(ENDS, "stitched", false);
    const bare = developRoundBar(legs, bar, next.clamp);
    expect(next.developed.holeToMate.value).toBeGreaterThan(bare.holeToMate.value);
  });

  test.each(["stitched", "screws"])(
    "a %s cheek with the keeper next to the buckle folds as drawn",
    (fixing) => {
      const text = readFileSync("templates/juniper-headstall.yaml", "utf8").replace(
        "body: swelled",
        `body: swelled, keeper-place: next to the buckle, top-fixing: ${fixing}`,
      );
      const read = readOrder(text, "juniper.yaml", articles);
      expect(read.faults).toEqual([]);
      const made = read.order!.article.make(read.order!.values);
      expect(checkPieces(made, { units: "in" }).filter((f) => f.severity === "error")).toEqual([]);
      expect(made.pieces.find((p) => p.id === "cheek")!.turnBacks[0]!.caught).toBeCloseTo(1, 9);
    },
  );
});
