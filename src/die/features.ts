// Each thing on a piece: what the die cuts, and what is left for hand and bench.

import { boundsOf, unionBox } from "../geometry/bounds.ts";
import { circlePath, line, openPath, type Path, type Point, polyline } from "../geometry/path.ts";
import type { Cutout, Fold, Hole, Mark, Piece, SeamLine, Zone } from "../model/piece.ts";
import { printNumber } from "../units/index.ts";
import * as trig from "../units/trigonometry.ts";
import { clearWidth } from "./clearWidth.ts";
import type { DieFeature, FeatureKind } from "./feature.ts";
import { lettered } from "./letters.ts";
import { longSide } from "./longSide.ts";
import { notchInDie } from "./notch.ts";
import type { DieSettings } from "./settings.ts";
import { SHORT_MM } from "./short.ts";

const mm = (value: number): string => `${printNumber(value, 2)} mm`;
const IN = "in the die" as const;
const BY_HAND = "by hand afterwards" as const;

function middleOf(path: Path): Point {
  const { minX, minY, maxX, maxY } = boundsOf(path);
  return [(minX + maxX) / 2, (minY + maxY) / 2];
}

const outlineFeature = (piece: Piece): DieFeature => ({
  id: "outline",
  kind: "outline",
  made: IN,
  why: "the rule follows it",
  at: middleOf(piece.outline),
  paths: [piece.outline],
  holes: [],
});

/** A slot is as wide as its drawn outline: what it is said to be does not bend a rule. */
function cutoutFeature(cutout: Cutout, settings: DieSettings): DieFeature {
  const width = clearWidth(cutout.outline);
  const least = settings.leastSlot.value;
  const fits = width >= least - SHORT_MM;
  const { length, width: over, angle } = longSide(cutout.outline);
  const slot = cutout.width !== undefined;
  return {
    id: cutout.id,
    kind: slot ? "slot" : "opening",
    made: fits ? IN : BY_HAND,
    why: fits
      ? "wide enough for the rule"
      : `${mm(slot ? over : width)} wide, and the rule is bent to ${mm(least)} at the narrowest`,
    at: middleOf(cutout.outline),
    size: { length, width: over },
    ...(slot ? { angle } : {}),
    paths: [cutout.outline],
    holes: [cutout.id],
  };
}

function roundFeature(hole: Hole, settings: DieSettings): DieFeature {
  const staple = hole.kind === "staple";
  const least = settings.leastTube.value;
  const fits = !staple && hole.size >= least - SHORT_MM;
  const small = `${mm(hole.size)} across, and the smallest tube is ${mm(least)}`;
  return {
    id: hole.id,
    kind: staple ? "staple hole" : "round hole",
    made: fits ? IN : BY_HAND,
    why: fits ? "a tube" : staple ? "made when the hardware is set" : small,
    at: hole.at,
    size: { diameter: hole.size },
    paths: [circlePath(hole.at, hole.size / 2)],
    holes: [hole.id],
  };
}

/** An awl slit from end to end. */
function slit({ at: [x, y], size, angle }: Hole): Path {
  const [dx, dy] = [(trig.cos(angle) * size) / 2, (trig.sin(angle) * size) / 2];
  return openPath([x - dx, y - dy], [line([x + dx, y + dy])]);
}

/** How a hole that is pricked or sewn through is drawn: a slit, or round where it was punched. */
const holePath = (hole: Hole): Path =>
  hole.kind === "awl" ? slit(hole) : circlePath(hole.at, hole.size / 2);

function rowFeature(id: string, holes: readonly Hole[]): DieFeature {
  const stitched = holes.some(({ use }) => use === "stitch");
  const paths = holes.map(holePath);
  const { minX, minY, maxX, maxY } = unionBox(paths.map(boundsOf));
  return {
    id,
    kind: stitched ? "stitch holes" : "awl holes",
    made: BY_HAND,
    why: `${holes.length} ${holes.length === 1 ? "hole" : "holes"}, pricked${stitched ? " and sewn" : ""}`,
    at: [(minX + maxX) / 2, (minY + maxY) / 2],
    paths,
    holes: holes.map((h) => h.id),
  };
}

