import { describe, expect, test } from "vitest";
import { derivationOf } from "../../src/model/derivation.ts";
import type { Quantity } from "../../src/model/quantity.ts";
import {
  adjustmentHalf,
  crownCutBothSides,
  defaultPitch,
  defaultToTip,
  effectiveCrown,
  effectiveOneSide,
  holeRow,
} from "../../src/trade/balance.ts";
import { bitEnd } from "../../src/trade/bitEnd.ts";
import { buckleEnd } from "../../src/trade/buckleEnd.ts";
import {
  bandChord,
  bandRadius,
  defaultEase,
  openingPerimeter,
  ovalHalfWidth,
  slotBridge,
} from "../../src/trade/earLoop.ts";
import { keeperBreadth, keeperGirth, keeperStack } from "../../src/trade/keeper.ts";
import { loopEnd } from "../../src/trade/loopEnd.ts";
import { englishRadius, pointLength } from "../../src/trade/points.ts";
import { defaultInset, spread } from "../../src/trade/seam.ts";
import { slotLength, slotWidth, weavingSlotWidth } from "../../src/trade/slot.ts";
import { netSection, stitchedJoint, tearOut } from "../../src/trade/strength.ts";
import {
  defaultWrapThickness,
  developFlatBar,
  developRoundBar,
  liftOffForSlope,
} from "../../src/trade/turnBack.ts";
import { bitFrom, buckleFrom, END_VALUES, type EndValues, legsFrom, loopFrom } from "../support/ends.ts";
import { given } from "../support/quantities.ts";
import { allIn, readExpression, written } from "../support/readExpression.ts";
import { faultsOfHistory } from "../support/sensitivity.ts";

// The history of a size is what `explain` prints. Each is checked twice: does the size change with what
// the history names and with nothing else, and does its text, worked with a calculator, give its value?

type Numbers = Readonly<Record<string, number>>;
type Case = { readonly values: Numbers; readonly work: (v: Numbers) => Quantity };

/** Every quantity of a result, each as a case of its own. */
function every(
  prefix: string,
  values: Numbers,
  work: (v: Numbers) => object,
): readonly (readonly [string, Case])[] {
  return Object.entries(work(values)).flatMap(([key, found]) => {
    if (typeof found !== "object" || found === null) return [];
    if (!("value" in found))
      return every(`${prefix} ${key}`, values, (v) => (work(v) as Record<string, object>)[key]!);
    return [
      [`${prefix} ${key}`, { values, work: (v) => (work(v) as Record<string, Quantity>)[key]! }] as const,
    ];
  });
}

const one = (name: string, values: Numbers, work: (v: Numbers) => Quantity) =>
  [[name, { values, work }]] as const;

const end = (v: Numbers): EndValues => ({ ...END_VALUES, ...v });
/** A value of the case by its name, as an order gives it. */
const g = (v: Numbers, name: string): Quantity => given(name, v[name]!);

