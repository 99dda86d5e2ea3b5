import type { PageView } from "../../job.ts";

type Units = PageView["units"];

/** A mark of the ruler: where, mm; its length as a share of the ruler's width; figures at the long ones. */
export type Tick = { readonly at: number; readonly tall: number; readonly figure?: string };

/** One inch, exactly (international inch, 1959). */
export const MM_PER_INCH = 25.4;

/** Steps of the marks, each with how many of them lie between two figures: as rules are divided. */
type Step = { readonly step: number; readonly figures: number };
const inches = (parts: number, figures: number): Step => ({ step: parts * MM_PER_INCH, figures });
const INCHES: readonly Step[] = [
  inches(1 / 32, 16),
  inches(1 / 16, 16),
  inches(1 / 8, 8),
  inches(1 / 4, 4),
  inches(1 / 2, 4),
  inches(1, 6),
  inches(2, 6),
  inches(6, 4),
  inches(12, 5),
];
const MILLIMETRES: readonly Step[] = [
  { step: 0.5, figures: 10 },
  { step: 1, figures: 10 },
  { step: 2, figures: 5 },
  { step: 5, figures: 4 },
  { step: 10, figures: 5 },
  { step: 20, figures: 5 },
  { step: 50, figures: 4 },
  { step: 100, figures: 5 },
];

/** Marks nearer than this run together; figures nearer than this touch. CSS px. */
const LEAST_PX = 5;
const FIGURES_PX = 44;

const stepFor = (steps: readonly Step[], scale: number): Step =>
  steps.find(({ step, figures }) => step * scale >= LEAST_PX && step * figures * scale >= FIGURES_PX) ??
  steps.at(-1)!;

const figureOf = (mm: number, units: Units): string => {
  const value = units === "in" ? mm / MM_PER_INCH : units === "cm" ? mm / 10 : mm;
  return `${Math.round(value * 100) / 100 || 0}`;
};

/**
 * The marks of a ruler from `from` to `to`, mm, at `scale` CSS px to the millimetre: inches by halves down
 * to 1/32, else millimetres; figures in the order's units.
 */
export function ticksOf(from: number, to: number, scale: number, units: Units): readonly Tick[] {
  const { step, figures } = stepFor(units === "in" ? INCHES : MILLIMETRES, scale);
  const first = Math.ceil(from / step - 1e-9);
  const count = Math.max(0, Math.floor(to / step + 1e-9) - first + 1);
  return Array.from({ length: count }, (_, i): Tick => {
    const n = first + i;
    const at = n * step;
    if (n % figures === 0) return { at, tall: 1, figure: figureOf(at, units) };
    return { at, tall: figures % 2 === 0 && n % (figures / 2) === 0 ? 0.6 : 0.35 };
  });
}
