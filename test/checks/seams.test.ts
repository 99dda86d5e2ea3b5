import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkPieces } from "../../src/checks/index.ts";
import { matesAgree } from "../../src/checks/piece/matesAgree.ts";
import { namedParts } from "../../src/checks/piece/namedParts.ts";
import { stitchRow } from "../../src/checks/piece/stitchRow.ts";
import { pathLength } from "../../src/geometry/length.ts";
import { circlePath, rectanglePath, slotPath } from "../../src/geometry/path.ts";
import type { Made } from "../../src/model/article.ts";
import { withSeams } from "../../src/trade/mates.ts";
import { anyOpenPath, anyOutline } from "../geometry/shapes.ts";
import { found, told, verdict } from "../support/found.ts";
import { laid, side, straight, uPath } from "../support/seamEdges.ts";
import { withJoin, withPart, withPiece } from "../support/soundJob.ts";
import { bareJob, barePiece, punched, stitched } from "../support/soundPiece.ts";
import {
  fixedJoin,
  gussetFold,
  seamFront,
  seamGusset,
  seamJoin,
  seamTab,
  soundSeams,
} from "../support/soundSeams.ts";

const sound = soundSeams();
const withGusset = (length: number, over: Partial<Made> = {}): Made =>
  soundSeams({ pieces: [seamFront(), seamGusset(length), seamTab()], ...over });

test("the sound job has nothing to find", () => expect(checkPieces(sound, { units: "mm" })).toEqual([]));

describe("mates-agree", () => {
  test("mates joined flat differ by 0.2 mm at most, either way", () => {
    for (const off of [0.19, -0.19]) expect(verdict(withGusset(100 + off), "mates-agree")).toBe("none");
    for (const off of [0.21, -0.21])
      expect(told(withGusset(100 + off), "mates-agree")).toEqual(["error seam edge"]);
  });

  test("it names both pieces, both lengths, the cause and the measure", () => {
    const [f] = found(withGusset(103), "mates-agree");
    expect(f!.message).toContain("front");
    expect(f!.message).toContain("gusset");
    expect(f!.message).toContain("100 mm");
    expect(f!.message).toContain("103 mm");
    expect(f!.message).toContain("3 mm too long");
    expect(f!.mend).toContain("measures.height");
  });

  test("a bend takes up what its radii differ by, no more", () => {
    // A quarter turn at 9 mm and at 5 takes (π/2) × 4 = 6.2832 mm more of the first.
    const bent = (length: number, radii = [9, 5]) =>
      verdict(
        withGusset(length, { joins: [{ ...seamJoin, bend: { angle: Math.PI / 2, radii } }, fixedJoin] }),
        "mates-agree",
      );
    expect(bent(100 - 6.2832)).toBe("none");
    expect(bent(100 - 6.2832 - 0.19)).toBe("none");
    expect(bent(100 - 6.2832 - 0.21)).toBe("error");
    expect(bent(100)).toBe("error");
    expect(bent(100 - 6.2832, [5, 9])).toBe("error");
    expect(bent(100, [5, 5])).toBe("none");
  });

  test("one stitch more on one side is found", () => {
    const row = stitched("edge", 10, 35, 26, 100 / 26, { joins: seamJoin.name, inset: 5, pitchAsked: 4 });
    const job = withPiece(sound, "gusset", (p) => ({ ...p, seams: [row.seam], holes: row.holes }));
    expect(told(job, "mates-agree")).toEqual(["error seam edge"]);
    expect(found(job, "mates-agree")[0]!.message).toContain("25 stitches and 26 holes");
  });

  test("as many holes, one of them shifted along the seam", () => {
    const shifted = (by: number) =>
      withPiece(sound, "gusset", (p) => withPart(p, "holes", "edge.8", { at: [10 + 7 * 4 + by, 35] }));
    expect(verdict(shifted(0.19), "mates-agree")).toBe("none");
    expect(told(shifted(-0.21), "mates-agree")).toEqual(["error hole edge.8"]);
  });

  test("two holes that change places", () => {
    const job = withPiece(sound, "gusset", (p) => {
      const [seam] = p.seams;
      const [a, b, ...rest] = seam!.holes;
      return withPart(p, "seams", "edge", { holes: [b!, a!, ...rest] });
    });
    expect(verdict(job, "mates-agree")).toBe("error");
  });

  test("of three sides the two that differ most are named", () => {
    const third = { ...seamGusset(100.15), id: "lining", name: "lining" };
    const job = soundSeams({
      pieces: [seamFront(100), seamGusset(99.9), seamTab(), third],
      joins: [{ ...seamJoin, sides: [...seamJoin.sides, { piece: "lining", seam: "edge" }] }, fixedJoin],
    });
    const [f, ...more] = found(job, "mates-agree");
    expect(more).toEqual([]);
    expect(f!.message).toMatch(/gusset.*99\.9 mm.*lining.*100\.2 mm/);
  });
});

