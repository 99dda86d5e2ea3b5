import { pathLength, subPath } from "../geometry/length.ts";
import { type Path, type Point, polyline } from "../geometry/path.ts";
import { mirroredInY, reversed } from "../geometry/transform.ts";
import type { Gather } from "../model/article.ts";
import type { Values } from "../model/dimension.ts";
import type { Fold, Mark, Piece, SeamEdge, Zone } from "../model/piece.ts";
import { asLength, minus, named, over, type Quantity, sum, times } from "../model/quantity.ts";
import { clipMarks, clipPlaces, quarterNotches } from "../trade/clips.ts";
import {
  flangeBend,
  flangedWidth,
  flangesOf,
  flangeTake,
  foldFromEdge,
  grainBeyond,
  slopedRun,
  turnedEdge,
} from "../trade/gusset.ts";
import type { dimensions } from "../trade/gussetTable.ts";
import { type Parts, together } from "../trade/parts.ts";
import { bandBeside, beside, seamPoints, straightSides } from "../trade/strip.ts";
import { leaningRise } from "../trade/taper.ts";

export { dimensions } from "../trade/gussetTable.ts";

// The strip between a bag's front and back, grain side up: along x from 0, centred on y = 0, its edge towards
// the front at +y. Developed from the two bodies' own seam lines: both keep their exact lengths.

export type GussetValues = Values<typeof dimensions>;

export type Sides = {
  readonly front: SeamEdge;
  readonly back: SeamEdge;
  /** Length of the bodies' seam with what it comes from, for the strip's sizes. */
  readonly length?: Quantity;
};

/** True when the strip is stitched inside out. */
export const isTurned = (d: GussetValues): boolean => d.made === "turned gusset";

/**
 * Width across the strip, mm, where the bodies' inner faces lie `between` apart: from finished edge to finished
 * edge of flat flanges, or from cut edge to cut edge where it is turned.
 */
function stripWidth(d: GussetValues, between: Quantity, name: string): Quantity {
  if (!isTurned(d)) return flangedWidth(name, flangesOf(d), between);
  // Between the strip's own rolled edges: the bodies' grain sides lie outside them.
  const beyond = grainBeyond(
    "body's grain side beyond the gusset's rolled edge",
    d.thickness,
    d.bodyThickness,
  );
  const outside = asLength(minus(sum(between, times(2, d.bodyThickness)), times(2, beyond)));
  const edge = turnedEdge("gusset finished edge from its cut edge", d.allowance, d.thickness, d.neutral);
  return named(name, asLength(sum(outside, times(2, edge))), { kind: "length" });
}

const trimmed = (d: GussetValues, width: Quantity, name: string): Quantity =>
  named(name, asLength(sum(width, times(2, d.trim))), { kind: "length" });

/** The straight sides over which the strip tapers, first stitch and what lies beyond it included. */
const slopeOf = (d: GussetValues): Quantity => asLength(sum(d.sideRun, d.seamStart));

/** The seam line lies this far outside a body's inner face on the flat, mm: flange and bend less what they stand for. */
const pastFace = (d: GussetValues): Quantity =>
  named(
    "seam beyond the body's inner face, flat",
    minus(
      flangeTake("flange and its bend", flangesOf(d)),
      asLength(times(1, d.thickness)),
      d.flangeFold,
      d.inset,
    ),
    { kind: "length" },
  );

/** How much lower the seam line lies at the top than over the base. */
const taperRise = (d: GussetValues): Quantity =>
  leaningRise("gusset taper on each side", d, isTurned(d) ? undefined : pastFace(d));

