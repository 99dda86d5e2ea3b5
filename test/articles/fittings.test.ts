import { describe, expect, test } from "vitest";
import { articles } from "../../src/articles/index.ts";
import type { FixedJoin, Made } from "../../src/model/article.ts";
import type { Fitting } from "../../src/model/fitting.ts";
import type { Piece } from "../../src/model/piece.ts";
import { readOrder } from "../../src/order/read.ts";
import { anyOrder } from "../support/anyOrder.ts";
import { madeOf, orderText } from "../support/madeOf.ts";
import { orderFiles } from "../support/orders.ts";
import { randomFrom } from "../support/random.ts";

// What is bought against the pieces' holes, slits, turn-backs and joins: nothing forgotten, nothing twice.

const BOUGHT = new Set(["screw", "rivet", "stud", "staple", "nail"]);
const PRONGS = new Set(["tongue slot", "prong slot"]);

/** Everything of a piece that a bought part belongs to. */
const wantedBy = (p: Piece): readonly string[] => [
  ...p.holes.filter((h) => BOUGHT.has(h.use)).map((h) => h.id),
  ...p.cutouts
    .filter((c) => PRONGS.has(c.use) || (c.use === "opening" && c.id.startsWith("closure.")))
    .map((c) => c.id),
  // A loop goes round another strap: its bar is flat, and is not bought.
  ...p.turnBacks.filter((t) => t.bar.kind === "round").map((t) => t.id),
];

function servedFaults({ pieces, fittings = [] }: Made): readonly string[] {
  const served = fittings.flatMap((f) => f.serves.flatMap((s) => s.ids.map((id) => `${s.piece} ${id}`)));
  const wanted = pieces.flatMap((p) => wantedBy(p).map((id) => `${p.id} ${id}`));
  return [
    ...wanted.filter((w) => !served.includes(w)).map((w) => `nothing for ${w}`),
    ...served.filter((s) => !wanted.includes(s)).map((s) => `${s} is served and is not there`),
    ...served.filter((s, i) => served.indexOf(s) !== i).map((s) => `${s} is served twice`),
  ];
}

/** On a strap, the holes of its fixed ends; their mates on the bag are named otherwise. */
const OWN_HOLE = /^(left|right)\.(rivet|screw)\.\d+$/;

const throughFlat = (made: Made): readonly FixedJoin[] =>
  made.joins.filter(
    (j): j is FixedJoin =>
      j.kind === "fixed" && j.by !== "stitch" && !j.sides.some((s) => s.piece.startsWith("patch-")),
  );

function countFaults(made: Made): readonly string[] {
  const { pieces, fittings = [] } = made;
  const of = (id: string): Piece => pieces.find((p) => p.id === id)!;
  const serving = (piece: string, id: string): Fitting | undefined =>
    fittings.find((f) => f.serves.some((s) => s.piece === piece && s.ids.includes(id)));
  const differs = (what: string, is: number | undefined, must: number): readonly string[] =>
    is === must ? [] : [`${what}: ${is}, not ${must}`];

  const joins = throughFlat(made).flatMap((j) => {
    const holes = (own: boolean): number =>
      j.sides
        .filter((s) => s.holes.every((h) => OWN_HOLE.test(h)) === own)
        .reduce((n, s) => n + of(s.piece).count * s.holes.length, 0);
    const first = j.sides[0]!;
    const fitting = serving(first.piece, first.holes[0]!);
    return [
      ...differs(`${j.name}, holes of the straps`, fitting?.count, holes(true)),
      ...differs(`${j.name}, holes of the bag`, fitting?.count, holes(false)),
      ...differs(`${j.name}, stack`, fitting?.through?.stack, j.stack),
      ...(fitting?.kind === j.by ? [] : [`${j.name} is not by ${j.by}`]),
    ];
  });
  const turnBacks = pieces.flatMap((p) =>
    p.turnBacks.flatMap((t) => {
      const front = p.holes.filter((h) => h.id.startsWith(`${t.id}.`) && h.id.includes(".front."));
      return [
        ...front.flatMap((h) =>
          differs(`${p.id} ${t.id}`, serving(p.id, h.id)?.count, p.count * front.length),
        ),
        ...t.mates.flatMap(([a, b]) =>
          serving(p.id, a) === serving(p.id, b) ? [] : [`${p.id} ${a} and ${b} are not one`],
        ),
      ];
    }),
  );
  const closings = fittings.filter((f) => ["press stud", "magnetic snap", "turn lock"].includes(f.kind));
  const flaps = made.joins.filter(
    (j) => j.kind === "closure" && ["press stud", "magnetic snap", "turn lock"].includes(j.what),
  );
  return [
    ...joins,
    ...turnBacks,
    ...differs(
      "closures",
      closings.reduce((n, f) => n + f.count, 0),
      flaps.length,
    ),
    ...buckleFaults(made),
    ...fittings.filter((f) => f.kind === "ring" || f.kind === "bit").flatMap((f) => ringFaults(made, f)),
    ...differs(
      "tips",
      fittings.filter((f) => f.kind === "strap tip").reduce((n, f) => n + f.count, 0),
      pieces.reduce((n, p) => n + p.count * p.holes.filter((h) => h.use === "nail").length, 0),
    ),
    ...differs(
      "staples",
      fittings.filter((f) => f.kind === "staple").reduce((n, f) => n + f.count, 0),
      pieces.reduce((n, p) => n + (p.count * p.holes.filter((h) => h.use === "staple").length) / 2, 0),
    ),
  ];
}

