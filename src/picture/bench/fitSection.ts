import type { Capacity, Fit } from "../../model/article.ts";
import { sayHoles, saySuits, sayWanted } from "../../model/fit.ts";
import { sayValue, type Units } from "../../model/say.ts";
import { capital } from "../../model/words.ts";
import { sayCapacity } from "../sheet/article.ts";
import { type DocumentBlock, left, right, tableUnder } from "./document.ts";
import { keysInWords } from "./words.ts";

// Which holes give which measure, and what goes in.

const sentence = (words: string): string => `${capital(words).replace(/\.$/, "")}.`;

/** The fit table; nothing for an article that has none. */
export const fitSection = (fit: Fit | undefined, units: Units): readonly DocumentBlock[] => {
  if (!fit) return [];
  const suited = fit.sizesNote === undefined;
  return tableUnder(`Fit ${fit.name}`, {
    columns: [left("Buckled in"), right("Measure"), ...(suited ? [left("Suits")] : []), left("")],
    rows: fit.rows.map((r) => [
      sayHoles(r),
      sayValue(r.measure, "length", units),
      ...(suited ? [saySuits(r)] : []),
      r.measure === fit.wanted ? sayWanted(fit) : "",
    ]),
    note: [
      "Hole 1 is nearest the tip.",
      ...(suited ? [] : [sentence(keysInWords(fit.sizesNote ?? ""))]),
    ].join(" "),
  });
};

/** What goes in, of a bag. */
export const capacitySection = (capacity: Capacity | undefined, units: Units): readonly DocumentBlock[] =>
  capacity
    ? [
        { kind: "heading", text: "Holds" },
        { kind: "list", items: sayCapacity(capacity, units) },
      ]
    : [];
