import { distanceToPath } from "../geometry/distance.ts";
import { pathLength, pointAt } from "../geometry/length.ts";
import type { Hole, Piece, SeamLine } from "../model/piece.ts";
import { printNumber } from "../units/index.ts";
import {
  counted,
  countOf,
  type Draft,
  grouped,
  idsOf,
  mm,
  namesOf,
  served,
  sumOf,
  type WorkInput,
} from "./draft.ts";
import { isPressed } from "./markSteps.ts";
import { countAll, isStitch, type On, onAll, piecesOf, rough, sayPunch } from "./onPieces.ts";

// Lines along edges: creases, grooves, and the holes for stitches.

const MM_PER_METRE = 1000;

/** A seam lies along an edge when it is nowhere more than this off its distance from it, mm. */
const ALONG_MM = 0.3;

/** How far a line lies from the piece's edge, where it follows it; undefined where it doesn't. */
function fromEdge(piece: Piece, path: SeamLine["path"]): number | undefined {
  const length = pathLength(path);
  const off = [0.25, 0.5, 0.75].map((part) => distanceToPath(pointAt(path, part * length), piece.outline));
  return Math.max(...off) - Math.min(...off) < ALONG_MM ? off[1] : undefined;
}

const WIDEST_GROOVER_MM = 12;

/** "groover 3 mm from the edge": a groover's gauge opens so far; further in, the line is marked. */
const settingOf = (tool: string, distance: number | undefined): string =>
  distance === undefined || distance > WIDEST_GROOVER_MM
    ? `${tool} along the marked line`
    : `${tool} ${mm(distance)} from the edge`;

type Line = {
  readonly piece: Piece;
  readonly path: SeamLine["path"];
  readonly tool: "groover" | "creaser";
  readonly key: readonly string[];
};

/** Creases that are drawn, and the grooves that stitches lie in: one step for each tool and distance. */
export function grooveSteps(input: WorkInput): readonly Draft[] {
  const lines = input.made.pieces.flatMap((piece): readonly Line[] => [
    ...piece.marks
      .filter(isPressed)
      .map((m): Line => ({ piece, path: m.path, tool: "creaser", key: served("mark", piece.id, m.id) })),
    ...piece.seams
      .filter((s) => s.groove)
      .map((s): Line => ({ piece, path: s.path, tool: "groover", key: [] })),
  ]);
  const setting = (l: Line): string => settingOf(l.tool, fromEdge(l.piece, l.path));
  return grouped(lines, setting).map((g, i) => ({
    id: `groove.${i + 1}`,
    phase: "groove",
    does: "groove",
    says: `${g[0]!.tool === "creaser" ? "Crease" : "Groove the stitch lines of"} the ${namesOf(g.map((l) => l.piece))}`,
    pieces: idsOf(g.map((l) => l.piece)),
    tool: g[0]!.tool,
    setting: setting(g[0]!),
    amount: sumOf(g.map((l) => countOf(l.piece, input) * pathLength(l.path))) / MM_PER_METRE,
    after: [],
    serves: g.flatMap((l) => l.key),
  }));
}

type Stitched = On<Hole> & { readonly seam: SeamLine | undefined };

/** Holes for stitches: one step for each pitch and each way of making them. A hole of two lines is the first's. */
export function prickSteps(input: WorkInput): readonly Draft[] {
  const holes = onAll(input, (p) => p.holes.filter((h) => h.kind === "awl" || isStitch(h))).map(
    (o): Stitched => ({ ...o, seam: o.piece.seams.find((s) => s.holes.includes(o.it.id)) }),
  );
  const key = ({ it, seam }: Stitched): string =>
    `${it.kind} ${it.kind === "awl" ? "" : rough(it.size)} ${seam ? rough(seam.pitchAsked) : ""}`;
  return grouped(holes, key).map((g, i) => prickStep(g, i, input));
}

function prickStep(g: readonly Stitched[], i: number, input: WorkInput): Draft {
  const { it, seam } = g[0]!;
  const amount = countAll(g, input);
  const seams = grouped(
    g.flatMap(({ piece, seam: s }) => (s ? [{ piece, s }] : [])),
    ({ piece, s }) => `${piece.id} ${s.id}`,
  ).map((same) => same[0]!);
  const away = grouped(seams, ({ piece, s }) => settingOf("", fromEdge(piece, s.path)).trim()).map(
    (same) => ({
      names: namesOf(same.map((one) => one.piece)),
      says: settingOf("", fromEdge(same[0]!.piece, same[0]!.s.path)).trim(),
    }),
  );
  const legs = seams.some(({ s }) => s.turnBack !== undefined);
  return {
    id: `prick.${i + 1}`,
    phase: "prick",
    does: "prick",
    says: `${it.kind === "awl" ? "Prick" : "Punch"} ${counted(amount, "stitch hole")}: ${namesOf(piecesOf(g))}${legs ? "; of a turn-back the front leg only" : ""}`,
    pieces: idsOf(piecesOf(g)),
    tool:
      it.kind === "awl"
        ? "pricking iron, or marking wheel and awl"
        : "pricking iron with round teeth, or round punch",
    setting: [
      ...(it.kind === "awl" ? [] : [sayPunch(it.size, input.shop)]),
      ...(seam ? [`${printNumber(seam.pitchAsked, 2)} mm from hole to hole`] : []),
      ...away.map((a) => (away.length > 1 ? `${a.names} ${a.says}` : a.says)),
    ].join("; "),
    amount,
    after: [],
    serves: g.flatMap(({ piece, it: hole }) => served("hole", piece.id, hole.id)),
  };
}
