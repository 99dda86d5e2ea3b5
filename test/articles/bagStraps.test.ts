import { describe, expect, test } from "vitest";
import { strapSections } from "../../src/articles/bagStraps.ts";
import { checkPieces } from "../../src/checks/index.ts";
import { folded } from "../../src/checks/measure/folded.ts";
import { distanceToPath } from "../../src/geometry/distance.ts";
import { pathLength } from "../../src/geometry/length.ts";
import type { FixedJoin, Made } from "../../src/model/article.ts";
import type { Finding } from "../../src/model/finding.ts";
import type { Piece } from "../../src/model/piece.ts";
import { readOrder } from "../../src/order/read.ts";
import { anyOrder, orderText } from "../support/anyOrder.ts";
import { bagOfStraps, place } from "../support/bagOfStraps.ts";
import { onCircle, tautRound } from "../support/hull.ts";
import { randomFrom } from "../support/random.ts";

// A bag's straps on plain pieces: the whole strap measured on its folded parts against a taut string, and
// what fixes them tried by the checks that hold for every article.

const BAG =
  "article: bag of straps\nunits: mm\nmeasures: { width: 260, height: 180, depth: 70, shoulder-drop: 560, hand-drop: 150 }\n";

const orderOf = (more: string) => {
  const read = readOrder(BAG + more, "bag.yaml", [bagOfStraps]);
  expect(read.faults).toEqual([]);
  return read.order!;
};
const madeOf = (more: string): Made => {
  const order = orderOf(more);
  return order.article.make(order.values);
};
const pieceOf = (made: Made, id: string): Piece => made.pieces.find((p) => p.id === id)!;
const findingsOf = (made: Made): readonly Finding[] => [
  ...made.findings,
  ...checkPieces(made, { units: "mm" }),
];
const wrongOf = (made: Made): readonly string[] =>
  findingsOf(made)
    .filter((f) => f.severity !== "note")
    .map((f) => `${f.severity} ${f.rule} ${f.piece}: ${f.message}`);

/** From a place on the flat to the bar's or ring's middle, once the turn-back is folded. */
function toBar(piece: Piece, id: string, x: number): number {
  const t = piece.turnBacks.find((b) => b.id === id)!;
  return folded(t)!.at(Math.abs(x - t.centre)).x;
}

/** A strap bears on the far side of its ring: half the wire beyond its middle. */
const ringRadius = (piece: Piece, id: string): number => {
  const { bar } = piece.turnBacks.find((b) => b.id === id)!;
  return bar.kind === "round" ? bar.diameter / 2 : Number.NaN;
};

const VARIANTS = {
  "ring tabs, riveted": "",
  "ring tabs, stitched": "pieces: { strap-tab: { fixed: stitched } }\n",
  riveted: "bag: { strap-fixed: riveted }\n",
  stitched: "bag: { strap-fixed: stitched }\n",
  "through slots": "bag: { strap-fixed: through slots }\n",
  "handles, riveted": "bag: { carry: handles }\n",
  "handles, stitched": "bag: { carry: handles }\npieces: { handle: { fixed: stitched } }\n",
  "one screw, square ends":
    "bag: { strap-fixed: riveted }\nstraps: { rivets: 1, end-corner: 0 }\nhardware: { fixing: { kind: binding screw } }\n",
} as const;

describe.each(Object.entries(VARIANTS))("%s", (_, more) => {
  test("no error and no caution", () => {
    expect(wrongOf(madeOf(more))).toEqual([]);
  });
});

/** Straps are fixed this far under the top edge, unless an order says otherwise. */
const BELOW_MM = 25;

