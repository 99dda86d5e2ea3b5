import { describe, expect, test } from "vitest";
import worked from "../../fixtures/published/worked-cases.json";
import type { Quantity } from "../../src/model/quantity.ts";
import {
  BOX_TURN,
  endPanelDifference,
  type Flanges,
  flangedDifference,
  flangedWidth,
  flangeReach,
  flangeTake,
  foldDrop,
  foldFromEdge,
  footFade,
  gatherLength,
  gatherStrain,
  inwardFold,
  leastCornerRadius,
  slopedRun,
  turnedEdge,
} from "../../src/trade/gusset.ts";
import { given, radians } from "../support/quantities.ts";
import { faultsOfHistory } from "../support/sensitivity.ts";

// Source: fixtures/published/worked-cases.json (independent simulation); closed forms; a strip folded by
// stepping along its neutral fibre.

const { flangedGusset, turnedEdge: turned, wrapRound, sideGusset } = worked.cases;

const flanges = (flange: number, fold: number, thickness: number, neutral: number): Flanges => ({
  flange: given("f", flange),
  fold: given("r", fold),
  thickness: given("t", thickness, "thickness"),
  neutral: given("k", neutral, "ratio"),
});

describe("the worked cases", () => {
  test("flanged gusset", () => {
    const c = flangedGusset;
    const f = flanges(c.foldInset, c.foldRadius, c.thickness, 0.5);
    const [web, t, s] = [given("f", c.foldInset), given("t", c.thickness), given("s", c.seamInset)];
    expect(flangedWidth("width", f, given("B", c.between)).value).toBeCloseTo(c.cutWidth, 4);
    const turn = given("turn", radians(c.turnDegrees), "angle");
    expect(gatherLength(web, t, s, turn).value).toBeCloseTo(c.gather, 4);
    expect(gatherStrain(web, t, s, given("R", c.cornerRadius)).value).toBeCloseTo(c.strain, 4);
  });

  test("turned edge", () =>
    expect(
      turnedEdge("edge", given("a", turned.allowance), given("t", turned.thickness), 0.5).value,
    ).toBeCloseTo(turned.finishedInside, 4));

  test("end panel in a wrap-round body", () =>
    expect(
      endPanelDifference(given("s", wrapRound.seamInset), given("t", wrapRound.thickness), 0.5).value,
    ).toBeCloseTo(wrapRound.seamDifference, 4));

  test("side gusset folded inward", () => {
    const fold = inwardFold(given("W", sideGusset.top), given("b", sideGusset.apart));
    expect(fold.value).toBeCloseTo(sideGusset.foldDepth, 4);
    expect(foldDrop(given("H", sideGusset.height), fold).value).toBeCloseTo(sideGusset.drop, 4);
  });
});

/** A strip of this width, folded: steps along its neutral fibre, which lies `deep` inside its grain face. */
function folded(width: number, bend: { middle: number; length: number }, deep: number) {
  const steps = 40_000;
  const step = width / steps;
  let [x, y, way] = [0, 0, 0];
  let web = Number.NaN;
  for (let i = 0; i < steps; i++) {
    const u = (i + 0.5) * step;
    const mirror = Math.min(u, width - u);
    // What of the step lies in the bend.
    const [from, to] = [mirror - step / 2, mirror + step / 2];
    const [start, end] = [bend.middle - bend.length / 2, bend.middle + bend.length / 2];
    const share = Math.max(0, Math.min(to, end) - Math.max(from, start)) / bend.length;
    const turn = (Math.PI / 2) * share;
    way += turn / 2;
    x += step * Math.cos(way);
    y += step * Math.sin(way);
    way += turn / 2;
    if (i === steps / 2) web = x + deep;
  }
  return { edge: x, apart: y, web };
}

