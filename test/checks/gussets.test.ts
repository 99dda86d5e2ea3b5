import { describe, expect, test } from "vitest";
import worked from "../../fixtures/published/worked-cases.json";
import { checkPieces } from "../../src/checks/index.ts";
import { pathLength, subPath } from "../../src/geometry/length.ts";
import { cubic, openPath, type Path, polyline } from "../../src/geometry/path.ts";
import type { Gather } from "../../src/model/article.ts";
import { found, verdict } from "../support/found.ts";
import { foldingJob, gatheredJob, uPath } from "../support/gussets.ts";

const { flangedGusset: corner, sideGusset } = worked.cases;

/** The seam of a body with corners of this radius at its finished edge. */
const round = (radius: number): Path => uPath(180, 200, radius - corner.seamInset);
const RULE = "gusset-strain";

describe("a gusset's web round the corners of its body", () => {
  test("the worked corner, strained 0.1944, is a caution; wet-moulded it is none", () => {
    const job = gatheredJob([round(corner.cornerRadius)]);
    expect(verdict(job, RULE)).toBe("caution");
    expect(found(job, RULE)[0]!.value).toBe("19.4 %");
    expect(verdict(gatheredJob([round(corner.cornerRadius)], { wetMoulded: true }), RULE)).toBe("none");
  });

  // 7 mm further in than the seam: 10 % round 70 mm, 20 % round 35, 30 % round 23.33.
  test.each([
    [74.01, false, "none"],
    [73.9, false, "caution"],
    [39.01, true, "none"],
    [38.9, true, "caution"],
    [27.34, false, "caution"],
    [27.3, false, "error"],
    [27.3, true, "error"],
    [corner.foldInset + 1, false, "error"],
  ] as const)("radius %d, wet-moulded %s: %s", (radius, wetMoulded, verdictOf) =>
    expect(verdict(gatheredJob([round(radius)], { wetMoulded }), RULE)).toBe(verdictOf),
  );

  test("thicker leather or a web further in strains more", () => {
    const at = (over: Partial<Gather>): string => verdict(gatheredJob([round(74.01)], over), RULE);
    expect(at({ fold: 10.2 })).toBe("caution");
    expect(at({ thickness: 2.4 })).toBe("caution");
    expect(at({ inset: 3.6 })).toBe("caution");
    expect(at({ fold: 8 })).toBe("none");
  });

  test("its change, made, takes it away", () => {
    const [finding] = found(gatheredJob([round(50)]), RULE);
    expect(finding!.change).toEqual({ dimension: "pieces.body.corner-radius", value: "74 mm" });
    expect(finding!.mend).toContain("pieces.body.corner-radius");
    expect(finding!.mend).toContain("bag.flange");
    expect(finding!.message).toContain("74 mm");
    expect(found(gatheredJob([round(Number.parseFloat(finding!.change!.value))]), RULE)).toEqual([]);
  });

  test("where there is no room for such a corner, none is offered", () => {
    const narrow = uPath(180, 100, 40);
    const [finding] = found(gatheredJob([narrow]), RULE);
    expect(finding!.change).toBeUndefined();
    expect(finding!.mend).toContain("bag.flange");
  });

  test("a sharp corner is an error, also where one run ends and the next begins", () => {
    const sharp = uPath(180, 200, 0);
    for (const runs of [[sharp], [subPath(sharp, 0, 180), subPath(sharp, 180, pathLength(sharp))]]) {
      const [finding] = found(gatheredJob(runs), RULE);
      expect(finding!.severity).toBe("error");
      expect(finding!.value).toBe("a sharp corner");
      expect(finding!.change).toEqual({ dimension: "pieces.body.corners", value: "round" });
    }
  });

  test("runs that stand apart make no corner; nor does a kink of 3 degrees", () => {
    const sharp = uPath(180, 200, 0);
    const apart = [subPath(sharp, 0, 175), subPath(sharp, 185, 370), subPath(sharp, 390, pathLength(sharp))];
    expect(found(gatheredJob(apart), RULE)).toEqual([]);
    const bent = (degrees: number): Path => {
      const turn = (degrees * Math.PI) / 180;
      return polyline([
        [0, 0],
        [100, 0],
        [100 + 80 * Math.cos(turn), 80 * Math.sin(turn)],
      ]);
    };
    expect(verdict(gatheredJob([bent(3)]), RULE)).toBe("none");
    expect(verdict(gatheredJob([bent(8)]), RULE)).toBe("error");
  });

  test("a free curve counts where it bends most", () => {
    // The parabola y = 40 (x / 60)² as a cubic; at its foot its radius is 60² / (2 × 40) = 45, and 7 / 45 = 15.6 %.
    const parabola = openPath([-60, 40], [cubic([-20, -40 / 3], [20, -40 / 3], [60, 40])]);
    expect(found(gatheredJob([parabola]), RULE)[0]!.value).toBe("15.6 %");
  });

  test("a job without its seams has nothing to find", () =>
    expect(found(gatheredJob([round(20)], { seams: ["other"] }), RULE)).toEqual([]));
});

describe("side gussets folded inward", () => {
  // The worked fold comes 29.8496 in: twice that and 2 × 3 is 65.6992.
  const LIMIT = 2 * sideGusset.foldDepth + 6;

  test.each([
    [LIMIT + 0.01, "none"],
    [LIMIT - 0.01, "error"],
    [300, "none"],
    [20, "error"],
  ])("inside width %d: %s", (width, verdictOf) =>
    expect(verdict(foldingJob(width), "folds-inward")).toBe(verdictOf),
  );

  test("a narrower top has room", () => {
    expect(verdict(foldingJob(60), "folds-inward")).toBe("error");
    expect(verdict(foldingJob(60, { topWidth: 50 }), "folds-inward")).toBe("none");
  });

  test("a gusset lower than its fold is deep can't fold", () => {
    expect(verdict(foldingJob(300, { height: 29.8 }), "folds-inward")).toBe("error");
    expect(verdict(foldingJob(300, { height: 29.9 }), "folds-inward")).toBe("none");
  });

  test("its change makes none fold, and its mend names the top's width", () => {
    const [finding] = found(foldingJob(50), "folds-inward");
    expect(finding!.change).toEqual({ dimension: "pieces.gusset.inward-fold", value: "no" });
    expect(finding!.mend).toContain("pieces.gusset.top-width");
    expect(finding!.message).toContain("29.8 mm");
  });
});

test("a job that is damaged in one way has one rule to say so", () => {
  const rules = (job: ReturnType<typeof foldingJob>): readonly string[] => [
    ...new Set(
      checkPieces(job, { units: "mm" })
        .filter((f) => f.severity !== "note")
        .map((f) => f.rule),
    ),
  ];
  expect(rules(gatheredJob([round(80)]))).toEqual([]);
  expect(rules(gatheredJob([uPath(180, 200, 0)]))).toEqual([RULE]);
  expect(rules(foldingJob(300))).toEqual([]);
  expect(rules(foldingJob(40))).toEqual(["folds-inward"]);
});
