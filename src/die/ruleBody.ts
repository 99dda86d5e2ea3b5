// A rule has a thickness: where it stands beside its cutting edge depends on which side it is ground.
import { signedArea } from "../geometry/area.ts";
import { offsetPath } from "../geometry/offset.ts";
import type { Path } from "../geometry/path.ts";
import type { RulePath } from "./rulePaths.ts";
import type { DieSettings } from "./settings.ts";

/** The share of a rule's thickness that stands on the leather's side of its cutting edge. */
export function bodyShare(bevel: DieSettings["bevel"]): number {
  if (bevel === "centre") return 0.5;
  return bevel === "leather side" ? 1 : 0;
}

/** The steel of both rules that stands between two edges that face each other across leather or waste, mm. */
export function steelBetween(across: "leather" | "waste", settings: DieSettings): number {
  const share = bodyShare(settings.bevel);
  return 2 * settings.ruleThickness.value * (across === "leather" ? share : 1 - share);
}

/** Both faces of a rule: on the side of the leather that is kept, and on the side of the waste. */
export type RuleFaces = { readonly leather: readonly Path[]; readonly waste: readonly Path[] };

/**
 * The lines along both faces of a bent rule below its ground edge, for a board that is cut for it: the cutting
 * edge offset by the share of the thickness on either side. Convex corners come out rounded; a rule is joined
 * there.
 */
export function ruleFaces({ kind, path }: RulePath, settings: DieSettings): RuleFaces {
  const thickness = settings.ruleThickness.value;
  // A notch has leather on both sides.
  if (kind === "notch")
    return { leather: [0.5, -0.5].flatMap((k) => offsetPath(path, k * thickness)), waste: [] };
  const share = bodyShare(settings.bevel);
  // The outline has its leather inside, a slot and a tube outside.
  const inward = signedArea(path) > 0 ? 1 : -1;
  const toLeather = kind === "outline" ? inward : -inward;
  return {
    leather: offsetPath(path, toLeather * share * thickness),
    waste: offsetPath(path, -toLeather * (1 - share) * thickness),
  };
}
