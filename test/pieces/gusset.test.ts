import { describe, expect, test } from "vitest";
import worked from "../../fixtures/published/worked-cases.json";
import { checkPieces } from "../../src/checks/index.ts";
import { boundsOf } from "../../src/geometry/bounds.ts";
import { distanceToPath, nearestOnPath } from "../../src/geometry/distance.ts";
import { pathLength, pointAt, subPath } from "../../src/geometry/length.ts";
import { cubic, endPoint, openPath, type Path, type Point } from "../../src/geometry/path.ts";
import type { Piece, SeamEdge } from "../../src/model/piece.ts";
import type { Quantity } from "../../src/model/quantity.ts";
import * as endPanel from "../../src/pieces/endPanel.ts";
import * as gusset from "../../src/pieces/gusset.ts";
import * as sideGusset from "../../src/pieces/sideGusset.ts";
import {
  edge,
  type GussetValues,
  gussetValues,
  HANDED,
  type Made,
  resolveGusset,
  stitched,
  uPath,
} from "../support/gussets.ts";
import { given } from "../support/quantities.ts";
import { randomFrom } from "../support/random.ts";
import { faultsOfHistory } from "../support/sensitivity.ts";
import { bareJob } from "../support/soundPiece.ts";

const order = { leather: "gusset", count: 1 };
const { cases } = worked;

/** Width of a piece across x, where it is cut at this x. */
function widthAt({ outline }: Piece, x: number): number {
  const ys: number[] = [];
  let from = outline.start;
  for (const { to } of outline.segments) {
    const t = (x - from[0]) / (to[0] - from[0]);
    if (t >= 0 && t <= 1) ys.push(from[1] + t * (to[1] - from[1]));
    from = to;
  }
  return Math.max(...ys) - Math.min(...ys);
}

const errorsOf = (pieces: readonly Piece[]) =>
  checkPieces(bareJob(pieces), { units: "mm" })
    .filter((f) => f.severity !== "note")
    .map((f) => `${f.rule} ${f.piece} ${f.place}: ${f.message}`);

/** A body's seam: sides 136 + 36 round, base 200; closed form 2h + w − (4 − π) r. */
const SIDE = 166;
const body = edge("front", uPath(SIDE, 200, 36));
const back = edge("back", uPath(SIDE, 200, 36));
const bodyLength = 2 * SIDE + 200 - (4 - Math.PI) * 36;

