import type { Units } from "../../model/say.ts";
import { capital, counted } from "../../model/words.ts";
import { printLengthShort, printNumber, roundTo } from "../../units/index.ts";
import { MM_PER_INCH } from "../../units/unit.ts";
import type { BenchPaper } from "./benchDocument.ts";

// What was ordered, in the customer's words: no cut lengths, no figures finer than a tape shows.

export type Said = readonly [what: string, says: string];

/** A reckoned length is told a customer to so much, mm or quarters of an inch. */
const STEP_MM = 5;
const STEP_IN = MM_PER_INCH / 4;

/** `37 1/2 in`, `955 mm`: a reckoned length, rounded to what a customer's tape shows. */
export function about(mm: number, units: Units): string {
  const step = units === "in" ? STEP_IN : STEP_MM;
  return printLengthShort(roundTo(mm / step, 0) * step, units);
}

/** The resolved value of the order at a path. */
const valueAt = ({ dimensions }: BenchPaper, key: string): number | string | boolean | undefined =>
  dimensions.find((d) => d.key === key)?.value;

/** A length as it was ordered, in its own figures. */
function lengthAt(paper: BenchPaper, key: string): string {
  const mm = valueAt(paper, key);
  return typeof mm === "number" ? printLengthShort(mm, paper.order.units) : "";
}

const AN = /^[aeiou]/;
const withArticle = (noun: string): string => `${AN.test(noun) ? "an" : "a"} ${noun}`;

/** What the holes reach, in the customer's figures. */
function buckled({ made: { fit }, order: { units } }: BenchPaper): string {
  return fit ? `from ${about(fit.shortest, units)} to ${about(fit.longest, units)}` : "";
}

const FIXED: Readonly<Record<string, string>> = {
  "ring tabs": "hung in rings on tabs",
  riveted: "riveted to the bag",
  stitched: "stitched to the bag",
  "through slots": "passed through slots in the bag",
};

/** How a bag is carried; nothing for one that is only held. */
function carried(paper: BenchPaper): readonly Said[] {
  const carry = valueAt(paper, "bag.carry");
  if (carry === "handles") return [["Carried by", `handles, ${lengthAt(paper, "measures.hand-drop")} high`]];
  if (carry !== "shoulder strap") return [];
  const { fit } = paper.made;
  const whole = fit ? `, about ${about(fit.wanted, paper.order.units)} in all` : "";
  const reach = fit ? `; can be buckled ${buckled(paper)}` : "";
  const fixed = FIXED[String(valueAt(paper, "bag.strap-fixed"))] ?? "";
  return [
    ["Shoulder strap", `for a drop of ${lengthAt(paper, "measures.shoulder-drop")}${whole}${reach}`],
    ...(fixed === "" ? [] : [["The strap is", fixed] as const]),
  ];
}

function bagRows(paper: BenchPaper): readonly Said[] {
  const flap = valueAt(paper, "bag.opening") === "flap";
  const closure = String(valueAt(paper, "bag.closure"));
  const pocket = String(valueAt(paper, "bag.pocket"));
  const held = closure === "none" ? "a flap that lies loose" : `a flap, held by ${withArticle(closure)}`;
  const tote = valueAt(paper, "bag.carry") === "handles" ? "Open tote" : "Open bag";
  const [width, height, depth] = ["width", "height", "depth"].map((m) => lengthAt(paper, `measures.${m}`));
  const { capacity } = paper.made;
  const litres = (capacity?.volume.value ?? 0) / 1e6;
  const holds = capacity?.wanted === undefined ? "" : `, and ${capacity.wanted}`;
  return [
    ["What", flap ? "Flap purse" : tote],
    [`Size, ${valueAt(paper, "measures.measured")}`, `${width} wide, ${height} high, ${depth} deep`],
    ...(capacity
      ? [["Holds", `about ${printNumber(litres, litres < 1 ? 2 : 1)} litres${holds}`] as const]
      : []),
    ["Opening", flap ? held : "an open top"],
    ["Lining", valueAt(paper, "bag.lining") === true ? "lined with leather" : "not lined"],
    ["Pocket", pocket === "none" ? "none" : `one, ${pocket}`],
    ...carried(paper),
  ];
}

