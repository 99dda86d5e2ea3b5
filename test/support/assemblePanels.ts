import type { SeamJoin } from "../../src/model/article.ts";
import type { Bend, Fold, Piece } from "../../src/model/piece.ts";
import { type FlatBend, type Vec, walk } from "./assembleBends.ts";
import { edgeOf, type PanelOrder } from "./assembleEdge.ts";
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
import { beyondPanel, overAll, rolled, TURNED_MM } from "./assembleTurned.ts";

// A front, a back and the strip between them put together in space: x to the right seen from the front, y up
// from the base line, z towards the front, 0 in the middle of the bag.

const EDGE_MM = 0.05;

type Side = "front" | "back";
const SIDES: readonly Side[] = ["front", "back"];

/** Facts of the strip along one of its edges. */
type Strip = {
  readonly piece: Piece;
  /** Finished edge, towards the side's panel at +y. */
  readonly edge: readonly Vec[];
  readonly middle: number;
  readonly folds: readonly Fold[];
};

function stripOf(f: Flat, side: Side): Strip {
  const piece = pieceOf(f, "gusset");
  // The back's edge lies at −y: turned over, it is as the front's.
  const over = side === "front" ? 1 : -1;
  const outline = pointsOf(piece.outline, 1);
  const edge = outline
    .slice(0, -1)
    .map(([x, y]): Vec => [x, y * over])
    .filter(([, y]) => y > 0)
    .sort((a, b) => a[0] - b[0]);
  const xs = outline.map(([x]) => x);
  const folds = piece.folds
    .filter((d) => d.id.startsWith(`${side}.flange`))
    .map((d) => ({
      ...d,
      from: [d.from[0], d.from[1] * over] as const,
      to: [d.to[0], d.to[1] * over] as const,
    }));
  return { piece, edge, middle: (Math.min(...xs) + Math.max(...xs)) / 2, folds };
}

/** A line of points moved down by d. */
function movedDown(points: readonly Vec[], d: number): readonly Vec[] {
  const lines = points.slice(1).map((b, i) => {
    const a = points[i]!;
    const size = apart(a, b);
    const way: Vec = [(b[0] - a[0]) / size, (b[1] - a[1]) / size];
    return { on: [a[0] + way[1] * d, a[1] - way[0] * d] as Vec, way };
  });
  const on = (l: (typeof lines)[number], x: number): Vec => [
    x,
    l.on[1] + ((x - l.on[0]) * l.way[1]) / l.way[0],
  ];
  return points.map((p, i) => {
    const [a, b] = [lines[i - 1], lines[i]];
    if (!a || !b) return on((a ?? b)!, p[0]);
    const t = a.way[0] * b.way[1] - a.way[1] * b.way[0];
    if (Math.abs(t) < 1e-12) return [p[0], p[1] - d];
    const s = ((b.on[0] - a.on[0]) * b.way[1] - (b.on[1] - a.on[1]) * b.way[0]) / t;
    return [a.on[0] + s * a.way[0], a.on[1] + s * a.way[1]];
  });
}

/** How far along a line of points, from x = middle, something lies; and how far above it. */
function along(
  points: readonly Vec[],
  at: Vec,
  middle: number,
): { readonly u: number; readonly above: number } {
  let [best, u, above, run, zero] = [Number.POSITIVE_INFINITY, 0, 0, 0, 0];
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    const size = apart(a, b);
    const way: Vec = [(b[0] - a[0]) / size, (b[1] - a[1]) / size];
    const [x, y] = [at[0] - a[0], at[1] - a[1]];
    const t = Math.max(0, Math.min(size, x * way[0] + y * way[1]));
    const d = Math.hypot(x - t * way[0], y - t * way[1]);
    if (d < best) [best, u, above] = [d, run + t, way[0] * y - way[1] * x];
    if (a[0] <= middle && middle <= b[0]) zero = run + (middle - a[0]) / way[0];
    run += size;
  }
  return { u: u - zero, above };
}

/** A fold line's own frame: distance beyond it, away from the strip's middle. */
function beyond(fold: Fold, [x, y]: Vec): { readonly d: number; readonly foot: Vec; readonly out: Vec } {
  const size = apart(fold.from, fold.to);
  const [wx, wy] = [(fold.to[0] - fold.from[0]) / size, (fold.to[1] - fold.from[1]) / size];
  const out: Vec = wx > 0 ? [-wy, wx] : [wy, -wx];
  const d = (x - fold.from[0]) * out[0] + (y - fold.from[1]) * out[1];
  return { d, foot: [x - d * out[0], y - d * out[1]], out };
}

/** The web is walked from this far inside the fold. */
const WEB_MM = 1000;

/** Where the flange's flesh face, which lies on the panel, comes to lie from the fold line, and the faces' heights. */
function folded(bend: Bend, d: number) {
  const at: readonly FlatBend[] = [{ centre: WEB_MM, bend }];
  const { flesh, out } = walk(at, WEB_MM + d, bend);
  return { face: flesh[0] - WEB_MM, lift: flesh[1], out };
}

/** The panel that the order asks for. */
export function panelOrder(f: Flat): PanelOrder {
  const { width, height, inside } = sizesAsked(f);
  const turned = f.order.get("bag.made") === "turned gusset";
  const t = asked(f, "leather.gusset.thickness");
  const wall = inside ? (turned ? t : asked(f, "bag.flange") + t) + liningOf(f) : 0;
  const less = turned ? beyondPanel(f) : 0;
  return {
    width: width + 2 * (wall - less),
    height: height + wall - less,
    topWidth: asked(f, "pieces.body.top-width"),
    sag: asked(f, "pieces.body.base-sag"),
    corners: String(f.order.get("pieces.body.corners")),
    corner: asked(f, "pieces.body.corner-radius"),
    clipRound: asked(f, "pieces.body.clip-round"),
  };
}

