import { arc, closedPath, line, openPath, type Path, type Point, type Segment } from "../geometry/path.ts";
import { mirroredInX, placed } from "../geometry/transform.ts";
import type { Values } from "../model/dimension.ts";
import type { Fold, Piece, SeamEdge, Zone } from "../model/piece.ts";
import { minus, named, type Quantity, sum, times } from "../model/quantity.ts";
import { NO_PARTS, type Parts } from "../trade/parts.ts";
import { type dimensions, HEM_CLEAR_MM } from "./pocketTable.ts";

export { dimensions, NO_POCKET_ROOM } from "./pocketTable.ts";

// A patch pocket, stitched on three sides. On the flat x runs across, centred on 0; the finished base is
// y = 0 and the finished top y = height; a hem lies above it. Its seam runs from the top left down, round
// the base, up to the top right.

export type PocketValues = Values<typeof dimensions>;

/** The seam's id on the pocket and on its panel, and the place mark's. */
export const POCKET_SEAM = "pocket";
export const POCKET_PLACE = "pocket.place";

/** y of the pocket's base on its panel. */
export const pocketBase = (d: PocketValues): Quantity =>
  named("pocket's base on its panel", sum(d.roomBase, d.rise));

/** The three stitched sides, `inset` inside the finished edge, `down` from its top. */
function sides(d: PocketValues, inset: number, down: number): Path {
  const w = d.width.value / 2 - inset;
  const r = Math.max(0, d.cornerRadius.value - inset);
  const top = d.height.value - down;
  const round = (to: Point, centre: Point): readonly Segment[] => (r === 0 ? [] : [arc(to, centre, true)]);
  return openPath(
    [-w, top],
    [
      line([-w, inset + r]),
      ...round([-w + r, inset], [-w + r, inset + r]),
      line([w - r, inset]),
      ...round([w, inset + r], [w - r, inset + r]),
      line([w, top]),
    ],
  );
}

/** The stitch line on the pocket itself. */
export const edge = (d: PocketValues): SeamEdge => ({
  piece: "pocket",
  id: POCKET_SEAM,
  path: sides(d, d.inset.value, d.seamStart.value),
  inset: d.inset.value,
  breaks: [],
});

/** As it lies on its panel: base's middle at `base`, turned; an inside pocket is seen from behind. */
function onPanel(d: PocketValues, path: Path, base: Point, turn: number): Path {
  return placed(d.where === "inside" ? mirroredInX(path) : path, { at: base, angle: turn });
}

/** The pocket's stitch line on the panel's grain side, in the direction of its own. */
export const edgeOn = (
  d: PocketValues,
  piece: "front" | "back" | "body",
  base: Point,
  turn = 0,
): SeamEdge => ({
  ...edge(d),
  piece,
  path: onPanel(d, edge(d).path, base, turn),
});

/** The pocket's edge on the panel, as a mark; an inside pocket lies on the other face. */
export function marksOn(d: PocketValues, base: Point, turn = 0): Partial<Parts> {
  const u = sides(d, 0, 0);
  const path = onPanel(d, closedPath(u.start, u.segments), base, turn);
  const label = d.where === "inside" ? "pocket, on the inside" : "pocket";
  return { marks: [{ id: POCKET_PLACE, kind: "place", path, label }] };
}

type Hem = {
  readonly tangent: Quantity;
  readonly bend: Quantity;
  readonly leg: Quantity;
  readonly flat: Quantity;
};

/**
 * The hem on the flat: the pocket ends where its fold begins, ρ + t under its top; the bend takes
 * π (ρ + k t); the leg goes on to the hem's depth (trade practice of folds of 150° and more, tangent to tangent).
 */
function hemOf(d: PocketValues): Hem {
  const out = { ...sum(d.hemFold, d.thickness), kind: "length" } as const;
  const bend = named(
    "hem's fold on the flat",
    times(Math.PI, { ...sum(d.hemFold, times(d.neutral, d.thickness)), kind: "length" }),
    { source: "a bend's neutral fibre", kind: "length" },
  );
  const tangent = named("pocket up to the hem's fold", minus(d.height, out));
  const leg = named("hem beyond its fold", minus(d.hem, out));
  return { tangent, bend, leg, flat: named("pocket cut height", sum(tangent, bend, leg)) };
}

