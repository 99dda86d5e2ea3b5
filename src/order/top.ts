import type { DimensionTable } from "../model/dimension.ts";

// The lines of an order that stand in no section.

/** Longest text after `for`: it stands in one line on every sheet. */
const LONGEST_FOR = 120;

/** The table of an order's top level; `articles` are the names that can be ordered. */
export const topTable = (articles: readonly string[]) =>
  ({
    article: { kind: "choice", choices: articles, means: "what is ordered", source: "the maker's choice" },
    for: {
      kind: "text",
      default: "",
      longest: LONGEST_FOR,
      means: "who it is for; it is printed on every sheet",
      source: "left blank",
    },
    shop: {
      kind: "text",
      default: "",
      longest: 200,
      means: "your shop file with rates and prices, found from this order's folder",
      source: "left blank: nothing is priced",
    },
    units: {
      kind: "choice",
      choices: ["in", "mm", "cm"],
      default: "in",
      means: "what a number without a unit means, and the unit of the lists",
      source: "common practice, no source",
    },
    paper: {
      kind: "text",
      default: "letter",
      longest: 40,
      means: "the paper in the printer: letter, legal, tabloid, a4, a3, or a roll with its width",
      source: "common practice, no source",
    },
    margin: {
      kind: "length",
      default: 10,
      least: 3,
      most: 24,
      means:
        "edge of the paper that the printer leaves white; under 6.4 mm many printers cut the drawing off",
      source: "common practice, no source",
    },
    overlap: {
      kind: "length",
      default: 10,
      least: 5,
      most: 25,
      means: "how far neighbouring sheets are glued over each other",
      source: "common practice, no source",
    },
    endsOnly: {
      kind: "flag",
      default: false,
      means: "print straight straps as their two ends and a break",
      source: "common practice, no source",
    },
  }) as const satisfies DimensionTable;