describe("the shoulder strap", () => {
  test.each([
    "",
    "hardware: { buckle: { hole-offset: 2 } }\n",
    "pieces: { buckle-strap: { length: 300 } }\n",
  ])("its folded parts are as long as a taut string over the shoulder (%j)", (more) => {
    const made = madeOf(
      `${more}straps: { rings-apart: 280, shoulder-radius: 60 }\nleather: { strap: { thickness: 3 mm, neutral: 0.5 } }\n`,
    );
    const [carrier, billet] = [pieceOf(made, "buckle-strap"), pieceOf(made, "billet-strap")];
    const middle = 200;
    const first =
      toBar(carrier, "left", middle) + toBar(carrier, "right", middle) + ringRadius(carrier, "right");
    const holes = billet.holes.filter((h) => h.use === "buckle").map((h) => h.at[0]);
    const inUse = [...holes].sort((a, b) => a - b)[(holes.length - 1) / 2]!;
    const second = toBar(billet, "left", inUse) + ringRadius(billet, "left");
    const offset = more.includes("hole-offset") ? 2 : 0;
    // The tab holds the ring over the bag's top edge, to which the drop was measured.
    const tab = pieceOf(made, "strap-tab");
    const rivets = tab.holes.filter((h) => h.id.startsWith("right.")).map((h) => h.at[0]);
    const over = toBar(tab, "left", Math.min(...rivets)) + ringRadius(tab, "left") + 0.75 * 25.4 - BELOW_MM;
    const string = tautRound(onCircle([0, 0], 61.5, 40_000), 500 - over, 140);
    expect(first + offset + second).toBeCloseTo(string, 3);
  });

  test("riveted it is reckoned from the rivets nearest its body, through slots from the slots", () => {
    const ends = (more: string) => {
      const made = madeOf(`${more}leather: { strap: { thickness: 3 mm } }\nstraps: { rings-apart: 280 }\n`);
      const carrier = pieceOf(made, "buckle-strap");
      const billet = pieceOf(made, "billet-strap");
      const rivets = (p: Piece) => p.holes.filter((h) => h.use === "rivet").map((h) => h.at[0]);
      const holes = billet.holes.filter((h) => h.use === "buckle").map((h) => h.at[0]);
      const inUse = [...holes].sort((a, b) => a - b)[3]!;
      const first = Math.min(...rivets(carrier));
      return {
        length: toBar(carrier, "left", 100) + (first - 100) + (inUse - Math.max(...rivets(billet))),
        made,
      };
    };
    const string = tautRound(onCircle([0, 0], 61.5, 40_000), 500 + BELOW_MM, 140);
    expect(ends("bag: { strap-fixed: riveted }\n").length).toBeCloseTo(string, 3);
    const { length, made } = ends("bag: { strap-fixed: through slots }\n");
    const gusset = pieceOf(made, "gusset");
    // From slot to slot: each lies that far above its first rivet.
    const above = gusset.cutouts.map((c) => {
      const middle = (c.outline.start[0] + c.outline.segments[0]!.to[0]) / 2;
      return Math.min(...gusset.holes.map((h) => Math.abs(h.at[0] - middle)));
    });
    expect(gusset.cutouts).toHaveLength(2);
    expect(length - above[0]! - above[1]!).toBeCloseTo(string, 3);
  });

  test("its fit table has a row for each hole, a pitch apart, the middle one as measured", () => {
    const { fit } = madeOf("pieces: { billet-strap: { holes: 5, hole-pitch: 30 } }\n");
    expect(fit!.rows.map((r) => r.measure - fit!.wanted)).toEqual(
      [60, 30, 0, -30, -60].map((x) => expect.closeTo(x, 6)),
    );
    expect(fit!.longest - fit!.shortest).toBeCloseTo(120, 6);
  });

  test("a tail that would run onto the ring's fixings is cautioned, and the change offered mends it", () => {
    const long = "pieces: { buckle-strap: { length: 190 }, billet-strap: { holes: 9, hole-pitch: 30 } }\n";
    const found = madeOf(long).findings.find((f) => f.rule === "tail-and-fixings")!;
    expect(found.severity).toBe("caution");
    const mended = long.replace("holes: 9", `holes: ${found.change!.value}`);
    expect(madeOf(mended).findings.filter((f) => f.rule === "tail-and-fixings")).toEqual([]);
  });

  test("a bag has rings, no bit", () => {
    const labels = madeOf("").pieces.flatMap((p) => p.folds.map((f) => f.label));
    expect(labels.filter((l) => l.includes("round the ring"))).toHaveLength(3);
    expect(labels.filter((l) => l.includes("bit"))).toEqual([]);
  });

  test("keepers and tabs are made as ordered", () => {
    const ids = (more: string) => madeOf(more).pieces.map((p) => `${p.id} ${p.count}`);
    expect(ids("")).toEqual(expect.arrayContaining(["strap-tab 2", "keeper-fixed 1", "keeper-running 1"]));
    const bare = ids("bag: { strap-fixed: riveted }\nstraps: { keeper: no, running-keeper: no }\n");
    expect(bare.filter((id) => /keeper|tab/.test(id))).toEqual([]);
    expect(ids("bag: { carry: none }\n").filter((id) => /strap|handle|keeper/.test(id))).toEqual([]);
  });
});

describe("handles", () => {
  test("are as long as a taut string over the hand, from rivet to rivet", () => {
    const made = madeOf(
      "bag: { carry: handles }\nleather: { strap: { thickness: 3 mm, neutral: 0.5 } }\npieces: { handle: { apart: 110, fixed-below: 20, grip-radius: 20 } }\n",
    );
    const piece = pieceOf(made, "handle");
    expect(piece.count).toBe(2);
    const xs = piece.holes.map((h) => h.at[0]).sort((a, b) => a - b);
    expect(xs).toHaveLength(4);
    expect(xs[2]! - xs[1]!).toBeCloseTo(tautRound(onCircle([0, 0], 21.5, 40_000), 150, 55), 3);
    // The same distance apart on both panels, at the depth asked.
    for (const on of ["front", "back"]) {
      const upper = pieceOf(made, on).holes.filter((h) => h.id.endsWith(".2"));
      expect(Math.abs(upper[0]!.at[0] - upper[1]!.at[0])).toBeCloseTo(110, 9);
      expect(upper.map((h) => h.at[1])).toEqual([680, 680]);
    }
  });
});

