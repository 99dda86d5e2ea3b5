import { line, openPath, rectanglePath } from "../geometry/path.ts";
import type { Values } from "../model/dimension.ts";
import type { Hole, Piece, Zone } from "../model/piece.ts";
import { named, type Quantity, sum, times } from "../model/quantity.ts";
import { keeperGirth, keeperStack, type Stack } from "../trade/keeper.ts";
import { type Parts, together } from "../trade/parts.ts";
import { LEAST_INSET_MM } from "../trade/seam.ts";
import { stitchRow } from "../trade/stitchRow.ts";
import type { dimensions } from "./keeperTable.ts";

export { dimensions } from "./keeperTable.ts";

// A keeper: the loop that holds a strap's tail down. On the flat a strip along x from x = 0, its
// breadth centred on y = 0. Fixed keepers are caught in a turn-back; running ones slide.

export type KeeperValues = Values<typeof dimensions>;

/** The id of the drawn piece. */
export const keeperId = (d: KeeperValues): string => (d.running ? "keeper-running" : "keeper-fixed");

const labelOf = (d: KeeperValues): string => (d.running ? "running keeper" : "fixed keeper");

/** What a turn-back that catches this keeper must make room for: its ends, once or lapped twice. */
export const caughtThickness = (d: KeeperValues): Quantity =>
  named("keeper caught in the turn-back", d.seam === "lapped" ? times(2, d.skiveTo) : times(1, d.skiveTo), {
    kind: "thickness",
  });

export const keeperOpening = (d: KeeperValues): Stack =>
  keeperStack(labelOf(d), d.strapWidth, [d.layers], d.easeWidth, d.easeHeight);

/** Cut length, mm: its girth, and the lap where it is lapped. */
export function keeperCut(d: KeeperValues): Quantity {
  const girth = keeperGirth(labelOf(d), keeperOpening(d), d.neutral, d.thickness);
  const label = `${labelOf(d)} cut length`;
  return d.seam === "lapped" ? named(label, sum(girth, d.lap)) : named(label, girth);
}

/** Draws one keeper. */
export function shape(d: KeeperValues, order: { readonly count: number; readonly leather: string }): Piece {
  const cut = keeperCut(d);
  const [length, breadth] = [cut.value, d.breadth.value];
  const outline = rectanglePath([0, -breadth / 2], length, breadth);
  const id = keeperId(d);
  return {
    id,
    name: d.running ? "Running keeper" : "Fixed keeper",
    count: order.count,
    hand: "same",
    leather: { kind: order.leather, thickness: d.thickness.value, thickest: d.thickness.value },
    outline,
    corners: outline.segments.map((s, i) => ({ name: `corner ${i + 1}`, at: s.to })),
    ...together(seamParts(d, length), { zones: skives(d, length) }),
    grain: 0,
    straight: true,
    controls: [],
    sizes: [cut, d.breadth],
    notes: d.running
      ? ["bend grain side out, join the ends, slide on before the turn-back is closed"]
      : ["bend grain side out; the ends lie between the legs of the turn-back"],
  };
}

/** Ends are thinned over the lap, or over half the strap where they are caught. */
function skives(d: KeeperValues, length: number): readonly Zone[] {
  if (d.skiveTo.value >= d.thickness.value - 1e-6) return [];
  if (d.running && d.seam !== "lapped") return [];
  const over = d.seam === "lapped" ? d.lap.value : d.strapWidth.value / 2;
  const zone = (name: string, x: number): Zone => ({
    id: `skive.${name}`,
    kind: "skive",
    outline: rectanglePath([x, -d.breadth.value / 2], over, d.breadth.value),
    from: d.thickness.value,
    to: d.skiveTo.value,
    label: "skive",
  });
  return [zone("start", 0), zone("end", length - over)];
}

/** Across each end: holes that meet when the keeper is bent. Fixed keepers are sewn with the turn-back. */
function seamParts(d: KeeperValues, length: number): Partial<Parts> {
  if (d.seam === "butted with a staple") return { holes: stapleHoles(length) };
  if (!d.running) return {};
  // Whole stitches of the pitch asked, in the middle of the breadth: the row is too short to spread.
  const stitches = Math.max(1, Math.floor((d.breadth.value - 2 * LEAST_INSET_MM) / d.pitch.value + 1e-9));
  const half = (stitches * d.pitch.value) / 2;
  const inset = d.breadth.value / 2 - half;
  const inFrom = d.seam === "lapped" ? d.lap.value / 2 : d.inset.value;
  const rows = [inFrom, length - inFrom].map((x, i) =>
    stitchRow({
      id: `join.${i === 0 ? "start" : "end"}`,
      path: openPath([x, -half], [line([x, half])]),
      asked: d.pitch.value,
      stitches,
      inset: Math.min(inset, inFrom),
    }),
  );
  return { holes: rows.flatMap((r) => r.holes), seams: rows.map((r) => r.seam) };
}

/** A staple's legs go through each end this far in, mm, in holes of this size; common practice, no source. */
const STAPLE_IN_MM = 3.5;
const STAPLE_HOLE_MM = 1.2;

const stapleHoles = (length: number): readonly Hole[] =>
  [STAPLE_IN_MM, length - STAPLE_IN_MM].map((x, i) => ({
    id: `staple.${i + 1}`,
    kind: "staple",
    at: [x, 0],
    size: STAPLE_HOLE_MM,
    angle: 0,
    use: "staple",
  }));
