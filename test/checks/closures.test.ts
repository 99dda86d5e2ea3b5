import { describe, expect, test } from "vitest";
import { checkPieces } from "../../src/checks/index.ts";
import { bendsAbove, lies } from "../../src/checks/measure/foldedFlap.ts";
import { rectanglePath } from "../../src/geometry/path.ts";
import type { Closure, Made } from "../../src/model/article.ts";
import {
  closure,
  END,
  FRONT_BEND,
  flapDamages,
  holding,
  soundBulge,
  soundFlap,
  soundWrap,
  withFold,
} from "../support/flapCases.ts";
import { found, verdict } from "../support/found.ts";
import { barePiece, cases } from "../support/soundPiece.ts";

// Flaps folded by hand (test/support/flapCases.ts), then damaged in one place.

const { flapUpright: c } = cases;
const meets = (job: Made): string => verdict(job, "closure-meets");
const reaches = (job: Made): string => verdict(job, "flap-reach");
const words = (job: Made, rule: string): readonly string[] => found(job, rule).map((f) => f.message);
const onFlap = (x: number, y: number): Partial<Closure> => ({ flap: { ...closure.flap, at: [x, y] } });
const onFront = (x: number, y: number): Partial<Closure> => ({ front: { ...closure.front, at: [x, y] } });

describe("a drawn piece, folded", () => {
  const back = soundFlap().pieces.find((p) => p.id === "back")!;
  const at = (s: number) => lies(bendsAbove(back, 0), s);

  test("lies on the back, over the top and on the front", () => {
    expect(at(100)).toMatchObject({ u: expect.closeTo(0, 9), v: expect.closeTo(100, 9) });
    // Half way over the top: 6 and 26 from the back.
    expect(at(176 + 10.9956 + 26)).toMatchObject({
      u: expect.closeTo(32, 3),
      v: expect.closeTo(c.flapHeight, 3),
      heading: expect.closeTo(0, 4),
    });
    expect(at(c.alongPiece)).toMatchObject({
      u: expect.closeTo(c.depth, 3),
      v: expect.closeTo(c.studHeight, 3),
    });
  });

  test("in the middle of a bend its inner face lies on the bend's round", () => {
    const { u, v } = at(176 + 10.9956 / 2);
    expect(Math.hypot(u - 6, v - 176)).toBeCloseTo(6, 3);
    expect(6 - u).toBeCloseTo(v - 176, 3);
  });

  test("a bend with the grain inside turns the other way", () => {
    const turned = bendsAbove(back, 0).map((b) => ({
      ...b,
      bend: { ...b.bend, inside: "grain" as const },
    }));
    expect(lies(turned, 230).u).toBeLessThan(-30);
  });

  test("bends that round the base, folds without a bend and folds along the piece are left out", () => {
    const [body] = soundWrap().pieces;
    expect(bendsAbove(body!, 25).map((b) => b.bend.inner)).toEqual([6, 4]);
    const plain = { id: "crease", from: [-110, 50], to: [110, 50], label: "crease" } as const;
    const upright = { ...back.folds[0]!, id: "upright", from: [20, 0], to: [20, 180] } as const;
    const more = barePiece("back", back.outline, { folds: [...back.folds, plain, upright] });
    expect(bendsAbove(more, 0)).toEqual(bendsAbove(back, 0));
  });
});

