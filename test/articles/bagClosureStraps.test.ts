import { describe, expect, test } from "vitest";
import { bag } from "../../src/articles/bag.ts";
import type { ArticleDefinition } from "../../src/articles/definition.ts";
import { checkPieces } from "../../src/checks/index.ts";
import { folded } from "../../src/checks/measure/folded.ts";
import { bendsAbove, drawnEnd, lies } from "../../src/checks/measure/foldedFlap.ts";
import { boundsOf } from "../../src/geometry/bounds.ts";
import type { Closure, FixedJoin, Made } from "../../src/model/article.ts";
import type { Finding } from "../../src/model/finding.ts";
import type { Piece } from "../../src/model/piece.ts";
import { editOrder } from "../../src/order/edit.ts";
import { readOrder } from "../../src/order/read.ts";
import { anyOrder, orderText } from "../support/anyOrder.ts";
import { randomFrom } from "../support/random.ts";

// A bag shut by strap and buckle, measured on its drawn pieces: the flap is folded over the filled bag, the
// billet laid down from its rivets and the tab up from its own; the middle hole must come onto the bar.

const BAG =
  "article: bag\nunits: mm\nmeasures: { width: 300, height: 240, depth: 80 }\nbag: { closure: strap and buckle, made: MADE }\n";
const MADE = ["flanged gusset", "turned gusset", "side gussets", "end panels"] as const;
const bagOf = (made: string, more = ""): string => BAG.replace("MADE", made) + more;

const read = (text: string, article: ArticleDefinition = bag) => readOrder(text, "bag.yaml", [article]);
function madeOf(text: string): Made {
  const { order, faults } = read(text);
  expect(faults).toEqual([]);
  return order!.article.make(order!.values);
}
const findingsOf = (made: Made): readonly Finding[] => [
  ...made.findings,
  ...checkPieces(made, { units: "mm" }),
];
const errorsOf = (made: Made): readonly Finding[] => findingsOf(made).filter((f) => f.severity === "error");
const pieceOf = (made: Made, id: string): Piece => made.pieces.find((p) => p.id === id)!;
const holeOf = (piece: Piece, id: string) => piece.holes.find((h) => h.id === id)!.at;
const fixedOf = (made: Made, name: string): FixedJoin =>
  made.joins.find((j): j is FixedJoin => j.kind === "fixed" && j.name === name)!;

/** Each pair of holes that one rivet goes through: on the strap, and on what it is fixed to. */
function pairs(made: Made, name: string) {
  const [strap, on] = fixedOf(made, name).sides;
  return strap!.holes.map((id, i) => ({
    strap: holeOf(pieceOf(made, strap!.piece), id),
    on: holeOf(pieceOf(made, on!.piece), on!.holes[i]!),
  }));
}

const mean = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0) / list.length;
const spread = (list: readonly number[]): number => Math.max(...list) - Math.min(...list);

/** Heights over the bag's bottom in the closed, filled bag, from the middle of the rivets, mm. */
function measured(made: Made) {
  const join = made.joins.find((j): j is Closure => j.kind === "closure")!;
  const flap = pieceOf(made, join.flap.piece);
  const bends = bendsAbove(flap, join.flap.baseLine);
  const onFlap = (y: number): number => lies(bends, y - join.flap.baseLine).v;
  const onFront = (y: number): number => Math.abs(y - join.front.baseLine);
  const [tab, billet] = [pieceOf(made, "closure-tab"), pieceOf(made, "closure-billet")];
  const holes = billet.holes.filter((h) => h.use === "buckle").sort((a, b) => a.at[0] - b.at[0]);
  const middle = holes[(holes.length - 1) / 2]!.at[0];
  const turn = tab.turnBacks[0]!;
  const tip = boundsOf(billet.outline).maxX - middle;
  const hole = pairs(made, "closure billet to flap").map((p) => onFlap(p.on[1]) - (middle - p.strap[0]));
  const tabFixed = pairs(made, "closure tab to front");
  const toBar = (x: number): number => folded(turn)!.at(Math.abs(x - turn.centre)).x;
  const bar = tabFixed.map((p) => onFront(p.on[1]) + toBar(p.strap[0]));
  return {
    hole: mean(hole),
    bar: mean(bar),
    /** How far one rivet of a pair and the other disagree: a spacing or more where they are mixed up. */
    apart: Math.max(spread(hole), spread(bar)),
    tabEnd: mean(tabFixed.map((p) => onFront(p.on[1]) - (boundsOf(tab.outline).maxX - p.strap[0]))),
    tip: mean(hole) - tip,
    flapEnd: onFlap(join.flap.baseLine + drawnEnd(flap, join.flap.baseLine)),
    aside: [join.flap.at[0], join.front.at[0]],
  };
}