/** Every strap in a buckle or ring finds one of that inside width; there are as many as tongues have slots. */
function buckleFaults({ pieces, joins, fittings = [] }: Made): readonly string[] {
  const slots = pieces.reduce(
    (n, p) => n + p.count * p.cutouts.filter((c) => c.use === "tongue slot").length,
    0,
  );
  const count = fittings.filter((f) => f.kind === "buckle").reduce((n, f) => n + f.count, 0);
  return [
    ...(count === slots ? [] : [`${count} buckles for ${slots} tongues' slots`]),
    ...joins.flatMap((j) => {
      if (j.kind === "tongue in slot") {
        const its = fittings.filter((f) =>
          f.serves.some((s) => s.piece === j.piece && s.ids.includes(j.turnBack) && s.ids.includes(j.cutout)),
        );
        return its.length === 1 && its[0]?.kind === "buckle" ? [] : [`no buckle on ${j.piece} ${j.turnBack}`];
      }
      if (j.kind !== "strap in buckle") return [];
      const kind = j.buckle === "ring" ? "ring" : "buckle";
      return fittings.some((f) => f.kind === kind && f.size === j.inside)
        ? []
        : [`no ${kind} of ${j.inside} mm for ${j.piece}`];
    }),
  ];
}

/** In a ring hangs one end of a strap, and one of a tab where there are tabs; a bit has two rings, each in one end. */
function ringFaults({ pieces }: Made, f: Fitting): readonly string[] {
  const ends = (tabs: boolean): number =>
    f.serves
      .filter((s) => (s.piece === "strap-tab") === tabs)
      .reduce((n, s) => n + pieces.find((p) => p.id === s.piece)!.count * s.ids.length, 0);
  const must =
    f.kind === "bit" ? [ends(false) / 2] : ends(true) > 0 ? [ends(true), ends(false)] : [ends(false)];
  return must.every((n) => n === f.count) ? [] : [`${f.count} of ${f.name}, not ${must}`];
}

const faultsOf = (made: Made): readonly string[] => [...servedFaults(made), ...countFaults(made)];

