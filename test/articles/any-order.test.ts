import fc from "fast-check";
import { expect, test } from "vitest";
import type { ArticleDefinition } from "../../src/articles/definition.ts";
import { articles } from "../../src/articles/index.ts";
import { checkPieces } from "../../src/checks/index.ts";
import { signedArea } from "../../src/geometry/area.ts";
import { distanceToPath } from "../../src/geometry/distance.ts";
import { flatten } from "../../src/geometry/flatten.ts";
import { pathLength } from "../../src/geometry/length.ts";
import { placed } from "../../src/geometry/transform.ts";
import type { Made } from "../../src/model/article.ts";
import type { Fault, Finding } from "../../src/model/finding.ts";
import type { Piece } from "../../src/model/piece.ts";
import { readOrder } from "../../src/order/read.ts";
import { anyOrder, orderText } from "../support/anyOrder.ts";
import { randomFrom } from "../support/random.ts";

// In-range values never throw: they give sound pieces, or errors that name the dimension to change and whose
// mend, applied, removes them. Nothing is filtered out.

const RUNS = 120;
const SEED = 20261125;
const MOST_ERRORS = 0.2;

type Given = Readonly<Record<string, string>>;
type Ranges = ReadonlyMap<string, readonly [least: number, most: number, kind: string]>;
type Outcome = {
  readonly faults: readonly Fault[];
  readonly errors: readonly Finding[];
  readonly made?: Made;
  readonly ranges: Ranges;
};

function outcomeOf(article: ArticleDefinition, given: Given): Outcome {
  const read = readOrder(orderText(article, given), "any.yaml", articles);
  if (!read.order) return { faults: read.faults, errors: [], ranges: new Map() };
  const made = read.order.article.make(read.order.values);
  const errors = [...made.findings, ...checkPieces(made, { units: "mm" })].filter(
    (f) => f.severity === "error",
  );
  const dimensions = read.order.sections.flatMap((s) => s.dimensions);
  const ranges = new Map(
    dimensions.flatMap((d) =>
      d.least === undefined || d.most === undefined
        ? []
        : [[d.key, [d.least, d.most, d.kind] as const] as const],
    ),
  );
  return { faults: [], errors, made, ranges };
}

const UNITS: Readonly<Record<string, string>> = { length: " mm", thickness: " mm", pitch: " mm" };

/** What a reader of the mend would try: the change it offers, or any value of the dimensions that it names. */
function mendsOf(e: Finding, ranges: Ranges): readonly Given[] {
  if (e.change) return [{ [e.change.dimension]: e.change.value }];
  const named = [...e.mend.matchAll(/[a-z][a-z-]*(?:\.[a-z][a-z-]*)+/g)].map((m) => m[0]);
  return named.flatMap((key) => {
    const [least, most, kind] = ranges.get(key) ?? [0, 0, "none"];
    if (kind === "none") return [];
    const steps = Array.from({ length: 21 }, (_, i) => least + ((most - least) * i) / 20);
    return steps.map((v) => ({
      [key]: kind === "count" ? String(Math.round(v)) : `${v.toFixed(4)}${UNITS[kind] ?? ""}`,
    }));
  });
}

/** An order after a mend: a value that no longer agrees with the mended one is left to its default. */
function afterMend(article: ArticleDefinition, given: Given, mend: Given): Outcome {
  let left = { ...given, ...mend };
  for (let tries = 0; tries < 4; tries++) {
    const outcome = outcomeOf(article, left);
    const clashing = outcome.faults.filter(
      (f) => f.code === "contradiction" && left[f.key] !== undefined && mend[f.key] === undefined,
    );
    if (clashing.length === 0) return outcome;
    left = Object.fromEntries(Object.entries(left).filter(([key]) => !clashing.some((f) => f.key === key)));
  }
  return outcomeOf(article, left);
}

/** Whether one of the mends takes the error away. */
const isMended = (article: ArticleDefinition, given: Given, e: Finding, ranges: Ranges): boolean =>
  mendsOf(e, ranges).some((mend) => {
    const after = afterMend(article, given, mend);
    return (
      after.faults.length === 0 &&
      !after.errors.some((m) => m.rule === e.rule && m.piece === e.piece && m.place === e.place)
    );
  });

/** Moving, turning and turning over change no length and no area; a pair's other half is its mirror image. */
function keepsItsShape(piece: Piece): void {
  const [length, area] = [pathLength(piece.outline), signedArea(piece.outline)];
  expect(area).toBeGreaterThan(0);
  const placements = [
    { at: [123.4, -56.7], angle: 0.7 },
    { at: [0, 0], angle: Math.PI / 2, mirrored: true },
  ] as const;
  const turnedOver = flatten(placed(piece.outline, { at: [0, 0], angle: 0, mirrored: true }), 0.05);
  expect(Math.max(...turnedOver.map(([x, y]) => distanceToPath([x, -y], piece.outline)))).toBeLessThan(0.06);
  for (const placement of placements) {
    const outline = placed(piece.outline, placement);
    expect(Math.abs(pathLength(outline) - length)).toBeLessThan(1e-6 * length);
    expect(Math.abs(Math.abs(signedArea(outline)) - area)).toBeLessThan(1e-6 * area);
  }
}

for (const article of articles) {
  test(`any in-range ${article.name} is sound, or says what to change`, () => {
    const counts = {
      runs: 0,
      faults: 0,
      byPiece: new Map<string, number>(),
      byRule: new Map<string, number>(),
    };
    const count = (map: Map<string, number>, key: string): void => void map.set(key, (map.get(key) ?? 0) + 1);
    fc.assert(
      fc.property(fc.integer(), (seed) => {
        const { given } = anyOrder(article, randomFrom(seed));
        const { faults, errors, made, ranges } = outcomeOf(article, given);
        counts.runs++;
        if (faults.length > 0) counts.faults++;
        for (const piece of made?.pieces ?? []) keepsItsShape(piece);
        for (const f of faults) {
          count(counts.byRule, `${f.code} ${f.key}`);
          expect(f.code, JSON.stringify(f)).toBe("contradiction");
          expect(f.mend).not.toBe("");
        }
        for (const piece of new Set(errors.map((e) => e.piece))) count(counts.byPiece, piece);
        for (const e of errors) {
          count(counts.byRule, e.rule);
          expect(
            isMended(article, given, e, ranges),
            `${e.rule}: ${e.message} Not mended by: ${e.mend} ${JSON.stringify(e.change)} ${JSON.stringify(given)}`,
          ).toBe(true);
        }
      }),
      { numRuns: RUNS, seed: SEED },
    );
    const shares = Object.fromEntries([...counts.byPiece].map(([piece, n]) => [piece, n / counts.runs]));
    console.log(article.name, {
      runs: counts.runs,
      faults: counts.faults / counts.runs,
      shares,
      rules: Object.fromEntries(counts.byRule),
    });
    expect(counts.faults / counts.runs).toBeLessThanOrEqual(MOST_ERRORS);
    for (const share of Object.values(shares)) expect(share).toBeLessThanOrEqual(MOST_ERRORS);
  });
}
