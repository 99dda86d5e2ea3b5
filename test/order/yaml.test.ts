import { describe, expect, test } from "vitest";
import { readOrder } from "../../src/order/read.ts";
import { sampleArticle } from "../support/sampleArticle.ts";

const TOP = "article: plain belt\n";
const MEASURES = "measures:\n  waist: 34\n";
const faultsOf = (text: string) => readOrder(text, "wren.yaml", [sampleArticle]).faults;
const told = (text: string) =>
  faultsOf(text).map((f) => `${f.code} ${f.key} ${f.place?.line}:${f.place?.column}`);

describe("slips of the hand, each told once, where it happened", () => {
  test.each([
    [
      "a line too deep",
      `${TOP}measures:\n  waist: 34\n    height: 14.2\n`,
      "spaces  4:5",
      /deeper than line 3/,
    ],
    [
      "a line not deep enough",
      `${TOP}measures:\n  waist: 34\n height: 14.2\n`,
      "spaces  4:2",
      /another column/,
    ],
    [
      "no space after the colon",
      `${TOP}measures:\n  waist:34\n  height: 14.2\n`,
      "no-colon  3:3",
      /"waist: 34"/,
    ],
    [
      "the same in the last line",
      `${TOP}measures:\n  height: 14.2\n  waist:34\n`,
      "no-colon  4:3",
      /"waist: 34"/,
    ],
    ["no colon", `${TOP}measures:\n  waist 34\n  height: 14.2\n`, "no-colon  3:3", /"waist: 34"/],
    ["an equals sign", `${TOP}measures:\n  height: 14.2\n  waist = 34\n`, "no-colon  4:3", /"waist: 34"/],
    ["a tab", `${TOP}measures:\n\twaist: 34\n`, "tab  3:1", /tab/],
    ["a tab after spaces", `${TOP}measures:\n  waist: 34\n  \theight: 14.2\n`, "tab  4:3", /tab/],
    ["a quote left open", `${TOP}for: "Wren\n${MEASURES}`, "open-quote  2:6", /never closed/],
    ["a single quote left open", `${TOP}for: 'Wren\n${MEASURES}`, "open-quote  2:6", /never closed/],
    ["text behind a quote", `${TOP}measures:\n  waist: "34" in\n`, "after-quote  3:15", /"in" stands behind/],
    [
      "a bracket left open",
      `${TOP}leather:\n  strap: { thickness: 9 oz\n${MEASURES}`,
      "open-bracket  3:10",
      /\{ that opens/,
    ],
    [
      "a bracket open at the end",
      `${TOP}${MEASURES}leather:\n  strap: { thickness: 9 oz\n`,
      "open-bracket  5:10",
      /\{ that opens/,
    ],
    ["a list left open", `${TOP}${MEASURES}leather: [ 9 oz\n`, "open-bracket  4:10", /\[ that opens/],
    [
      "a bracket too many",
      `${TOP}${MEASURES}leather: { strap: { thickness: 9 oz } }}\n`,
      "stray-bracket  4:40",
      /closes what was never opened/,
    ],
    [
      "a comma too many",
      `${TOP}${MEASURES}leather: {, strap: { thickness: 9 oz } }\n`,
      "stray-comma  4:11",
      /before this comma/,
    ],
    ["a comma too few", `${TOP}${MEASURES}leather: { strap: "a" b: 3 }\n`, "no-comma  4:19", /comma/],
    [
      "a comma too few between numbers",
      `${TOP}${MEASURES}leather: { strap: 1 b: 3 }\n`,
      "no-comma  4:19",
      /comma/,
    ],
    [
      "a comma too few over two lines",
      `${TOP}${MEASURES}leather: { strap: 1\n  b: 3 }\n`,
      "no-comma  4:19",
      /comma/,
    ],
    [
      "a comma too few after a bracket",
      `${TOP}${MEASURES}leather: { strap: { thickness: 9 oz } b: 3 }\n`,
      "after-bracket  4:39",
      /comma/,
    ],
    ["a dash in brackets", `${TOP}${MEASURES}leather: { strap: - 5 }\n`, "sign  4:19", /"-"/],
    [
      "two colons on a line",
      `${TOP}${MEASURES}for: Wren: bay mare\n`,
      "second-colon  4:6",
      /'Wren: bay mare'/,
    ],
    ["a sign that YAML keeps for itself", `${TOP}${MEASURES}for: @home\n`, "sign  4:6", /"@"/],
    ["another", `${TOP}${MEASURES}for: %5\n`, "sign  4:6", /"%"/],
    ["another", `${TOP}${MEASURES}for: \`x\`\n`, "sign  4:6", /"`"/],
    ["more than", `${TOP}${MEASURES}for: > 5\n`, "sign  4:6", /">"/],
    ["a star", `${TOP}${MEASURES}for: * 5\n`, "sign  4:6", /"\*"/],
    ["a dash", `${TOP}${MEASURES}for: - 5\n`, "sign  4:6", /"-"/],
    ["a backslash", `${TOP}${MEASURES}for: "a\\qb"\n`, "backslash  4:8", /"\\q"/],
    ["a top level that moves", `  article: plain belt\nfor: Wren\n`, "unreadable-line  2:1", /"for: Wren"/],
  ])("%s", (_, text, fault, words) => {
    expect(told(text)).toEqual([fault]);
    expect(faultsOf(text).map((f) => `${f.problem}. ${f.mend}`)).toEqual([expect.stringMatching(words)]);
  });

  test("of two, both are told, and what stood before them", () => {
    expect(told(`${TOP}paper: lettr\nfor: @home\nmeasures:\n  waist: "34" in\n  wast: 3\n`)).toEqual([
      "unreadable paper 2:8",
      "sign  3:6",
      "after-quote  5:15",
    ]);
  });

  test("a file full of tabs is told once", () => {
    const text = `${TOP}measures:\n\twaist: 34\n\theight: 14.2\n\tx: 2\n`;
    expect(told(text)).toEqual(["tab  3:1"]);
    expect(faultsOf(text)[0]?.problem).toBe("the line begins with a tab; so do 2 more");
  });
});

describe("a decimal comma in brackets", () => {
  const buckle = (inside: string) => `${TOP}${MEASURES}hardware:\n  buckle: { ${inside} }\n`;
  test.each([
    ["bar: 3,2 mm", '"3,2 mm"', 'write "3.2 mm"'],
    ["bar: 3,2 mm, inside: 1", '"3,2 mm"', 'write "3.2 mm"'],
    ["bar: 3,2", '"3,2"', 'write "3.2"'],
    ["bar: 3, 2 mm", '"3,2 mm"', 'write "3.2 mm"'],
    ["bar: 1,054 mm", '"1,054 mm"', 'write "1054 mm" or "1.054 mm", whichever is meant'],
  ])("%s", (inside, got, mend) => {
    const faults = faultsOf(buckle(inside));
    expect(faults).toHaveLength(1);
    expect(faults[0]).toMatchObject({
      code: "decimal-comma",
      key: "hardware.buckle.bar",
      place: { line: 5, column: 18 },
      mend,
    });
    expect(faults[0]?.problem).toContain(`got ${got}: inside { } a comma ends a value`);
  });
  test("is the reader's business on a line of its own and in quotes", () => {
    expect(told(`${TOP}measures:\n  waist: 34,5\n`)).toEqual(["unreadable measures.waist 3:10"]);
    expect(told(buckle('bar: "3,2 mm"'))).toEqual(["unreadable hardware.buckle.bar 5:18"]);
  });
  test("is not seen where a name and a value have grown together", () => {
    expect(told(buckle("bar:3 mm"))).toEqual(["no-colon hardware.buckle 5:13"]);
    expect(told(buckle("inside: 1, bar 3 mm"))).toEqual(["no-colon hardware.buckle 5:24"]);
    expect(told(buckle('bar: 3 mm, {a: b}: "2"'))).toEqual(["not-a-name hardware.buckle 5:24"]);
  });
});

describe("what YAML has and an order has no use for", () => {
  test.each([
    ["an anchor", `${TOP}for: &x Wren\n${MEASURES}`, ["anchor for 2:9"]],
    ["an anchor on a section", `${TOP}measures: &m\n  waist: 34\n`, ["anchor measures 3:3"]],
    ["an alias", `${TOP}for: &x Wren\npaper: *x\n${MEASURES}`, ["anchor for 2:9", "alias paper 3:8"]],
    ["an alias to nothing", `${TOP}paper: *x\n${MEASURES}`, ["alias paper 2:8"]],
    [
      "a merge key",
      `${TOP}${MEASURES}leather:\n  <<: { strap: { thickness: 9 oz } }\n`,
      ["merge-key leather 5:3"],
    ],
    ["a tag", `${TOP}for: !!str Wren\n${MEASURES}`, ["tag for 2:12"]],
    ["a tag of one's own", `${TOP}for: !horse Wren\n${MEASURES}`, ["tag for 2:13"]],
    ["a bare tag", `${TOP}for: ! Wren\n${MEASURES}`, ["tag for 2:8"]],
    ["a name twice", `${TOP}measures:\n  waist: 34\n  waist: 35\n`, ["twice measures.waist 4:3"]],
    ["a section twice", `${TOP}${MEASURES}measures:\n  height: 14.2\n`, ["twice measures 4:1"]],
    [
      "a name twice in sections twice",
      `${TOP}${MEASURES}${MEASURES}`,
      ["twice measures 4:1", "twice measures.waist 5:3"],
    ],
    ["a second document", `${TOP}${MEASURES}---\nx: 1\n`, ["several-orders  4:1"]],
    ["a directive", `%YAML 1.1\n---\n${TOP}${MEASURES}`, ["directive  1:1"]],
    ["a name with a question mark", `${TOP}${MEASURES}? for\n: Wren\n`, ["not-a-name  4:3"]],
    ["a list as a name", `${TOP}${MEASURES}? [a, b]\n: Wren\n`, ["not-a-name  4:3"]],
    ["no name", `${TOP}${MEASURES}: Wren\n`, ["not-a-name  4:1"]],
    ["an anchor on a name", `${TOP}${MEASURES}&a for: Wren\n`, ["not-a-name  4:4"]],
    ["several lines", `${TOP}${MEASURES}for: |\n  Wren\n  bay\n`, ["several-lines for 4:6"]],
    ["a list", "- article\n- plain belt\n", ["no-order  1:1"]],
    ["a word", "plain belt\n", ["no-order  1:1"]],
    ["nothing", "", ["no-order  1:1"]],
    ["a comment", "# nothing yet\n", ["no-order  1:1"]],
  ])("%s", (_, text, faults) => {
    expect(told(text)).toEqual(faults);
  });

  test("the first of two is pointed to", () => {
    expect(faultsOf(`${TOP}measures:\n  waist: 34\n  waist: 35\n`)[0]?.problem).toMatch(
      /the first is on line 3/,
    );
  });
});
