import { distanceToPath } from "../geometry/distance.ts";
import { pathLength, pointAt } from "../geometry/length.ts";
import type { Fold, Hole, Piece, SeamLine } from "../model/piece.ts";
import { sayValue } from "../model/say.ts";
import { counted } from "../model/words.ts";
import {
  countOf,
  type Draft,
  grouped,
  idsOf,
  isKeeper,
  isLining,
  isPatch,
  namesOf,
  sayLength,
  served,
  sumOf,
  type WorkInput,
} from "./draft.ts";
import { isPressed } from "./markSteps.ts";
import { countAll, isStitch, type On, onAll, piecesOf, rough, sayPunch } from "./onPieces.ts";
import { flushSeams, isTurnedOut } from "./shell.ts";

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

/** "3 mm from the edge": a groover's gauge opens so far; further in, the line is marked. */
const settingOf = (distance: number | undefined, input: WorkInput): string =>
  distance === undefined || distance > WIDEST_GROOVER_MM
    ? "along the marked line"
    : `${sayLength(distance, input)} from the edge`;

type Line = {
  readonly piece: Piece;
  readonly path: SeamLine["path"];
  readonly tool: "groover" | "creaser";
  readonly key: readonly string[];
};

/**
 * Lines of stitches that are grooved, as the templates say: those in awl slits, and those whose groove is all that
 * is drawn. Not where the seam lies inside when the bag is turned, nor the few stitches of a keeper's ends.
 */
function groovedSeams(input: WorkInput): (piece: Piece) => readonly SeamLine[] {
  const inside = isTurnedOut(input.made) ? flushSeams(input.made).flatMap((f) => f.runs) : [];
  const isInside = (piece: Piece, s: SeamLine): boolean =>
    inside.some((r) => r.piece.id === piece.id && r.seam.id === s.id);
  const inSlits = (piece: Piece, s: SeamLine): boolean =>
    piece.holes.some((h) => h.kind === "awl" && s.holes.includes(h.id));
  return (piece) =>
    isPatch(piece) || isLining(piece)
      ? []
      : piece.seams.filter((s) => s.groove || (!isKeeper(piece) && inSlits(piece, s) && !isInside(piece, s)));
}

/** Radii print to a tenth: a bend is no sharper than what prints alike; mm. */
const SAME_RADIUS_MM = 0.05;
/** Leather that turns further is folded flat on itself, radians: a groove would cut into what shows. */
const FLAT_FOLD = 0.9 * Math.PI;

/** Bends grain side out that are sharper than the leather is thick: their flesh side is grooved first, as the templates say. */
const sharpBends = (p: Piece): readonly Fold[] =>
  p.folds.filter(
    ({ bend }) =>
      bend?.inside === "flesh" && bend.angle < FLAT_FOLD && bend.inner < p.leather.thickest - SAME_RADIUS_MM,
  );

/** Flesh sides that are grooved along bends, so that these come sharp. */
const bendGrooves = (input: WorkInput): readonly Draft[] =>
  input.made.pieces
    .filter((p) => sharpBends(p).length > 0)
    .map((p): Draft => {
      const bends = sharpBends(p);
      const length = sumOf(bends.map(({ from, to }) => Math.hypot(to[0] - from[0], to[1] - from[1])));
      return {
        id: `groove.bends.${p.id}`,
        phase: "groove",
        does: "groove",
        says: `Groove the flesh side of the ${namesOf([p])}, it bends sharper there than it is thick: ${bends.map((f) => f.label).join("; ")}`,
        pieces: [p.id],
        tool: "groover",
        setting: "along the fold lines",
        amount: (countOf(p, input) * length) / MM_PER_METRE,
        after: [],
        serves: [],
      };
    });

/** Creases that are drawn, lines of stitches and sharp bends: one step for each tool and distance. */
export const grooveSteps = (input: WorkInput): readonly Draft[] => [
  ...edgeGrooves(input),
  ...bendGrooves(input),
];

function edgeGrooves(input: WorkInput): readonly Draft[] {
  const seamsOf = groovedSeams(input);
  const lines = input.made.pieces.flatMap((piece): readonly Line[] => [
    ...piece.marks
      .filter(isPressed)
      .map((m): Line => ({ piece, path: m.path, tool: "creaser", key: served("mark", piece.id, m.id) })),
    ...seamsOf(piece).map((s): Line => ({ piece, path: s.path, tool: "groover", key: [] })),
  ]);
  const setting = (l: Line): string => settingOf(fromEdge(l.piece, l.path), input);
  return grouped(lines, (l) => `${l.tool} ${setting(l)}`).map((g, i) => ({
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
  const away = grouped(seams, ({ piece, s }) => settingOf(fromEdge(piece, s.path), input)).map((same) => ({
    names: namesOf(same.map((one) => one.piece)),
    says: settingOf(fromEdge(same[0]!.piece, same[0]!.s.path), input),
  }));
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
      ...(seam ? [`${sayValue(seam.pitchAsked, "pitch", input.units)} from hole to hole`] : []),
      ...away.map((a) => (away.length > 1 ? `${a.names} ${a.says}` : a.says)),
    ].join("; "),
    amount,
    after: [],
    serves: g.flatMap(({ piece, it: hole }) => served("hole", piece.id, hole.id)),
  };
}