/** How far the middle hole misses the place of a hole in use. */
function missOf(made: Made, offset = 0): number {
  const { hole, bar } = measured(made);
  return Math.abs(hole - bar - offset);
}
const MEET_MM = 0.2;

describe.each(MADE)("%s", (how) => {
  test.each([
    ["as it comes", "", 0],
    ["a hole in use off the bar", "hardware: { closure-buckle: { hole-offset: 3 } }\n", 3],
    [
      "screws, wide straps",
      "hardware: { fixing: { kind: binding screw }, closure-buckle: { strap-width: 30 } }\n",
      0,
    ],
    [
      "lengths as ordered",
      "pieces: { closure-tab: { length: 72, left-turn-back: 48 }, closure-billet: { length: 52, holes: 5, hole-pitch: 12 } }\n",
      0,
    ],
    ["a thin, soft leather", "leather: { strap: { thickness: 2 mm, neutral: 0.4 } }\n", 0],
  ])("%s: no error, and the middle hole on the bar", (_, more, offset) => {
    const made = madeOf(bagOf(how, more));
    expect(errorsOf(made)).toEqual([]);
    expect(missOf(made, offset)).toBeLessThan(MEET_MM);
    expect(measured(made).apart).toBeLessThan(MEET_MM);
    expect(measured(made).aside.map(Math.abs)).toEqual([0, 0]);
  });

  test("the flap ends over the buckle's frame, and nothing hangs below the bag", () => {
    const frame = 24;
    const text = bagOf(how, `hardware: { closure-buckle: { frame-length: ${frame} } }\n`);
    const lowest = read(text)
      .order!.sections.find((s) => s.path === "pieces.body")!
      .dimensions.find((d) => d.key === "pieces.body.flap-end")!.least!;
    // As low as the flap may end.
    for (const more of ["", `pieces: { body: { flap-end: ${(lowest + 1e-3).toFixed(3)} mm } }\n`]) {
      const { bar, flapEnd, tip, tabEnd } = measured(madeOf(text + more));
      expect(flapEnd).toBeGreaterThan(bar + frame);
      expect(Math.min(tip, tabEnd)).toBeGreaterThan(5);
    }
  });
});

test("lower still, the flap would cover the buckle: refused", () => {
  const { faults } = read(bagOf("end panels", "pieces: { body: { flap-end: 20 } }\n"));
  expect(faults.map((f) => f.key)).toEqual(["pieces.body.flap-end"]);
});

test("a billet whose holes are drawn 1 mm off is measured as 1 mm off", () => {
  const made = madeOf(bagOf("end panels"));
  const moved = made.pieces.map((p) =>
    p.id === "closure-billet"
      ? {
          ...p,
          holes: p.holes.map((h) => (h.use === "buckle" ? { ...h, at: [h.at[0] + 1, h.at[1]] as const } : h)),
        }
      : p,
  );
  expect(missOf({ ...made, pieces: moved })).toBeCloseTo(1, 3);
});

test("rivets drawn the wrong way round are measured as a spacing off", () => {
  const made = madeOf(bagOf("end panels"));
  const turned = made.joins.map((j) =>
    j.kind === "fixed" && j.name === "closure tab to front"
      ? { ...j, sides: j.sides.map((s, i) => (i === 0 ? s : { ...s, holes: [...s.holes].reverse() })) }
      : j,
  );
  expect(measured({ ...made, joins: turned }).apart).toBeGreaterThan(10);
});

describe("what goes with it", () => {
  const made = madeOf(bagOf("end panels", "hardware: { fixing: { spacing: 15 } }\n"));

  test("both straps are fixed in steps of their own, before the bag is shut", () => {
    const names = made.assembly!.map((s) => s.name);
    for (const name of ["closure billet to flap", "closure tab to front"]) {
      expect(names).toContain(name);
      expect(names.indexOf(name)).toBeLessThan(names.indexOf("body to end panels"));
    }
  });

  test("the front has a mark where the flap's rivets come, and holes and a patch where the tab is", () => {
    const body = pieceOf(made, "body");
    const mark = boundsOf(body.marks.find((m) => m.id === "closure.front.flap")!.path);
    const join = made.joins.find((j): j is Closure => j.kind === "closure")!;
    expect((mark.minY + mark.maxY) / 2).toBeCloseTo(join.front.at[1], 6);
    const tab = boundsOf(body.marks.find((m) => m.id === "closure.front.tab")!.path);
    const rivets = body.holes.filter((h) => h.id.startsWith("closure.front"));
    expect(rivets).toHaveLength(2);
    for (const { at } of rivets) expect(at[1] > tab.minY && at[1] < tab.maxY).toBe(true);
    const patch = boundsOf(pieceOf(made, "patch-closure-front").outline);
    expect(patch.maxX - patch.minX).toBeGreaterThan(15);
    expect(pieceOf(made, "patch-closure-front").holes.map((h) => h.id)).toEqual(rivets.map((h) => h.id));
  });

  test("a buckle narrower than the straps is refused, and a wider frame asks for a longer billet", () => {
    const narrow = read(
      bagOf("end panels", "hardware: { closure-buckle: { strap-width: 20, inside: 18 } }\n"),
    );
    expect(narrow.faults.map((f) => f.key)).toEqual(["hardware.closure-buckle.inside"]);
    const wide = "hardware: { closure-buckle: { strap-width: 30, frame-length: 40 } }\n";
    const short = read(bagOf("end panels", `${wide}pieces: { closure-billet: { length: 38 } }\n`));
    expect(short.faults.map((f) => f.key)).toEqual(["pieces.closure-billet.length"]);
  });

  test("no other closure has straps, and an open bag has none", () => {
    for (const bare of ["closure: press stud", "closure: strap and buckle, opening: open"]) {
      const other = madeOf(
        `article: bag\nunits: mm\nmeasures: { width: 300, height: 240, depth: 80 }\nbag: { ${bare} }\n`,
      );
      expect(other.pieces.filter((p) => /^closure-/.test(p.id))).toEqual([]);
      expect(other.joins.filter((j) => j.kind === "fixed" && /closure/.test(j.name))).toEqual([]);
    }
  });
});

