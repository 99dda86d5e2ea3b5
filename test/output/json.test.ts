import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { makeJob } from "../../src/job.ts";
import { layOut } from "../../src/layout/layOut.ts";
import type { FixedJoin, Made } from "../../src/model/article.ts";
import type { Job } from "../../src/model/job.ts";
import { leaf } from "../../src/model/quantity.ts";
import { NO_SHOP } from "../../src/order/shopRead.ts";
import { jobSchema } from "../../src/output/jobSchema.ts";
import { jobData, jobJson } from "../../src/output/json.ts";
import * as bag from "../support/bagPieces.ts";
import { paper } from "../support/papers.ts";
import { roundHole } from "../support/samplePieces.ts";
import { bareJob } from "../support/soundPiece.ts";

const NO_BENCH: Job["bench"] = {
  cut: [],
  strips: [],
  hardware: [],
  punches: [],
  thread: { rows: [], total: 0, stitches: 0, advice: [] },
  leather: [],
  steps: [],
  minutes: 0,
  unpriced: [],
};

/** A job of pieces made by hand. */
function jobOf(over: Partial<Made>): Job {
  const made = bareJob(over.pieces ?? bag.bagPieces(), over);
  return {
    order: { file: "bag.yaml", text: "article: bag", article: "bag", forWhom: "Wren", units: "mm" },
    dimensions: [],
    made,
    derivations: [],
    findings: [],
    layout: layOut(made.pieces, { paper: paper("letter") }),
    bench: NO_BENCH,
    quantity: 1,
    finish: { dye: "", edges: "burnished", thread: "" },
    shop: NO_SHOP,
  };
}
const read = (job: Job) => jobSchema.parse(JSON.parse(jobJson(job)));

const rivets: FixedJoin = {
  kind: "fixed",
  name: "tab to front",
  by: "rivet",
  sides: [
    { piece: "front", holes: ["tab.1", "tab.2"] },
    { piece: "body", holes: ["root.1", "root.2"] },
    { piece: "back", holes: ["patch.1", "patch.2"] },
  ],
  stack: 4,
  dimension: "hardware.fixing",
};

describe("what meets what in job.json", () => {
  // The two runs of one side of the seam meet the first two of the other; they share hole 42.
  const { front, gusset } = { front: bag.front(), gusset: bag.gusset() };
  const run = (from: number, to: number, id: string) => ({
    ...gusset.seams[0]!,
    id,
    holes: gusset.seams[0]!.holes.slice(from - 1, to),
  });
  const pieces = [
    front,
    { ...gusset, seams: [run(1, 42, "front.1"), run(42, 52, "front.2"), gusset.seams[1]!] },
  ];
  const join = bag.frontJoins()[0]!;
  const joins = [1, 2].map((k) => ({
    ...join,
    sides: [
      { piece: "front", seam: `gusset.${k}` },
      { piece: "gusset", seam: `front.${k}` },
    ],
  }));
  const data = read(jobOf({ pieces, joins }));
  const piece = (id: string) => data.pieces.find((p) => p.id === id)!;
  const hole = (id: string, name: string) => piece(id).holes.find((h) => h.id === name)!;

  test("hole i of one side of a seam names hole i of the other, and the other names it", () => {
    for (const i of [1, 17, 43, 52]) {
      expect(hole("front", `gusset.${i}`).mates).toEqual([{ piece: "gusset", hole: `front.${i}` }]);
      expect(hole("gusset", `front.${i}`).mates).toEqual([{ piece: "front", hole: `gusset.${i}` }]);
    }
  });

  test("a hole of two runs names its mate once; a hole of no seam names none", () => {
    expect(hole("front", "gusset.42").mates).toEqual([{ piece: "gusset", hole: "front.42" }]);
    expect(hole("front", "stud").mates).toBeUndefined();
    expect(hole("front", "gusset.53").mates).toBeUndefined();
    expect(hole("gusset", "back.3").mates).toBeUndefined();
  });

  test("a seam names its mate, what it is a side of, and where its numbers begin", () => {
    const seams = piece("front").seams;
    expect(seams[1]).toMatchObject({
      joins: "front to gusset: edge",
      numberFrom: 42,
      mates: [{ piece: "gusset", seam: "front.2" }],
    });
    expect(seams[2]!.mates).toBeUndefined();
    expect(piece("gusset").seams[2]!.groove).toBe(true);
  });

  test("holes of rivets through three layers name both others", () => {
    const at = (names: readonly string[]) => names.map((id, i) => roundHole(id, 20 * i, 4, 60));
    const fixed = [
      bag.front({ holes: at(["tab.1", "tab.2"]), seams: [] }),
      bag.body({ holes: at(["root.1", "root.2"]), seams: [] }),
      bag.back({ holes: at(["patch.1", "patch.2"]), seams: [] }),
    ];
    const job = read(jobOf({ pieces: fixed, joins: [rivets] }));
    expect(job.pieces[1]!.holes[1]!.mates).toEqual([
      { piece: "front", hole: "tab.2" },
      { piece: "back", hole: "patch.2" },
    ]);
  });
});

