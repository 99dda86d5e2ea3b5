import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { articles } from "../../src/articles/index.ts";
import { checkPieces, checkSheets } from "../../src/checks/index.ts";
import { layOut } from "../../src/layout/layOut.ts";
import type { Finding } from "../../src/model/finding.ts";
import { readOrder } from "../../src/order/read.ts";

// The checks work out for themselves what the engine claims. Whatever is ordered, the drawing never
// contradicts itself: mates meet when folded, rows are even, every millimetre is on a sheet.

/** Rules whose errors no order can bring about. */
const CONTRADICTIONS = new Set([
  "numbers-sound",
  "named-parts",
  "outline-sound",
  "inside-outline",
  "mates-meet",
  "fold-as-drawn",
  "turn-back-slope",
  "caught-clear",
  "tongue-in-slot",
  "strap-in-slot",
  "stitch-row",
  "feathered-end",
  "adjustment-range",
  "sheet-scale",
  "sheet-coverage",
  "sheet-joints",
  "sheets-used",
  "pieces-apart",
]);

type Outcome = { readonly made: boolean; readonly findings: readonly Finding[] };

function ordered(text: string, endsOnly = false): Outcome {
  const { order } = readOrder(text, "test", articles);
  if (!order) return { made: false, findings: [] };
  const made = order.article.make(order.values);
  const layout = layOut(made.pieces, { paper: order.paper, endsOnly });
  return {
    made: true,
    findings: [...checkPieces(made, { units: "mm" }), ...checkSheets(made, layout, { units: "mm" })],
  };
}

const mm = (least: number, most: number) =>
  fc.integer({ min: least * 10, max: most * 10 }).map((tenths) => `${tenths / 10} mm`);

const headstall = fc
  .record({
    poll: mm(950, 1300),
    ear: mm(180, 240),
    inside: mm(16, 30),
    bar: mm(3, 6),
    tongue: mm(2, 4),
    ring: mm(5, 14),
    strap: mm(2, 4.5),
    neutral: fc.constantFrom("0.4", "0.5", "0.6"),
    buckles: fc.constantFrom("both cheeks", "near side only"),
    body: fc.constantFrom("straight", "swelled", "tapered", "scalloped"),
    top: fc.constantFrom("stitched", "screws"),
    point: fc.constantFrom("english", "round", "spear", "clipped"),
    shape: fc.constantFrom("band", "oval"),
    pitch: mm(2.5, 4),
    tooling: fc.constantFrom("yes", "no"),
  })
  .map(
    (o) => `article: one-ear headstall
measures: { over-poll: ${o.poll}, ear-base: ${o.ear} }
leather: { strap: { thickness: ${o.strap}, neutral: ${o.neutral} } }
hardware:
  cheek-buckle: { inside: ${o.inside}, bar: ${o.bar}, tongue: ${o.tongue} }
  bit-ring: { bar: ${o.ring} }
stitching: { pitch: ${o.pitch} }
straps: { buckles: ${o.buckles} }
pieces:
  cheek: { body: ${o.body}, top-fixing: ${o.top}, tooling: ${o.tooling} }
  crown: { point: ${o.point} }
  ear-piece: { shape: ${o.shape} }
`,
  );

const end = fc.constantFrom("buckle", "billet", "ring", "plain", "loop");
const strap = fc
  .record({
    width: mm(14, 40),
    length: mm(500, 1200),
    left: end,
    right: end,
    thickness: mm(2, 5),
    point: fc.constantFrom("english", "round", "spear", "clipped"),
  })
  .map(
    (o) => `article: strap
measures: { width: ${o.width}, left-end: ${o.left}, right-end: ${o.right} }
leather: { strap: { thickness: ${o.thickness} } }
hardware: { buckle: { inside: ${o.width} } }
pieces: { strap: { length: ${o.length}, point: ${o.point} } }
`,
  );

describe("what the engine makes", () => {
  test.each([
    ["headstall", headstall, 25],
    ["strap", strap, 40],
  ] as const)("a %s never contradicts itself, whatever is ordered", (_, orders, numRuns) => {
    let made = 0;
    fc.assert(
      fc.property(orders, fc.boolean(), (text, endsOnly) => {
        const outcome = ordered(text, endsOnly);
        if (outcome.made) made++;
        const wrong = outcome.findings.filter((f) => f.severity === "error" && CONTRADICTIONS.has(f.rule));
        expect(wrong.map((f) => `${f.rule}: ${f.message}`)).toEqual([]);
      }),
      { seed: 1904, numRuns },
    );
    expect(made / numRuns).toBeGreaterThan(0.8);
  });

  test("the sample orders have no error and no caution", () => {
    for (const { name, sample } of articles) {
      const lines = Object.entries(sample).map(([path, value]) => {
        const keys = path.split(".");
        return `${keys.map((k) => `{ "${k}": `).join("")}"${value.replaceAll('"', '\\"')}"${" }".repeat(keys.length)}`;
      });
      const merged = lines
        .map((l) => JSON.parse(l.replace(/\{ "/g, '{"')) as Tree)
        .reduce<Tree>(merge, { article: name });
      const { made, findings } = ordered(JSON.stringify(merged));
      expect(made, name).toBe(true);
      expect(
        findings.filter((f) => f.severity !== "note").map((f) => f.message),
        name,
      ).toEqual([]);
    }
  });
});

type Tree = { readonly [key: string]: Tree | string };
const merge = (a: Tree, b: Tree): Tree => {
  const entries = Object.entries(b).map(([k, v]) => {
    const before = a[k];
    return [k, typeof before === "object" && typeof v === "object" ? merge(before, v) : v] as const;
  });
  return { ...a, ...Object.fromEntries(entries) };
};