describe("a bag too small for it", () => {
  const small = (height: number): string =>
    `article: bag\nunits: mm\nmeasures: { width: 120, height: ${height}, depth: 40 }\nbag: { closure: strap and buckle }\n`;

  test("the contradiction says what to change, and the change mends it", () => {
    const { faults } = read(small(90));
    expect(faults.map((f) => f.code)).toEqual(["contradiction"]);
    expect(faults[0]!.key).toBe("pieces.body.closure-height");
    expect(faults[0]!.mend).toContain("measured height");
    expect(faults[0]!.problem + faults[0]!.allowed).toContain("front below the closure");
    const made = madeOf(small(190));
    expect(errorsOf(made)).toEqual([]);
    expect(missOf(made)).toBeLessThan(MEET_MM);
  });
});

/** The bag's article with nothing left to choose but strap and buckle. */
const buckled: ArticleDefinition = {
  ...bag,
  sections: bag.sections.map((s) =>
    s.path === "bag"
      ? {
          ...s,
          table: {
            ...s.table,
            closure: { ...s.table.closure!, choices: ["strap and buckle"], default: "strap and buckle" },
            opening: { ...s.table.opening!, choices: ["flap"], default: "flap" },
          } as typeof s.table,
        }
      : s,
  ),
};

const SEEDS = Array.from({ length: 40 }, (_, i) => i + 1);

test("any in-range order: no throw, contradictions that say what to change, the hole on the bar", () => {
  const runs = SEEDS.map((seed) => {
    const { given } = anyOrder(buckled, randomFrom(seed));
    const { order, faults } = read(orderText(buckled, given), buckled);
    for (const f of faults) {
      expect(f.code, JSON.stringify(f)).toBe("contradiction");
      expect(f.mend).not.toBe("");
    }
    if (!order) return "contradiction";
    const dimensions = order.sections.flatMap((s) => s.dimensions);
    const numberOf = (key: string): number => dimensions.find((d) => d.key === key)!.value as number;
    const made = order.article.make(order.values);
    const { bar, flapEnd, tip, tabEnd, apart } = measured(made);
    const words = JSON.stringify(given);
    expect(missOf(made, numberOf("hardware.closure-buckle.hole-offset")), words).toBeLessThan(MEET_MM);
    // A front that bulges tilts the flap: its two rivets are no longer their spacing apart in height.
    if (numberOf("pieces.body.bulge") === 0) expect(apart).toBeLessThan(MEET_MM);
    expect(flapEnd, words).toBeGreaterThan(bar);
    expect(Math.min(tip, tabEnd), words).toBeGreaterThan(0);
    return "made";
  });
  expect(runs.filter((r) => r === "made").length).toBeGreaterThan(SEEDS.length / 3);
});

/** Errors of the closure's own straps, and of its holes in flap and front. */
const ownErrors = (made: Made): readonly Finding[] =>
  errorsOf(made).filter((e) => /^closure-/.test(e.piece) || /closure\.fl|closure\.fr/.test(e.place));

test("what a mend offers takes an error of the closure's straps away", () => {
  // Strap leather that isn't skived cracks in the tab's fold round a thin bar.
  const thick = "leather: { strap: { thickness: 3 mm, skive-to: 3 mm } }\n";
  const text = bagOf("end panels", `${thick}hardware: { closure-buckle: { bar: 2 } }\n`);
  const errors = ownErrors(madeOf(text));
  expect(errors.map((e) => e.rule)).toEqual(["fold-strain"]);
  const { dimension, value } = errors[0]!.change!;
  expect(ownErrors(madeOf(editOrder(text, dimension, value)))).toEqual([]);
});
