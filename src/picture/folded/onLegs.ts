import { boundsOf } from "../../geometry/bounds.ts";
import { type Path, polyline, rectanglePath } from "../../geometry/path.ts";
import type { Made } from "../../model/article.ts";
import type { Item } from "../picture.ts";
import { stroke } from "../piece/strokes.ts";
import { GAP_MM, words } from "./frame.ts";
import { along, heightsOf, type Side, xAt } from "./side.ts";

// What lies on the legs of a folded turn-back: holes, stitches, the keeper.

/** A keeper's leather where the order makes none of its own, mm. */
export const KEEPER_MM = 1.5;

/** Holes and stitches of the turn-back, as ticks through the legs: where along it, and how wide. */
type Tick = {
  readonly id: string;
  readonly u: number;
  readonly size: number;
  readonly leg: "front" | "back" | "both";
};

export function ticksOf({ t, piece, held, frontShown }: Side): readonly Tick[] {
  const sewn = new Set(piece.seams.filter((s) => s.turnBack === t.id).flatMap((s) => s.holes));
  const first = piece.seams.find((s) => s.turnBack === t.id);
  return piece.holes.flatMap((hole): readonly Tick[] => {
    const u = along(t, hole.at[0]);
    if (Math.abs(u) < held - hole.size || u > frontShown) return [];
    if (sewn.has(hole.id))
      return first?.holes.includes(hole.id) ? [{ id: hole.id, u, size: 0, leg: "both" }] : [];
    return hole.kind === "awl"
      ? []
      : [{ id: hole.id, u: Math.abs(u), size: hole.size, leg: u < 0 ? "back" : "front" }];
  });
}

export function tickItems(side: Side): readonly Item[] {
  const { t } = side;
  const [front, back] = [heightsOf(side, t.frontThickness), heightsOf(side, t.backThickness)];
  return ticksOf(side).flatMap(({ id, u, size, leg }) => {
    const x = xAt(side, u);
    const ys: readonly [number, number] =
      leg === "front"
        ? [front.flesh, front.grain]
        : leg === "back"
          ? [-back.grain, -back.flesh]
          : [-back.grain, front.grain];
    const across = (at: number): Path =>
      polyline([
        [at, ys[0]],
        [at, ys[1]],
      ]);
    if (size === 0) return [stroke("stitch", "01.1", across(x), `hole.${id}`)];
    const edges = [x - size / 2, x + size / 2].map((at) => stroke("hole", "01.1", across(at)));
    return [stroke("hole", "04.1", across(x), `hole.${id}`), ...edges];
  });
}

/** The keeper that holds the legs: its near and far end on the folded strap, as a box round them. */
export function keeperItems(side: Side, made: Made): readonly Item[] {
  const { t, piece } = side;
  const zone = piece.zones.find(({ id, kind }) => kind === "keeper" && id.startsWith(`${t.id}.`));
  if (!zone) return [];
  const { minX, maxX } = boundsOf(zone.outline);
  const [from, to] = [along(t, minX), along(t, maxX)].sort((a, b) => a - b).map((u) => xAt(side, u)) as [
    number,
    number,
  ];
  const join = made.joins.find((j) => j.kind === "keeper round stack");
  const leather = made.pieces.find(({ id }) => id === join?.piece)?.leather.thickness ?? KEEPER_MM;
  const low = -heightsOf(side, t.backThickness).grain;
  const high =
    join?.kind === "keeper round stack" ? low + join.height : heightsOf(side, t.frontThickness).grain;
  return [
    stroke(
      "mark",
      "05.1",
      rectanglePath([from, low - leather], to - from, leather),
      `keeper.${zone.id}.under`,
    ),
    stroke("mark", "05.1", rectanglePath([from, high], to - from, leather), `keeper.${zone.id}.over`),
    words(zone.label, [(from + to) / 2, high + leather + GAP_MM], "centre"),
  ];
}