describe("a flanged strip", () => {
  const d = gussetValues("flanged gusset", {}, { "flange-fold": "0.5 mm" });
  const { piece, edges } = gusset.shape(d, order, { front: body, back });

  test("is cut as wide as the worked case", () => {
    const { minY, maxY } = boundsOf(piece.outline);
    expect(maxY - minY).toBeCloseTo(cases.flangedGusset.cutWidth, 4);
    expect(minY).toBeCloseTo(-maxY, 9);
    expect(piece.sizes[1]!.value).toBeCloseTo(cases.flangedGusset.cutWidth, 4);
  });

  test("its seams are as long as the body's, and reach the top edges beyond", () => {
    for (const e of [edges.front, edges.back]) expect(pathLength(e.path)).toBeCloseTo(bodyLength, 9);
    const { minX, maxX } = boundsOf(piece.outline);
    expect(minX).toBeCloseTo(0, 9);
    expect(maxX).toBeCloseTo(bodyLength + 2 * HANDED.seamStart, 9);
    expect(piece.sizes[0]!.value).toBeCloseTo(maxX, 9);
  });

  test("the front's edge lies at +y, the back's at −y, both run in +x, the inset from the edge", () => {
    for (const [e, side] of [
      [edges.front, 1],
      [edges.back, -1],
    ] as const) {
      expect(Math.sign(e.path.start[1])).toBe(side);
      expect(endPoint(e.path)[0]).toBeGreaterThan(e.path.start[0]);
      for (let s = 0; s <= bodyLength; s += 7)
        expect(distanceToPath(pointAt(e.path, s), piece.outline)).toBeCloseTo(4, 9);
    }
  });

  test("each flange has its fold, a quarter turn with the grain inside", () => {
    expect(piece.folds.map((f) => f.id)).toEqual(["front.flange", "back.flange"]);
    for (const f of piece.folds) {
      // (f − ρ) + (π/4)(ρ + k t) = 9.5 + (π/4) × 1.5.
      expect(distanceToPath(f.from, piece.outline)).toBeCloseTo(0, 9);
      expect(widthAt(piece, 100) / 2 - Math.abs(f.from[1])).toBeCloseTo(9.5 + (Math.PI / 4) * 1.5, 9);
      expect(f.bend).toEqual({ inner: 0.5, angle: Math.PI / 2, thickness: 2, neutral: 0.5, inside: "grain" });
    }
  });

  test("notches lie at the middle and the quarters of the body's seam", () => {
    const front = piece.marks.filter((m) => m.kind === "notch" && m.id.startsWith("front"));
    expect(front.map((m) => nearestOnPath(m.path.start, edges.front.path).at / bodyLength)).toEqual(
      [0.25, 0.5, 0.75].map((s) => expect.closeTo(s, 9)),
    );
    for (const m of piece.marks) expect(distanceToPath(m.path.start, piece.outline)).toBeCloseTo(0, 9);
  });

  test("stitched, nothing is found wrong with it", () =>
    expect(errorsOf([stitched(piece, [edges.front, edges.back])])).toEqual([]));

  test("what an article adds comes on it", () => {
    const hole = { id: "rivet", kind: "round", at: [20, 0], size: 4, angle: 0, use: "rivet" } as const;
    expect(gusset.shape(d, order, { front: body, back }, { holes: [hole] }).piece.holes).toEqual([hole]);
  });

  test("cut to be trimmed, it is wider, and the stitches stay the inset from the finished edge", () => {
    const wide = gusset.shape(gussetValues("flanged gusset", {}, { trim: "2 mm" }), order, {
      front: body,
      back,
    });
    const plain = gusset.shape(gussetValues("flanged gusset"), order, { front: body, back });
    expect(widthAt(wide.piece, 200)).toBeCloseTo(widthAt(plain.piece, 200) + 4, 9);
    expect(wide.edges.front.path.start[1]).toBeCloseTo(plain.edges.front.path.start[1], 9);
    expect(wide.edges.front.inset).toBe(4);
    const trims = wide.piece.zones.filter((z) => z.kind === "trim");
    expect(trims.map((z) => z.id)).toEqual(["front.trim", "back.trim"]);
    for (const z of trims) expect(boundsOf(z.outline).maxY - boundsOf(z.outline).minY).toBeCloseTo(2, 9);
    expect(errorsOf([stitched(wide.piece, [wide.edges.front, wide.edges.back])])).toEqual([]);
  });
});

describe("a strip that tapers", () => {
  const run = SIDE - 36;
  const d = gussetValues("flanged gusset", { sideRun: run }, { "top-width": "36 mm" });
  const { piece, edges } = gusset.shape(d, order, { front: body, back });

  test("keeps its seams' lengths; the sides slope, base and corners don't", () => {
    expect(pathLength(edges.front.path)).toBeCloseTo(bodyLength, 9);
    const level = (s: number): number => pointAt(edges.front.path, s)[1];
    const middle = level(bodyLength / 2);
    expect(level(run)).toBeCloseTo(middle, 9);
    expect(level(bodyLength - run)).toBeCloseTo(middle, 9);
    expect(level(run / 2)).toBeLessThan(middle - 1);
  });

  /** How much lower the seam line lies at the top edges, as drawn. */
  const rise = (() => {
    const level = (s: number): number => pointAt(edges.front.path, s)[1];
    return ((level(bodyLength / 2) - level(0)) * (run + 8)) / run;
  })();

  test("folded across its leaning folds, it is as wide at the top as was asked", () => {
    const middle = pointAt(edges.front.path, bodyLength / 2)[1];
    const past = middle - 30;
    expect(middle - rise - past / Math.cos(Math.asin(rise / (run + 8)))).toBeCloseTo(18, 9);
  });

  test("is as long as its sizes say, by Pythagoras", () => {
    const length = bodyLength + 16 - 2 * (run + 8 - Math.sqrt((run + 8) ** 2 - rise ** 2));
    expect(boundsOf(piece.outline).maxX - boundsOf(piece.outline).minX).toBeCloseTo(length, 9);
    expect(piece.sizes[0]!.value).toBeCloseTo(length, 9);
    const { minX } = boundsOf(piece.outline);
    const ends = piece.corners.filter((c) => Math.abs(c.at[0] - minX) < 1e-6).map((c) => c.at[1]);
    expect(piece.sizes[2]!.value).toBeCloseTo(Math.max(...ends) - Math.min(...ends), 9);
  });

  test("folds follow the edges; nothing is found wrong with it", () => {
    expect(piece.folds).toHaveLength(6);
    for (const f of piece.folds) expect(distanceToPath(f.to, edges.front.path)).toBeGreaterThan(0);
    expect(errorsOf([stitched(piece, [edges.front, edges.back])])).toEqual([]);
  });
});