describe("nothing forgotten, nothing twice", () => {
  test.each(orderFiles)("$name", ({ text }) => {
    const made = madeOf(text);
    expect(made.fittings).toBeDefined();
    expect(faultsOf(made)).toEqual([]);
  });

  const RUNS = 12;
  test.each(articles)("any $name", (article) => {
    const random = randomFrom(20261125);
    for (let run = 0; run < RUNS; run++) {
      const { text } = anyOrder(article, random);
      const { order } = readOrder(text, "any.yaml", articles);
      if (!order) continue;
      expect(faultsOf(order.article.make(order.values)), text).toEqual([]);
    }
  });

  test("a fitting that is left out, doubled or miscounted is seen", () => {
    for (const name of ["wren-flap-purse", "lancet", "buckled-satchel", "post-satchel"]) {
      const made = madeOf(orderText(name));
      const all = made.fittings!;
      for (const [i, f] of all.entries()) {
        expect(faultsOf({ ...made, fittings: all.filter((x) => x !== f) }), f.name).not.toEqual([]);
        expect(faultsOf({ ...made, fittings: [...all, f] }), f.name).not.toEqual([]);
        const more = all.with(i, { ...f, count: f.count + 1 });
        expect(faultsOf({ ...made, fittings: more }), f.name).not.toEqual([]);
      }
    }
  });
});

const said = (made: Made): readonly string[] =>
  (made.fittings ?? []).map((f) => `${f.count} ${f.kind}${f.brought ? ", brought" : ""}: ${f.name}`);

const stackOf = (made: Made, name: string): number =>
  made.fittings!.find((f) => f.name === name)!.through!.stack;

describe("counted by hand", () => {
  test("a headstall that buckles on both sides, tipped, stapled, screwed above and riveted below", () => {
    expect(said(madeOf(orderText("lancet")))).toEqual([
      "2 buckle: cheek buckle",
      "1 bit, brought: bit",
      "4 binding screw: binding screws of the cheek's buckle end",
      "4 rivet: rivets of the cheek's bit end",
      "2 strap tip: tip of the crown",
      "2 staple: staple of the fixed keeper",
    ]);
  });

  test("one that buckles on the near side has as many screws in its off cheek", () => {
    expect(said(madeOf(orderText("bramble-headstall")))).toEqual([
      "1 buckle: cheek buckle",
      "1 bit, brought: bit",
      "2 binding screw: binding screws of the off cheek's bit end",
      "2 binding screw: binding screws of the cheek's bit end",
      "1 strap tip: tip of the crown and off cheek",
    ]);
  });

  test("a shoulder bag on ring tabs: 2 rings, each with a tab and a part of the strap, 2 rivets in each", () => {
    expect(said(madeOf(orderText("wren-flap-purse")))).toEqual([
      "1 buckle: buckle of the shoulder strap",
      "2 ring: ring of the shoulder strap",
      "1 press stud: press stud of the flap",
      "2 rivet: rivets of the buckle strap at its ring",
      "2 rivet: rivets of the billet strap at its ring",
      "4 rivet: rivets of the strap tab at its ring",
      "4 rivet: rivets, strap tab to gusset",
    ]);
  });

  test("a strap between two rings, three of it, riveted", () => {
    const made = madeOf(
      [
        "article: strap",
        "units: mm",
        "measures: { left-end: ring, right-end: riveted, width: 25, count: 3 }",
        "leather: { strap: { thickness: 3 mm, skive-to: 2 mm } }",
        "hardware: { fixing: { kind: rivet } }",
        "pieces: { strap: { length: 400 } }",
      ].join("\n"),
    );
    expect(said(made)).toEqual([
      "3 ring: ring of the left end",
      "6 rivet: rivets of the right end",
      "6 rivet: rivets of the left end",
    ]);
    // 3 mm of front leg on 2 mm of skived back leg.
    expect(stackOf(made, "rivets of the left end")).toBeCloseTo(5, 9);
    expect(made.fittings![1]!.through).toBeUndefined();
  });

  test("what a handle's rivets go through: strap, body and patch", () => {
    const text = orderText("rowan-tool-tote");
    const leather = "leather:\n  strap: { thickness: 3 mm }\n  patch: { thickness: 1 mm }";
    const made = madeOf(
      text
        .replace(/^leather:/m, leather)
        .replace(/^ {2}body: { thickness: 7 oz }/m, "  body: { thickness: 2 mm }"),
    );
    expect(stackOf(made, "rivets, handle left end to front and back")).toBeCloseTo(6, 9);
  });
});
