// How hard the press must push: an estimate, with every allowance by its name.

import { signedArea } from "../geometry/area.ts";
import { leaf, least, named, over, type Quantity, roundedDown, sum, times } from "../model/quantity.ts";
import { printNumber } from "../units/index.ts";
import { closeLength } from "./nearness.ts";
import { type RulePath, ruleLengths } from "./rulePaths.ts";
import type { DieSettings } from "./settings.ts";

/** The load's two ingredients, and the extras where the leather jams. mm, mm², N, N for each mm, N/mm². */
export type LoadParts = {
  readonly ruleLength: Quantity;
  /** Force that a millimetre of rule takes. */
  readonly perLength: Quantity;
  readonly rubberArea: Quantity;
  readonly rubberPressure: Quantity;
  readonly tubeLength?: Quantity;
  readonly smallTubes?: { readonly length: Quantity; readonly extra: Quantity };
  readonly closeRules?: { readonly length: Quantity; readonly extra: Quantity };
};

const FORM =
  "rule × load for each mm + rubber × its pressure: bizfluent.com, How to Calculate Die Cutting Tonnage";
const EXTRA = "a share more where the leather jams; common practice, no source";

const force = (name: string, q: Quantity, source: string): Quantity =>
  named(name, q, { kind: "force", source });

/**
 * Press load in N: rule and tubes × the load for each mm, extras for small tubes and for rules that run close,
 * and the ejection rubber's area × its pressure.
 */
export function pressLoad(parts: LoadParts): Quantity {
  const { ruleLength, perLength, rubberArea, rubberPressure, tubeLength, smallTubes, closeRules } = parts;
  const loads = [
    force("load on the rule", times(ruleLength, perLength), FORM),
    ...(tubeLength ? [force("load on the tubes", times(tubeLength, perLength), FORM)] : []),
    ...(smallTubes
      ? [force("extra for small tubes", times(smallTubes.length, perLength, smallTubes.extra), EXTRA)]
      : []),
    ...(closeRules
      ? [force("extra for close rules", times(closeRules.length, perLength, closeRules.extra), EXTRA)]
      : []),
    force("load on the ejection rubber", times(rubberArea, rubberPressure), FORM),
  ];
  return force("press load", sum(...loads), FORM);
}

/** Force that a millimetre of rule takes, N: leather thickness × shear strength. */
export const loadPerLength = (thickness: Quantity, shear: Quantity): Quantity =>
  named("load for each mm of rule, N", times(thickness, shear), {
    kind: "number",
    source: "cut length × thickness × shear strength: gtproductionsystems.com, Technical Data",
  });

const drawn = (name: string, value: number, kind: "length" | "area", of: string): Quantity =>
  leaf(name, value, kind, { kind: "article", source: `measured on ${of}` });

/** Rubber lies along both sides of the rule; inside, never on more than the piece. */
function rubberArea(rules: readonly RulePath[], ruleLength: Quantity, strip: Quantity): Quantity {
  const outline = rules.find(({ kind }) => kind === "outline");
  const inside = drawn("area of the piece", outline ? signedArea(outline.path) : 0, "area", "the outline");
  const beside: Quantity = { ...times(ruleLength, strip), kind: "area" };
  const within: Quantity = { ...least(inside, beside), kind: "area" };
  return named("area of ejection rubber", sum(within, beside), {
    kind: "area",
    source: "a strip along both sides of the rule: geometry",
  });
}

/** The load of one die on the press, N; `perLength` is what each millimetre of rule takes, N. */
export function dieLoad(rules: readonly RulePath[], perLength: Quantity, settings: DieSettings): Quantity {
  const lengths = ruleLengths(rules);
  const tubes = rules.filter(({ kind }) => kind === "tube");
  const small = ruleLengths(tubes.filter(({ diameter }) => diameter! < settings.smallTube.value)).tubes;
  const close = closeLength(rules, settings.closeRules.value);
  const ruleLength = drawn(
    "length of rule",
    lengths.rule,
    "length",
    rules.some(({ kind }) => kind === "notch")
      ? "outline, slots, openings and notches"
      : "outline, slots and openings",
  );
  return pressLoad({
    ruleLength,
    perLength,
    rubberArea: rubberArea(rules, ruleLength, settings.rubberStrip),
    rubberPressure: settings.rubberPressure,
    ...(lengths.tubes > 0
      ? { tubeLength: drawn("length of tubes' edges", lengths.tubes, "length", "the round holes") }
      : {}),
    ...(small > 0
      ? {
          smallTubes: {
            length: drawn("length of small tubes' edges", small, "length", "the small round holes"),
            extra: settings.smallTubeExtra,
          },
        }
      : {}),
    ...(close > 0
      ? {
          closeRules: {
            length: drawn("length of rules that run close", close, "length", "the rules' distances"),
            extra: settings.closeRulesExtra,
          },
        }
      : {}),
  });
}

/** Load of two dies on one board, N: twice one's, and the extra where rules of the one stand close to the other's. */
export function loadOfBoth(
  load: Quantity,
  perLength: Quantity,
  close: { readonly length: number; readonly extra: Quantity },
): Quantity {
  const source = "each die presses as it would alone; its rubber is counted in full";
  if (!(close.length > 0)) return force("press load of both", times(load, 2), source);
  const length = drawn(
    "length of rules close to the other die's",
    close.length,
    "length",
    "the nested board",
  );
  const extra = force("extra for close rules between the two", times(length, perLength, close.extra), EXTRA);
  return force("press load of both", sum(times(load, 2), extra), source);
}

/** An estimate may take so much of a press's rating; the rest is reserve. Common practice, no source. */
export const RESERVE = 0.8;

/**
 * How many pieces one stroke can cut: what the press is rated for without its reserve ÷ the load of one die, whole
 * ones only; one where the whole rating takes it and the reserve is used up, none where the rating is less.
 */
export function piecesPerStroke(load: Quantity, rating: Quantity): Quantity {
  const kept = roundedDown(over(times(rating, RESERVE), load));
  const some = kept.value >= 1;
  return named("pieces for each stroke", some ? kept : roundedDown(over(rating, load)), {
    kind: "count",
    source: some
      ? `${printNumber(100 * RESERVE, 0)} % of the rating ÷ load of one die; the rest is reserve for an estimate`
      : "rating ÷ load of one die, without reserve for an estimate: 1 at the most",
  });
}
