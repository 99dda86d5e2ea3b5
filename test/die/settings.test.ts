import { expect, test } from "vitest";
import { dieDerivations, sayDie } from "../../src/die/about.ts";
import { checkDie } from "../../src/die/checks/index.ts";
import { dieFor } from "../../src/die/die.ts";
import { pairDie, pairLoad } from "../../src/die/pairDie.ts";
import { type DieSettings, defaultDie } from "../../src/die/settings.ts";
import { arc, closedPath, line, polyline, slotPath } from "../../src/geometry/index.ts";
import { dxf } from "../../src/output/dxf.ts";
import { svg } from "../../src/output/svg.ts";
import { cutItems } from "../../src/picture/die/cutItems.ts";
import { dieDrawing } from "../../src/picture/die/dieDrawing.ts";
import { dieTable } from "../../src/trade/dieTable.ts";
import { inputFor } from "../support/dies.ts";
import { given } from "../support/quantities.ts";
import { roundHole, samplePiece } from "../support/samplePieces.ts";

// Every setting of the section `die` is felt in something that a maker or a die maker reads.

/** A plate with a notch whose inner corners are tight, and slots and holes about as small as a die has them. */
const slot = (id: string, y: number, width: number) => ({
  id,
  use: "strap slot",
  outline: slotPath([-20, y], 20, width),
  length: 20,
  width,
});
const piece = samplePiece(
  "plate",
  closedPath(
    [-60, -30],
    [
      line([60, -30]),
      line([60, 30]),
      line([30, 30]),
      line([30, 11.5]),
      arc([29, 10.5], [29, 11.5], false),
      line([20, 10.5]),
      line([20, 30]),
      line([-60, 30]),
    ],
  ),
  {
    cutouts: [slot("narrow", 0, 2), slot("wide", 10, 4), slot("near", 16.6, 4)],
    holes: [roundHole("dot", 0, 2), roundHole("small", 8, 5), roundHole("big", 40, 7)],
    marks: [
      {
        id: "nick",
        kind: "notch",
        path: polyline([
          [0, -30],
          [0, -27],
        ]),
        label: "centre",
      },
    ],
  },
);

const base: DieSettings = {
  ...defaultDie(),
  press: "80 kN",
  currency: "EUR",
  pricePerMm: given("price", 0.05, "number"),
};

function told(settings: DieSettings): string {
  const die = dieFor(piece, settings);
  const nest = pairDie(die);
  return JSON.stringify([
    dxf(cutItems(die, { ruleEdge: true, words: [] })),
    dieDrawing(inputFor(die, "mm")).map(svg),
    checkDie(die, "mm"),
    sayDie(die, "mm"),
    dieDerivations(die, "plate", pairLoad(die, nest)),
    nest.gap,
    nest.area,
  ]);
}

const OTHER: Partial<Record<keyof DieSettings, DieSettings[keyof DieSettings]>> = {
  rule: "3 pt",
  bevel: "waste side",
  notches: "in the die",
  press: "90 kN",
  currency: "GBP",
  pricePerMm: given("price", 0.06, "number"),
  pricePerTube: given("price", 2, "number"),
  priceForBoard: given("price", 20, "number"),
};
/** They stand in the files' names and title blocks: test/cli/die.test.ts. */
const TITLE: readonly string[] = ["owner", "number", "revision", "date"];

const before = told(base);
const names = Object.keys(dieTable).filter((name) => !TITLE.includes(name)) as (keyof DieSettings)[];

test.each(names)("die %s is felt", (name) => {
  const now = base[name];
  const other = OTHER[name] ?? (typeof now === "object" ? { ...now, value: now.value * 0.8 } : undefined);
  expect(other).toBeDefined();
  expect(told({ ...base, [name]: other })).not.toBe(before);
});
