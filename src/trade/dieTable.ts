import { type DimensionTable, from } from "../model/dimension.ts";
import { leaf, type Quantity } from "../model/quantity.ts";
import { quote } from "../units/quote.ts";
import { misread, type Reading, read } from "../units/reading.ts";
import { readCurrencyCode } from "./currencyCode.ts";
import { RUBBER_PRESSURE, RUBBER_SOURCE, RULE_SPACING_MM, RULE_THICKNESS_MM, RULE_THICKNESS_SOURCE, type RulePoints, SIDE_TUBE_MM, SPACING_SOURCE, SPRING_TUBE_MM } from "./facts/dies.ts";
import { readForce } from "./force.ts";

const COMMON = "common practice, no source";
const MEMORY = "from memory";

/** Thickness of a rule of so many points, with its source. */
const ruleThickness = (points: string): Quantity => leaf(`thickness of ${points} rule`, RULE_THICKNESS_MM[points as RulePoints], "length", { kind: "fact", source: RULE_THICKNESS_SOURCE });

/** A revision stands in files' names, so it is plain letters and digits. */
const readRevision = (text: string): Reading<string> =>
  /^[A-Za-z0-9](?:[A-Za-z0-9.-]*[A-Za-z0-9])?$/.test(text) ? read(text) : misread(`got ${quote(text)}`, 'write letters and digits, as in "B" or "2026-1": it stands in the files\' names');

/** The order's section `die`: what the die's maker and the press in the shop can do. mm, N, N/mm². */
export const dieTable = {
  rule: { kind: "choice", choices: ["2 pt", "3 pt", "4 pt"], default: "2 pt", means: "steel rule by its points", source: COMMON },
  ruleThickness: { kind: "length", default: from(["rule"], (k) => ruleThickness(k.choice("rule"))), least: 0.4, most: 4, means: "thickness of the rule", source: RULE_THICKNESS_SOURCE },
  ruleHeight: { kind: "length", default: 23.8, least: 15, most: 60, means: "height of the rule", source: `${MEMORY}: 0.937 in` },
  bevel: { kind: "choice", choices: ["centre", "waste side", "leather side"], default: "centre", means: "where the rule is ground: on both sides, on the waste's or on the leather's", source: COMMON },
  spacing: { kind: "length", default: RULE_SPACING_MM, least: 0.5, most: 20, means: "least clear space between two rules", source: `${SPACING_SOURCE}: 3/32 in` },
  leastRadius: { kind: "length", default: 1, least: 0, most: 20, means: "least inside radius that the rule is bent to", source: MEMORY },
  leastSlot: { kind: "length", default: RULE_SPACING_MM, least: 0.5, most: 20, means: "narrowest slot that goes into the die", source: `${SPACING_SOURCE}: 3/32 in` },
  notches: { kind: "choice", choices: ["by hand", "in the die"], default: "by hand", means: "who cuts the notches in the edge: you, or the die by short pieces of rule that stand on the outline's", source: COMMON },
  leastTube: {
    kind: "length",
    default: SPRING_TUBE_MM,
    least: SIDE_TUBE_MM,
    most: 20,
    means: "smallest round hole that goes into the die",
    source: `${SPACING_SOURCE}: 3/32 in with a spring, 1/32 in emptied at the side`,
  },
  tolerance: { kind: "length", default: 0.25, least: 0.05, most: 2, means: "how far the cut may lie from the drawing, each way", source: COMMON },
  boardMargin: { kind: "length", default: 12, least: 0, most: 100, means: "board beyond the outermost rule", source: COMMON },
  currency: { kind: "text", default: "", longest: 3, reads: readCurrencyCode, example: "EUR", means: "currency of the prices, by the three letters of ISO 4217; needed where there is a price", source: "left blank" },
  pricePerMm: { kind: "number", optional: true, least: 0, most: 10000, means: "price of a millimetre of rule, bent and set, as in 0.05", source: "your die maker" },
  pricePerTube: { kind: "number", optional: true, least: 0, most: 100000, means: "price of a tube, set, as in 2.50", source: "your die maker" },
  priceForBoard: { kind: "number", optional: true, least: 0, most: 1000000, means: "price of the board with its rubber, as in 25", source: "your die maker" },
  press: { kind: "text", default: "", longest: 40, reads: readForce, example: "150 kN", means: "what the press is rated for, with its unit, as in 20 US tons, 15 t or 150 kN", source: "the press's plate" },
  shear: { kind: "stress", default: 22, least: 1, most: 200, means: "shear strength of the leather under the rule", source: `${MEMORY}: 250 lb for each inch of rule in leather of 2 mm; try your own` },
  rubberPressure: { kind: "stress", default: RUBBER_PRESSURE, least: 0, most: 5, means: "pressure that squeezes the ejection rubber", source: `${RUBBER_SOURCE}: 50 lb for each square inch` },
  rubberStrip: { kind: "length", default: 10, least: 0, most: 50, means: "width of the strip of ejection rubber along each side of the rule", source: COMMON },
  smallTube: { kind: "length", default: 6, least: 0, most: 30, means: "tubes smaller than this jam their waste and need more force", source: COMMON },
  smallTubeExtra: { kind: "ratio", default: 0.5, least: 0, most: 3, means: "extra load on small tubes, as a share of their cut", source: COMMON },
  closeRules: { kind: "length", default: 6, least: 0, most: 30, means: "rules nearer than this to one another jam the leather between them", source: COMMON },
  closeRulesExtra: { kind: "ratio", default: 0.25, least: 0, most: 3, means: "extra load where rules run close, as a share of their cut", source: COMMON },
  owner: { kind: "text", default: "", longest: 60, means: "whose drawing it is: your shop and its place", source: "left blank" },
  number: { kind: "text", default: "", longest: 24, means: "your number for these drawings; left out, the order's file name", source: "left blank" },
  revision: { kind: "text", default: "A", longest: 12, reads: readRevision, example: "B", means: "which edition of the drawings it is; raise it whenever a die that is out changes", source: COMMON },
  date: { kind: "text", default: "", longest: 20, means: "date of issue; left blank, write it by hand", source: "left blank" },
} as const satisfies DimensionTable;
