// The piece as a die maker sees it: wide lines are in the die, narrow ones are not.

import type { Die } from "../../die/die.ts";
import type { DieFeature, FeatureKind } from "../../die/feature.ts";
import { boundsOf } from "../../geometry/bounds.ts";
import { type Box, type Point, polyline } from "../../geometry/path.ts";
import { leftOf, plus, polar, scaled } from "../../geometry/vector.ts";
import { clipped } from "../../layout/clip.ts";
import * as trig from "../../units/trigonometry.ts";
import type { Layer, LineType, Stroke } from "../picture.ts";
import { grownBy } from "../piece/space.ts";
import { CROSS_BEYOND_MM, stroke } from "../piece/strokes.ts";
import { scaledPath } from "../sheet/scale.ts";

type Look = { readonly layer: Layer; readonly line: LineType };

/** Lines of what is made by hand: all narrow (ISO 128-2: .1). */
export const BY_HAND_LOOKS: Readonly<Record<FeatureKind, Look>> = {
  outline: { layer: "cut", line: "01.2" },
  slot: { layer: "cut", line: "01.1" },
  opening: { layer: "cut", line: "01.1" },
  "round hole": { layer: "hole", line: "01.1" },
  "staple hole": { layer: "hole", line: "01.1" },
  "stitch holes": { layer: "stitch", line: "01.1" },
  "awl holes": { layer: "stitch", line: "01.1" },
  crease: { layer: "mark", line: "03.1" },
  notch: { layer: "cut", line: "01.1" },
  clip: { layer: "cut", line: "01.1" },
  skive: { layer: "skive", line: "07.1" },
  tooling: { layer: "mark", line: "07.1" },
  glue: { layer: "mark", line: "07.1" },
  trim: { layer: "mark", line: "08.1" },
  fold: { layer: "fold", line: "02.1" },
};

/** The centre line passes the outline by this much on paper, mm; its sign is two short strokes at each end. */
const AXIS_BEYOND_MM = 4;
const SIGN_HALF_MM = 1.5;
const SIGN_APART_MM = 0.8;

/** All lines are drawn `k` times as large as the piece, about its own origin. */
const byK = (k: number) => ({ x: k, y: k });

function byHandStrokes({ id, kind, paths }: DieFeature, k: number): readonly Stroke[] {
  const { layer, line } = BY_HAND_LOOKS[kind];
  // A row of holes is many paths under one name; only a single path carries it.
  const name = paths.length === 1 ? `${kind.replaceAll(" ", "-")}.${id}` : undefined;
  return paths.map((path) => stroke(layer, line, scaledPath(path, byK(k)), name));
}

/** A hole's two centre lines. */
function crossStrokes({ at, size }: DieFeature, k: number): readonly Stroke[] {
  if (!size || !("diameter" in size)) return [];
  const [x, y] = scaled(at, k);
  const arm = (size.diameter / 2) * k + CROSS_BEYOND_MM;
  const level = polyline([
    [x - arm, y],
    [x + arm, y],
  ]);
  const upright = polyline([
    [x, y - arm],
    [x, y + arm],
  ]);
  return [stroke("mark", "04.1", level), stroke("mark", "04.1", upright)];
}

/** The line about which the die is its own mirror image, with the sign of symmetry (ISO 128, from memory). */
function axisStrokes({ axis }: Die, box: Box, k: number): readonly Stroke[] {
  if (!axis) return [];
  const at = scaled(axis.at, k);
  const far = box.maxX - box.minX + box.maxY - box.minY + 1;
  const line = clipped(
    [polar(at, -far, axis.angle), polar(at, far, axis.angle)],
    grownBy(box, AXIS_BEYOND_MM),
  );
  if (!line) return [];
  const along: Point = [trig.cos(axis.angle), trig.sin(axis.angle)];
  const aside = scaled(leftOf(along), SIGN_HALF_MM);
  const sign = (end: Point, inward: number): readonly Stroke[] =>
    [0, SIGN_APART_MM].map((from) => {
      const foot = plus(end, scaled(along, inward * (from + 0.4)));
      return stroke("mark", "01.1", polyline([plus(foot, aside), plus(foot, scaled(aside, -1))]));
    });
  return [stroke("mark", "04.1", polyline(line), "axis"), ...sign(line[0], 1), ...sign(line[1], -1)];
}

/** The outline's box at this scale. */
export const outlineBox = ({ rules }: Die, k: number): Box => boundsOf(scaledPath(rules[0]!.path, byK(k)));

/** Everything on the piece at the scale `k`, the outline's rule last. */
export function partStrokes(die: Die, k: number): readonly Stroke[] {
  const byHand = die.features.filter(({ made }) => made === "by hand afterwards");
  const rounds = die.features.filter(({ kind }) => kind === "round hole" || kind === "staple hole");
  const rules = die.rules.map(({ id, kind, path }) =>
    stroke(kind === "tube" ? "hole" : "cut", "01.2", scaledPath(path, byK(k)), `die.${id}`),
  );
  return [
    ...byHand.flatMap((f) => byHandStrokes(f, k)),
    ...rounds.flatMap((f) => crossStrokes(f, k)),
    ...axisStrokes(die, outlineBox(die, k), k),
    ...[...rules].reverse(),
  ];
}