const ENDS: Numbers = END_VALUES;
const cases: readonly (readonly [string, Case])[] = [
  ...every("round bar", { ...ENDS, clamp: 16, lift: 11 }, (v) =>
    developRoundBar(legsFrom(end(v)), g(v, "bar"), g(v, "clamp"), g(v, "lift")),
  ),
  ...every("flat bar, close legs", { ...ENDS, along: 6, through: 3, corner: 0.5, clamp: 16, lift: 11 }, (v) =>
    developFlatBar(
      legsFrom(end(v)),
      { along: g(v, "along"), through: g(v, "through"), corner: g(v, "corner") },
      g(v, "clamp"),
      g(v, "lift"),
    ),
  ),
  ...every("flat bar, wide legs", { ...ENDS, caught: 9, along: 6, through: 3, corner: 0.5, clamp: 16 }, (v) =>
    developFlatBar(
      legsFrom(end(v)),
      { along: g(v, "along"), through: g(v, "through"), corner: g(v, "corner") },
      g(v, "clamp"),
    ),
  ),
  ...one("lift-off for a slope", { ...ENDS, radius: 3, gap: 1.4, slope: 0.26 }, (v) =>
    liftOffForSlope(legsFrom(end(v)), g(v, "radius"), g(v, "gap"), g(v, "slope")),
  ),
  ...([2, 3, 4, 6] as const).flatMap((leather) =>
    one(`leather left in a fold of ${leather} mm`, { leather, bar: 4, k: 0.5 }, (v) =>
      defaultWrapThickness(g(v, "leather"), g(v, "bar"), g(v, "k")),
    ),
  ),
  ...one("leather left in a fold round a thin bar", { leather: 4, bar: 2, k: 0.5 }, (v) =>
    defaultWrapThickness(g(v, "leather"), g(v, "bar"), g(v, "k")),
  ),
  ...every("stitched buckle end", ENDS, (v) => buckleEnd(buckleFrom(end(v), "stitched"))),
  ...every("stitched buckle end without keeper", ENDS, (v) =>
    buckleEnd(buckleFrom(end(v), "stitched", false)),
  ),
  ...every("stitched buckle end by its length", { ...ENDS, length: 71 }, (v) =>
    buckleEnd(buckleFrom(end(v), "stitched")),
  ),
  ...every("screwed buckle end", ENDS, (v) => buckleEnd(buckleFrom(end(v), "screws"))),
  ...every("screwed buckle end by its length", { ...ENDS, length: 80 }, (v) =>
    buckleEnd(buckleFrom(end(v), "screws")),
  ),
  ...every("buckle end under a long frame", { ...ENDS, overhang: 30 }, (v) =>
    buckleEnd(buckleFrom(end(v), "stitched")),
  ),
  ...every("bit end", ENDS, (v) => bitEnd(bitFrom(end(v)))),
  ...every("bit end by its length", { ...ENDS, length: 60 }, (v) => bitEnd(bitFrom(end(v)))),
  ...every("loop end", { ...ENDS, strap: 20, strapThickness: 4 }, (v) =>
    loopEnd(loopFrom(end(v), v.strap!, v.strapThickness!)),
  ),
  ...every("loop end by its length", { ...ENDS, strap: 20, strapThickness: 4, length: 70 }, (v) =>
    loopEnd(loopFrom(end(v), v.strap!, v.strapThickness!)),
  ),
  ...one("crown, both cheeks", { over: 1054, cheek: 254, offset: 1.5, holes: 7, pitch: 19, tip: 60 }, (v) => {
    const b = {
      overPoll: g(v, "over"),
      cheek: g(v, "cheek"),
      holeOffset: g(v, "offset"),
      holes: given("holes", v.holes!, "count"),
      pitch: g(v, "pitch"),
      toTip: g(v, "tip"),
    };
    return crownCutBothSides(effectiveCrown(b), holeRow(b.holes, b.pitch), b.toTip);
  }),
  ...one("crown, near side only", { over: 1054, cheek: 254, offset: 1.5 }, (v) =>
    effectiveOneSide(g(v, "over"), g(v, "cheek"), g(v, "offset")),
  ),
  ...one("adjustment, both sides", { holes: 7, pitch: 19 }, (v) =>
    adjustmentHalf(holeRow(given("holes", v.holes!, "count"), g(v, "pitch")), true),
  ),
  ...one("adjustment, one side", { holes: 7, pitch: 19 }, (v) =>
    adjustmentHalf(holeRow(given("holes", v.holes!, "count"), g(v, "pitch")), false),
  ),
  ...one("first hole to tip, by the keeper", { keeper: 60, point: 18, width: 16 }, (v) =>
    defaultToTip(g(v, "keeper"), g(v, "point"), g(v, "width")),
  ),
  ...one("first hole to tip, by the width", { keeper: 20, point: 18, width: 16 }, (v) =>
    defaultToTip(g(v, "keeper"), g(v, "point"), g(v, "width")),
  ),
  ...one("hole pitch", { width: 16 }, (v) => defaultPitch(g(v, "width"))),
  ...every("keeper's opening", { width: 16, strap: 3.5, tail: 2.1, easeWidth: 1, easeHeight: 0.5 }, (v) =>
    keeperStack(
      "keeper",
      g(v, "width"),
      [g(v, "strap"), g(v, "tail")],
      g(v, "easeWidth"),
      g(v, "easeHeight"),
    ),
  ),
  ...one("keeper's girth", { W: 17, H: 6, k: 0.5, t: 2 }, (v) =>
    keeperGirth("keeper", { width: g(v, "W"), height: g(v, "H") }, g(v, "k"), g(v, "t")),
  ),
  ...([10, 16, 40] as const).flatMap((width) =>
    one(`keeper's breadth on ${width} mm`, { width, pitch: 3.4 }, (v) =>
      keeperBreadth(g(v, "width"), given("pitch", v.pitch!, "pitch")),
    ),
  ),
  ...one("ear band", { ear: 229, ease: 25, spread: 4.2 }, (v) => {
    const spreadAngle = given("spread", v.spread!, "angle");
    return bandChord(bandRadius(openingPerimeter(g(v, "ear"), g(v, "ease")), spreadAngle), spreadAngle);
  }),
  ...one("ear oval", { perimeter: 254, slender: 1.4 }, (v) =>
    ovalHalfWidth(g(v, "perimeter"), given("slender", v.slender!, "ratio")),
  ),
  ...([150, 250] as const).flatMap((ear) =>
    one(`ear ease of ${ear}`, { ear }, (v) => defaultEase(g(v, "ear"))),
  ),
  ...([2, 4] as const).flatMap((t) =>
    one(`ear bridge in ${t} mm`, { t }, (v) => slotBridge(given("t", v.t!, "thickness"))),
  ),
  ...one("point's radius", { width: 16, length: 17.6 }, (v) =>
    englishRadius("point", g(v, "width"), g(v, "length")),
  ),
  ...one("point's length", { width: 16 }, (v) => pointLength("english", g(v, "width"))),
  ...every("spread", { run: 50, asked: 3.4 }, (v) =>
    spread("end", g(v, "run"), given("asked", v.asked!, "pitch")),
  ),
  ...one("inset", { width: 16 }, (v) => defaultInset(g(v, "width"))),
  ...one("strap slot", { width: 16, t: 4 }, (v) =>
    slotLength("s", g(v, "width"), g(v, "t"), slotWidth("s", g(v, "t"))),
  ),
  ...one("weaving slot", { t: 4, slotted: 3, angle: 0.8 }, (v) =>
    weavingSlotWidth("s", g(v, "t"), g(v, "slotted"), given("angle", v.angle!, "angle")),
  ),
  ...one("net section", { width: 16, hole: 5, t: 3 }, (v) =>
    netSection("n", g(v, "width"), g(v, "hole"), given("t", v.t!, "thickness")),
  ),
  ...one("tear-out", { toEnd: 10, hole: 5, t: 3, net: 1000 }, (v) =>
    tearOut("o", g(v, "toEnd"), g(v, "hole"), given("t", v.t!, "thickness"), given("net", v.net!, "force")),
  ),
  ...one("tear-out, as strong as the net section", { toEnd: 90, hole: 5, t: 3, net: 1000 }, (v) =>
    tearOut("o", g(v, "toEnd"), g(v, "hole"), given("t", v.t!, "thickness"), given("net", v.net!, "force")),
  ),
  ...one("stitched joint", { stitches: 10, t: 3 }, (v) =>
    stitchedJoint("j", given("stitches", v.stitches!, "count"), given("t", v.t!, "thickness")),
  ),
];

