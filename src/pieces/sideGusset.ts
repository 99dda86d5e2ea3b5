import { closedPath, line, type Point, polyline } from "../geometry/path.ts";
import type { Join } from "../model/article.ts";
import type { Values } from "../model/dimension.ts";
import type { Fold, Piece, SeamEdge, Zone } from "../model/piece.ts";
import { asLength, minus, named, over, type Quantity, sum, times } from "../model/quantity.ts";
import {
  flangeBend,
  flangedWidth,
  flangeReach,
  flangesOf,
  flangeTake,
  foldDrop,
  foldFromEdge,
  footFade,
  inwardFold,
  slopedRun,
} from "../trade/gusset.ts";
import type { dimensions } from "../trade/gussetTable.ts";
import { type Parts, together } from "../trade/parts.ts";
import { atHeight, type Frame, frameSeam, mirrored, topEdge } from "../trade/sideFrame.ts";

// A side of a bag with a wrap-round body, grain side up: x across, centred; the foot's finished edge at y = 0,
// top upward. Its flanges lie inside the body; the corners of the foot are notched out.

export type SideGussetValues = Values<typeof dimensions>;

/** How near each other the flange folds come when the bag is shut, mm: 2t + 2. */
const shutApart = (d: SideGussetValues): Quantity =>
  named("gusset shut", asLength(sum(times(2, d.thickness), 2)), { kind: "length" });

type Sizes = {
  readonly width: Quantity;
  readonly topWidth: Quantity;
  readonly height: Quantity;
  readonly fold: Quantity;
  readonly drop: Quantity;
};

/** Cut sizes, mm: across the foot, across the top, foot to the top of the sides; depth and drop of the inward fold. */
export function sideGussetSizes(d: SideGussetValues): Sizes {
  const f = flangesOf(d);
  const across = (between: Quantity, name: string): Quantity =>
    named(name, asLength(sum(flangedWidth(`${name}, finished`, f, between), times(2, d.trim))), {
      kind: "length",
    });
  const side = asLength(minus(d.height, d.baseFold));
  const rise = asLength(over(minus(d.depth, d.topWidth), 2));
  const foot = minus(sum(flangeTake("foot flange and its bend", f), d.baseFold), d.thickness, d.flangeFold);
  const fold = inwardFold(d.topWidth, shutApart(d));
  return {
    width: across(d.depth, "side gusset cut width"),
    topWidth: across(d.topWidth, "side gusset cut width at the top"),
    height: named("side gusset cut height", asLength(sum(foot, slopedRun(side, rise), d.trim)), {
      kind: "length",
    }),
    fold,
    drop: foldDrop(d.height, fold),
  };
}

function frameOf(d: SideGussetValues): Frame {
  const f = flangesOf(d);
  const side = d.height.value - d.baseFold.value;
  const sine = (d.depth.value - d.topWidth.value) / 2 / side;
  const up: Point = [0 - sine, Math.sqrt(Math.max(1 - sine ** 2, 0))];
  const web = flangeTake("foot flange", f).value;
  // What the seam lies beyond the body's inner face on the flat is measured across the fold, which leans.
  const past = flangedWidth("width", f, d.depth).value / 2 - d.inset.value - d.depth.value / 2;
  const foot: Point = [
    d.depth.value / 2 + past * up[1],
    web + d.baseFold.value - d.thickness.value - d.flangeFold.value - past * up[0],
  ];
  return {
    foot,
    up,
    side,
    run: d.depth.value / 2 - d.baseFold.value,
    reach: flangeReach(d.inset, d.baseFold, d.thickness, d.flangeFold).value,
    top: foot[1] + past * up[0] + side * up[1],
    fold: foldFromEdge("flange fold from the edge", f).value,
  };
}

function outlineOf(d: SideGussetValues, f: Frame): Pick<Piece, "outline" | "corners"> {
  const [trim, cut] = [d.trim.value, d.inset.value + d.trim.value];
  const notch: Point = [f.run + f.reach, f.foot[1] - f.reach];
  const right: readonly (readonly [string, Point])[] = [
    ["foot", [notch[0], 0 - trim]],
    ["notch", notch],
    ["flange", atHeight(f, cut, notch[1])],
    ["top", atHeight(f, cut, f.top)],
  ];
  const points = right.map(([, at]) => at);
  const web = atHeight(f, d.inset.value - f.fold, f.top);
  const drop = d.inwardFold ? sideGussetSizes(d).drop.value : 0;
  const outline = closedPath(points[0]!, [
    ...points.slice(1).map(line),
    line(web),
    ...topEdge(web, drop),
    ...[...points].reverse().map((p) => line(mirrored(p))),
  ]);
  const corners = right.flatMap(([name, at]) => [
    { name: `front ${name}`, at },
    { name: `back ${name}`, at: mirrored(at) },
  ]);
  return { outline, corners };
}

const edgeOf = (d: SideGussetValues, f: Frame): SeamEdge => ({
  piece: "side-gusset",
  id: "seam",
  inset: d.inset.value,
  ...frameSeam(f, d.seamStart.value, d.inset.value),
});

