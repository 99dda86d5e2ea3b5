import { boundsOf } from "../../geometry/bounds.ts";
import type { Point } from "../../geometry/path.ts";
import type { Join } from "../../model/article.ts";
import type { Piece } from "../../model/piece.ts";
import { widthAcross } from "../measure/chords.ts";
import { pieceOf } from "../measure/sound.ts";
import { orderLength, sayLength } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

/** Leather gives a little: a strap this much wider still goes through; common practice, no source. */
const GIVES_MM = 0.3;
/** Narrower than this under the inside, a strap wanders in its buckle: 2 mm, 1 mm under 5/8 in. */
const WANDERS_MM = 2;
const WANDERS_SMALL_MM = 1;
const SMALL_BUCKLE_MM = (25.4 * 5) / 8;
/** Widths are measured on outlines followed within 0.001 mm on either side. */
const SLACK_MM = 0.005;
/** A billet is measured at every place this far apart. */
const EVERY_MM = 2;

type Buckle = Extract<Join, { kind: "strap in buckle" }>;

/** Where the strap lies in its buckle, and what must pass through the buckle to get there: an end up to its last hole. */
function placesOf(piece: Piece): { readonly lies: readonly Point[]; readonly passes: readonly Point[] } {
  const box = boundsOf(piece.outline);
  const folds = piece.turnBacks
    .filter((t) =>
      piece.cutouts.some(
        (c) =>
          c.use === "tongue slot" &&
          boundsOf(c.outline).minX < t.centre &&
          boundsOf(c.outline).maxX > t.centre,
      ),
    )
    .map((t): Point => [t.centre, 0]);
  const holes = piece.holes.filter((h) => h.use === "buckle").map((h) => h.at);
  const passes = [box.minX, box.maxX].flatMap((end) => {
    const nearer = holes.filter(([x]) => Math.abs(end - x) <= (box.maxX - box.minX) / 2);
    const innermost = Math.max(0, ...nearer.map(([x]) => Math.abs(end - x)));
    const count = Math.ceil(innermost / EVERY_MM);
    const way = end === box.minX ? 1 : -1;
    return Array.from({ length: count }, (_, n): Point => [end + (way * innermost * (n + 0.5)) / count, 0]);
  });
  const lies = [...folds, ...holes];
  return lies.length > 0 ? { lies, passes } : { lies: [[(box.minX + box.maxX) / 2, 0]], passes: [] };
}

type Measured = { readonly at: Point; readonly width: number };
const measured = (piece: Piece, places: readonly Point[]): readonly Measured[] =>
  places.flatMap((at) => {
    const width = widthAcross(piece.outline, at);
    return width === undefined ? [] : [{ at, width: width - (piece.edgeLoss ?? 0) }];
  });

/** A change of the strap's own width surely mends it; of another dimension it isn't known which way. */
const widthTo = (join: Buckle, width: number): Pick<Remark, "change"> =>
  /(^|[.-])width$/.test(join.dimension)
    ? { change: { dimension: join.dimension, value: orderLength(width) } }
    : {};

function fits(piece: Piece, join: Buckle, context: Context): readonly Remark[] {
  const { lies, passes } = placesOf(piece);
  const seats = [...measured(piece, lies)].sort((a, b) => a.width - b.width);
  const widest = [...measured(piece, [...lies, ...passes])].sort((a, b) => b.width - a.width)[0];
  const narrowest = seats[0];
  const least = join.inside - (join.inside < SMALL_BUCKLE_MM - SLACK_MM ? WANDERS_SMALL_MM : WANDERS_MM);
  const say = (mm: number): string => sayLength(mm, context);
  const about = (m: Measured, severity: "error" | "caution", words: string, limit: string): Remark => ({
    severity,
    piece: piece.id,
    place: `in the ${join.buckle}`,
    at: m.at,
    message: `${piece.name} is ${say(m.width)} wide where it goes through the ${join.buckle}, ${words}.`,
    value: say(m.width),
    limit,
    mend: `Change ${join.dimension}, or choose a buckle of the strap's width.`,
    ...widthTo(join, join.inside),
  });
  if (widest && widest.width > join.inside + GIVES_MM + SLACK_MM) {
    return [
      about(
        widest,
        "error",
        `and the buckle is only ${say(join.inside)} inside`,
        `at most ${say(join.inside + GIVES_MM)}`,
      ),
    ];
  }
  if (narrowest && narrowest.width < least - SLACK_MM) {
    return [
      about(narrowest, "caution", `loose in a buckle ${say(join.inside)} inside`, `at least ${say(least)}`),
    ];
  }
  return [];
}

/** A strap, its edges finished, goes through its buckle and isn't lost in it; measured on the drawn outline. */
export const strapInBuckle = rule(
  "strap-in-buckle",
  "a strap fits its buckle where it passes through",
  (job, context) =>
    job.joins.flatMap((join) => {
      const piece = join.kind === "strap in buckle" ? pieceOf(job, join.piece) : undefined;
      return piece && join.kind === "strap in buckle" ? fits(piece, join, context) : [];
    }),
);
