import { describe, expect, test } from "vitest";
import { bag } from "../../src/articles/bag.ts";
import { headstall } from "../../src/articles/headstall.ts";
import { checkPieces, checkSheets, PIECE_RULES, SHEET_RULES } from "../../src/checks/index.ts";
import { type Point, rectanglePath, slotPath } from "../../src/geometry/path.ts";
import type { Made } from "../../src/model/article.ts";
import { orderKey } from "../../src/model/dimension.ts";
import type { Finding } from "../../src/model/finding.ts";
import type { Piece, TurnBack } from "../../src/model/piece.ts";
import type { Layout } from "../../src/model/sheet.ts";
import { flapDamages } from "../support/flapCases.ts";
import { foldingJob, gatheredJob, uPath } from "../support/gussets.ts";
import { sewnPocketJob } from "../support/pocketJob.ts";
import { soundJob, withJoin, withPart, withPiece } from "../support/soundJob.ts";
import { bitFold, punched } from "../support/soundPiece.ts";
import { seamGusset, seamTab, soundSeams, soundSteps } from "../support/soundSeams.ts";
import { soundLayout, withPlate, withSheet } from "../support/soundSheets.ts";

// A sound job, damaged in one place at a time: the rules for that damage must find it, and no other may.

const millimetres = { units: "mm" } as const;
const sound = soundJob();
const cheek = (change: (p: Piece) => Piece): Made => withPiece(sound, "cheek", change);
const part = (...change: Parameters<typeof withPart> extends [Piece, ...infer Rest] ? Rest : never): Made =>
  cheek((p) => withPart(p, ...change));
const add = (id: string, hole: Piece["holes"][number]): Made =>
  withPiece(sound, id, (p) => ({ ...p, holes: [...p.holes, hole] }));

/** The bit's turn-back made anew, its screws where the data puts them, so that nothing contradicts itself. */
function bitAnew(over: Partial<TurnBack>, wrapHalf: number, toFirst: number): Made {
  const at = (id: string, d: number): Point => [id.includes("front") ? 400 - d : 400 + d, 0];
  return cheek((p) => ({
    ...p,
    turnBacks: p.turnBacks.map((t) => (t.id === "bit" ? { ...t, ...over, wrapHalf } : t)),
    holes: p.holes.map((h) =>
      h.use === "screw" ? { ...h, at: at(h.id, toFirst + (h.id.endsWith("2") ? 14 : 0)) } : h,
    ),
  }));
}

/** Legs at a slope: half the wrap is a quarter turn and the slope, then a straight leg to where they are held. */
function sloping(degrees: number): Made {
  const [a, r, h] = [(degrees * Math.PI) / 180, 5.05, 1.4];
  const clamp = (r - h * Math.cos(a)) / Math.sin(a);
  const wrapHalf = r * (Math.PI / 2 + a);
  return bitAnew({ clamp, liftOff: clamp }, wrapHalf, wrapHalf + (clamp - r * Math.sin(a)) / Math.cos(a));
}

/** Legs held as far apart as the wrap is wide: half a turn, then straight on. */
function straight(bar: number, wrapThickness: number, liftOff = bitFold.clamp): Made {
  const r = bar / 2 + wrapThickness / 2;
  const caught = 2 * r - (bitFold.frontThickness + bitFold.backThickness) / 2;
  const wrapHalf = (Math.PI / 2) * r;
  return bitAnew(
    { bar: { kind: "round", diameter: bar }, wrapThickness, caught, liftOff },
    wrapHalf,
    wrapHalf + bitFold.clamp,
  );
}