/** What an end is, and where a length ends at it. */
const ENDS: Readonly<Record<string, readonly [is: string, at: string]>> = {
  buckle: ["a buckle", "the buckle's bar"],
  billet: ["holes and a point", "the middle hole"],
  ring: ["a ring", "the ring"],
  loop: ["a loop", "the loop"],
  plain: ["a plain end", "the plain end"],
  riveted: ["a riveted end", "the first rivet"],
};
const endOf = (end: string): readonly [is: string, at: string] => ENDS[end] ?? [`${end}`, `the ${end} end`];

function strapRows(paper: BenchPaper): readonly Said[] {
  const [left, right] = ["left", "right"].map((side) => String(valueAt(paper, `measures.${side}-end`)));
  const [a, b] = [endOf(left!), endOf(right!)];
  const inUse = valueAt(paper, "pieces.strap.reckoned") === "in use";
  const along = inUse ? `from ${a[1]} to ${b[1]}` : "along the flat, from one end or fold to the other";
  const reach = buckled(paper);
  return [
    ["What", `Strap: ${a[0]} at one end, ${b[0]} at the other`],
    ["Length", `${lengthAt(paper, "pieces.strap.length")}, ${along}`],
    ["Width", lengthAt(paper, "measures.width")],
    ...(reach === "" ? [] : [["Can be buckled", reach] as const]),
  ];
}

/** Of any other article: its name, and the measure it is fitted to. */
function fittedRows(paper: BenchPaper): readonly Said[] {
  const { made, order } = paper;
  const { fit } = made;
  const wanted = fit ? `${printLengthShort(fit.wanted, order.units)}, can be buckled ${buckled(paper)}` : "";
  return [["What", capital(made.article)], ...(fit ? [[capital(fit.name), wanted] as const] : [])];
}

/** What the order is of and its sizes, each with its word, as the customer ordered them. */
export function orderedRows(paper: BenchPaper): readonly Said[] {
  if (paper.made.article === "bag") return bagRows(paper);
  return paper.made.article === "strap" ? strapRows(paper) : fittedRows(paper);
}

/** Straps are counted by the order's own count as well. */
export function howMany(paper: BenchPaper): number {
  const each = paper.made.article === "strap" ? valueAt(paper, "measures.count") : 1;
  return paper.quantity * (typeof each === "number" ? Math.round(each) : 1);
}

/** Leathers that a customer doesn't choose. */
const UNSEEN = ["keeper", "patch", "lining"];

/** `9 oz`, `3.6 mm`: a thickness in one unit. */
const thick = (mm: number, units: Units): string =>
  units === "in" ? `${printNumber(mm / (MM_PER_INCH / 64), 1)} oz` : `${printNumber(mm, 1)} mm`;

/** The leathers that are seen, each with its thickness once. */
export function leatherWords({ made, order }: BenchPaper): string {
  const seen = made.pieces.filter((p) => !UNSEEN.includes(p.leather.kind));
  const all = (seen.length > 0 ? seen : made.pieces).map(
    ({ leather: l }) => `${l.kind.replace(/ leather$/, "")} ${thick(l.thickness, order.units)}`,
  );
  return [...new Set(all)].join(", ");
}

/** Metal parts by name: kind, and the size they are bought by. */
export function metalWords({ bench, order }: BenchPaper): string {
  const sums = new Map<string, { readonly kind: string; readonly of: string; count: number }>();
  for (const { kind, size, count, brought } of bench.hardware) {
    if (brought || count === 0) continue;
    const of = size === undefined ? "" : ` of ${printLengthShort(size, order.units)}`;
    const found = sums.get(kind + of);
    if (found) found.count += count;
    else sums.set(kind + of, { kind, of, count });
  }
  return [...sums.values()].map(({ kind, of, count }) => counted(count, kind) + of).join(", ");
}

/** What the customer brings, each with what must fit: `3 bits (ring wire 8 mm)`. */
export function broughtWords(paper: BenchPaper): string {
  const wire = valueAt(paper, "hardware.bit-ring.bar");
  const about = (kind: string): string =>
    kind === "bit" && typeof wire === "number" ? ` (ring wire ${printNumber(wire, 1)} mm)` : "";
  const parts = paper.bench.hardware
    .filter((h) => h.brought)
    .map((h) => counted(h.count, h.kind) + about(h.kind));
  const leather = valueAt(paper, "price.own-leather") === true ? ["the leather"] : [];
  return [...leather, ...parts].join("; ");
}
