import type { AssemblyStep, Capacity } from "../../model/article.ts";
import type { Units } from "../../model/say.ts";
import { capital, oneOf } from "../../model/words.ts";
import { inOrder } from "../../trade/assembly.ts";
import { printLengthShort, printNumber } from "../../units/index.ts";
import { type Flowing, heading, step, text } from "./flow.ts";

// What the first sheet says of the whole article: how it is put together, and what goes in.

/** A piece's name within a sentence: `Patch` is `patch`; `A4 pad` stays. */
const within = (name: string): string =>
  /^[A-Z][a-z]/.test(name) ? name.slice(0, 1).toLowerCase() + name.slice(1) : name;

/** `stitch` and `Front to gusset`: `Stitch front to gusset`; a name that says what is done is enough. */
export const sayStep = ({ name, does }: AssemblyStep): string =>
  capital(name.toLowerCase().startsWith(does) ? name : `${does} ${within(name)}`);

export const assemblyList = (steps: readonly AssemblyStep[], width: number): readonly Flowing[] =>
  steps.length === 0
    ? []
    : [
        heading("Put together in this order"),
        ...inOrder(steps).map((s, i) => step(i + 1, `${sayStep(s)}.`, width)),
      ];

const MM3_PER_LITRE = 1e6;

/** `7 1/16 × 5 3/4 × 2 in (180 × 146 × 51 mm)`, `180 × 146 × 51 mm` */
function saySizes(sizes: readonly number[], units: Units): string {
  const bare = (mm: number, unit: Units): string => printLengthShort(mm, unit).replace(/ (in|mm|cm)$/, "");
  const all = (unit: Units): string => `${sizes.map((mm) => bare(mm, unit)).join(" × ")} ${unit}`;
  return units === "in" ? `${all("in")} (${all("mm")})` : all(units);
}

const allOf = (names: readonly string[]): string =>
  names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;

/** `About 2.3 litres; inside, width × height × depth: 240 × 180 × 60 mm.` and what goes in of common things. */
export function sayCapacity({ volume, inside, things, wanted }: Capacity, units: Units): readonly string[] {
  const litres = volume.value / MM3_PER_LITRE;
  const [fit, not] = [true, false].map((goes) => things.filter((t) => t.goes === goes).map((t) => t.name));
  return [
    `About ${printNumber(litres, litres < 1 ? 2 : 1)} litres; inside, width × height × depth: ${saySizes(inside, units)}.`,
    ...(fit!.length > 0 ? [`Goes in: ${allOf(fit!)}.`] : []),
    ...(not!.length > 0 ? [`Does not go in: ${oneOf(not!)}.`] : []),
    ...(wanted === undefined ? [] : [`Ordered to hold: ${wanted}.`]),
  ];
}

export const capacityList = (capacity: Capacity, units: Units, width: number): readonly Flowing[] => [
  heading("Holds"),
  ...sayCapacity(capacity, units).map((s) => text(s, width)),
];
