import { expect, test } from "vitest";
import { readOrder } from "../../src/order/read.ts";
import { sayFault } from "../../src/order/say.ts";
import { sampleArticle } from "../support/sampleArticle.ts";

const said = (text: string, file = "wren.yaml") =>
  readOrder(text, file, [sampleArticle]).faults.map((f) => sayFault(f, file));
const belt = (lines: string) => `article: plain belt\nmeasures:\n  waist: 34\n${lines}`;

// The words that a maker reads. The resolver's own words are tested beside it; here they are only kept
// from falling out of the sentence.

test("a fault names the place, the value, what was got, what is allowed and how to mend it", () => {
  expect(said(belt("hardware:\n  fixing: rivet\n"))).toEqual([
    'wren.yaml:5:11 hardware.fixing: got "rivet"; allowed: stitched or binding screw. To mend: write one of the allowed words.',
  ]);
  expect(said(belt("hardware:\n  fixng: stitched\n"))).toEqual([
    'wren.yaml:5:3 hardware.fixng: "fixng" is not known here; allowed: fixing or buckle. To mend: write fixing.',
  ]);
  expect(said(belt("hardware: { fixing: }\n"))).toEqual([
    "wren.yaml:4:13 hardware.fixing: it is empty. To mend: write a value or take the line out.",
  ]);
  expect(said(belt("hardware: { buckle: { bar: 3,2 mm } }\n"))).toEqual([
    'wren.yaml:4:28 hardware.buckle.bar: got "3,2 mm": inside { } a comma ends a value; it is not read as a decimal point. To mend: write "3.2 mm".',
  ]);
  expect(said(belt("  waist: 35\n"))).toEqual([
    "wren.yaml:4:3 measures.waist: it stands here a second time; the first is on line 3. To mend: take one of them out.",
  ]);
  expect(said(belt("hardware: { buckle: 5/8 }\n"))).toEqual([
    'wren.yaml:4:21 hardware.buckle: got "5/8", where several values by name are wanted; allowed: inside, bar or overhang. To mend: name what is meant, as in "buckle: { inside: … }".',
  ]);
  expect(said(belt("paper: a44\n"))).toEqual([
    'wren.yaml:4:8 paper: got "a44"; allowed: letter, legal, tabloid, a4, a3 or roll 610 mm. To mend: write a4.',
  ]);
  expect(said(belt("paper: roll 20 mm\n"))).toEqual([
    'wren.yaml:4:8 paper: got "roll 20 mm"; allowed: a roll of 148 mm to 1600 mm. To mend: write the width of the roll, as in "roll 610 mm".',
  ]);
});

test("a fault of the whole file, or of what is not there, says so without a place of its own", () => {
  expect(said("")).toEqual([
    'wren.yaml:1:1: there is no order in this file. To mend: begin with a line that names what is ordered, as in "article: one-ear headstall".',
  ]);
  expect(said("article: plain belt\n")[0]).toMatch(/^wren\.yaml measures\.waist: .* To mend: .*\.$/);
});

test("every line ends as a sentence, and holds only one line", () => {
  const lines = said(belt("for: @\nhardware:\n  buckle: { bar: 3,2 mm }\n\tx: 1\n"));
  for (const line of lines) expect(line).toMatch(/^wren\.yaml:\d+:\d+.*: .*[.…] To mend: [^.].*[.…]$/);
});

test("nothing that steers a terminal or turns the reading direction gets out", () => {
  const steering = /\p{Cc}|\p{Cf}/u;
  const lines = [
    ...said(belt("hardware: { fixing: \u202Ewercs }\n")),
    ...said(belt('for: "a\\e[31m"\n')),
    ...said(belt("hardware: { fix\u200Bing: stitched }\n")),
    ...said(belt("x: 1\n"), "w\u001b[2Jren.yaml"),
  ];
  expect(lines).toHaveLength(4);
  for (const line of lines) expect(line).not.toMatch(steering);
  expect(lines[0]).toContain("[U+202E]wercs");
});