describe("seams as they are laid", () => {
  const outline = (id: string) => barePiece(id, rectanglePath([-200, -50], 900, 400));
  const job = (l: ReturnType<typeof laid>): Made =>
    soundSeams({
      pieces: [withSeams(outline("front"), l.sides), withSeams(outline("gusset"), l.sides)],
      joins: l.joins,
      assembly: [{ ...soundSeams().assembly![1]!, after: [] }],
    });
  const rules = (made: Made): readonly string[] => [
    ...new Set(checkPieces(made, { units: "mm" }).map((f) => `${f.severity} ${f.rule}`)),
  ];
  const radii = [9.25, 5];
  const bends = { "in to out": { angle: Math.PI / 2, radii } };
  const bent = (r: number) => ({ in: 100, out: 100 + (Math.PI / 2) * r });
  const strip = (r: number) => straight(200 + (Math.PI / 2) * r);

  test.each([
    [
      "a rounded U and its strip",
      [side("front", uPath(240, 180, 40)), side("gusset", straight(600 - (4 - Math.PI) * 40))],
      {},
    ],
    ["corners on one side", [side("front", uPath(240, 180, 0)), side("gusset", straight(600))], {}],
    ["an iron's pitch", [side("front", uPath(240, 180, 0)), side("gusset", straight(600))], { mode: "iron" }],
    [
      "round holes",
      [side("front", uPath(240, 180, 0)), side("gusset", straight(600))],
      { marks: "round holes", markSize: 1 },
    ],
    ["rings", [side("front", circlePath([100, 100], 30)), side("gusset", circlePath([100, 100], 30))], {}],
    [
      "boxes",
      [side("front", rectanglePath([0, 0], 40, 30)), side("gusset", rectanglePath([50, 0], 40, 30))],
      {},
    ],
    [
      "a bend with a pitch of its own",
      [side("front", strip(radii[0]!), bent(radii[0]!)), side("gusset", strip(radii[1]!), bent(radii[1]!))],
      { bends },
    ],
    [
      "a bend with a pitch of its own, by iron",
      [side("front", strip(radii[0]!), bent(radii[0]!)), side("gusset", strip(radii[1]!), bent(radii[1]!))],
      { bends, mode: "iron" },
    ],
  ] as const)("%s: sound, but for notes", (_, sides, over) => {
    const found = rules(job(laid(sides, over as Parameters<typeof laid>[1])));
    expect(found.filter((r) => !r.startsWith("note "))).toEqual([]);
  });

  test("a strip that is cut 1 mm short is found, run by run", () => {
    const l = laid([side("front", uPath(240, 180, 40)), side("gusset", straight(599 - (4 - Math.PI) * 40))]);
    expect(rules(job(l))).toEqual(["error mates-agree"]);
  });

  test("a bend that the join doesn't know is found", () => {
    const l = laid([side("front", strip(9.25), bent(9.25)), side("gusset", strip(5), bent(5))]);
    expect(rules(job(l))).toContain("error mates-agree");
  });

  test("a side so short in a bend that its stitches crowd is found; closer than 1 mm is an error", () => {
    // Body at 9.25, panel's seam at r: 14.53 mm take 4 stitches of 3.63; the panel's lie (π/2) r / 4 apart.
    const crowded = (r: number) => {
      const sides = [side("front", strip(9.25), bent(9.25)), side("gusset", strip(r), bent(r))];
      return told(
        job(laid(sides, { bends: { "in to out": { angle: Math.PI / 2, radii: [9.25, r] } } })),
        "stitch-pitch",
      );
    };
    expect(crowded(4.5)).toEqual([]); // 1.77 mm
    expect(crowded(4.4)).toEqual(["caution seam seam.2"]); // 1.73 mm, under half of 3.5
    expect(crowded(2.6)).toEqual(["caution seam seam.2"]); // 1.02 mm
    expect(crowded(2.5)).toEqual(["error seam seam.2"]); // 0.98 mm
    expect(crowded(0)).toEqual(["error seam seam.2"]);
  });

  test("the pitch is judged once, on the longer side", () => {
    const short = (length: number) => {
      const [a, b] = [side("front", straight(length)), side("gusset", straight(length * 0.8))];
      return told(job(laid([a, b])), "stitch-pitch");
    };
    expect(short(98)).toEqual([]); // 28 × 3.5
    expect(short(5)).toEqual(["note seam seam"]); // one stitch of 5 mm, once
  });
});