describe("any outline", () => {
  /** A heart's lower half: no straight side at all. */
  const curved: Path = openPath(
    [-80, 120],
    [cubic([-120, 20], [-30, -10], [0, 0]), cubic([30, 10], [120, 20], [80, 120])],
  );

  test("a body without straight sides has no side to taper over, and its strip fits it", () => {
    expect(gusset.sideRun(edge("front", curved), edge("back", curved))).toBe(0);
    const d = gussetValues("flanged gusset", { sideRun: 0, seamStart: 0 });
    const { edges } = gusset.shape(d, order, { front: edge("front", curved), back: edge("back", curved) });
    // Length by chords, a hundred thousand of them.
    let chords = 0;
    for (let i = 0, from = curved.start; i < 100_000; i++) {
      const to = pointAt(curved, (pathLength(curved) * (i + 1)) / 100_000);
      chords += Math.hypot(to[0] - from[0], to[1] - from[1]);
      from = to;
    }
    expect(pathLength(edges.front.path)).toBeCloseTo(chords, 4);
  });

  test("straight sides end at a corner or where a curve begins, whichever seam's are shorter", () => {
    expect(gusset.sideRun(body, back)).toBeCloseTo(SIDE - 36, 9);
    expect(gusset.sideRun(body, edge("back", uPath(120, 200, 0)))).toBeCloseTo(120, 9);
  });

  test("front and back of different lengths each get their own, about one middle", () => {
    const shorter = edge("back", uPath(150, 190, 30));
    const { piece, edges } = gusset.shape(gussetValues("flanged gusset"), order, {
      front: body,
      back: shorter,
    });
    expect(pathLength(edges.front.path)).toBeCloseTo(bodyLength, 9);
    expect(pathLength(edges.back.path)).toBeCloseTo(pathLength(shorter.path), 9);
    const middle = (p: Path): number => (p.start[0] + endPoint(p)[0]) / 2;
    expect(middle(edges.front.path)).toBeCloseTo(middle(edges.back.path), 9);
    expect(errorsOf([stitched(piece, [edges.front, edges.back])])).toEqual([]);
  });
});

describe("a turned strip", () => {
  const turned = { allowance: 8, inset: 8, flange: 0, thickness: 1.2, thickest: 1.2, bodyThickness: 1.5 };
  const d = gussetValues("turned gusset", turned);
  const { piece, edges } = gusset.shape(d, order, { front: body, back });

  // The bodies' grain sides lie outside the strip's rolled edges: both bends turn through 135° and their
  // middles lie both thicknesses apart across the diagonal.
  test("is its finished outside width less what the bodies stand out, and twice the worked edge", () => {
    const apart = (1.2 + 1.5) * Math.SQRT1_2;
    const beyond = apart + 1.5 - 1.2;
    expect(widthAt(piece, 100)).toBeCloseTo(
      60 + 2 * 1.5 - 2 * beyond + 2 * cases.turnedEdge.finishedInside,
      4,
    );
  });

  test("is stitched at the allowance, and has clips where the body curves and nowhere else", () => {
    expect(distanceToPath(pointAt(edges.front.path, 100), piece.outline)).toBeCloseTo(8, 9);
    const clips = piece.marks.filter((m) => m.kind === "clip");
    // Two corners on each edge, 36 × π/2 = 56.5 mm each in parts of 8 mm at most.
    expect(clips).toHaveLength(2 * 2 * 7);
    for (const c of clips) {
      const at = nearestOnPath(endPoint(c.path), edges[c.id.startsWith("front") ? "front" : "back"].path).at;
      const fromCorner = Math.min(at - 130, bodyLength - 130 - at);
      expect(fromCorner).toBeGreaterThan(0);
      expect(fromCorner).toBeLessThan(56.6);
    }
    expect(piece.folds).toEqual([]);
    expect(piece.zones).toEqual([]);
    expect(errorsOf([stitched(piece, [edges.front, edges.back])])).toEqual([]);
  });

  test("gathers nothing of its own accord; a flanged one does along each body", () => {
    const bodies = [
      { body: "front", seams: ["gusset"] },
      { body: "back", seams: ["gusset"] },
    ];
    expect(gusset.gathers(d, bodies)).toEqual([]);
    const gathers = gusset.gathers(gussetValues("flanged gusset"), bodies);
    expect(gathers.map((g) => [g.body, g.inset, g.fold, g.thickness])).toEqual([
      ["front", 4, 10, 2],
      ["back", 4, 10, 2],
    ]);
  });
});