describe("what fixes them", () => {
  test("rivet holes of a strap lie on those of the gusset; one moved by 0.5 mm is found", () => {
    const made = madeOf("bag: { strap-fixed: riveted }\n");
    const joins = made.joins.filter((j): j is FixedJoin => j.kind === "fixed");
    expect(joins.map((j) => j.name).sort()).toEqual(["billet strap to gusset", "buckle strap to gusset"]);
    expect(joins[0]!.stack).toBeCloseTo((8 / 64) * 25.4 + 2, 6);
    const pieces = made.pieces.map((p) =>
      p.id === "gusset"
        ? {
            ...p,
            holes: p.holes.map((h, i) => (i === 0 ? { ...h, at: [h.at[0] + 0.5, h.at[1]] as const } : h)),
          }
        : p,
    );
    const found = findingsOf({ ...made, pieces }).filter((f) => f.severity === "error");
    expect(found.length).toBeGreaterThan(0);
  });

  test("a box of stitches has the same holes on the strap and on both its places", () => {
    const made = madeOf(VARIANTS["ring tabs, stitched"]);
    const stitches = (id: string) => pieceOf(made, id).holes.filter((h) => h.id.includes(".box."));
    const tab = stitches("strap-tab");
    expect(stitches("gusset")).toHaveLength(2 * tab.length);
    const seams = pieceOf(made, "strap-tab").seams.filter((s) => s.id.startsWith("right.box"));
    expect(tab).toHaveLength(seams.reduce((n, s) => n + s.stitches, 0));
    expect(seams.reduce((n, s) => n + pathLength(s.path), 0)).toBeCloseTo(2 * (25.4 + 25.4 - 6), 6);
    // Corners have a hole of their own.
    const corners = seams.map((s) => s.path.start);
    for (const c of corners)
      expect(tab.some((h) => Math.hypot(h.at[0] - c[0], h.at[1] - c[1]) < 1e-6)).toBe(true);
  });

  test("a strap too thick for its slot is found", () => {
    const made = madeOf(VARIANTS["through slots"]);
    const joins = made.joins.map((j) =>
      j.kind === "strap in slot" ? { ...j, strapThickness: j.strapThickness + 1 } : j,
    );
    expect(made.joins.filter((j) => j.kind === "strap in slot")).toHaveLength(2);
    expect(findingsOf({ ...made, joins }).some((f) => f.rule === "strap-in-slot")).toBe(true);
  });

  test("the leather an anchor asks for holds all that it puts there", () => {
    for (const more of Object.values(VARIANTS)) {
      const order = orderOf(more);
      const placed = place(order.values);
      for (const { anchor } of placed) {
        const { width, up, down } = anchor.needs;
        const { holes = [], cutouts = [] } = anchor.parts([0, 0], Math.PI / 2, "a");
        const box = {
          start: [-width / 2, -down],
          closed: true,
          segments: [
            [width / 2, -down],
            [width / 2, up],
            [-width / 2, up],
            [-width / 2, -down],
          ].map((to) => ({ kind: "line", to }) as never),
        } as const;
        for (const h of holes) expect(distanceToPath(h.at, box)).toBeGreaterThanOrEqual(1.5 * h.size - 1e-6);
        for (const c of cutouts) {
          expect(c.length! + 2 * c.width!).toBeCloseTo(width, 6);
        }
        expect(anchor.below).toBeGreaterThanOrEqual(up - 1e-9);
      }
    }
  });
});

describe("any straps in range", () => {
  test("never throw or contradict, and their errors are few", () => {
    const runs = 80;
    let [faulty, wrong] = [0, 0];
    for (let i = 0; i < runs; i++) {
      const { given } = anyOrder(bagOfStraps, randomFrom(7000 + i));
      const read = readOrder(orderText(bagOfStraps, given), "any.yaml", [bagOfStraps]);
      if (!read.order) {
        faulty++;
        continue;
      }
      const made = read.order.article.make(read.order.values);
      const errors = findingsOf(made).filter((f) => f.severity === "error");
      if (errors.length > 0) wrong++;
      // What a strap by itself may have too: a fold too sharp for its skive, a tongue too broad.
      expect(errors.filter((e) => !["fold-strain", "beside-slot"].includes(e.rule))).toEqual([]);
      for (const q of made.sizes) expect(Number.isFinite(q.value)).toBe(true);
    }
    expect(faulty / runs).toBeLessThan(0.05);
    expect(wrong / runs).toBeLessThan(0.2);
  });
});

test("the straps' sections come in the order that they are resolved", () => {
  expect(strapSections.map((s) => s.path)).toEqual([
    "straps",
    "hardware.buckle",
    "hardware.ring",
    "hardware.fixing",
    "pieces.keeper",
    "pieces.running-keeper",
    "pieces.strap-tab",
    "pieces.buckle-strap",
    "pieces.billet-strap",
    "pieces.handle",
  ]);
});
