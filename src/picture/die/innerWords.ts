// What the drawing says of the slots and tubes that are in the die.
import type { Die } from "../../die/die.ts";
import type { DieFeature } from "../../die/feature.ts";
import type { Units } from "../../model/say.ts";
import { printNumber } from "../../units/index.ts";
import { bothUnits, sayLetters } from "./figures.ts";
import { shapedRules } from "./tables.ts";

type Row = readonly [about: string, says: string];

const letters = (alike: readonly DieFeature[]): string => {
  const named = sayLetters(alike.flatMap(({ letter }) => letter ?? []));
  return named === "" ? "" : ` (${named})`;
};

/** `23 × 4.5`; in both units. */
function sizesOf({ size }: DieFeature, units: Units): string {
  if (!size || "diameter" in size) return "";
  return `${bothUnits(size.length, units)} × ${bothUnits(size.width, units)} ${units === "in" ? "in [mm]" : "mm [in]"}, round ends R ${bothUnits(size.width / 2, units)}`;
}

/** Slots of one size in one sentence; those with tables of their own are bent as these say. */
function slotRows(die: Die, units: Units): readonly Row[] {
  const shaped = new Set(shapedRules(die).map(({ feature }) => feature.id));
  const inDie = die.features.filter(
    ({ kind, made }) => made === "in the die" && (kind === "slot" || kind === "opening"),
  );
  const plain = inDie.filter(({ id }) => !shaped.has(id));
  const own = inDie.filter(({ id }) => shaped.has(id));
  const sizes = [...new Set(plain.map((f) => sizesOf(f, units)))];
  const says = sizes.map((size) => {
    const alike = plain.filter((f) => sizesOf(f, units) === size);
    const one = alike.length === 1;
    return `${alike.length} ${one ? "slot" : "slots"}${letters(alike)} ${size}: bent rule or ${one ? "a punch" : "punches"} of that size, as you prefer.`;
  });
  const bent =
    own.length === 0
      ? []
      : [
          `${own.length}${letters(own)} with ${own.length === 1 ? "a table of its" : "tables of their"} own: rule, bent as that says.`,
        ];
  const all = [...says, ...bent];
  return all.length === 0 ? [] : [["Slots", all.join(" ")]];
}

function tubeRows({ rules, settings }: Die): readonly Row[] {
  if (!rules.some(({ kind }) => kind === "tube")) return [];
  return [
    ["Round holes", "Tubes; the size is that of the hole, inside the cutting edge."],
    [
      "Tubes",
      `Height: as the rule's, ${printNumber(settings.ruleHeight.value, 2)} mm. Way out for the slugs: yours to choose, side outlet or spring.`,
    ],
  ];
}

function notchRows({ rules }: Die): readonly Row[] {
  if (!rules.some(({ kind }) => kind === "notch")) return [];
  return [
    [
      "Notches",
      "Those in the table of holes are slits: short pieces of straight rule that begin at the outline’s and go into the leather.",
    ],
  ];
}

/** The rows about what stands inside the outline, or on it. */
export const innerRows = (die: Die, units: Units): readonly Row[] => [
  ...slotRows(die, units),
  ...tubeRows(die),
  ...notchRows(die),
];
