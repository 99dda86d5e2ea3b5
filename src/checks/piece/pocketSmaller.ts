import { containsPath, containsPoint } from "../../geometry/contains.ts";
import { distanceBetween, distanceToPath } from "../../geometry/distance.ts";
import { closedPath, line, openPath, type Path, type Point } from "../../geometry/path.ts";
import type { Fold, Piece, SeamLine } from "../../model/piece.ts";
import { holeShape, shapesOverlap } from "../measure/shapes.ts";
import { measurable } from "../measure/sound.ts";
import { sayLength } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

/** A pocket's edge keeps this far from other seams, from bends and from hardware, mm; common practice, no source. */
export const POCKET_CLEAR_MM = 3;
/** Lengths that should be equal come out a hair off. */
const SLACK_MM = 1e-6;
const JOINS = "pocket to ";
const POCKET = "pocket";
const MEND =
  "Make the pocket narrower or lower, or put it elsewhere: change pieces.pocket.width, pieces.pocket.height or pieces.pocket.rise.";

const isPocketSeam = (s: SeamLine): boolean => s.joins?.startsWith(JOINS) === true;

/** Where the pocket lies on a panel: its marked edge, or what its seam encloses and the seam's inset more. */
type Place = { readonly edge: Path; readonly beyond: number };

function placeOn(panel: Piece): Place | undefined {
  const seams = panel.seams.filter(isPocketSeam);
  const [first, ...rest] = seams;
  if (!first) return undefined;
  const mark = panel.marks.find((m) => m.id === `${POCKET}.place` && m.path.closed);
  if (mark) return { edge: mark.path, beyond: 0 };
  const segments = [first, ...rest].flatMap(({ path }, i) =>
    i === 0 ? path.segments : [line(path.start), ...path.segments],
  );
  return { edge: closedPath(first.path.start, segments), beyond: first.inset };
}

type Near = { readonly what: string; readonly at: Point; readonly gap: number };

/** Half of what a bend takes of the flat leather. */
const halfBend = ({ bend }: Fold): number =>
  bend ? (bend.angle * (bend.inner + bend.neutral * bend.thickness)) / 2 : 0;

/** Everything of the panel that the pocket's edge must keep clear of, with the gap that is left. */
function neighbours(panel: Piece, { edge, beyond }: Place): readonly Near[] {
  const gapTo = (path: Path): number =>
    (path.closed || path.segments.length > 0
      ? distanceBetween(edge, path)
      : distanceToPath(path.start, edge)) - beyond;
  const inside = (path: Path): boolean => containsPoint(edge, path.start);
  const seams = panel.seams
    .filter((s) => !isPocketSeam(s))
    .map((s) => ({ what: `the seam ${s.id}`, path: s.path, less: 0 }));
  const folds = panel.folds.map((f) => ({
    what: `the ${f.label}`,
    path: openPath(f.from, [line(f.to)]),
    less: halfBend(f),
  }));
  return [...seams, ...folds].map(({ what, path, less }) => ({
    what,
    at: path.start,
    gap: inside(path) ? 0 : Math.max(0, gapTo(path) - less),
  }));
}

/** Hardware that the pocket would cover: it could be neither set nor used. */
function covered(panel: Piece, { edge }: Place): readonly Near[] {
  const holes = panel.holes
    .filter((h) => h.use === "stud")
    .map((h) => ({ what: `the hole ${h.id}`, at: h.at, shape: holeShape(h) }));
  const cutouts = panel.cutouts.map((c) => ({
    what: `the ${c.use} ${c.id}`,
    at: c.outline.start,
    shape: c.outline,
  }));
  return [...holes, ...cutouts]
    .filter(({ shape }) => shapesOverlap(shape, edge))
    .map(({ what, at }) => ({ what, at, gap: 0 }));
}

function faults(panel: Piece, place: Place, context: Context): readonly Remark[] {
  const about = { severity: "error", piece: panel.id, place: "pocket", mend: MEND } as const;
  const over: readonly Remark[] = containsPath(panel.outline, place.edge)
    ? []
    : [
        {
          ...about,
          at: place.edge.start,
          message: `The pocket runs over the edge of ${panel.name}.`,
          value: "over the edge",
          limit: `wholly on ${panel.name}`,
        },
      ];
  const say = (mm: number): string => sayLength(mm, context);
  const near = neighbours(panel, place)
    .filter(({ gap }) => gap < POCKET_CLEAR_MM - SLACK_MM)
    .map(
      ({ what, at, gap }): Remark => ({
        ...about,
        at,
        message:
          gap === 0
            ? `The pocket lies over ${what} of ${panel.name}.`
            : `The pocket's edge lies ${say(gap)} from ${what} of ${panel.name}; it needs ${say(POCKET_CLEAR_MM)}.`,
        value: say(gap),
        limit: `at least ${say(POCKET_CLEAR_MM)}`,
      }),
    );
  const hidden = covered(panel, place).map(
    ({ what, at }): Remark => ({
      ...about,
      at,
      message: `The pocket covers ${what} of ${panel.name}.`,
      value: "covered",
      limit: "clear of the pocket",
    }),
  );
  return [...over, ...near, ...hidden];
}

/** A pocket lies wholly on its panel, clear of the panel's own seams, of bends and of the closure. */
export const pocketSmaller = rule(
  "pocket-smaller",
  "a pocket lies on its panel, clear of its seams, folds and closure",
  (job, context) =>
    measurable(job).flatMap((piece) => {
      const place = piece.id === POCKET ? undefined : placeOn(piece);
      return place ? faults(piece, place, context) : [];
    }),
);
