import { bagStitchingTable, leatherTable, thinLeatherTable } from "../trade/tables.ts";
import { bagMeasuresTable, bagTable } from "./bagTables.ts";
import { section } from "./definition.ts";

// The sections of a bag's order that its pieces and straps are handed from.

const OUNCE = 25.4 / 64;
/** Purse leather of 2 oz; below it a seam pulls through. */
const THINNEST_MM = 0.8;

export const measures = section({
  path: "measures",
  label: "measured",
  title: "The finished bag",
  table: bagMeasuresTable,
});
export const bag = section({ path: "bag", label: "bag", title: "How it is made", table: bagTable });
export const bodyLeather = section({
  path: "leather.body",
  label: "body leather",
  title: "Leather of the body, and of a pocket",
  table: leatherTable(5 * OUNCE, 5, THINNEST_MM),
});
export const gussetLeather = section({
  path: "leather.gusset",
  label: "gusset leather",
  title: "Leather of the gusset",
  table: leatherTable(4 * OUNCE, 4, THINNEST_MM),
});
export const strapLeather = section({
  path: "leather.strap",
  label: "strap leather",
  title: "Leather of straps, tabs and handles",
  table: leatherTable(8 * OUNCE),
});
export const keeperLeather = section({
  path: "leather.keeper",
  label: "keeper leather",
  title: "Leather of the keepers",
  table: leatherTable(4 * OUNCE, 5),
});
export const liningLeather = section({
  path: "leather.lining",
  label: "lining leather",
  title: "Leather of the lining",
  table: thinLeatherTable,
});
export const patchLeather = section({
  path: "leather.patch",
  label: "patch leather",
  title: "Leather of the reinforcement patches",
  table: thinLeatherTable,
});
export const stitching = section({
  path: "stitching",
  label: "stitch",
  title: "Stitching",
  table: bagStitchingTable,
});