describe("a flanged strip, folded step by step", () => {
  test.each([
    [10, 0.5, 2, 0.5, 60],
    [12, 1.5, 1.6, 0.4, 35],
    [9, 0.8, 3, 0.62, 110],
  ])("flange %d, fold %d, leather %d, fibre %d, depth %d", (flange, fold, t, k, between) => {
    const f = flanges(flange, fold, t, k);
    const width = flangedWidth("width", f, given("B", between)).value;
    const middle = foldFromEdge("fold", f).value;
    // The bend reaches from where the flange's flat ends to where the web begins.
    const length = 2 * (flangeTake("take", f).value - middle);
    const strip = folded(width, { middle, length }, -k * t);
    // Both cut edges lie above each other, the web's outer face the flange's depth from them …
    expect(strip.edge).toBeCloseTo(0, 2);
    expect(strip.web).toBeCloseTo(flange, 2);
    // … and the flanges' flesh faces, (1 − k) t outside the fibre, the bodies' distance apart.
    expect(strip.apart + 2 * (1 - k) * t).toBeCloseTo(between, 2);
  });
});

describe("round a corner", () => {
  const [f, t, s] = [given("f", 11), given("t", 1.8), given("s", 4)];

  test("the least radius for a strain is strained so", () => {
    for (const strain of [0.08, 0.1, 0.2, 0.3]) {
      const radius = leastCornerRadius(f, t, s, strain);
      expect(gatherStrain(f, t, s, radius).value).toBeCloseTo(strain, 12);
    }
  });

  test("what is gathered is the seam's length less the web's, by Archimedes' polygons", () => {
    const arc = (radius: number): number => 1e6 * 2 * radius * Math.sin(Math.PI / 2 / 2 / 1e6);
    const [seam, web] = [arc(40 - s.value), arc(40 - f.value - t.value / 2)];
    expect(gatherLength(f, t, s, given("turn", Math.PI / 2, "angle")).value).toBeCloseTo(seam - web, 6);
  });

  test("at a sharp corner there is no end to it", () =>
    expect(gatherStrain(f, t, s, given("R", s.value)).value).toBe(Infinity));
});

describe("a turned edge", () => {
  // trade.md, section 5: a + 0.178 t in a box, a + 0.571 t where both pieces turn right back.
  test.each([
    [BOX_TURN, 0.178],
    [Math.PI, 0.571],
  ])("turned through %d", (turn, share) => {
    const edge = turnedEdge("edge", given("a", 8), given("t", 1.5, "thickness"), 0.5, turn);
    expect((edge.value - 8) / 1.5).toBeCloseTo(share, 3);
  });
});

describe("a web folded inward", () => {
  test("its depth is the height of a triangle of two half webs, by Heron", () => {
    for (const [width, apart] of [
      [60, 6],
      [130, 9],
      [31, 4.5],
    ] as const) {
      const p = (width + apart) / 2;
      const area = Math.sqrt(p * (p - apart) * (p - width / 2) ** 2);
      expect(inwardFold(given("W", width), given("b", apart)).value).toBeCloseTo((2 * area) / apart, 9);
    }
  });

  test("its top drops as a stick does that leans so far out", () => {
    const [height, fold] = [170, 44];
    let [low, high] = [0, Math.PI / 2];
    for (let i = 0; i < 60; i++) {
      const lean = (low + high) / 2;
      if (height * Math.sin(lean) < fold) low = lean;
      else high = lean;
    }
    expect(foldDrop(given("H", height), given("v", fold)).value).toBeCloseTo(height * (1 - Math.cos(low)), 9);
  });

  test("a web no wider than its edges are apart doesn't fold; one deeper than high lies down", () => {
    expect(inwardFold(given("W", 5), given("b", 6)).value).toBe(0);
    expect(foldDrop(given("H", 30), given("v", 40)).value).toBe(30);
  });
});