const runsOf = ({ path, breaks }: SeamEdge): readonly number[] => {
  const ends = [0, ...breaks.map((b) => b.at), pathLength(path)];
  return ends.slice(1).map((s, i) => s - ends[i]!);
};
const NAMES = ["front bend start", "front bend end", "back bend start", "back bend end"];
const FIRST = "front bend start to front bend end";
const SECOND = "back bend start to back bend end";

describe("a side gusset", () => {
  const d = gussetValues("side gussets");
  const { piece, edge: seam } = sideGusset.shape(d, order);

  test("has three straight runs as long as the wrap-round body's straight parts", () => {
    expect(seam.breaks.map((b) => b.name)).toEqual(NAMES);
    const runs = runsOf(seam);
    const side = HANDED.height - HANDED.baseFold - HANDED.seamStart;
    expect([runs[0], runs[2], runs[4]]).toEqual(
      [side, HANDED.depth - 2 * HANDED.baseFold, side].map((l) => expect.closeTo(l, 9)),
    );
  });

  test("leads on over the notched corners without one of its own", () => {
    const corners = seam.breaks.map((b) => b.at);
    for (const s of corners) {
      const [a, b, c] = [-0.01, 0, 0.01].map((o) => pointAt(seam.path, s + o)) as [Point, Point, Point];
      const turn = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]);
      expect(Math.abs(turn) / 1e-4).toBeLessThan(0.02);
    }
  });

  test("folded up, its side runs begin the bend's radius over the base and end at the top edge", () => {
    // Heights on the flat count from the web: it begins t + ρ over the base, past the foot flange and its bend.
    const { thickness: t, flange } = HANDED;
    const fold = d.flangeFold.value;
    const web = flange - fold + (Math.PI / 2) * (fold + t / 2);
    const over = (y: number): number => y - web + t + fold;
    expect(over(pointAt(seam.path, seam.breaks[0]!.at)[1])).toBeCloseTo(HANDED.baseFold, 9);
    expect(over(seam.path.start[1])).toBeCloseTo(HANDED.height - HANDED.seamStart, 9);
    const sides = piece.corners.find((c) => c.name === "front top")!.at[1];
    expect(over(sides)).toBeCloseTo(HANDED.height, 9);
    expect(piece.sizes[2]!.value).toBeCloseTo(sides, 9);
    expect(seam.path.start[0]).toBeGreaterThan(0);
  });

  test("is as wide as a flanged strip, and its middle is cut higher by the fold's drop", () => {
    const wide = gussetValues("side gussets", { height: 200, thickness: 2 });
    const made = sideGusset.shape(wide, order).piece;
    // The worked case: web 60, edges 2 × 2 + 2 = 6 apart, 200 high.
    const top = boundsOf(made.outline).maxY;
    const sides = made.corners.find((c) => c.name === "front top")!.at;
    expect(top - sides[1]).toBeCloseTo(cases.sideGusset.drop, 4);
    expect(made.sizes[3]!.value).toBeCloseTo(top, 9);
    expect(made.sizes[4]!.value).toBeCloseTo(cases.sideGusset.foldDepth, 4);
    const middle = made.folds.find((f) => f.id === "inward")!;
    expect(middle.from[1]).toBeCloseTo(top, 4);
    expect(distanceToPath(middle.from, made.outline)).toBeLessThan(1e-6);
    expect(2 * sides[0]).toBeCloseTo(made.sizes[0]!.value, 9);
  });

  test("the end stitches of every run keep the inset from the notches", () => {
    const sewn = stitched(piece, [seam], [FIRST, SECOND]);
    expect(sewn.seams).toHaveLength(3);
    expect(errorsOf([sewn])).toEqual([]);
    for (const h of sewn.holes) expect(distanceToPath(h.at, sewn.outline)).toBeGreaterThanOrEqual(4 - 1e-6);
  });

  test("a bend that is tight for its inset leaves them less, never under 1.5 mm", () => {
    const tight = gussetValues("side gussets", { baseFold: 4.8 });
    const made = sideGusset.shape(tight, order);
    const sewn = stitched(made.piece, [made.edge], [FIRST, SECOND]);
    const least = Math.min(...sewn.holes.map((h) => distanceToPath(h.at, sewn.outline)));
    expect(least).toBeGreaterThanOrEqual(1.5 - 1e-9);
    expect(least).toBeLessThan(4);
  });

  test("narrower at the top, its runs keep their lengths", () => {
    const narrow = gussetValues("side gussets", {}, { "top-width": "40 mm", trim: "1.5 mm" });
    const made = sideGusset.shape(narrow, order);
    expect(runsOf(made.edge)[0]).toBeCloseTo(164, 9);
    expect(errorsOf([stitched(made.piece, [made.edge], [FIRST, SECOND])])).toEqual([]);
    const top = made.piece.corners.find((c) => c.name === "front top")!.at[0];
    expect(2 * top).toBeLessThan(made.piece.sizes[0]!.value - 15);
    expect(made.piece.zones.filter((z) => z.kind === "trim")).toHaveLength(3);
  });

  test("folds in only where it has room", () => {
    expect(gussetValues("side gussets").inwardFold).toBe(true);
    expect(gussetValues("side gussets", { insideWidth: 50 }).inwardFold).toBe(false);
    expect(gussetValues("side gussets", { height: 40 }).inwardFold).toBe(false);
    expect(gussetValues("flanged gusset").inwardFold).toBe(false);
    const stiff = gussetValues("side gussets", {}, { "inward-fold": "no" });
    expect(sideGusset.shape(stiff, order).piece.folds).toHaveLength(3);
    expect(sideGusset.inwardFolds(stiff)).toEqual([]);
    expect(sideGusset.inwardFolds(d)).toHaveLength(1);
  });
});

