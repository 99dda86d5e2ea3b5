import type { Fit, FitRow } from "./article.ts";
import { sayValue, type Units } from "./say.ts";

const holes = (r: FitRow): string =>
  r.off === undefined
    ? `hole ${r.near}`
    : `near ${r.near}, off ${r.off}${r.even ? "" : " (one hole uneven)"}`;

/** The fit table: which holes give which measure, and the sizes that measure suits. Hole 1 is nearest the tip. */
export function fitLines(fit: Fit, units: Units): readonly string[] {
  const rows = fit.rows.map((r) => [
    holes(r),
    sayValue(r.measure, "length", units),
    fit.sizesNote !== undefined
      ? ""
      : r.sizes.length === 0
        ? "no size of the built-in table"
        : r.sizes.join(", "),
    r.measure === fit.wanted ? "<- as measured" : "",
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