/** The strip's sizes, mm: cut length, cut width at the base and at the top. */
function sizesOf(d: GussetValues, length: Quantity): readonly Quantity[] {
  const [slope, rise] = [slopeOf(d), taperRise(d)];
  const run = slopedRun(slope, rise);
  const sides = asLength(times(2, minus(slope, run)));
  const base = stripWidth(d, d.depth, "gusset width");
  const leaning = asLength(times({ ...over(slope, run), kind: "ratio" }, sum(d.inset, d.trim)));
  const top = asLength(minus(sum(base, times(2, leaning)), times(2, rise), times(2, d.inset)));
  return [
    named("gusset cut length", asLength(minus(sum(length, times(2, d.seamStart)), sides)), {
      kind: "length",
    }),
    trimmed(d, base, "gusset cut width"),
    named("gusset cut width at the top", top, { kind: "length" }),
  ];
}

/** Length of the shortest of the straight sides that both seams begin and end with, mm: what `sideRun` is handed. */
export const sideRun = (front: SeamEdge, back: SeamEdge): number => straightSides(front.path, back.path);

/** One edge of the strip, drawn as the front's; `seam` runs on to the top edges. */
type Edge = {
  readonly id: "front" | "back";
  readonly seam: readonly Point[];
  readonly cut: readonly Point[];
  readonly path: Path;
  readonly body: Path;
};

/** A band narrower than this is none, mm: a blade can't follow it. */
const NO_BAND_MM = 1e-6;

/** The seam line over the whole strip, its middle at x = 0. */
const seamOf = (d: GussetValues, body: SeamEdge): readonly Point[] =>
  seamPoints({
    length: pathLength(body.path),
    beyond: d.seamStart.value,
    side: d.sideRun.value,
    level: stripWidth(d, d.depth, "width").value / 2 - d.inset.value,
    rise: taperRise(d).value,
  });

function edgeOf(d: GussetValues, id: Edge["id"], body: SeamEdge, halfLength: number): Edge {
  const seam = seamOf(d, body).map(([x, y]): Point => [x + halfLength, y]);
  const whole = polyline(seam);
  const [start, total] = [d.seamStart.value, pathLength(whole)];
  return {
    id,
    seam,
    cut: beside(seam, d.inset.value + d.trim.value),
    path: subPath(whole, start, total - start),
    body: body.path,
  };
}

/** What lies along one edge, as the front's: folds, notches, clips, glue, trim. */
function partsAlong(d: GussetValues, e: Edge): Partial<Parts> {
  const [inset, trim, glue] = [d.inset.value, d.trim.value, d.glueWidth.value];
  const notches = quarterNotches(e.id, e.path, inset + trim);
  if (isTurned(d)) {
    const places = clipPlaces(e.body, d.clipSpacing.value);
    return { marks: [...notches, ...clipMarks(`${e.id}.clip`, e.path, places, inset, d.thickness.value)] };
  }
  const line = beside(e.seam, inset - foldFromEdge("flange fold from the edge", flangesOf(d)).value);
  const folds = line.slice(1).map((to, i): Fold => {
    const id = line.length === 2 ? `${e.id}.flange` : `${e.id}.flange.${i + 1}`;
    return { id, from: line[i]!, to, label: "fold the flange out", bend: flangeBend(d) };
  });
  const zone = (kind: "glue" | "trim", from: number, to: number): readonly Zone[] =>
    to - from > NO_BAND_MM
      ? [
          {
            id: `${e.id}.${kind}`,
            kind,
            outline: bandBeside(e.seam, from, to),
            label: kind === "glue" ? "glue, flesh side" : "trim flush after stitching",
          },
        ]
      : [];
  return {
    folds,
    marks: notches,
    zones: [...zone("glue", inset - glue, inset), ...zone("trim", inset, inset + trim)],
  };
}

const turnedOver = ([x, y]: Point): Point => [x, -y];
const overMark = (m: Mark): Mark => ({ ...m, path: mirroredInY(m.path) });
const overFold = (f: Fold): Fold => ({ ...f, from: turnedOver(f.from), to: turnedOver(f.to) });
const overZone = (z: Zone): Zone => ({ ...z, outline: reversed(mirroredInY(z.outline)) });

