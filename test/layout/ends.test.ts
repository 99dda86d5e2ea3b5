import { describe, expect, test } from "vitest";
import { BREAK_GAP_MM, keptOf, STUB_MM } from "../../src/layout/ends.ts";
import { layOut } from "../../src/layout/layOut.ts";
import { paper } from "../support/papers.ts";
import { cheekLike, longStrap, roundHole, samplePiece, strapOutline } from "../support/samplePieces.ts";

describe("a straight strap printed ends only", () => {
  test("keeps both ends true past the last hole, and leaves out what is plain", () => {
    // Holes from 90 to 204 and from 696 to 810, each 4 mm wide.
    const kept = keptOf(longStrap());
    expect(kept).toHaveLength(2);
    const [near, far] = kept!;
    expect(near![0]).toBe(0);
    expect(near![1]).toBeCloseTo(206 + STUB_MM, 9);
    expect(far![0]).toBeCloseTo(694 - STUB_MM, 9);
    expect(far![1]).toBe(900);
    // The far end is drawn a gap beyond the near one.
    expect(far![0] - far![2]).toBeCloseTo(near![1] + BREAK_GAP_MM, 9);
  });

  test("a zone, a fold or a slot is never left out", () => {
    const middle = {
      id: "ear",
      kind: "overlap" as const,
      outline: strapOutline(40, 16, 0),
      label: "ear piece",
    };
    const moved = {
      ...middle,
      outline: {
        ...middle.outline,
        start: [420, -8] as const,
        segments: [
          [460, -8],
          [460, 8],
          [420, 8],
          [420, -8],
        ].map(([x, y]) => ({ kind: "line" as const, to: [x!, y!] as const })),
      },
    };
    const kept = keptOf(longStrap("crown", 900, 16, { zones: [moved] }))!;
    expect(kept.some(([from, to]) => from <= 420 && to >= 460)).toBe(true);
    const folded = keptOf(
      longStrap("crown", 900, 16, { folds: [{ id: "f", from: [450, -8], to: [450, 8], label: "" }] }),
    )!;
    expect(folded.some(([from, to]) => from < 450 && to > 450)).toBe(true);
  });

  test("a shaped piece, or one too busy to save anything, is drawn whole", () => {
    expect(keptOf(cheekLike())).toBeUndefined();
    expect(keptOf(samplePiece("short", strapOutline(200, 16), { straight: true }))).toBeUndefined();
    const busy = Array.from({ length: 9 }, (_, i) => roundHole(`h.${i}`, 90 * (i + 1)));
    expect(keptOf(longStrap("crown", 900, 16, { holes: busy }))).toBeUndefined();
  });

  test("saves sheets, and only where it is asked for", () => {
    const whole = layOut([longStrap()], { paper: paper("letter") });
    const ends = layOut([longStrap()], { paper: paper("letter"), endsOnly: true });
    expect(whole.sheets).toHaveLength(4);
    // 231 + 60 + 231 mm and its room: 530 mm, on three sheets of 259.4.
    expect(ends.sheets).toHaveLength(3);
    expect(whole.plates[0]!.placed[0]!.kept).toBeUndefined();
    expect(ends.plates[0]!.placed[0]!.kept).toBeDefined();
  });
});

test("joints of a real layout miss every punched hole, slot and fold where they can", () => {
  const pieces = [longStrap(), cheekLike()];
  for (const name of ["letter", "a4", "tabloid"]) {
    const layout = layOut(pieces, { paper: paper(name) });
    for (const plate of layout.plates) {
      for (const { piece, placement } of plate.placed) {
        const drawn = pieces.find((p) => p.id === piece)!;
        const along = (x: number, y: number): number =>
          (placement.angle === 0 ? placement.at[0] + x : placement.at[1] + x) + 0 * y;
        const joints = placement.angle === 0 ? plate.jointsX : plate.jointsY;
        const marks = [
          ...drawn.holes
            .filter((h) => h.kind === "round")
            .map((h) => [along(h.at[0], 0) - h.size / 2, along(h.at[0], 0) + h.size / 2] as const),
          ...drawn.folds.map((f) => [along(f.from[0], 0), along(f.from[0], 0)] as const),
          ...(piece === "cheek" ? [[along(36, 0), along(64, 0)] as const] : []),
        ];
        for (const joint of joints)
          for (const [from, to] of marks)
            expect(to < joint - 5 || from > joint + 5, `${name} ${piece} at ${from}`).toBe(true);
      }
    }
  }
});
