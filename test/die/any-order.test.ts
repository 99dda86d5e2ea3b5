import { expect, test } from "vitest";
import type { ArticleDefinition } from "../../src/articles/definition.ts";
import { articles } from "../../src/articles/index.ts";
import { ruleFaces } from "../../src/die/ruleBody.ts";
import { type DieAsked, diesOf, makeJob } from "../../src/job.ts";
import { dxf } from "../../src/output/dxf.ts";
import { plotterSvg } from "../../src/output/plotterSvg.ts";
import { svg } from "../../src/output/svg.ts";
import { cutItems } from "../../src/picture/die/cutItems.ts";
import { dieDrawing } from "../../src/picture/die/dieDrawing.ts";
import { plotterSheet } from "../../src/picture/die/plotterSheet.ts";
import { anyOrder } from "../support/anyOrder.ts";
import { inputFor } from "../support/dies.ts";
import { randomFrom } from "../support/random.ts";

// Any order that can be made has dies that can be drawn and written, whatever its section `die` says.

const RUNS = 7;
const SEED = 4;

/** Everything that is written for a die; throws when something can't be. */
function written({ die, findings }: DieAsked): readonly string[] {
  for (const rule of die.rules) expect(ruleFaces(rule, die.settings).leather.length).toBeGreaterThan(0);
  return [
    dxf(cutItems(die, { ruleEdge: true, words: ["any"] })),
    plotterSvg(plotterSheet(die, { title: "any", words: ["any"], insideFirst: true })),
    ...dieDrawing(inputFor(die, "mm", { findings })).map(svg),
  ];
}

test.each(articles.map((a) => [a.name, a] as const))("any %s", (_, article: ArticleDefinition) => {
  const random = randomFrom(SEED);
  let made = 0;
  for (let run = 0; run < RUNS; run++) {
    const { text } = anyOrder(article, random);
    const result = makeJob(text, "any.yaml");
    if (!result.made) continue;
    for (const piece of result.job.made.pieces) {
      for (const asked of diesOf(result.job, result.die, piece)) {
        made++;
        expect(asked.die.load.value).toBeGreaterThan(0);
        for (const file of written(asked)) expect(file).not.toMatch(/NaN|Infinity|undefined/);
      }
    }
  }
  expect(made).toBeGreaterThan(RUNS);
});