describe("a bag's job.json", () => {
  const capacity = {
    volume: leaf("capacity", 2_340_000, "ratio", { kind: "fact", source: "by hand" }),
    inside: [240, 180, 60],
    things: [{ name: "phone", sizes: [160, 78, 10], goes: true, source: "common practice, no source" }],
    wanted: "phone",
  } as const;
  const assembly = [
    { name: "front to gusset", does: "stitch", after: [], reaches: ["inside"], shuts: [] },
  ] as const;
  const closure = {
    kind: "closure",
    what: "press stud",
    flap: { piece: "back", at: [0, 600], baseLine: 0 },
    front: { piece: "front", at: [0, 130], baseLine: 0 },
    reach: 62,
    reachEmpty: 50,
    flapEnd: 640,
    dimension: "pieces.body.closure-height",
  } as const;
  const gather = {
    kind: "gather",
    gusset: "gusset",
    body: "front",
    seams: ["gusset.2"],
    inset: 4,
    fold: 10,
    thickness: 1.6,
    wetMoulded: false,
    dimension: "pieces.body.corner-radius",
  } as const;

  test("keeps bends, zones, marks, joins, capacity in mm³ and litres, and the order of assembly", () => {
    const joins = [...bag.frontJoins(), closure, gather];
    const data = read(jobOf({ joins, capacity, assembly }));
    expect(data.capacity).toMatchObject({ volume: 2_340_000, litres: 2.34, inside: [240, 180, 60] });
    expect(data.assembly).toEqual(assembly);
    expect(data.joins.map((j) => j.kind)).toEqual(["seam", "closure", "gather"]);
    const [, back, gusset] = data.pieces;
    expect(back!.folds[0]!.bend).toMatchObject({ inner: 4, inside: "flesh" });
    expect(new Set(gusset!.marks.map((m) => m.kind))).toEqual(new Set(["clip", "notch"]));
    expect(gusset!.zones.map((z) => z.kind)).toEqual(["trim", "trim"]);
  });

  test("the schema refuses what it doesn't know", () => {
    const data = JSON.parse(jobJson(jobOf({ joins: bag.frontJoins() })));
    expect(jobSchema.safeParse(data).success).toBe(true);
    const [join] = data.joins;
    for (const wrong of [{ ...join, kind: "glued" }, { ...join, extra: 1 }, { kind: "seam" }])
      expect(jobSchema.safeParse({ ...data, joins: [wrong] }).success).toBe(false);
    expect(jobSchema.safeParse({ ...data, capacity: { volume: 1 } }).success).toBe(false);
  });
});

test.each(["juniper-headstall", "bramble-headstall", "heron-bag-strap"])(
  "the job of %s is as the schema says, joins and all",
  (name) => {
    const result = makeJob(readFileSync(`templates/${name}.yaml`, "utf8"), `${name}.yaml`);
    if (!result.made) throw new Error("not made");
    expect(jobSchema.safeParse(JSON.parse(jobJson(result.job))).error).toBeUndefined();
    expect(jobData(result.job).joins.length).toBeGreaterThan(0);
    const { fittings } = jobSchema.parse(JSON.parse(jobJson(result.job)));
    expect(fittings?.map((f) => f.name)).toEqual(result.job.made.fittings?.map((f) => f.name));
    expect(fittings?.[0]).toMatchObject({ kind: "buckle", serves: [{ ids: expect.any(Array) }] });
  },
);