describe("an end panel", () => {
  const c = cases.wrapRound;
  const d = gussetValues("end panels", {
    height: c.height,
    depth: c.base,
    baseFold: c.foldRadius,
    inset: c.seamInset,
    bodyThickness: c.thickness,
    thickness: 3,
    thickest: 3,
    seamStart: 0,
  });
  const { piece, edge: seam, bends } = endPanel.shape(d, order);

  test("its seam is shorter than the worked body's by the worked difference", () =>
    // Both were printed to 4 places.
    expect(c.flat - pathLength(seam.path)).toBeCloseTo(c.seamDifference, 3));

  test("the bends account for it", () => {
    expect(Object.keys(bends)).toEqual([FIRST, SECOND]);
    const taken = Object.values(bends).reduce((sum, b) => sum + b.angle * (b.radii[0] - b.radii[1]), 0);
    expect(taken).toBeCloseTo(c.seamDifference, 4);
  });

  test("runs as the body's: straight, bend, foot, bend, straight, at the inset", () => {
    expect(seam.breaks.map((b) => b.name)).toEqual(NAMES);
    const round = (Math.PI / 2) * (c.foldRadius - c.seamInset);
    expect(runsOf(seam)).toEqual([172, round, 44, round, 172].map((l) => expect.closeTo(l, 9)));
    const low = subPath(seam.path, 10, pathLength(seam.path) - 10);
    for (let s = 0; s <= pathLength(low); s += 3)
      expect(distanceToPath(pointAt(low, s), piece.outline)).toBeCloseTo(3, 9);
  });

  test("stitched, nothing is found wrong with it", () => {
    const sewn = gussetValues("end panels", { inset: 3, baseFold: 8 });
    const made = endPanel.shape(sewn, order);
    expect(errorsOf([stitched(made.piece, [made.edge])])).toEqual([]);
  });

  test("has one width, whatever the order says", () => {
    expect(resolveGusset("end panels", {}, { "top-width": "50 mm" }).faults).toHaveLength(1);
    expect(resolveGusset("end panels", {}, { "top-width": "60 mm" }).faults).toEqual([]);
  });
});

const RANDOM_RUNS = 60;
/** Stitches are laid on every so manieth of them. */
const STITCHED = 4;
const MADES: readonly Made[] = ["flanged gusset", "turned gusset", "side gussets", "end panels"];