type Damage = readonly [what: string, job: Made, rules: readonly string[]];
const damages: readonly Damage[] = [
  ["a hole's place is no number", part("holes", "bit.back.1", { at: [Number.NaN, 0] }), ["numbers-sound"]],
  [
    "a fold that a turn-back names is missing",
    part("turnBacks", "bit", { fold: "nowhere" }),
    ["named-parts"],
  ],
  ["a corner without a name", cheek((p) => ({ ...p, corners: p.corners.slice(1) })), ["outline-sound"]],
  [
    "a slit beside the piece",
    add("cheek", { id: "x", kind: "awl", at: [200, 20], size: 2, angle: 0, use: "stitch" }),
    ["inside-outline"],
  ],
  [
    "a hole near the edge",
    withPiece(sound, "crown", (p) => withPart(p, "holes", "near.1", { at: [60, 2.5] })),
    ["holes-to-edge"],
  ],
  ["a nail beside a hole", add("crown", punched("nail", [67, 0], 1.5, "nail")), ["holes-apart"]],
  // In a strap's middle a hole wider than a third of it lies nearer than 1.5 diameters to its edges too.
  [
    "a wide hole",
    withPiece(sound, "crown", (p) => withPart(p, "holes", "near.1", { size: 5.4 })),
    ["hole-to-width", "holes-to-edge"],
  ],
  [
    "a wide slot",
    part("cutouts", "slot", { outline: slotPath([60, 0], 26, 10.2), width: 10.2 }),
    ["beside-slot"],
  ],
  ["a mate 0.2 mm off", part("holes", "bit.back.2", { at: [400 + 84.5359 / 2 + 0.2, 0] }), ["mates-meet"]],
  ["a fold line 0.2 mm off", part("folds", "bit.fold", { from: [400.2, -8] }), ["fold-as-drawn"]],
  ["steep legs", sloping(20), ["turn-back-slope"]],
  ["very steep legs", sloping(31), ["turn-back-slope"]],
  ["a caught layer that touches the ring", straight(8, 2.1, 4.9), ["caught-clear"]],
  ["thick leather round a thin bar", straight(5, 3.5), ["fold-strain"]],
  ["a small buckle", withJoin(sound, "strap in buckle", { inside: 15.5 }), ["strap-in-buckle"]],
  ["a thick tongue", withJoin(sound, "tongue in slot", { tongueThickness: 5 }), ["tongue-in-slot"]],
  ["a wide strap for its slot", withJoin(sound, "strap in slot", { strapWidth: 17 }), ["strap-in-slot"]],
  ["a thick stack in a keeper", withJoin(sound, "keeper round stack", { height: 7 }), ["keeper-girth"]],
  ["a pitch that wasn't asked for", part("seams", "upper", { pitchAsked: 3.4 }), ["stitch-pitch"]],
  ["stitches nearer the edge than their inset", part("seams", "upper", { inset: 2.2 }), ["stitch-to-edge"]],
  ["a stitch out of step", part("holes", "upper.4", { at: [60 + 37.7773 / 2 + 9.4, 6] }), ["stitch-row"]],
  ["a measure out of reach", { ...sound, fit: { ...sound.fit!, wanted: 1200 } }, ["adjustment-range"]],
  ["a keeper far down", withJoin(sound, "adjustment", { keeperFar: 50 }), ["tail-in-keeper"]],
  ["a swell high up", withJoin(sound, "adjustment", { swellAt: 170 }), ["tail-and-swell"]],
  [
    "tooling over the edge",
    part("zones", "tooling", { outline: rectanglePath([180, -9], 100, 8) }),
    ["tooling-clear"],
  ],
  [
    "a long feathered end",
    part("zones", "feather", { outline: rectanglePath([0, -8], 17.5, 16) }),
    ["feathered-end"],
  ],
  [
    "a section with nothing left",
    cheek((p) => ({
      ...p,
      sections: p.sections.map((s) => ({ ...s, estimate: { ...s.estimate, value: 0 } })),
    })),
    ["weakest-section"],
  ],
];