test("on any outline or open line, with any breaks, what is laid is sound by its own rules", () => {
  const shares = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 4 });
  const rules = [stitchRow, matesAgree, namedParts];
  fc.assert(
    fc.property(fc.oneof(anyOutline, anyOpenPath), shares, shares, fc.boolean(), (path, one, two, iron) => {
      const breaks = (all: readonly number[], name: string) =>
        Object.fromEntries(all.map((s, k) => [`${name} ${k}`, s * pathLength(path)]));
      const l = laid([side("front", path, breaks(one, "a")), side("gusset", path, breaks(two, "b"))], {
        mode: iron ? "iron" : "spread",
      });
      const square = rectanglePath([-300, -300], 600, 600);
      const job = bareJob(
        ["front", "gusset"].map((id) => withSeams(barePiece(id, square), l.sides)),
        { joins: l.joins },
      );
      expect(rules.flatMap((r) => r.check(job, { units: "mm" }).map((f) => f.message))).toEqual([]);
      expect(l.findings.filter((f) => f.severity === "error")).toEqual([]);
    }),
    { seed: 5, numRuns: 80 },
  );
});

test("a mated seam may end 2 mm from an edge it runs towards; the edge it follows keeps its inset", () => {
  // The front's seam runs from x = 10 to 110, 5 mm in; the edge at its far end is moved.
  const ends = (x: number) =>
    told(
      withPiece(sound, "front", (p) => ({ ...p, outline: rectanglePath([0, 0], x, 60) })),
      "stitch-to-edge",
    );
  expect(ends(113)).toEqual([]);
  expect(ends(112.01)).toEqual([]);
  expect(ends(111.9)).toEqual(["caution hole edge.26"]);
  expect(ends(111.4)).toEqual(["error hole edge.26"]);
  const lower = withPiece(sound, "front", (p) => ({ ...p, outline: rectanglePath([0, 0.2], 120, 60) }));
  expect(told(lower, "stitch-to-edge")).toHaveLength(24); // all but its two ends
});