/** Draws the pocket, grain side up. */
export function shape(
  d: PocketValues,
  order: { readonly leather: string; readonly count: number },
): { readonly piece: Piece; readonly edge: SeamEdge } {
  const hem = d.top === "hemmed" ? hemOf(d) : undefined;
  const outline = outlineOf(d, hem);
  const height = hem?.flat ?? named("pocket cut height", d.height);
  const piece: Piece = {
    id: "pocket",
    name: "Pocket",
    count: order.count,
    hand: "same",
    leather: { kind: order.leather, thickness: d.thickness.value, thickest: d.thickest.value },
    outline,
    corners: cornersOf(d, outline, hem),
    ...NO_PARTS,
    ...(hem ? hemParts(d, hem) : {}),
    grain: Math.PI / 2,
    straight: false,
    controls: [
      {
        from: [-d.width.value / 2, d.height.value / 2],
        to: [d.width.value / 2, d.height.value / 2],
        words: "across",
      },
    ],
    sizes: [named("pocket width", d.width), height, d.height, d.cornerRadius, ...(hem ? [hem.bend] : [])],
    notes: notesOf(d),
  };
  return { piece, edge: edge(d) };
}

const notesOf = (d: PocketValues): readonly string[] => [
  d.where === "inside"
    ? "goes on the inside of its panel, before the panel is joined to anything"
    : "goes on its panel before the panel is joined to anything",
  ...(d.top === "hemmed" ? ["fold the hem to the flesh side and glue it; the seam doesn't catch it"] : []),
];

/** Middle of the hem's fold on the flat. */
const foldAt = (hem: Hem): number => hem.tangent.value + hem.bend.value / 2;

/** A hem's sides slant in from the fold's middle, so that the seam goes through two layers only. */
function outlineOf(d: PocketValues, hem: Hem | undefined): Path {
  const u = sides(d, 0, 0);
  if (!hem) return closedPath(u.start, u.segments);
  const w = d.width.value / 2;
  const slant = d.inset.value + HEM_CLEAR_MM;
  const [fold, top] = [foldAt(hem), hem.flat.value];
  const lower = u.segments.slice(0, -1);
  return closedPath(
    [-w, fold],
    [
      ...lower,
      line([w, fold]),
      line([w - slant, fold + slant]),
      line([w - slant, top]),
      line([slant - w, top]),
      line([slant - w, fold + slant]),
    ],
  );
}

function cornersOf(d: PocketValues, outline: Path, hem: Hem | undefined): Piece["corners"] {
  const w = d.width.value / 2;
  const upper = outline.segments
    .map((s) => s.to)
    .filter(([x, y]) => y >= (hem ? foldAt(hem) : d.height.value) - 1e-9 && Math.abs(x) <= w + 1e-9);
  const lower: readonly Point[] =
    d.cornerRadius.value === 0
      ? [
          [-w, 0],
          [w, 0],
        ]
      : [];
  const ends = [...lower, ...upper];
  return ends.map((at, i) => ({ name: `corner ${i + 1}`, at }));
}

function hemParts(d: PocketValues, hem: Hem): Pick<Parts, "folds" | "zones"> {
  const w = d.width.value / 2;
  const y = foldAt(hem);
  const fold: Fold = {
    id: "hem",
    from: [-w, y],
    to: [w, y],
    label: "fold of the hem",
    bend: {
      inner: d.hemFold.value,
      angle: Math.PI,
      thickness: d.thickness.value,
      neutral: d.neutral.value,
      inside: "flesh",
    },
  };
  return { folds: [fold], zones: [hemGlue(d, hem)] };
}

/** The hem beyond its bend. */
function hemGlue(d: PocketValues, hem: Hem): Zone {
  const top = hem.flat.value;
  const from = hem.tangent.value + hem.bend.value;
  const halfAt = (y: number): number =>
    d.width.value / 2 - Math.min(d.inset.value + HEM_CLEAR_MM, y - foldAt(hem));
  const bent = foldAt(hem) + d.inset.value + HEM_CLEAR_MM;
  const levels = bent > from && bent < top ? [from, bent, top] : [from, top];
  const right = levels.map((y): Point => [halfAt(y), y]);
  const left = [...levels].reverse().map((y): Point => [-halfAt(y), y]);
  const [first, ...rest] = [...right, ...left];
  return { id: "hem", kind: "glue", outline: closedPath(first!, rest.map(line)), label: "glue the hem" };
}