describe.each(cases)("%s", (_, c) => {
  test("changes with what it names, and with nothing else", () => {
    expect(faultsOfHistory(c.work, c.values)).toEqual([]);
  });

  test("its text, worked with a calculator, gives its value; so does each step's", () => {
    for (const q of allIn(c.work(c.values))) {
      const read = readExpression(q);
      // Figures in a text have 4 places.
      if (read !== undefined) expect(read, `${q.name}: ${written(q)}`).toBeCloseTo(q.value, 2);
    }
  });

  test("its last step is its value", () => {
    const result = c.work(c.values);
    if (result.name === undefined) return;
    const d = derivationOf("piece", result);
    expect(d.value).toBe(result.value);
    expect(d.steps.at(-1)!.name).toBe(result.name);
    expect(d.steps.at(-1)!.value).toBe(result.value);
  });
});

test("what is said in words, and can't be worked from its text, is only this", () => {
  const inWords = cases.flatMap(([, c]) =>
    allIn(c.work(c.values))
      .filter((q) => q.parts.length > 0 && readExpression(q) === undefined)
      .map((q) => q.parts.filter((p) => typeof p === "string").join("…")),
  );
  expect([...new Set(inWords)].sort()).toEqual([
    " ÷ … to the nearest whole stitch",
    "2 mm for a strap under 1 in, ",
    "the next 1/8 in over ",
  ]);
});
