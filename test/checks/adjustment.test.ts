import { describe, expect, test } from "vitest";
import type { Fit } from "../../src/model/article.ts";
import { found, told, verdict } from "../support/found.ts";
import { soundJob, withJoin, withPart, withPiece } from "../support/soundJob.ts";
import { TO_TIP } from "../support/soundPiece.ts";

describe("adjustment-range", () => {
  const fitted = (over: Partial<Fit>) => ({ ...soundJob(), fit: { ...soundJob().fit!, ...over } });

  test("the measure lies within what the holes give; the ends belong to it", () => {
    const { shortest, longest } = soundJob().fit!;
    expect(verdict(fitted({ wanted: shortest }), "adjustment-range")).toBe("none");
    expect(verdict(fitted({ wanted: longest }), "adjustment-range")).toBe("none");
    expect(verdict(fitted({ wanted: shortest - 0.001 }), "adjustment-range")).toBe("error");
    expect(verdict(fitted({ wanted: longest + 0.001 }), "adjustment-range")).toBe("error");
    expect(found(fitted({ wanted: longest + 8 }), "adjustment-range")[0]!.message).toContain(
      "8 mm too short",
    );
  });

  test("the range that is claimed is the range that is drawn, within 0.05 mm", () => {
    const { longest } = soundJob().fit!;
    expect(verdict(fitted({ longest: longest + 0.049 }), "adjustment-range")).toBe("none");
    expect(verdict(fitted({ longest: longest + 0.051 }), "adjustment-range")).toBe("error");
  });

  test("holes are drawn where they were worked out", () => {
    const moved = (by: number) =>
      withPiece(soundJob(), "crown", (p) =>
        withPart(p, "holes", "near.3", { at: [TO_TIP + 2 * 19.05 + by, 0] }),
      );
    // Both ends' rows are alike and each may lie at either end, so one end still finds its own.
    expect(verdict(moved(0.049), "adjustment-range")).toBe("none");
    const both = (by: number) =>
      withPiece(moved(by), "crown", (p) =>
        withPart(p, "holes", "off.3", { at: [900 - TO_TIP - 2 * 19.05 - by, 0] }),
      );
    expect(told(both(0.051), "adjustment-range")).toEqual(["error near end", "error off end"]);
  });

  test("a hole too few or too many is found", () => {
    const few = withPiece(soundJob(), "crown", (p) => ({ ...p, holes: p.holes.slice(0, -1) }));
    expect(told(few, "adjustment-range")).toEqual(["error near end", "error off end"]);
  });

  test("an article without a fit has no range to cover", () => {
    const { fit: _, ...without } = soundJob();
    expect(verdict(without, "adjustment-range")).toBe("none");
  });
});

describe("tail-in-keeper", () => {
  // The tail reaches 60 mm in the loosest hole; its point takes 17.6 and 10 should stand out.
  const keeper = (keeperFar: number) =>
    verdict(withJoin(soundJob(), "adjustment", { keeperFar }), "tail-in-keeper");

  test("past the keeper by 10 mm and the point; less is a caution, short of it an error", () => {
    expect(keeper(32.399)).toBe("none");
    expect(keeper(32.406)).toBe("caution");
    expect(keeper(59.999)).toBe("caution");
    expect(keeper(60.006)).toBe("error");
  });
});

describe("tail-and-swell", () => {
  // In the tightest hole the tail reaches 60 + 6 × 19.05 = 174.3 mm.
  const swell = (swellAt: number) =>
    verdict(withJoin(soundJob(), "adjustment", { swellAt }), "tail-and-swell");

  test("the tail stays short of the swell", () => {
    expect(swell(174.301)).toBe("none");
    expect(swell(174.299)).toBe("caution");
    expect(swell(Infinity)).toBe("none");
  });
});