/** The parts along the back's edge, which is drawn as the front's and turned over. */
const mirroredParts = (p: Partial<Parts>): Partial<Parts> => ({
  folds: (p.folds ?? []).map(overFold),
  marks: (p.marks ?? []).map(overMark),
  zones: (p.zones ?? []).map(overZone),
});

/** Names of an edge's corners, from its start. */
const cornerNames = (e: Edge): readonly string[] =>
  e.cut.map((_, i) =>
    i === 0
      ? `${e.id} start`
      : i === e.cut.length - 1
        ? `${e.id} end`
        : `${e.id} taper${e.cut.length > 3 ? ` ${i}` : ""}`,
  );

/** Draws the strip for the given seams of the bodies, both in one direction. */
export function shape(
  d: GussetValues,
  order: { readonly leather: string; readonly count: number },
  sides: Sides,
  extra: Partial<Parts> = {},
): { readonly piece: Piece; readonly edges: { readonly front: SeamEdge; readonly back: SeamEdge } } {
  const half = Math.max(...[sides.front, sides.back].map((s) => seamOf(d, s).at(-1)![0]));
  const front = edgeOf(d, "front", sides.front, half);
  const back = edgeOf(d, "back", sides.back, half);
  const backCut = back.cut.map(turnedOver);
  const seamEdge = (e: Edge, path: Path, of: SeamEdge): SeamEdge => ({
    piece: "gusset",
    id: e.id,
    path,
    inset: d.inset.value,
    breaks: of.breaks,
  });
  return {
    piece: {
      id: "gusset",
      name: "Gusset",
      count: order.count,
      hand: "same",
      leather: { kind: order.leather, thickness: d.thickness.value, thickest: d.thickest.value },
      outline: polyline([...backCut, ...[...front.cut].reverse()], true),
      corners: [
        ...cornerNames(back).map((name, i) => ({ name, at: backCut[i]! })),
        ...cornerNames(front).map((name, i) => ({ name, at: front.cut[i]! })),
      ],
      ...together(partsAlong(d, front), mirroredParts(partsAlong(d, back)), extra),
      grain: 0,
      straight: false,
      controls: [{ from: [0, 0], to: [2 * half, 0], words: "top edge to top edge" }],
      sizes: sizesOf(d, sides.length ?? asLength(lengthAlone(sides.front))),
      notes: notesOf(d),
    },
    edges: {
      front: seamEdge(front, front.path, sides.front),
      back: seamEdge(back, mirroredInY(back.path), sides.back),
    },
  };
}

const lengthAlone = (edge: SeamEdge): Quantity => ({
  value: pathLength(edge.path),
  kind: "length",
  parts: ["along the seam of the front"],
  inputs: [],
});

function notesOf(d: GussetValues): readonly string[] {
  if (isTurned(d))
    return [
      "stitch grain side to grain side, clip the allowance at its marks before you sew round a corner, then turn the bag",
    ];
  const trim = d.trim.value > 0 ? ["trim the flanges flush with front and back after stitching"] : [];
  return [
    d.wetMoulded
      ? "fold both flanges out, grain side inside the fold; wet the corners and mould them before stitching"
      : "damp the folds and turn both flanges out, grain side inside the fold; ease the web in round the corners",
    ...trim,
  ];
}

/** What the strip's web gathers along the laid seams of each body; nothing where it is turned. */
export const gathers = (
  d: GussetValues,
  bodies: readonly { readonly body: string; readonly seams: readonly string[] }[],
  dimension = "pieces.body.corner-radius",
): readonly Gather[] =>
  d.made !== "flanged gusset"
    ? []
    : bodies.map(({ body, seams }) => ({
        kind: "gather",
        gusset: "gusset",
        body,
        seams,
        inset: d.inset.value,
        fold: d.flange.value,
        thickness: d.thickness.value,
        wetMoulded: d.wetMoulded,
        dimension,
      }));
