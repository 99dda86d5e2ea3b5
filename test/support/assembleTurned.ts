import type { Bend } from "../../src/model/piece.ts";
import { flatHalf, walk } from "./assembleBends.ts";
import { asked, type Flat, insideDepth, type Off, pieceOf, pointsOf, sizesAsked } from "./assembleJob.ts";

// A bag stitched inside out and turned: in a box's corner each piece turns at the seam by 135°, sharply on its
// flesh side, and the allowances of both lie grain to grain on the corner's diagonal.

const BOX_TURN = (3 * Math.PI) / 4;
/** Sizes of a turned bag; its rolled edges aren't sharper than that. */
export const TURNED_MM = 0.3;

type Rolled = {
  /** The stitches on the flat outside the piece's own rolled edge, as far as its grain side comes. */
  readonly outside: number;
  /** What the turn takes on the flat. */
  readonly flat: number;
  /** Turned: from the stitches to where the piece is flat, along it; and to its grain side, across it. */
  readonly along: number;
  readonly across: number;
};

export function rolled(f: Flat, id: "front" | "gusset"): Rolled {
  const { thickness } = pieceOf(f, id).leather;
  const neutral = asked(f, `leather.${id === "front" ? "body" : "gusset"}.neutral`);
  const bend: Bend = { inner: 0, angle: BOX_TURN, thickness, neutral, inside: "flesh" };
  const half = flatHalf(bend);
  const bends = [{ centre: half + 1, bend }];
  const [stitch, end] = [walk(bends, 1, bend), walk(bends, 1 + 2 * half, bend)];
  const over = (p: readonly [number, number], way: readonly [number, number]): number =>
    (end.grain[0] - p[0]) * way[0] + (end.grain[1] - p[1]) * way[1];
  const edges = Array.from({ length: 2001 }, (_, i) => walk(bends, 1 + (2 * half * i) / 2000, bend));
  return {
    outside: 2 * half - Math.max(...edges.map((b) => over(b.grain, end.way))),
    flat: 2 * half,
    along: over(stitch.grain, end.way),
    across: over(stitch.grain, end.out),
  };
}

/** Cut width of the strip over base and corners. */
function stripWidth(f: Flat): number {
  const ys = pointsOf(pieceOf(f, "gusset").outline, 1);
  const xs = ys.map(([x]) => x);
  const middle = (Math.min(...xs) + Math.max(...xs)) / 2;
  const at = (up: 1 | -1): number => {
    const edge = ys.filter(([, y]) => y * up > 0).sort((a, b) => a[0] - b[0]);
    return Math.abs(edge.findLast(([x]) => x <= middle)![1]);
  };
  return at(1) + at(-1);
}

const outsideDepth = (f: Flat): number => insideDepth(f) + 2 * asked(f, "leather.body.thickness");

/** The gusset's grain side outside a panel's own rolled edge, both turned: the panel is so much smaller than the bag. */
export function beyondPanel(f: Flat): number {
  const [panel, strip] = [rolled(f, "front"), rolled(f, "gusset")];
  return panel.outside - panel.flat + panel.along + strip.across;
}

/** The whole turned bag measured over all, from grain side to grain side: width at its first stitches, and depth. */
export function overAll(f: Flat): readonly Off[] {
  const [panel, strip] = [rolled(f, "front"), rolled(f, "gusset")];
  const allowance = asked(f, "bag.allowance");
  const { width, inside } = sizesAsked(f);
  const wide = inside ? width + 2 * asked(f, "leather.gusset.thickness") : width;
  const first = pieceOf(f, "front").seams.find((s) => s.id.startsWith("seam"))!.path.start;
  const seams = 2 * Math.abs(first[0]) - 2 * panel.flat + 2 * panel.along;
  const deep = stripWidth(f) - 2 * (allowance + strip.flat) + 2 * strip.along;
  // Where the sides slope, the first stitches lie nearer or further apart than the ordered width.
  const upright = Math.abs(asked(f, "pieces.body.top-width") - (wide - 2 * beyondPanel(f))) < TURNED_MM;
  const depth = {
    what: "depth over all",
    off: Math.abs(deep + 2 * panel.across - outsideDepth(f)),
    most: TURNED_MM,
  };
  if (!upright) return [depth];
  return [{ what: "width over all", off: Math.abs(seams + 2 * strip.across - wide), most: TURNED_MM }, depth];
}
