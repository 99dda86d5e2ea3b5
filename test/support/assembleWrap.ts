import type { SeamJoin } from "../../src/model/article.ts";
import type { Bend, Fold, Hole, Piece } from "../../src/model/piece.ts";
import { type Bent, type FlatBend, type Vec, walk } from "./assembleBends.ts";
import {
  apart,
  asked,
  type Flat,
  fromLines,
  HOLES_MM,
  holesOf,
  insideDepth,
  liningOf,
  type Off,
  pieceOf,
  pointsOf,
  sizesAsked,
} from "./assembleJob.ts";

// A body bent round its base, with two ends put in. In space: x across as the body is drawn, p from the middle
// of the base towards the back, h up from the base's inner face.

const SIZES_MM = 0.2;

export const bendsOf = (piece: Piece): readonly FlatBend[] =>
  piece.folds.flatMap((f) =>
    f.bend && Math.abs(f.from[1] - f.to[1]) < 1e-9 ? [{ centre: f.from[1], bend: f.bend }] : [],
  );

/** The body's section at y of the drawing, its inner face and the way inward; p and h. */
export function bodyAt(
  f: Flat,
  y: number,
): { readonly inner: Vec; readonly outer: Vec; readonly inward: Vec } {
  const body = pieceOf(f, "body");
  const leather = {
    thickness: body.leather.thickness,
    neutral: asked(f, "leather.body.neutral"),
  };
  // Walked grain side up, it stands on its head.
  const base = leather.neutral * leather.thickness;
  const b: Bent = walk(bendsOf(body), y, leather);
  return {
    inner: [b.flesh[0], -b.flesh[1] - base],
    outer: [b.grain[0], -b.grain[1] - base],
    inward: [-b.out[0], b.out[1]],
  };
}

/** Which way the sides lean in from the end of the base's bends, where the ends taper. */
type Lean = { readonly from: number; readonly sine: number };

function leaned([p, h]: Vec, l: Lean): Vec {
  const up = Math.max(0, h - l.from);
  return [p - Math.sign(p) * up * l.sine, h - up + up * Math.sqrt(1 - l.sine ** 2)];
}

function insideHeight(f: Flat): number {
  const { height, inside } = sizesAsked(f);
  return inside ? height + liningOf(f) : height - asked(f, "leather.body.thickness");
}

/** The body as wide, high and deep as was ordered. */
function bodySizes(f: Flat): readonly Off[] {
  const { width, inside } = sizesAsked(f);
  const body = pieceOf(f, "body");
  const t = asked(f, "leather.gusset.thickness");
  const wall = inside
    ? (f.order.get("bag.made") === "side gussets" ? asked(f, "bag.flange") : 0) + t + liningOf(f)
    : 0;
  const points = pointsOf(body.outline, 1);
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const [front, up] = [bodyAt(f, Math.min(...ys)), insideHeight(f)];
  const fold = body.folds.find((d) => d.id === "base.back-fold")!.from[1];
  const back = bodyAt(f, fold + asked(f, "pieces.body.base-fold") + body.leather.thickness * 3);
  return [
    { what: "width", off: Math.abs(Math.max(...xs) - Math.min(...xs) - width - 2 * wall), most: SIZES_MM },
    { what: "front's top", off: Math.abs(front.inner[1] - up), most: SIZES_MM },
    { what: "depth", off: Math.abs(back.inner[0] - front.inner[0] - insideDepth(f)), most: SIZES_MM },
    {
      what: "thickness of the walls",
      off: Math.abs(back.outer[0] - back.inner[0] - body.leather.thickness),
      most: 1e-9,
    },
  ];
}

/** A place of the body in section, and the way of a stitch there. */
type Lies = { readonly at: Vec; readonly way: Vec };

/** Distance of two holes seen along a stitch that goes the way `through` (p and h). */
function seenThrough(
  a: readonly [number, number, number],
  b: readonly [number, number, number],
  through: Vec,
): number {
  const [dp, dh] = [a[1] - b[1], a[2] - b[2]];
  return Math.hypot(a[0] - b[0], dp * through[1] - dh * through[0]);
}

type FoldAt = { readonly fold: Fold; readonly bend: Bend; readonly out: Vec };

/** A side gusset's three flanges; `out` is the way from the web. */
function flangesOf(piece: Piece): readonly FoldAt[] {
  const middle: Vec = [0, Math.max(...pointsOf(piece.outline, 1).map(([, y]) => y)) / 2];
  return piece.folds.flatMap((fold) => {
    if (!fold.bend) return [];
    const size = apart(fold.from, fold.to);
    const side: Vec = [(fold.to[1] - fold.from[1]) / size, (fold.from[0] - fold.to[0]) / size];
    const d = (middle[0] - fold.from[0]) * side[0] + (middle[1] - fold.from[1]) * side[1];
    return [{ fold, bend: fold.bend, out: d < 0 ? side : ([-side[0], -side[1]] as const) }];
  });
}

