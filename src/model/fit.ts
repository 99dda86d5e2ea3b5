import type { Fit, FitRow } from "./article.ts";
import { sayValue, type Units } from "./say.ts";

/** `hole 3`; of two sides `near 3, off 4 (one hole uneven)`. */
export const sayHoles = (r: FitRow): string =>
  r.off === undefined
    ? `hole ${r.near}`
    : `near ${r.near}, off ${r.off}${r.even ? "" : " (one hole uneven)"}`;

/** What stands beside the row of the measure that is wanted. */
export const sayWanted = ({ wantedIs }: Fit): string => wantedIs ?? "as measured";

/** The sizes that a row's measure suits. */
export const saySuits = ({ sizes }: FitRow): string =>
  sizes.length === 0 ? "no size of the built-in table" : sizes.join(", ");

/** The fit table: which holes give which measure, and the sizes that measure suits. Hole 1 is nearest the tip. */
export function fitLines(fit: Fit, units: Units): readonly string[] {
  const rows = fit.rows.map((r) => [
    sayHoles(r),
    sayValue(r.measure, "length", units),
    fit.sizesNote !== undefined ? "" : saySuits(r),
    r.measure === fit.wanted ? `<- ${sayWanted(fit)}` : "",
  ]);
  const widths = [0, 1, 2].map((i) => Math.max(...rows.map((r) => r[i]!.length)));
  return [
    `Fit ${fit.name} (hole 1 is nearest the tip)`,
    ...rows.map((r) =>
      `  ${r.map((cell, i) => (i < 3 ? cell.padEnd(widths[i]!) : cell)).join("  ")}`.trimEnd(),
    ),
    ...(fit.sizesNote === undefined ? [] : [`  ${fit.sizesNote}`]),
  ];
}