describe("seams round one bend", () => {
  /** Length of half a circle, by a polygon of a million sides. */
  const half = (radius: number): number => 1e6 * 2 * radius * Math.sin(Math.PI / 2 / 1e6);

  test("a gusset flanged inside a boxed body: both neutral fibres round the same middle", () => {
    const [fold, tb, kb, tg, kg] = [6, 2.5, 0.45, 1.6, 0.55];
    const difference = flangedDifference(
      { thickness: given("t", tb), neutral: given("k", kb, "ratio") },
      { thickness: given("tg", tg), neutral: given("kg", kg, "ratio") },
    );
    // The gusset's inner face lies its thickness inside the body's.
    expect(difference.value).toBeCloseTo(half(fold + kb * tb) - half(fold - tg + kg * tg), 6);
  });

  test("flanges past their runs meet neither flat nor bent", () => {
    for (const [s, fold, t, r] of [
      [4, 10, 1.6, 0.8],
      [4, 5, 1.6, 0.8],
      [6, 30, 3, 1],
      [6, 6.5, 1, 0.3],
    ] as const) {
      const reach = flangeReach(given("s", s), given("b", fold), given("t", t), given("r", r)).value;
      expect(reach).toBeLessThanOrEqual(s);
      expect(reach + t + r).toBeLessThanOrEqual(fold + 1e-9);
      // Two of them, on their middles, in a quarter turn.
      expect(2 * reach).toBeLessThanOrEqual((Math.PI / 2) * (fold - t / 2) + 1e-9);
    }
  });
});

type Numbers = Readonly<Record<string, number>>;
const g = (v: Numbers, name: string): Quantity => given(name, v[name]!);
const fl = (v: Numbers): Flanges => ({
  flange: g(v, "f"),
  fold: g(v, "r"),
  thickness: g(v, "t"),
  neutral: given("k", v.k!, "ratio"),
});
const FLANGES: Numbers = { f: 10, r: 0.7, t: 1.6, k: 0.45 };
const histories: readonly (readonly [string, Numbers, (v: Numbers) => Quantity])[] = [
  ["flanged width", { ...FLANGES, B: 60 }, (v) => flangedWidth("w", fl(v), g(v, "B"))],
  ["fold from the edge", FLANGES, (v) => foldFromEdge("w", fl(v))],
  ["flange's take", FLANGES, (v) => flangeTake("w", fl(v))],
  [
    "gather",
    { f: 10, t: 2, s: 4, a: 1.5 },
    (v) => gatherLength(g(v, "f"), g(v, "t"), g(v, "s"), given("a", v.a!, "angle")),
  ],
  ["strain", { f: 10, t: 2, s: 4, R: 40 }, (v) => gatherStrain(g(v, "f"), g(v, "t"), g(v, "s"), g(v, "R"))],
  ["least radius", { f: 10, t: 2, s: 4 }, (v) => leastCornerRadius(g(v, "f"), g(v, "t"), g(v, "s"), 0.1)],
  [
    "turned edge",
    { a: 8, t: 1.2, k: 0.5 },
    (v) => turnedEdge("e", g(v, "a"), g(v, "t"), given("k", v.k!, "ratio")),
  ],
  ["inward fold", { W: 60, b: 6 }, (v) => inwardFold(g(v, "W"), g(v, "b"))],
  ["drop", { H: 200, v: 30 }, (v) => foldDrop(g(v, "H"), g(v, "v"))],
  ["fading", { W: 60 }, (v) => footFade(g(v, "W"))],
  [
    "end panel",
    { s: 3, t: 2, k: 0.5 },
    (v) => endPanelDifference(g(v, "s"), g(v, "t"), given("k", v.k!, "ratio")),
  ],
  [
    "flanged difference",
    { t: 2, k: 0.5, u: 1.5, m: 0.4 },
    (v) =>
      flangedDifference(
        { thickness: g(v, "t"), neutral: given("k", v.k!, "ratio") },
        { thickness: g(v, "u"), neutral: given("m", v.m!, "ratio") },
      ),
  ],
  ["reach", { s: 4, b: 8, t: 2, r: 1 }, (v) => flangeReach(g(v, "s"), g(v, "b"), g(v, "t"), g(v, "r"))],
  ["sloped run", { r: 90, h: 12 }, (v) => slopedRun(g(v, "r"), g(v, "h"))],
];

test.each(histories)("%s changes with what it names, and with nothing else", (_, values, work) =>
  expect(faultsOfHistory(work, values)).toEqual([]),
);