const past = ({ fold, out }: FoldAt, [x, y]: Vec): number =>
  (x - fold.from[0]) * out[0] + (y - fold.from[1]) * out[1];

const WEB_MM = 1000;

/** A place on a flange, folded: where its flesh face lies in the web's plane, and how far it stands out of it. */
function foldedOn(g: FoldAt, at: Vec): { readonly on: Vec; readonly lift: number } {
  const d = past(g, at);
  const { flesh } = walk([{ centre: WEB_MM, bend: g.bend }], WEB_MM + d, g.bend);
  const moved = flesh[0] - WEB_MM - d;
  return { on: [at[0] + moved * g.out[0], at[1] + moved * g.out[1]], lift: flesh[1] };
}

/** How far a flange's finished edge stands out of the web's plane. */
function edgeLift(piece: Piece, g: FoldAt, trim: number): number {
  const size = apart(g.fold.from, g.fold.to);
  const beside = pointsOf(piece.outline, 1).filter(([x, y]) => {
    const t =
      ((x - g.fold.from[0]) * (g.fold.to[0] - g.fold.from[0]) +
        (y - g.fold.from[1]) * (g.fold.to[1] - g.fold.from[1])) /
      size;
    return t > -0.01 && t < size + 0.01;
  });
  const most = beside.reduce((a, b) => (past(g, b) > past(g, a) ? b : a), g.fold.from as Vec);
  return foldedOn(g, [most[0] - trim * g.out[0], most[1] - trim * g.out[1]]).lift;
}

/** Places of an end's holes in space, of the right end or of the left. */
type Placed = (hole: Hole, end: 1 | -1, over: 1 | -1) => readonly [number, number, number];

/**
 * The holes of an end that a run of the body's meets. Both ends are cut alike: on the left the drawing's front is
 * at the back, and its numbers run the other way; but a left end of a pair is cut with the template turned over.
 */
function endHoles(
  f: Flat,
  joins: readonly SeamJoin[],
  k: number,
  end: 1 | -1,
): { readonly holes: readonly Hole[]; readonly over: 1 | -1 } {
  const piece = pieceOf(f, joins[0]!.sides[2]!.piece);
  const side = (i: number) => holesOf(f, joins.at(i)!.sides[2]!);
  if (end > 0 || piece.hand === "pair") return { holes: side(k), over: end };
  return { holes: [...side(-1 - k)].reverse(), over: 1 };
}

function sideGussetPlaced(f: Flat, half: number): Placed {
  const piece = pieceOf(f, "side-gusset");
  const trim = asked(f, "pieces.gusset.trim");
  const flanges = flangesOf(piece);
  const foot = flanges.find((g) => g.out[1] < -0.9)!;
  // The foot's flange lies on the base.
  const floor = foldedOn(foot, [0, foot.fold.from[1] - 5]).on[1];
  return (hole, end, over) => {
    const g = flanges.find((o) => past(o, hole.at) > 0)!;
    const { on, lift } = foldedOn(g, hole.at);
    return [end * (half - (edgeLift(piece, g, trim) - lift)), -end * over * on[0], on[1] - floor];
  };
}

/** How the web of a side gusset stands: as far in as was ordered, as deep as the bag. */
function sideGussetSizes(f: Flat): readonly Off[] {
  const piece = pieceOf(f, "side-gusset");
  const [trim, flange] = [asked(f, "pieces.gusset.trim"), asked(f, "bag.flange")];
  const flanges = flangesOf(piece);
  const sides = flanges.filter((g) => g.out[1] > -0.9);
  const foot = flanges.find((g) => g.out[1] < -0.9)!;
  const floor = foldedOn(foot, [0, foot.fold.from[1] - 5]).on[1];
  const start = asked(f, "pieces.body.base-fold");
  const reach = sides.map((g) => {
    // Where the flange's face crosses the height at which the body's bend ends, and the top.
    const { on } = foldedOn(g, [g.fold.from[0] + 5 * g.out[0], g.fold.from[1] + 5 * g.out[1]]);
    const at = (y: number): number => on[0] + ((on[1] - y) * g.out[1]) / g.out[0];
    return {
      low: Math.abs(at(floor + start)),
      top: Math.abs(
        at(
          Math.max(
            ...pointsOf(piece.outline, 1)
              .filter(([x]) => Math.abs(x) > 3)
              .map(([, y]) => y),
          ),
        ),
      ),
    };
  });
  const sum = (k: "low" | "top"): number => reach.reduce((s, r) => s + r[k], 0);
  return [
    {
      what: "depth between the side gusset's flanges",
      off: Math.abs(sum("low") - insideDepth(f)),
      most: HOLES_MM,
    },
    {
      what: "depth at the side gusset's top",
      off: Math.abs(sum("top") - asked(f, "pieces.gusset.top-width")),
      most: HOLES_MM,
    },
    ...flanges.map((g) => ({
      what: "side gusset's flange from its web",
      off: Math.abs(edgeLift(piece, g, trim) - (1 - g.bend.neutral) * piece.leather.thickness - flange),
      most: HOLES_MM,
    })),
  ];
}

