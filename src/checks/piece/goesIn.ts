import type { Capacity } from "../../model/article.ts";
import { MM_PER_INCH } from "../../units/index.ts";
import { CONTRADICTION, sayLength } from "../measure/words.ts";
import { type Context, type Remark, rule } from "../rule.ts";

/** The arithmetic's tolerance. */
const TOUCH_MM = 1e-3;

type Sizes = readonly [number, number, number];
const NAMES = ["measures.width", "measures.height", "measures.depth"] as const;
const TURNS: readonly Sizes[] = [
  [0, 1, 2],
  [0, 2, 1],
  [1, 0, 2],
  [1, 2, 0],
  [2, 0, 1],
  [2, 1, 0],
];

/** What is missing of the inside's width, height and depth for the thing turned so that least is missing. */
function missing(thing: Sizes, inside: Sizes): Sizes {
  const turned = TURNS.map(
    (turn) => turn.map((of, i) => Math.max(0, thing[of]! - inside[i]!)) as unknown as Sizes,
  );
  const all = (s: Sizes): number => s[0] + s[1] + s[2];
  return turned.reduce((best, s) => (all(s) < all(best) ? s : best));
}

function judged(c: Capacity, piece: string, context: Context): readonly Remark[] {
  if (c.wanted === undefined) return [];
  const found = c.things.find((t) => t.name === c.wanted);
  const said = (sizes: Sizes): string => sizes.map((mm) => sayLength(mm, context)).join(" × ");
  const fault = (message: string, value: string, limit: string, mend: string): readonly Remark[] => [
    { severity: "error", piece, place: c.wanted!, message, value, limit, mend },
  ];
  if (!found)
    return fault(
      `The ${c.wanted} that must go in was not looked at.`,
      "not looked at",
      c.wanted,
      CONTRADICTION,
    );
  const short = missing(found.sizes, c.inside);
  const lacks = short.some((mm) => mm > TOUCH_MM);
  if (found.goes) return [];
  const [needs, inside] = [said(found.sizes), said(c.inside)];
  const larger = NAMES.flatMap((name, i) =>
    short[i]! > TOUCH_MM ? [`${name} by ${sayLength(short[i]!, context)}`] : [],
  );
  const higher = found.lacksHeight ?? Number.POSITIVE_INFINITY;
  const how = Number.isFinite(higher)
    ? `Make the bag ${sayUp(higher, context)} higher (measures.height)${lacks ? "" : ", or its corners less round (pieces.body.corner-radius)"}`
    : lacks
      ? `Make the bag larger: ${larger.join(" and ")}, and more where round corners or a narrower top take room`
      : "Its corners or its narrower top are in the way: make the bag larger, measures.width, measures.height or measures.depth, or its corners less round (pieces.body.corner-radius)";
  return fault(
    `The ${found.name} does not go in: needs ${needs}, inside ${inside}${lacks ? "" : ", less the round corners and the narrower top"}.`,
    inside,
    needs,
    `${how}; or let something else go in: measures.holds.`,
  ).map((r) => ({ ...r, change: { dimension: "measures.holds", value: "anything" } }));
}

/** A length rounded up to what a rule shows. */
const sayUp = (mm: number, context: Context): string =>
  sayLength(
    Math.ceil(mm / (context.units === "in" ? IN_32 : 1) - 1e-6) * (context.units === "in" ? IN_32 : 1),
    context,
  );
/** Inches are shown to a 32nd. */
const IN_32 = MM_PER_INCH / 32;

/** What the order says must go in goes in. */
export const goesIn = rule("goes-in", "what the order says must go in goes in", (job, context) =>
  job.capacity ? judged(job.capacity, job.pieces[0]?.id ?? "", context) : [],
);
