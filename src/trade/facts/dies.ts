import { MM_PER_INCH } from "../../units/index.ts";
import { factTable, habit, readAt } from "./table.ts";

const RULE_SHOP = "bj-bandsaw-site.pages.dev, Die Cutting Rule (a maker's page): 1 point = 0.353 mm";
const CENTRE_BEVEL = "diecuttingengineer.blogspot.com, Guide to Selecting Best Steel Cutting Rule (2010)";
const HOW_SMALL = "graphicdies.com, How Small? (a die maker's page)";
const TONNAGE = "bizfluent.com, How to Calculate Die Cutting Tonnage (for paper)";
const PRESS_KNIFE = "ISO 2419:2012, clause 4: press knife for test pieces";

/** Steel rule by its points, and the thickness in mm that its makers state. Source: D1, RULE_SHOP. */
export const RULE_THICKNESS_MM = { "2 pt": 0.71, "3 pt": 1.07, "4 pt": 1.42 } as const;
export type RulePoints = keyof typeof RULE_THICKNESS_MM;
export const RULE_THICKNESS_SOURCE = RULE_SHOP;

/** Least clear space between two rules, so that the ejection rubber goes in; also the narrowest slot bent. */
export const RULE_SPACING_MM = (3 / 32) * MM_PER_INCH;
/** The smallest tube that throws its waste out by a spring; smaller ones empty at the side. */
export const SPRING_TUBE_MM = (3 / 32) * MM_PER_INCH;
/** The smallest tube that empties at the side. */
export const SIDE_TUBE_MM = (1 / 32) * MM_PER_INCH;
export const SPACING_SOURCE = HOW_SMALL;

/** Exact: the avoirdupois pound (0.45359237 kg) under standard gravity (9.80665 m/s²); from memory. */
export const NEWTON_PER_LBF = 0.45359237 * 9.80665;
/** Pressure of ejection rubber as the estimate for paper has it: 50 lb for each square inch, in N/mm². */
export const RUBBER_PRESSURE = (50 * NEWTON_PER_LBF) / MM_PER_INCH ** 2;
export const RUBBER_SOURCE = TONNAGE;

const FROM_MEMORY = "from memory";
const remembered = (...cells: readonly (string | number | undefined)[]) =>
  ({
    cells,
    standing: FROM_MEMORY,
    source: FROM_MEMORY,
  }) as const;

/** What is known about steel rule dies. */
export const dieFacts = factTable({
  name: "dies",
  title: "Steel rule dies",
  columns: [
    { title: "what", kind: "words" },
    { title: "mm", kind: "number" },
    { title: "remark", kind: "words" },
  ],
  rows: [
    ...readAt(
      RULE_SHOP,
      Object.entries(RULE_THICKNESS_MM).map(([points, mm]) => [`rule of ${points}, thickness`, mm, ""]),
    ),
    ...readAt(CENTRE_BEVEL, [["rule of 2 pt, thickness", 0.71, "0.0282 in, centre bevel"]]),
    ...readAt(HOW_SMALL, [
      ["least clear space between two rules", RULE_SPACING_MM, "3/32 in, so that ejection rubber fits"],
      ["narrowest slot bent from rule", RULE_SPACING_MM, "3/32 in; slots bought ready go down to 1/16 in"],
      ["smallest tube with a spring", SPRING_TUBE_MM, "3/32 in"],
      ["smallest tube that empties at the side", SIDE_TUBE_MM, "1/32 in"],
    ]),
    ...readAt(TONNAGE, [
      ["load on rule, paper", undefined, "300 to 500 lb for each inch of rule, 400 usual"],
      ["load on ejection rubber", undefined, "50 lb for each square inch"],
    ]),
    ...readAt(PRESS_KNIFE, [["press knife, angle", undefined, "about 20°; wedge deeper than the leather"]]),
    remembered("height of steel rule", 23.8, "0.937 in"),
    remembered("height of forged dies", undefined, "19 or 32 mm"),
    remembered("least inside radius of a bend in 2 pt rule", 1, ""),
    remembered("load on rule, leather", undefined, "250 to 400 lb for each inch, leather of 2 to 4 mm"),
    habit("tolerance of a die's outline", 0.25, "each way"),
    habit(
      "least distance of rules in thick leather",
      undefined,
      "the leather's thickness, from edge to edge",
    ),
  ],
  note: "Die makers differ: what yours writes in the order goes before these. No published load for leather was found.",
});