describe("fixed-holes-meet", () => {
  const tab = (at: readonly [number, number], size = 3, kind: "round" | "awl" = "round") =>
    withPiece(sound, "tab", (p) => withPart(p, "holes", "b", { at, size, kind }));

  test("distances from hole to hole agree within 0.2 mm, wherever the part lies", () => {
    expect(verdict(tab([30.19, 8]), "fixed-holes-meet")).toBe("none");
    expect(verdict(tab([10, 28]), "fixed-holes-meet")).toBe("none"); // a quarter turn
    expect(told(tab([30.21, 8]), "fixed-holes-meet")).toEqual(["error hole tab.2"]);
    expect(found(tab([32, 8]), "fixed-holes-meet")[0]!.message).toMatch(/20 mm.*22 mm/);
    expect(found(tab([32, 8]), "fixed-holes-meet")[0]!.mend).toContain("pieces.strap-tab.rivets");
  });

  test("sizes are alike; a rivet wants no awl's slit, a stitch doesn't mind", () => {
    expect(verdict(tab([30, 8], 3.49), "fixed-holes-meet")).toBe("none");
    expect(verdict(tab([30, 8], 3.51), "fixed-holes-meet")).toBe("error");
    expect(verdict(tab([30, 8], 2.4), "fixed-holes-meet")).toBe("error");
    expect(verdict(tab([30, 8], 3, "awl"), "fixed-holes-meet")).toBe("error");
    expect(verdict(withJoin(tab([30, 8], 2, "awl"), "fixed", { by: "stitch" }), "fixed-holes-meet")).toBe(
      "none",
    );
  });

  test("as many holes in every part", () => {
    const [front, tabSide] = fixedJoin.sides;
    const job = withJoin(sound, "fixed", { sides: [front!, { ...tabSide!, holes: ["a"] }] });
    expect(found(job, "fixed-holes-meet")[0]!.message).toContain("2 holes in front and 1 in tab");
  });
});

describe("seam-layers", () => {
  const stack = (mm: number) => verdict(withJoin(sound, "seam", { stack: mm }), "seam-layers");

  test("over 8 mm a caution, over 12 an error", () => {
    expect([8, 8.1, 12, 12.1].map(stack)).toEqual(["none", "caution", "caution", "error"]);
    expect([Number.NaN, 0].map(stack)).toEqual(["error", "error"]);
  });

  test("it names the leathers that make it thick", () => {
    const [f] = found(withJoin(sound, "seam", { stack: 13 }), "seam-layers");
    expect(f!.mend).toContain("leather.body.thickness, leather.gusset.thickness");
    expect(f!.message).toContain("common practice");
  });

  test("a stitched place counts, a riveted one doesn't; a seam of several runs is told once", () => {
    expect(verdict(withJoin(sound, "fixed", { stack: 13 }), "seam-layers")).toBe("none");
    expect(verdict(withJoin(sound, "fixed", { stack: 13, by: "stitch" }), "seam-layers")).toBe("error");
    const runs = [9, 10, 8.5].map((mm, k) => ({ ...seamJoin, name: `front to gusset: run ${k}`, stack: mm }));
    const [f, ...more] = found({ ...sound, joins: runs }, "seam-layers");
    expect([f!.value, more.length]).toEqual(["10 mm", 0]);
  });
});

describe("slots-clear", () => {
  const slot = (y: number, over = {}) =>
    verdict(
      withPiece(sound, "gusset", (p) =>
        withPart(p, "cutouts", "slot", { outline: slotPath([60, y], 20, 4), ...over }),
      ),
      "slots-clear",
    );

  test("a bend keeps half of its flat and 2 mm; in the bend itself is an error", () => {
    // The fold lies at 28, its bend from 26.4292; the slot's edge at y + 2.
    expect(slot(28 - 1.5708 - 2 - 2 - 0.01)).toBe("none");
    expect(slot(28 - 1.5708 - 2 - 2 + 0.01)).toBe("caution");
    expect(slot(28 - 1.5708 - 2 - 0.01)).toBe("caution");
    expect(slot(28 - 1.5708 - 2 + 0.01)).toBe("error");
  });

  test("the neutral fibre counts from the inner face, whichever it is", () => {
    const bent = (inside: "flesh" | "grain", y: number) =>
      verdict(
        withPiece(sound, "gusset", (p) => ({
          ...p,
          folds: [{ ...gussetFold, bend: { ...gussetFold.bend!, neutral: 0.25, inside } }],
          cutouts: [{ ...p.cutouts[0]!, outline: slotPath([60, y], 20, 4) }],
        })),
        "slots-clear",
      );
    // Half the flat: (π/4) (1 + 0.25 × 2) = 1.1781 inside the flesh, (π/4) (1 + 0.75 × 2) = 1.9635 the other way.
    const edge = (half: number) => 28 - half - 2 - 2;
    expect([bent("flesh", edge(1.1781) - 0.01), bent("flesh", edge(1.1781) + 0.01)]).toEqual([
      "none",
      "caution",
    ]);
    expect([bent("grain", edge(1.9635) - 0.01), bent("grain", edge(1.9635) + 0.01)]).toEqual([
      "none",
      "caution",
    ]);
  });

  test("a fold without a bend is only a line; a tongue's slot lies on its turn-back", () => {
    const plain = withPiece(sound, "gusset", (p) => ({
      ...p,
      folds: [{ id: "flange", from: gussetFold.from, to: gussetFold.to, label: "fold" }],
      cutouts: [{ ...p.cutouts[0]!, outline: slotPath([60, 26], 20, 4) }],
    }));
    expect(verdict(plain, "slots-clear")).toBe("none");
    expect(slot(26, { use: "tongue slot" })).toBe("error"); // no turn-back on this piece
  });

  test("a mated seam keeps 2 mm from what is cut out; under 1.5 is an error", () => {
    const rivet = (y: number, over = {}) =>
      verdict(
        withPiece(sound, "front", (p) => ({ ...p, holes: [...p.holes, punched("x", [80, y], 3)], ...over })),
        "slots-clear",
      );
    expect([8.51, 8.49, 8.01, 7.99].map((y) => rivet(y))).toEqual(["none", "caution", "caution", "error"]);
    const own = withPiece(sound, "front", (p) => {
      const alone = p.seams.map(({ joins, ...seam }) => seam);
      return { ...p, seams: alone, holes: [...p.holes, punched("x", [80, 7], 3)] };
    });
    expect(verdict(own, "slots-clear")).toBe("none");
  });

  test("what sets its place is named", () => {
    const job = withPiece(sound, "front", (p) => withPart(p, "holes", "tab.1", { at: [40, 8] }));
    expect(found(job, "slots-clear")[0]!.mend).toContain("pieces.strap-tab.rivets");
  });
});

