// How the rule is ground, drawn: a section through the outline's rule, its cutting edge down on the leather.

import { bodyShare } from "../../die/ruleBody.ts";
import type { DieSettings } from "../../die/settings.ts";
import { type Point, polyline, rectanglePath } from "../../geometry/path.ts";
import type { Item, Words } from "../picture.ts";
import { stroke } from "../piece/strokes.ts";
import { SMALL_MM } from "../piece/title.ts";
import type { Flowing } from "../sheet/flow.ts";
import { DROP, RISE } from "../words.ts";

/** Sizes of the sketch, mm; not to scale. */
const RULE_MM = 4;
const GROUND_MM = 5;
const TALL_MM = 14;
const LEATHER_MM = 2.5;
const ASIDE_MM = 30;
/** How wide it is with its words. */
export const SKETCH_MM = 2 * (ASIDE_MM + RULE_MM);
const PAD_MM = 2;

const label = (text: string, at: Point, align: Words["align"]): Words => ({
  kind: "words",
  layer: "text",
  at,
  size: SMALL_MM,
  text,
  align,
  angle: 0,
});

/** The rule's section: the leather that is kept on its left, the waste on its right. `edge` is its cutting edge. */
function section({ bevel }: DieSettings, [x, y]: Point): Item {
  const left = x - bodyShare(bevel) * RULE_MM;
  const right = left + RULE_MM;
  const shoulder = (side: number): number => (Math.abs(side - x) < 1e-9 ? y : y + GROUND_MM);
  const way: readonly Point[] = [
    [x, y],
    [right, shoulder(right)],
    [right, y + TALL_MM],
    [left, y + TALL_MM],
    [left, shoulder(left)],
  ];
  return stroke("sheet", "01.2", polyline(way, true));
}

/** A sketch of the rule's section with its words. */
export function bevelSketch(settings: DieSettings): Flowing {
  const height = TALL_MM + LEATHER_MM + 2 * PAD_MM + (RISE + DROP) * SMALL_MM;
  return {
    height,
    draw: (left, top) => {
      const edge: Point = [left + ASIDE_MM + RULE_MM, top - PAD_MM - TALL_MM];
      const base = edge[1] - LEATHER_MM;
      const [from, to] = [edge[0] - ASIDE_MM, edge[0] + ASIDE_MM];
      const high = top - PAD_MM - RISE * SMALL_MM;
      const low = edge[1] + DROP * SMALL_MM + 0.6;
      const beside = RULE_MM + 1;
      return [
        section(settings, edge),
        stroke("sheet", "01.1", rectanglePath([from, base], to - from, LEATHER_MM)),
        label("in the board", [edge[0] - beside, high], "right"),
        label("leather that is kept", [edge[0] - beside, low], "right"),
        label("waste", [edge[0] + beside, low], "left"),
        label("leather, grain side up", [from, base - 0.6 - RISE * SMALL_MM], "left"),
      ];
    },
  };
}
