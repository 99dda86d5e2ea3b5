import { signedArea } from "../../geometry/area.ts";
import { containsPath } from "../../geometry/contains.ts";
import { type CornerTurn, cornerTurns } from "../../geometry/corners.ts";
import { selfCrossings } from "../../geometry/crossing.ts";
import { pathLength } from "../../geometry/length.ts";
import { endPoint, type Path, type Point, SAME_POINT_MM, withStarts } from "../../geometry/path.ts";
import type { Piece } from "../../model/piece.ts";
import { OUTLINE, ROUGH } from "../measure/drawn.ts";
import { withoutNumbers } from "../measure/sound.ts";
import { say, sayLength } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

/** A turn sharper than this is a corner; a knife following the line shows it. 1°. */
const CORNER_RAD = Math.PI / 180;
/** A named corner lies this near the outline's own; both are written by the same hand. */
const CORNER_AT_MM = 0.01;
/** A shape thinner than this on the whole can't be cut out; mm. */
const THINNEST_MM = 1;

const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
const MEND =
  "Don't cut: the drawing is unsound. Change the measures that shape this edge, or report it with the order.";

type About = { readonly piece: Piece; readonly place: string; readonly context: Context };
const fault = (
  { piece, place }: About,
  message: string,
  value: string,
  limit: string,
  at?: Point,
): Remark => ({
  severity: "error",
  piece: piece.id,
  place,
  ...(at ? { at } : {}),
  message: `The ${place} of ${piece.name} ${message}.`,
  value,
  limit,
  mend: MEND,
});

/** Ends that don't meet, and arcs whose ends lie at different distances from their middle. */
function joinedUp(path: Path, about: About): readonly Remark[] {
  const gap = apart(endPoint(path), path.start);
  const open = !path.closed || gap > SAME_POINT_MM;
  const arcs = withStarts(path).filter(
    ({ from, segment }) =>
      segment.kind === "arc" &&
      Math.abs(apart(from, segment.centre) - apart(segment.to, segment.centre)) > SAME_POINT_MM,
  );
  return [
    ...(open
      ? [
          fault(
            about,
            `is not closed: its ends lie ${sayLength(gap, about.context)} apart`,
            sayLength(gap, about.context),
            "closed",
            path.start,
          ),
        ]
      : []),
    ...arcs.map(({ from }) =>
      fault(
        about,
        "has an arc whose two ends lie at different distances from its middle",
        "not an arc",
        "an arc",
        from,
      ),
    ),
  ];
}

/** Crossings, thinness, direction: what a closed path must not have. */
function simple(path: Path, about: About): readonly Remark[] {
  const crossed = selfCrossings(path);
  if (crossed.length > 0)
    return crossed.map((at) => fault(about, "crosses or touches itself", "crossed", "no crossing", at));
  const area = signedArea(path);
  const thin = (2 * Math.abs(area)) / pathLength(path);
  if (!(thin >= THINNEST_MM)) {
    return [
      fault(
        about,
        `encloses next to nothing: ${say(Math.abs(area), "area", about.context)}`,
        `${sayLength(thin, about.context)} across`,
        `at least ${sayLength(THINNEST_MM, about.context)} across`,
        path.start,
      ),
    ];
  }
  return area < 0
    ? [fault(about, "runs clockwise, inside out", "clockwise", "anticlockwise", path.start)]
    : [];
}

const named = (piece: Piece, { at }: CornerTurn): boolean =>
  piece.corners.some((c) => apart(c.at, at) <= CORNER_AT_MM);

/** Corners without a name, and names without a place on the outline. */
function corners(piece: Piece, about: About): readonly Remark[] {
  const turns = cornerTurns(piece.outline);
  const unnamed = turns.filter((t) => Math.abs(t.turn) > CORNER_RAD && !named(piece, t));
  const lost = piece.corners.filter((c) => !turns.some((t) => apart(t.at, c.at) <= CORNER_AT_MM));
  return [
    ...unnamed.map((t) => {
      const angle = say(Math.abs(t.turn), "angle", about.context);
      return fault(
        about,
        `has a corner of ${angle} where the edge should run on smoothly`,
        angle,
        `at most ${say(CORNER_RAD, "angle", about.context)}`,
        t.at,
      );
    }),
    ...lost.map((c) =>
      fault(about, `has no corner where its ${c.name} is said to be`, "no corner", c.name, c.at),
    ),
  ];
}

/** The line to cut roughly first must leave the whole piece inside it. */
function roughInside(piece: Piece, context: Context): readonly Remark[] {
  if (!piece.rough?.closed || !piece.outline.closed || containsPath(piece.rough, piece.outline)) return [];
  return [
    fault(
      { piece, place: ROUGH, context },
      "cuts into the piece",
      "across the edge",
      "outside the edge",
      piece.rough.start,
    ),
  ];
}

/** Outlines and cutouts closed, simple, not degenerate, anticlockwise; outlines with corners only where named. */
export const outlineSound = rule(
  "outline-sound",
  "edges are closed, cross nothing, enclose leather and turn corners only where a corner is meant",
  (job, context) =>
    job.pieces
      .filter((piece) => withoutNumbers(piece).length === 0)
      .flatMap((piece) => {
        const paths: readonly (readonly [string, Path])[] = [
          [OUTLINE, piece.outline],
          ...(piece.rough ? [[ROUGH, piece.rough] as const] : []),
          ...piece.cutouts.map((c) => [`${c.use} ${c.id}`, c.outline] as const),
        ];
        const found = paths.flatMap(([place, path]) => {
          const about = { piece, place, context };
          const ends = joinedUp(path, about);
          return ends.length > 0 ? ends : simple(path, about);
        });
        return [
          ...found,
          ...corners(piece, { piece, place: OUTLINE, context }),
          ...roughInside(piece, context),
        ];
      }),
);