describe("named-parts of joins", () => {
  const [front] = fixedJoin.sides;
  test.each([
    ["a seam's piece", withJoin(sound, "seam", { sides: [{ piece: "nowhere", seam: "edge" }] }), "seam"],
    ["a seam's line", withJoin(sound, "seam", { sides: [{ piece: "front", seam: "nowhere" }] }), "seam"],
    ["a rivet's piece", withJoin(sound, "fixed", { sides: [{ ...front!, piece: "nowhere" }] }), "fixed"],
    ["a rivet's hole", withJoin(sound, "fixed", { sides: [{ ...front!, holes: ["nowhere"] }] }), "fixed"],
    [
      "a gusset",
      {
        ...sound,
        joins: [
          ...sound.joins,
          {
            kind: "gather",
            gusset: "nowhere",
            body: "front",
            seams: ["edge"],
            inset: 4,
            fold: 10,
            thickness: 2,
            wetMoulded: false,
            dimension: "pieces.body.corner-radius",
          },
        ],
      },
      "gather",
    ],
    [
      "a gathered seam",
      {
        ...sound,
        joins: [
          ...sound.joins,
          {
            kind: "gather",
            gusset: "gusset",
            body: "front",
            seams: ["nowhere"],
            inset: 4,
            fold: 10,
            thickness: 2,
            wetMoulded: false,
            dimension: "pieces.body.corner-radius",
          },
        ],
      },
      "gather",
    ],
    [
      "a closure's half",
      {
        ...sound,
        joins: [
          ...sound.joins,
          {
            kind: "closure",
            what: "press stud",
            flap: { piece: "nowhere", at: [0, 0], baseLine: 0 },
            front: { piece: "front", at: [60, 40], baseLine: 0 },
            reach: 40,
            reachEmpty: 40,
            flapEnd: 200,
            dimension: "pieces.body.closure-height",
          },
        ],
      },
      "closure",
    ],
  ] as readonly (readonly [string, Made, string])[])("%s that doesn't exist is found", (_, job, place) =>
    expect(told(job, "named-parts")).toContain(`error ${place}`),
  );

  test("a seam that says it is joined, and isn't", () => {
    const job = withPiece(sound, "gusset", (p) => withPart(p, "seams", "edge", { joins: "nothing: edge" }));
    expect(told(job, "named-parts")).toEqual(["error seam edge"]);
  });
});