/** Damage to a bag's seams, joined and put together by hand. */
const seamDamages: readonly Damage[] = [
  [
    "a strip cut short for its mate",
    withPiece(soundSeams(), "gusset", () => seamGusset(99.5)),
    ["mates-agree"],
  ],
  [
    "a rivet's hole 0.3 mm off its mate",
    withPiece(soundSeams(), "tab", () => withPart(seamTab(), "holes", "b", { at: [30.3, 8] })),
    ["fixed-holes-meet"],
  ],
  ["a thick seam", withJoin(soundSeams(), "seam", { stack: 9 }), ["seam-layers"]],
  [
    "a slot in a bend",
    withPiece(soundSeams(), "gusset", (p) =>
      withPart(p, "cutouts", "slot", { outline: slotPath([60, 24], 20, 4) }),
    ),
    ["slots-clear"],
  ],
  [
    "a rivet inside what is shut",
    soundSeams({ assembly: soundSteps.toReversed().map((s) => ({ ...s, after: [] })) }),
    ["assembly-order"],
  ],
  ...flapDamages,
  ["a sharp corner for its gusset", gatheredJob([uPath(180, 200, 0)]), ["gusset-strain"]],
  ["folds that meet", foldingJob(40), ["folds-inward"]],
  ["a pocket as wide as its panel", sewnPocketJob({ y: 40, w: 187, h: 80 }), ["pocket-smaller"]],
];

const base = checkPieces(sound, millimetres);
const key = (f: Finding): string => JSON.stringify(f);
/** The rules that found something they don't find in the sound job. */
const rulesIn = (findings: readonly Finding[]): readonly string[] =>
  [...new Set(findings.filter((f) => !base.some((b) => key(b) === key(f))).map((f) => f.rule))].sort();

const layout = soundLayout();
const a4 = layout.sheets[3]!.window;
type SheetDamage = readonly [what: string, layout: Layout, rules: readonly string[]];
const moved = (piece: string, at: Point) =>
  layout.plates[0]!.placed.map((p) => (p.piece === piece ? { ...p, placement: { at, angle: 0 } } : p));
const sheetDamages: readonly SheetDamage[] = [
  ["a narrow margin", { ...layout, margin: 5 }, ["sheet-scale"]],
  [
    "a sheet that shows too much for its paper",
    withSheet(layout, "A4", { origin: [150, 40] }),
    ["sheet-scale"],
  ],
  [
    "a sheet cut short",
    withSheet(layout, "A4", { window: { ...a4, maxX: a4.maxX - 4.2 } }),
    ["sheet-coverage"],
  ],
  [
    "a hole in the part left out",
    withPlate(layout, "1", {
      placed: layout.plates[0]!.placed.map((p) =>
        p.piece === "crown"
          ? {
              ...p,
              kept: [
                [0, 170, 0],
                [200, 900, 0],
              ] as const,
            }
          : p,
      ),
    }),
    ["ends-only"],
  ],
  ["an overlap that isn't kept", { ...layout, overlap: 9 }, ["sheet-joints"]],
  ["a piece that its sheet doesn't name", withSheet(layout, "A1", { pieces: ["crown"] }), ["sheets-used"]],
  [
    "two pieces over each other",
    withPlate(layout, "1", { placed: moved("cheek", [40, 36]) }),
    ["pieces-apart"],
  ],
];

describe("a sound job", () => {
  test("has nothing but its weakest section to tell", () =>
    expect(base.map((f) => `${f.severity} ${f.rule}`)).toEqual(["note weakest-section"]));
});

describe("a damaged job: the rules for its damage find it, and no other rule", () => {
  test.each([...damages, ...seamDamages])("%s", (_, job, rules) =>
    expect(rulesIn(checkPieces(job, millimetres))).toEqual(rules),
  );
  test.each(sheetDamages)("%s", (_, damaged, rules) =>
    expect(rulesIn(checkSheets(sound, damaged, millimetres))).toEqual(rules),
  );
});