/** Body's holes and the ends', run by run. A left end is the same piece: its numbers run the other way. */
function runsOff(
  f: Flat,
  joins: readonly SeamJoin[],
  lies: (y: number) => Lies,
  placed: Placed,
): readonly Off[] {
  return joins.flatMap((join, k) =>
    join.sides.slice(0, 2).map((side): Off => {
      const body = holesOf(f, side);
      const end = body[0]!.at[0] > 0 ? 1 : -1;
      const { holes, over } = endHoles(f, joins, k, end);
      const what = `${join.name}, ${end > 0 ? "right" : "left"}`;
      if (body.length !== holes.length) return { what, off: Number.POSITIVE_INFINITY, most: HOLES_MM };
      const offs = body.map((hole, i) => {
        const { at, way } = lies(hole.at[1]);
        return seenThrough([hole.at[0], at[0], at[1]], placed(holes[i]!, end, over), way);
      });
      return { what, off: Math.max(...offs), most: HOLES_MM };
    }),
  );
}

function sideGussets(f: Flat, joins: readonly SeamJoin[]): readonly Off[] {
  const half = Math.max(...pointsOf(pieceOf(f, "body").outline, 1).map(([x]) => x));
  const start = asked(f, "pieces.body.base-fold");
  const rise = (insideDepth(f) - asked(f, "pieces.gusset.top-width")) / 2;
  const lean: Lean = { from: start, sine: rise / (insideHeight(f) - start) };
  return runsOff(
    f,
    joins,
    (y) => {
      const { inner, inward } = bodyAt(f, y);
      const [p, h] = leaned(inner, lean);
      const turn = inner[1] > lean.from ? Math.asin(lean.sine) * -Math.sign(inner[0]) : 0;
      const [c, s] = [Math.cos(turn), Math.sin(turn)];
      return { at: [p, h], way: [inward[0] * c - inward[1] * s, inward[0] * s + inward[1] * c] };
    },
    sideGussetPlaced(f, half),
  );
}

/** A stitch through a firm end's edge goes straight in from the body: the holes are the inset apart, inward. */
function endPanels(f: Flat, joins: readonly SeamJoin[]): readonly Off[] {
  const piece = pieceOf(f, "end-panel");
  const rim = pointsOf(piece.outline, 64).map(([x, y]): Vec => [-x, y]);
  const body = pieceOf(f, "body");
  const half = Math.max(...pointsOf(body.outline, 1).map(([x]) => x));
  const reach = Math.max(...joins.flatMap((j) => holesOf(f, j.sides[0]!)).map((h) => Math.abs(h.at[1])));
  const inset = piece.seams[0]!.inset;
  const gap = Array.from({ length: 201 }, (_, i) =>
    fromLines(bodyAt(f, ((i - 100) / 100) * reach).inner, rim),
  );
  const holes = joins.flatMap((join, k) =>
    join.sides.slice(0, 2).map((side): Off => {
      const own = holesOf(f, side);
      const end = own[0]!.at[0] > 0 ? 1 : -1;
      const { holes: mates, over } = endHoles(f, joins, k, end);
      const what = `${join.name}, ${end > 0 ? "right" : "left"}`;
      if (own.length !== mates.length) return { what, off: Number.POSITIVE_INFINITY, most: HOLES_MM };
      const offs = own.map((hole, i) => {
        const { inner, inward } = bodyAt(f, hole.at[1]);
        const [x, y] = mates[i]!.at;
        const to: Vec = [inner[0] + inset * inward[0], inner[1] + inset * inward[1]];
        return Math.max(apart(to, [-end * over * x, y]), Math.abs(half - Math.abs(hole.at[0]) - inset));
      });
      return { what, off: Math.max(...offs), most: HOLES_MM };
    }),
  );
  return [
    { what: "end panel's rim on the body's inner face", off: Math.max(...gap), most: HOLES_MM },
    ...holes,
  ];
}

/** Everything of a bag whose body wraps round. */
export const wrappedBag = (f: Flat, joins: readonly SeamJoin[]): readonly Off[] => [
  ...bodySizes(f),
  ...(f.order.get("bag.made") === "side gussets"
    ? [...sideGussetSizes(f), ...sideGussets(f, joins)]
    : endPanels(f, joins)),
];