describe("closure-meets", () => {
  test("halves that meet: panels, wrap-round body, bulged front", () => {
    for (const job of [soundFlap(), soundWrap(), soundBulge()]) {
      expect(words(job, "closure-meets")).toEqual([]);
      expect(words(job, "flap-reach")).toEqual([]);
    }
  });

  test("half a millimetre is let pass, more isn't, up and down, on either half", () => {
    for (const off of [0.49, -0.49]) {
      expect(meets(soundFlap(onFlap(0, c.alongPiece + off)))).toBe("none");
      expect(meets(soundFlap(onFront(0, c.studHeight + off)))).toBe("none");
    }
    for (const off of [0.51, -0.51]) {
      expect(meets(soundFlap(onFlap(0, c.alongPiece + off)))).toBe("error");
      expect(meets(soundFlap(onFront(0, c.studHeight + off)))).toBe("error");
    }
    expect(words(soundFlap(onFlap(0, c.alongPiece + 3)), "closure-meets")).toEqual([
      "Folded over the filled bag, the flap's half of the press stud comes 3 mm below its place on the front.",
    ]);
    expect(words(soundFlap(onFlap(0, c.alongPiece - 3)), "closure-meets")[0]).toContain("3 mm above");
  });

  test("on a wrap-round body the front hangs head down", () => {
    const down = soundWrap().joins[0] as Closure;
    const lower: Partial<Closure> = { front: { ...down.front, at: [0, down.front.at[1] + 2] } };
    expect(words(soundWrap(lower), "closure-meets")[0]).toContain("2 mm above");
  });

  test("to the side: seen from the front, the back's left is the front's right; in one piece they agree", () => {
    const both = (flap: number, front: number) =>
      soundFlap({ ...onFlap(flap, c.alongPiece), ...onFront(front, c.studHeight) });
    expect(meets(both(40, -40))).toBe("none");
    expect(words(both(40, 40), "closure-meets")).toEqual([
      "Folded over the filled bag, the flap's half of the press stud comes 80 mm beside its place on the front.",
    ]);
    const wrap = soundWrap().joins[0] as Closure;
    const inOne = (x: number) =>
      soundWrap({
        flap: { ...wrap.flap, at: [40, wrap.flap.at[1]] },
        front: { ...wrap.front, at: [x, wrap.front.at[1]] },
      });
    expect(meets(inOne(40))).toBe("none");
    expect(meets(inOne(-40))).toBe("error");
  });

  test("the flap's inner face lies on the front's, or up to 1.5 mm off it", () => {
    expect(meets(soundFlap({ reach: c.depth - 1.49 }))).toBe("none");
    expect(words(soundFlap({ reach: c.depth - 1.6 }), "closure-meets")[0]).toContain("stands 1.6 mm off");
    expect(meets(soundFlap({ reach: c.depth + 0.04 }))).toBe("none");
    expect(words(soundFlap({ reach: c.depth + 2 }), "closure-meets")[0]).toContain("2 mm inside the front");
  });

  test.each([
    ["drawn 1 mm further down", { from: [-110, FRONT_BEND + 1], to: [110, FRONT_BEND + 1] } as const],
    ["left out", { bend: { inner: 4, angle: 0, thickness: 2, neutral: 0.5, inside: "flesh" } } as const],
    [
      "wider",
      { bend: { inner: 7, angle: Math.PI / 2, thickness: 2, neutral: 0.5, inside: "flesh" } } as const,
    ],
    [
      "turning less",
      { bend: { inner: 4, angle: 1.5, thickness: 2, neutral: 0.5, inside: "flesh" } } as const,
    ],
    [
      "inside out",
      { bend: { inner: 4, angle: Math.PI / 2, thickness: 2, neutral: 0.5, inside: "grain" } } as const,
    ],
  ])("a bend %s", (_, change) => expect(meets(withFold("flap.front", change))).toBe("error"));

  test("a bulged front that is folded as if it were upright, and the other way", () => {
    expect(meets(soundBulge({ reach: c.depth }))).toBe("error");
    expect(meets(soundFlap({ reach: c.depth + 13.84 }))).toBe("error");
  });

  test("a flap that nothing folds", () => expect(meets(soundFlap({}, { folds: [] }))).toBe("error"));

  test("no number is no meeting", () => expect(meets(soundFlap({ reach: Number.NaN }))).toBe("error"));

  test("on the empty bag: 8 mm low goes unnoticed, more is said", () => {
    // What the top gets shorter by, the upright flap comes down by.
    expect(meets(soundFlap({ reachEmpty: c.depth - 7.9 }))).toBe("none");
    const low = soundFlap({ reachEmpty: c.depth - 12 });
    expect(found(low, "closure-meets").map((f) => `${f.severity}: ${f.message}`)).toEqual([
      "note: The press stud is placed for the filled bag; on the empty bag its half on the flap comes 12 mm low.",
    ]);
    // Bulged, the half lay 131.12 high. Hung plumb 50 from the back there go 40 over the top and 7.854 round the
    // bend: of the 108.435 past the first bend 60.581 are left to hang from 178.
    const flat = soundBulge({ reachEmpty: c.depth - 12 });
    expect(found(flat, "closure-meets")[0]!.message).toContain("comes 13.7 mm low");
  });

  test("a bag as good as shut when empty gives a number all the same", () => {
    const flat = soundFlap({ reachEmpty: 4 });
    expect(found(flat, "closure-meets")[0]!.message).toMatch(/comes \d+(\.\d)? mm low/);
  });
});

