// One die for one piece, before anything is drawn.
import type { Piece } from "../model/piece.ts";
import { leaf, type Quantity } from "../model/quantity.ts";
import { type Rating, readForce } from "../trade/force.ts";
import type { DieFeature } from "./feature.ts";
import { dieFeatures } from "./features.ts";
import { dieLoad, loadPerLength, piecesPerStroke } from "./press.ts";
import { type Price, priceOf } from "./price.ts";
import { type RulePath, rulePaths } from "./rulePaths.ts";
import type { DieSettings } from "./settings.ts";
import { type Axis, mirrorAxis } from "./symmetry.ts";

export type Die = {
  readonly piece: Piece;
  readonly settings: DieSettings;
  readonly features: readonly DieFeature[];
  /** The outline's rule first. */
  readonly rules: readonly RulePath[];
  /** What the press must push, N. */
  readonly load: Quantity;
  /** What each millimetre of rule takes of it, N. */
  readonly perLength: Quantity;
  /** Set when the order says what the press is rated for. */
  readonly press?: { readonly rating: Rating; readonly pieces: Quantity };
  /** About which what the die cuts is its own mirror image. */
  readonly axis?: Axis;
  /** What the die costs by the order's prices; set when it has any, and a currency. */
  readonly price?: Price;
};

/** The rating in the settings, or undefined: none was given, or it can't be read (the order's reader says so). */
function ratingOf(settings: DieSettings): Rating | undefined {
  const read = settings.press === "" ? undefined : readForce(settings.press);
  return read?.ok ? read.value : undefined;
}

function pressFor(load: Quantity, rating: Rating): NonNullable<Die["press"]> {
  const rated = leaf("press rating", rating.newtons, "force", { kind: "given", where: "die.press" });
  return { rating, pieces: piecesPerStroke(load, rated) };
}

/**
 * The die of a piece: what it cuts, its rules as lines and arcs, what the press must push for leather of
 * the given thickness (the piece's thickest place unless said), and whether it is its own mirror image.
 */
export function dieFor(piece: Piece, settings: DieSettings, thickness?: Quantity): Die {
  const features = dieFeatures(piece, settings);
  const rules = rulePaths(features);
  const thick =
    thickness ??
    leaf("leather thickness", piece.leather.thickest, "thickness", {
      kind: "article",
      source: "its thickest place",
    });
  const perLength = loadPerLength(thick, settings.shear);
  const load = dieLoad(rules, perLength, settings);
  const rating = ratingOf(settings);
  const [outline, ...inner] = rules.map(({ path }) => path);
  const axis = mirrorAxis(outline!, inner);
  const price = priceOf(rules, settings);
  return {
    piece,
    settings,
    features,
    rules,
    load,
    perLength,
    ...(rating ? { press: pressFor(load, rating) } : {}),
    ...(axis ? { axis } : {}),
    ...(price ? { price } : {}),
  };
}
