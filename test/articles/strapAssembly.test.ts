import { describe, expect, test } from "vitest";
import { PIECE_RULES } from "../../src/checks/index.ts";
import type { Made } from "../../src/model/article.ts";
import { sayStep } from "../../src/picture/sheet/article.ts";
import { found } from "../support/found.ts";
import { madeOf, orderText } from "../support/madeOf.ts";
import { orderFiles } from "../support/orders.ts";

// Headstalls and straps are put together in an order that reads as sentences.

const said = (made: Made): readonly string[] => (made.assembly ?? []).map(sayStep);

describe("in words", () => {
  test("a headstall that is buckled on both sides", () => {
    expect(said(madeOf(orderText("juniper-headstall")))).toEqual([
      "Stitch the ends of the running keeper",
      "Fold the cheek round the buckle bar, the ends of the fixed keeper between its legs",
      "Slide the running keeper onto the cheek",
      "Stitch the cheek's turn-back at the buckle bar",
      "Fold the cheek round the bit ring",
      "Fix the cheek's turn-back at the bit ring with its screws",
      "Thread the ear piece on the crown",
      "Thread the points of the crown through the buckles and keepers",
    ]);
  });

  test("one buckle; keepers with a staple; rivets; two loops", () => {
    expect(said(madeOf(orderText("bramble-headstall"))).at(-1)).toBe(
      "Thread the point of the crown through the buckle and keepers",
    );
    const lancet = said(madeOf(orderText("lancet")));
    expect(lancet).toContain("Fix the staple of the fixed keeper");
    expect(lancet).toContain("Rivet the cheek's turn-back at the bit ring");
    expect(said(madeOf(orderText("browband")))).toEqual([
      "Fold the left end of the strap round the strap",
      "Stitch the strap's left turn-back",
      "Fold the right end of the strap round the strap",
      "Stitch the strap's right turn-back",
    ]);
  });

  test("a strap with nothing to fold has nothing to put together", () => {
    const plain = orderText("browband").replace(/(left|right)-end: [a-z ]+/g, "$1-end: plain");
    expect(said(madeOf(plain))).toEqual([]);
  });
});

const orderly = (made: Made): readonly string[] => found(made, "assembly-order").map((f) => f.message);

describe("the rule of putting together", () => {
  test("finds nothing in any order's", () => {
    expect(PIECE_RULES.map((r) => r.name)).toContain("assembly-order");
    for (const { name, text } of orderFiles) expect(orderly(madeOf(text)), name).toEqual([]);
  });

  test("finds a running keeper that is slid on when its end is closed", () => {
    const made = madeOf(orderText("heron-bag-strap"));
    const isSlide = (name: string): boolean => name.startsWith("slide");
    const late = [
      ...made.assembly!.filter((s) => !isSlide(s.name)),
      ...made.assembly!.filter((s) => isSlide(s.name)),
    ];
    expect(orderly({ ...made, assembly: late })[0]).toContain(
      '"slide the running keeper onto the strap" needs the open left end of the strap at the buckle bar',
    );
  });
});