/** Holes for stitches, and all that an awl makes. */
const isPricked = ({ kind, use }: Hole): boolean => kind === "awl" || use === "stitch";

/** What holes of one row have in common: "left.box" of "left.box.12". */
const rowName = (id: string): string => (/\.\d+$/.test(id) ? id.slice(0, id.lastIndexOf(".")) : id);

/** A row of stitches is one feature; a hole may belong to two rows and is named by the first. */
function rowFeatures(seams: readonly SeamLine[], holes: readonly Hole[]): readonly DieFeature[] {
  const left = new Map(holes.filter(isPricked).map((h) => [h.id, h]));
  const rows: DieFeature[] = [];
  for (const seam of seams) {
    const own = seam.holes.flatMap((id) => left.get(id) ?? []);
    for (const hole of own) left.delete(hole.id);
    if (own.length > 0) rows.push(rowFeature(seam.id, own));
  }
  const others = new Map<string, Hole[]>();
  for (const hole of left.values()) {
    const name = rowName(hole.id);
    others.set(name, [...(others.get(name) ?? []), hole]);
  }
  return [...rows, ...[...others].map(([name, own]) => rowFeature(name, own))];
}

const byHand = (id: string, kind: FeatureKind, why: string, path: Path): DieFeature => ({
  id,
  kind,
  made: BY_HAND,
  why,
  at: middleOf(path),
  paths: [path],
  holes: [],
});

const MARK_WHY = {
  crease: "pressed, not cut",
  notch: "mark, flesh side",
  clip: "cut when the edge is turned",
} as const;

/** Centre lines and places of other pieces are only drawn; nobody makes them. */
const markFeatures = (marks: readonly Mark[]): readonly DieFeature[] =>
  marks.flatMap(({ id, kind, path }) =>
    kind === "centre" || kind === "place" ? [] : [byHand(id, kind, MARK_WHY[kind], path)],
  );

const ZONE_WHY = {
  skive: "thinned on the flesh side",
  tooling: "tooled on the grain side",
  glue: "glued",
  trim: "cut off after it is put together",
} as const;

const zoneFeatures = (zones: readonly Zone[]): readonly DieFeature[] =>
  zones.flatMap(({ id, kind, outline }) =>
    kind === "keeper" || kind === "overlap" ? [] : [byHand(id, kind, ZONE_WHY[kind], outline)],
  );

const foldFeatures = (folds: readonly Fold[]): readonly DieFeature[] =>
  folds.map(({ id, from, to, label }) => byHand(id, "fold", label, polyline([from, to])));

/**
 * Everything on the piece that somebody makes, each once, marked "in the die" or "by hand afterwards" with the
 * reason. In the die: the outline, slots and openings that are wide enough for the rule, round holes that are
 * large enough for a tube, and notches where the order says so. By hand: stitch holes and awl holes (a row is one feature), staple holes, narrower
 * slots, smaller holes, creases, notches, clips, folds, skived, tooled, glued and trimmed zones. Round holes,
 * staple holes, slots and openings carry a letter for each kind and size.
 */
export function dieFeatures(piece: Piece, settings: DieSettings): readonly DieFeature[] {
  const rounds = piece.holes.filter((h) => !isPricked(h)).map((h) => roundFeature(h, settings));
  const cutouts = piece.cutouts.map((c) => cutoutFeature(c, settings));
  const notches =
    settings.notches === "in the die" ? piece.marks.flatMap((m) => notchInDie(m, piece.outline) ?? []) : [];
  const left = piece.marks.filter(({ id }) => !notches.some((n) => n.id === id));
  return [
    outlineFeature(piece),
    ...lettered([...rounds, ...cutouts, ...notches]),
    ...rowFeatures(piece.seams, piece.holes),
    ...markFeatures(left),
    ...foldFeatures(piece.folds),
    ...zoneFeatures(piece.zones),
  ];
}