/** Front and back against the order: the edge of each, finished. */
function panelEdges(f: Flat, o: PanelOrder, outside: number): readonly Off[] {
  const finished = edgeOf(o, -outside);
  return SIDES.flatMap((side): readonly Off[] => {
    const drawn = pointsOf(pieceOf(f, side).outline, 64);
    const [top, step] = [finished.upTo(o.height - 0.5), 1.7];
    const n = Math.ceil(top / step);
    const off = Math.max(
      ...Array.from({ length: 2 * n + 1 }, (_, i) => fromLines(finished.at(((i - n) / n) * top).at, drawn)),
    );
    return [
      {
        what: `${side}'s edge from the size that was ordered`,
        off,
        most: EDGE_MM + (outside > 0 ? TURNED_MM : 0),
      },
    ];
  });
}

/** The plane that a panel lies in: upright, leaning where the strip tapers. */
type Lean = { readonly from: number; readonly sine: number; readonly half: number };

const inSpace = ([x, y]: Vec, l: Lean): readonly [number, number, number] => {
  const up = Math.max(0, y - l.from);
  return [x, y - up + up * Math.sqrt(1 - l.sine ** 2), l.half - up * l.sine];
};

/** Every stitch of a strip against its panel; the strip is rolled along the line of stitches by its length. */
function seamOff(f: Flat, join: SeamJoin, o: PanelOrder, outside: number | undefined): readonly Off[] {
  const side = join.sides[0]!.piece as Side;
  const strip = stripOf(f, side);
  const [trim, inset] = [
    asked(f, "pieces.gusset.trim"),
    pieceOf(f, side).seams.find((s) => s.id === join.sides[0]!.seam)!.inset,
  ];
  const seam = movedDown(strip.edge, trim + inset);
  const line = edgeOf(o, outside === undefined ? inset : -outside);
  const rise = (insideDepth(f) - asked(f, "pieces.gusset.top-width")) / 2;
  const run = line.upTo(o.height) - line.toSide;
  const lean: Lean = {
    from: line.at(line.toSide).at[1],
    sine: rise / (run * line.steep),
    half: insideDepth(f) / 2,
  };
  const [panel, gusset] = join.sides.map((s) => holesOf(f, s));
  if (panel!.length !== gusset!.length)
    return [{ what: `${join.name}: holes on both sides`, off: Number.POSITIVE_INFINITY, most: 0 }];
  const over = side === "front" ? 1 : -1;
  const offs = gusset!.map((hole, i) => {
    const at: Vec = [hole.at[0], hole.at[1] * over];
    const { u, above } = along(seam, at, strip.middle);
    const on = line.at(u);
    // Beside the line of stitches the strip lies across it, in the panel's plane.
    const lies: Vec = [on.at[0] - above * on.inward[0], on.at[1] - above * on.inward[1]];
    const mate = panel![i]!.at;
    return apart(inSpace(lies, lean), inSpace([mate[0] * over, mate[1]], lean));
  });
  return [{ what: join.name, off: Math.max(...offs), most: HOLES_MM }];
}

/** The strip folded up: flanges flat on the panels, the web between them, as deep and as far in as was ordered. */
function webOff(f: Flat): readonly Off[] {
  const depth = insideDepth(f);
  const [trim, flange] = [asked(f, "pieces.gusset.trim"), asked(f, "bag.flange")];
  const { thickness } = pieceOf(f, "gusset").leather;
  const at = SIDES.map((side) => {
    const strip = stripOf(f, side);
    const fold = strip.folds[Math.floor(strip.folds.length / 2)]!;
    const bend = fold.bend!;
    const edge = strip.edge.find(([x], i) => x <= strip.middle && strip.edge[i + 1]![0] >= strip.middle)!;
    const { d, foot, out } = beyond(fold, [edge[0], edge[1] - trim]);
    const { face, lift, out: flat } = folded(bend, d);
    const first = beyond(strip.folds[0]!, strip.edge[0]!);
    const top = folded(strip.folds[0]!.bend!, first.d);
    return {
      // From the strip's middle to the flange's face.
      half: foot[1] + face * out[1],
      // The web's grain side lies (1 − k) t over its neutral fibre.
      flange: lift - (1 - bend.neutral) * thickness,
      upright: Math.abs(flat[1]),
      top:
        first.foot[1] +
        top.face * first.out[1] +
        ((strip.edge[0]![0] - first.foot[0] - top.face * first.out[0]) * first.out[0] * -1) / first.out[1],
    };
  });
  const [a, b] = [at[0]!, at[1]!];
  return [
    { what: "depth between front and back", off: Math.abs(a.half + b.half - depth), most: HOLES_MM },
    {
      what: "depth at the top",
      off: Math.abs(a.top + b.top - asked(f, "pieces.gusset.top-width")),
      most: HOLES_MM,
    },
    ...at.map((s) => ({ what: "flange from the web", off: Math.abs(s.flange - flange), most: HOLES_MM })),
    ...at.map((s) => ({ what: "flange square to the web", off: s.upright, most: 1e-9 })),
  ];
}

/** Everything of a bag of a front, a back and a strip. */
export function panelBag(f: Flat, joins: readonly SeamJoin[]): readonly Off[] {
  const o = panelOrder(f);
  if (f.order.get("bag.made") === "flanged gusset")
    return [...panelEdges(f, o, 0), ...webOff(f), ...joins.flatMap((j) => seamOff(f, j, o, undefined))];
  const { outside } = rolled(f, "front");
  return [
    ...panelEdges(f, o, asked(f, "bag.allowance") + outside),
    ...overAll(f),
    ...joins.flatMap((j) => seamOff(f, j, o, outside)),
  ];
}