/** Random values of everything handed and of everything of its own, as an article would hand them. */
function anyGusset(made: Made, random: () => number): { readonly d: GussetValues; readonly path: Path } {
  const between = (low: number, high: number): number => low + random() * (high - low);
  const thickness = between(1, 4);
  const inset = made === "turned gusset" ? between(5, 15) : between(2, 6);
  const depth = between(Math.max(20, 2 * thickness + 6), 300);
  const height = between(60, 500);
  const least = made === "side gussets" ? 1.5 * thickness + 1.5 : inset + 1;
  const [side, radius] = [between(40, 480), between(7, 60)];
  const path = uPath(side + radius, between(140, 600), radius);
  const handed = {
    thickness,
    thickest: thickness,
    neutral: between(0.3, 0.7),
    bodyThickness: between(1, 5),
    bodyNeutral: between(0.3, 0.7),
    depth,
    height,
    insideWidth: between(60, 600),
    baseFold: between(least, Math.max(least, Math.min(depth / 2 - 2, height / 4))),
    inset,
    allowance: inset,
    flange: between(inset + 4, 20),
    seamStart: between(3, 12),
    sideRun: side,
  };
  const free = resolveGusset(made, handed);
  expect(free.faults, JSON.stringify({ made, handed })).toEqual([]);
  const texts: Record<string, string> = {};
  // One after the other: a bound may hang on the value before it.
  for (const key of ["flange-fold", "top-width", "trim", "glue-width", "clip-spacing"]) {
    if (random() < 0.4) continue;
    const range = resolveGusset(made, handed, texts).resolved.find((r) => r.key === `pieces.gusset.${key}`)!;
    texts[key] = `${between(range.least!, range.most!).toFixed(7)} mm`;
  }
  if (random() < 0.5) texts["inward-fold"] = random() < 0.5 ? "yes" : "no";
  return { d: gussetValues(made, handed, texts), path };
}

test.each(MADES)("any in-range values give a sound %s whose seams keep their lengths", (made) => {
  const random = randomFrom(20261125);
  for (let i = 0; i < RANDOM_RUNS; i++) {
    const { d, path } = anyGusset(made, random);
    const strip = (): { piece: Piece; lengths: readonly (readonly [number, number])[] } => {
      const { piece, edges } = gusset.shape(d, order, {
        front: edge("front", path),
        back: edge("back", path),
      });
      return {
        piece,
        lengths: [edges.front, edges.back].map((e) => [pathLength(e.path), pathLength(path)] as const),
      };
    };
    const ended = (): ReturnType<typeof strip> => {
      const { piece, edge: seam } =
        made === "end panels" ? endPanel.shape(d, order) : sideGusset.shape(d, order);
      const side = d.height.value - d.baseFold.value - d.seamStart.value;
      const foot = d.depth.value - 2 * d.baseFold.value;
      const runs = runsOf(seam);
      const bare = made === "end panels" ? [] : [FIRST, SECOND];
      const sewn = i % STITCHED === 0 ? stitched(piece, [seam], bare) : piece;
      return { piece: sewn, lengths: [side, foot, side].map((l, k) => [runs[2 * k]!, l] as const) };
    };
    const { piece, lengths } = made === "end panels" || made === "side gussets" ? ended() : strip();
    for (const [is, asked] of lengths) expect(is).toBeCloseTo(asked, 6);
    const wrong = checkPieces(bareJob([piece]), { units: "mm" }).filter((f) => f.severity === "error");
    expect(wrong, JSON.stringify(Object.entries(d).map(([k, v]) => [k, (v as Quantity).value ?? v]))).toEqual(
      [],
    );
    for (const q of piece.sizes) expect(Number.isFinite(q.value) && q.value >= 0, q.name).toBe(true);
  }
});

describe("sizes name what they move with", () => {
  const numbers: Readonly<Record<string, number>> = {
    ...HANDED,
    flangeFold: 0.9,
    topWidth: 48,
    trim: 1,
    seam: 500,
  };
  const values = (made: Made, v: Readonly<Record<string, number>>): GussetValues =>
    ({
      ...gussetValues(made, made === "turned gusset" ? { allowance: 8, inset: 8 } : {}),
      ...Object.fromEntries(
        Object.entries(v)
          .filter(([k]) => k !== "seam")
          .map(([k, x]) => [k, given(k, x, k.endsWith("eutral") ? "ratio" : "length")]),
      ),
    }) as GussetValues;
  const sizes = (made: Made, v: Readonly<Record<string, number>>): readonly Quantity[] => {
    const d = values(made, v);
    if (made === "end panels") return endPanel.shape(d, order).piece.sizes;
    if (made === "side gussets") return sideGusset.shape(d, order).piece.sizes;
    return gusset.shape(d, order, { front: body, back, length: given("seam", v.seam!) }).piece.sizes;
  };
  const all = MADES.flatMap((made) =>
    sizes(made, numbers).map((q, i) => [`${made}: ${q.name}`, made, i] as const),
  );
  test.each(all)("%s", (_, made, i) => {
    expect(faultsOfHistory((v) => sizes(made, v)[i]!, numbers)).toEqual([]);
  });
});