describe("the rules", () => {
  const headstalls = [
    ...damages.flatMap(([, job]) => checkPieces(job, millimetres)),
    ...sheetDamages.flatMap(([, damaged]) => checkSheets(sound, damaged, millimetres)),
  ];

  const all = [...headstalls, ...seamDamages.flatMap(([, job]) => checkPieces(job, millimetres))];

  test("none is dead: each has found something in a damaged job", () => {
    const names = [...PIECE_RULES, ...SHEET_RULES].map((r) => r.name);
    expect([...new Set(all.map((f) => f.rule))].sort()).toEqual([...names].sort());
    expect(new Set(names).size).toBe(names.length);
  });

  test("each says what it asks for, in one line", () => {
    for (const { name, means } of [...PIECE_RULES, ...SHEET_RULES]) {
      expect(name).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(means).toMatch(/^[a-z].{10,100}[^.]$/);
    }
  });

  test("a finding has a place, a value, a limit and a mend, in words with units, in inches as well", () => {
    for (const units of ["mm", "in"] as const) {
      for (const finding of [...damages, ...seamDamages].flatMap(([, job]) => checkPieces(job, { units }))) {
        for (const words of [finding.place, finding.message, finding.value!, finding.mend])
          expect(words, key(finding)).not.toMatch(/^$|NaN|undefined|Infinity|null/);
        expect(finding.message, key(finding)).toMatch(/\.$/);
        if (finding.severity !== "note") expect(finding.limit, key(finding)).toBeTruthy();
      }
    }
  });

  test("what a mend names stands in a headstall's order", () => {
    const { sections } = headstall;
    const known = new Set(
      sections.flatMap((s) => [s.path, ...Object.keys(s.table).map((k) => `${s.path}.${orderKey(k)}`)]),
    );
    const named = headstalls.flatMap((f) => [
      ...(f.mend.match(/\b(pieces|straps|leather|hardware|stitching)(\.[a-z-]+)+/g) ?? []),
      ...(f.change ? [f.change.dimension] : []),
    ]);
    expect(new Set(named).size).toBeGreaterThan(8);
    expect(named.filter((n) => !known.has(n))).toEqual([]);
  });

  test("what a mend names of a bag stands in a bag's order", () => {
    const { sections } = bag;
    const known = new Set(
      sections.flatMap((s) => [s.path, ...Object.keys(s.table).map((k) => `${s.path}.${orderKey(k)}`)]),
    );
    const named = seamDamages
      .flatMap(([, job]) => checkPieces(job, millimetres))
      .flatMap((f) => [
        ...(f.mend.match(/\b(pieces|straps|leather|hardware|stitching|measures|bag)(\.[a-z-]+)+/g) ?? []),
        ...(f.change ? [f.change.dimension] : []),
      ]);
    expect(new Set(named).size).toBeGreaterThan(8);
    expect(named.filter((n) => !known.has(n))).toEqual([]);
  });

  test("findings come in one order, whatever the order of pieces and joins", () => {
    const worst = withJoin(
      withJoin(damages[6]![1], "adjustment", { keeperFar: 80, swellAt: 100 }),
      "strap in buckle",
      { inside: 15 },
    );
    const turned: Made = { ...worst, pieces: [...worst.pieces].reverse(), joins: [...worst.joins].reverse() };
    const findings = checkPieces(worst, millimetres);
    expect(findings.length).toBeGreaterThan(6);
    expect(checkPieces(turned, millimetres)).toEqual(findings);
    const ranks = findings.map((f) => ["error", "caution", "note"].indexOf(f.severity));
    expect(ranks).toEqual([...ranks].sort());
  });

  test("a job with nothing in it has nothing to find", () => {
    const empty: Made = { article: "nothing", pieces: [], joins: [], findings: [], sizes: [], cautions: [] };
    expect(checkPieces(empty, millimetres)).toEqual([]);
    expect(checkSheets(empty, { ...layout, plates: [], sheets: [] }, millimetres)).toEqual([]);
  });
});