describe("flap-reach", () => {
  test("a flap ends beyond its closure's half", () => {
    expect(reaches(soundFlap({ flapEnd: c.alongPiece + 0.1 }))).toBe("none");
    const short = found(soundFlap({ flapEnd: c.alongPiece - 5 }), "flap-reach");
    expect(short.map((f) => f.message)).toEqual([
      "The flap ends 115 mm over the bag's bottom and doesn't reach past its half of the press stud at 110 mm.",
    ]);
    for (const path of ["pieces.body.flap-end", "pieces.body.closure-height"])
      expect(short[0]!.mend).toContain(path);
  });

  test("and not below the bag's bottom", () => {
    expect(reaches(soundFlap({ flapEnd: c.alongPiece + 110 }))).toBe("none");
    const long = found(
      soundFlap({ flapEnd: c.alongPiece + 114, dimension: "measures.height" }),
      "flap-reach",
    );
    expect(long.map((f) => f.message)).toEqual(["The flap hangs 4 mm below the bag's bottom."]);
    for (const path of ["pieces.body.flap-end", "pieces.body.closure-height", "measures.height"])
      expect(long[0]!.mend).toContain(path);
  });

  test("what is drawn is what is said", () => {
    const job = soundFlap({}, { outline: rectanglePath([-110, 0], 220, END - 3) });
    expect(words(job, "flap-reach")[0]).toContain("is drawn 361.8 mm long");
    const finished = soundFlap({}, { outline: rectanglePath([-110, 0], 220, END + 0.9), edgeLoss: 1 });
    expect(reaches(finished)).toBe("none");
  });

  test("a flap without a closure is looked at by its end", () => {
    const end = (flapEnd: number, height: number) =>
      soundFlap({ what: "none", ...onFlap(0, flapEnd), ...onFront(0, height), flapEnd, reachEmpty: 20 });
    expect(words(end(END, 60), "closure-meets")).toEqual([]);
    expect(reaches(end(END, 60))).toBe("none");
    expect(words(end(END, 63), "closure-meets")).toEqual([
      "Folded over the filled bag, the flap's end comes 3 mm below its place on the front.",
    ]);
    expect(reaches(end(c.alongPiece + 112, -2))).toBe("error");
  });
});

describe("goes-in", () => {
  test("what goes in, or isn't wanted, is no fault", () => {
    expect(verdict(holding([210, 148, 20], [220, 160, 60], true), "goes-in")).toBe("none");
    expect(verdict(soundFlap(), "goes-in")).toBe("none");
    const { wanted: _, ...unasked } = holding([210, 148, 20], [200, 150, 60], false).capacity!;
    expect(verdict({ ...soundFlap(), capacity: unasked }, "goes-in")).toBe("none");
  });

  test("says what it needs, what there is and what is missing", () => {
    const [f] = found(holding([210, 148, 20], [200, 150, 60], false), "goes-in");
    expect(f!.severity).toBe("error");
    expect(f!.message).toBe(
      "The A5 book does not go in: needs 210 mm × 148 mm × 20 mm, inside 200 mm × 150 mm × 60 mm.",
    );
    expect(f!.mend).toContain("measures.width by 10 mm");
    expect(f!.mend).not.toContain("measures.depth");
    expect(f!.mend).toContain("measures.holds");
  });

  test("what only corners keep out is told so", () => {
    const [f] = found(holding([210, 148, 20], [212, 150, 60], false), "goes-in");
    expect(f!.message).toContain("less the round corners");
    for (const path of ["measures.width", "measures.height", "measures.depth"])
      expect(f!.mend).toContain(path);
  });

  test("a thing that goes in any way up passes; one that was not looked at is a contradiction", () => {
    expect(verdict(holding([20, 210, 148], [220, 160, 60], true), "goes-in")).toBe("none");
    expect(found(holding([1, 1, 1], [200, 150, 60], true, "cello"), "goes-in")[0]!.message).toContain(
      "not looked at",
    );
  });
});

test.each(flapDamages)("%s: its rule finds it and no other of these does", (_, job, rules) => {
  const mine = new Set(["closure-meets", "flap-reach", "goes-in"]);
  const names = checkPieces(job, { units: "mm" }).map((f) => f.rule);
  expect([...new Set(names.filter((n) => mine.has(n)))]).toEqual(rules);
});