function foldsOf(d: SideGussetValues, f: Frame): readonly Fold[] {
  const bend = flangeBend(d);
  const low = atHeight(f, d.inset.value - f.fold, f.foot[1] - f.reach);
  const high = atHeight(f, d.inset.value - f.fold, f.top);
  const reach = f.run + f.reach;
  const flange = (id: string, from: Point, to: Point): Fold => ({
    id,
    from,
    to,
    label: "fold the flange out",
    bend,
  });
  return [
    flange("front.flange", high, low),
    flange("foot.flange", [reach, f.fold], [-reach, f.fold]),
    flange("back.flange", mirrored(low), mirrored(high)),
    ...(d.inwardFold ? [middleFold(d, f)] : []),
  ];
}

/** The inward fold, from the top down to where it fades out. */
function middleFold(d: SideGussetValues, f: Frame): Fold {
  const drop = sideGussetSizes(d).drop.value;
  const web = flangeTake("foot flange", flangesOf(d)).value;
  const fade = Math.min(footFade(d.depth).value, (f.top - web) / 2);
  return {
    id: "inward",
    from: [0, f.top + drop],
    to: [0, web + fade],
    label: "fold inward, grain side in; let it fade out towards the foot",
  };
}

/** Glue and trim bands along the three flanges. */
function zonesOf(d: SideGussetValues, f: Frame): readonly Zone[] {
  const [inset, trim] = [d.inset.value, d.trim.value];
  const reach = f.run + f.reach;
  const low = f.foot[1] - f.reach;
  const side = (from: number, to: number): readonly Point[] => [
    atHeight(f, from, low),
    atHeight(f, to, low),
    atHeight(f, to, f.top),
    atHeight(f, from, f.top),
  ];
  const foot = (from: number, to: number): readonly Point[] => [
    [-reach, from],
    [reach, from],
    [reach, to],
    [-reach, to],
  ];
  const bands = (
    kind: "glue" | "trim",
    label: string,
    sides: readonly Point[],
    base: readonly Point[],
  ): readonly Zone[] => {
    const zone = (id: string, points: readonly Point[]): Zone => ({
      id: `${id}.${kind}`,
      kind,
      outline: polyline(points, true),
      label,
    });
    return [zone("front", sides), zone("foot", base), zone("back", sides.map(mirrored).reverse())];
  };
  const glue = d.glueWidth.value;
  return [
    ...(glue > 0 ? bands("glue", "glue, flesh side", side(inset - glue, inset), foot(0, glue)) : []),
    ...(trim > 0
      ? bands("trim", "trim flush after stitching", side(inset, inset + trim), foot(-trim, 0))
      : []),
  ];
}

/** Draws a side gusset. */
export function shape(
  d: SideGussetValues,
  order: { readonly leather: string; readonly count: number },
  extra: Partial<Parts> = {},
): { readonly piece: Piece; readonly edge: SeamEdge } {
  const f = frameOf(d);
  const sizes = sideGussetSizes(d);
  const foot = 0 - d.trim.value;
  return {
    piece: {
      id: "side-gusset",
      name: "Side gusset",
      count: order.count,
      hand: "same",
      leather: { kind: order.leather, thickness: d.thickness.value, thickest: d.thickest.value },
      ...outlineOf(d, f),
      ...together(
        {
          folds: foldsOf(d, f),
          zones: zonesOf(d, f),
          marks: [centreNotch(foot)],
        },
        extra,
      ),
      grain: Math.PI / 2,
      straight: false,
      controls: [
        { from: [0, foot], to: [0, f.top + (d.inwardFold ? sizes.drop.value : 0)], words: "foot to top" },
      ],
      sizes: [
        sizes.width,
        sizes.topWidth,
        sizes.height,
        ...(d.inwardFold
          ? [
              named("side gusset cut height in the middle", sum(sizes.height, sizes.drop)),
              sizes.fold,
              sizes.drop,
            ]
          : []),
      ],
      notes: [
        "damp the folds and turn the three flanges out, grain side inside the fold; they lie inside the body",
        ...(d.inwardFold
          ? [
              "its top is cut higher in the middle: folded inward it comes level with the sides",
              "press the middle fold inward before you stitch",
            ]
          : []),
        ...(d.trim.value > 0 ? ["trim the flanges flush with the body after stitching"] : []),
      ],
    },
    edge: edgeOf(d, f),
  };
}

/** Depth of the notch that marks the middle of the foot, mm; common practice, no source. */
const NOTCH_MM = 2;

const centreNotch = (foot: number): Piece["marks"][number] => ({
  id: "foot.notch",
  kind: "notch",
  path: polyline([
    [0, foot],
    [0, foot + NOTCH_MM],
  ]),
  label: "centre",
});

/** What the inward folds of both sides ask of the bag's width; nothing where they don't fold in. */
export const inwardFolds = (d: SideGussetValues): readonly Join[] =>
  d.made === "side gussets" && d.inwardFold
    ? [
        {
          kind: "inward fold",
          piece: "side-gusset",
          topWidth: d.topWidth.value,
          height: d.height.value,
          apart: shutApart(d).value,
          insideWidth: d.insideWidth.value,
          dimension: "pieces.gusset.top-width",
        },
      ]
    : [];
