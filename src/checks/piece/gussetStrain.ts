import type { Path } from "../../geometry/path.ts";
import type { Gather, Made } from "../../model/article.ts";
import type { SuggestedChange } from "../../model/finding.ts";
import type { Piece } from "../../model/piece.ts";
import { GATHER_CAUTION, GATHER_CAUTION_WET, GATHER_ERROR, leastCornerRadius } from "../../trade/gusset.ts";
import { type Bending, bendings } from "../measure/sharpest.ts";
import { pieceOf } from "../measure/sound.ts";
import { orderLength, sayLength, sayShare } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

/** A strain that lies on its limit by rounding is within it. */
const SLACK = 1e-6;
/** Radii that differ by less are one corner's, mm. */
const ALIKE_MM = 0.01;
/** What a new radius is rounded up to, mm. */
const STEP_MM = 0.1;
/** What sets the shape of a body's corners, and how far in the gusset's web stands. */
const MADE = "bag.made";
const CORNERS = "pieces.body.corners";
const FLANGE = "bag.flange";

type About = {
  readonly join: Gather;
  readonly body: Piece;
  readonly gusset: Piece;
  readonly context: Context;
};

/** Strain of the web round a seam of this radius: what the web lies further in, as a share of it. */
const strainAt = ({ fold, thickness, inset }: Gather, radius: number): number =>
  (fold + thickness / 2 - inset) / radius;

/** The least radius of the body's corner for a strain, up to the next 0.1 mm. */
function leastFor(join: Gather, limit: number): number {
  const { value } = leastCornerRadius(join.fold, join.thickness, join.inset, limit);
  return Math.ceil(value / STEP_MM - SLACK) * STEP_MM;
}

/** A change that takes the strain away: a round corner for a sharp one, or a wider one where there is room for it. */
function changeFor(
  { join }: About,
  places: readonly Bending[],
  least: number,
): { readonly change?: SuggestedChange } {
  const [first] = places;
  if (places.some((p) => p.radius === 0)) {
    // A bag with no room for the least round corner can't have a flanged gusset.
    const tightest = leastFor(join, GATHER_ERROR) - join.inset;
    const turns = places.some((p) => p.room < tightest);
    return {
      change: turns ? { dimension: MADE, value: "turned gusset" } : { dimension: CORNERS, value: "round" },
    };
  }
  const alike = places.every((p) => Math.abs(p.radius - first!.radius) <= ALIKE_MM);
  const fits = places.every((p) => least - join.inset - p.radius <= p.room);
  return alike && fits ? { change: { dimension: join.dimension, value: orderLength(least) } } : {};
}

function remark(about: About, places: readonly Bending[], limit: number): Remark {
  const { join, body, gusset, context } = about;
  const sharpest = places.reduce((a, b) => (b.radius < a.radius ? b : a));
  const strain = strainAt(join, sharpest.radius);
  const error = strain > GATHER_ERROR + SLACK;
  const least = leastFor(join, limit);
  const radius = sayLength(least, context);
  const corner =
    sharpest.radius === 0
      ? `a sharp corner of ${body.name}`
      : `a corner of ${body.name} of radius ${sayLength(sharpest.radius + join.inset, context)}`;
  const much =
    sharpest.radius === 0
      ? `The web of ${gusset.name} can't be gathered round ${corner}`
      : `The web of ${gusset.name} gathers ${sayShare(strain)} round ${corner}; over ${sayShare(error ? GATHER_ERROR : limit)} it ${error ? "can't be sewn flat" : "shows pleats"}`;
  const make =
    sharpest.radius === 0 ? `Round the corners (${CORNERS}), with a radius` : "Make the corner's radius";
  return {
    severity: error ? "error" : "caution",
    piece: gusset.id,
    place: `seam to ${body.name}`,
    at: sharpest.at,
    message: `${much}. For ${sayShare(limit)} the corner's radius is at least ${radius}.`,
    value: sharpest.radius === 0 ? "a sharp corner" : sayShare(strain),
    limit: `at most ${sayShare(error ? GATHER_ERROR : limit)}`,
    mend: `${make} ${radius} or more (${join.dimension}), or bring the web nearer the edge (${FLANGE}), use thinner leather (leather.gusset.thickness), wet-mould it (bag.wet-moulded: yes), or stitch it inside out (${MADE}: turned gusset).`,
    ...changeFor(about, places, least),
  };
}

function gathered(about: About): readonly Remark[] {
  const { join, body } = about;
  const runs = join.seams.flatMap((id): Path[] => {
    const seam = body.seams.find((s) => s.id === id);
    return seam ? [seam.path] : [];
  });
  const limit = join.wetMoulded ? GATHER_CAUTION_WET : GATHER_CAUTION;
  const places = bendings(runs).filter((b) => strainAt(join, b.radius) > limit + SLACK);
  return places.length > 0 ? [remark(about, places, limit)] : [];
}

const gathersOf = (job: Made, context: Context): readonly About[] =>
  job.joins.flatMap((join): readonly About[] => {
    if (join.kind !== "gather") return [];
    const [gusset, body] = [pieceOf(job, join.gusset), pieceOf(job, join.body)];
    return gusset && body ? [{ join, gusset, body, context }] : [];
  });

/** The web of a flanged gusset, further in than its seam, isn't gathered too much where the drawn seam bends. */
export const gussetStrain = rule(
  "gusset-strain",
  "a flanged gusset's web gathers no more than its leather takes round the body's corners",
  (job, context) => gathersOf(job, context).flatMap(gathered),
);
