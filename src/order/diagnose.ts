import { type Document, visit, type YAMLError } from "yaml";
import { quote } from "../units/quote.ts";
import { unglued } from "./names.ts";
import type { PlaceAt } from "./place.ts";

// What yaml says about a text it can't read, in words for whoever wrote it.

export type Where = { readonly text: string; readonly document: Document.Parsed; readonly placeAt: PlaceAt };
export type Diagnosis = {
  readonly code: string;
  readonly offset: number;
  readonly problem: string;
  readonly mend: string;
};
type Doctor = (error: YAMLError, where: Where) => Diagnosis | undefined;

const QUOTES_MEND = "put the whole value in quotes, or leave that sign out";

const lineStart = (text: string, offset: number): number => text.lastIndexOf("\n", offset - 1) + 1;

/** The line at an offset, without its end. */
function lineAt(text: string, offset: number): string {
  const end = text.indexOf("\n", offset);
  return text.slice(lineStart(text, offset), end === -1 ? text.length : end).replace(/\r$/, "");
}

/** The next line that has something in it. */
function nextLine(text: string, offset: number): number | undefined {
  const found = /\n(?=[ \t]*[^\s#])/.exec(text.slice(offset));
  return found ? offset + found.index + 1 : undefined;
}

const tabIn = (line: string): boolean => /^ *\t/.test(line);

const tab: Doctor = ({ code, pos }, { text }) => {
  const next = code.endsWith("IMPLICIT_KEY") ? nextLine(text, pos[0]) : undefined;
  const from = [pos[0], ...(next === undefined ? [] : [next])].find((o) => tabIn(lineAt(text, o)));
  if (from === undefined) return undefined;
  return {
    code: "tab",
    offset: lineStart(text, from) + lineAt(text, from).indexOf("\t"),
    problem: "the line begins with a tab",
    mend: "use spaces, two for each step to the right",
  };
};

/** A quote that is opened and not closed: yaml notices where the text ends, the hand slipped where it began. */
const openQuote: Doctor = ({ message, pos }, { document }) => {
  if (!message.startsWith("Missing closing")) return undefined;
  let offset = pos[0];
  visit(document, {
    Scalar: (_, node) => {
      const [from, to] = node.range ?? [0, 0];
      if (node.type?.startsWith("QUOTE") && from <= pos[0] && pos[0] <= to) offset = from;
    },
  });
  const sign = message.includes('"') ? '"' : "'";
  return {
    code: "open-quote",
    offset,
    problem: `the quote (${sign}) that opens here is never closed`,
    mend: "close it, or take it out",
  };
};

const openBracket: Doctor = ({ message, pos }, { document, text }) => {
  if (!/must (?:be sufficiently indented and )?end with a/.test(message)) return undefined;
  let offset = pos[0];
  visit(document, {
    Collection: (_, node) => {
      const [from, to] = node.range ?? [0, 0];
      if (node.flow && from < pos[0] && !/[}\]]$/.test(text.slice(from, to).trimEnd())) offset = from;
    },
  });
  const sign = text[offset] === "[" ? "[" : "{";
  const close = sign === "[" ? "]" : "}";
  return {
    code: "open-bracket",
    offset,
    problem: `the ${sign} that opens here is not closed on its lines`,
    mend: `close it with ${close}`,
  };
};

const strayBracket: Doctor = ({ message, pos }, { text }) => {
  if (!/^Unexpected (?:flow-(?:map|seq)-end|[}\]])/.test(message)) return undefined;
  const sign = text[pos[0]] ?? "}";
  return {
    code: "stray-bracket",
    offset: pos[0],
    problem: `a ${sign} closes what was never opened`,
    mend: "take it out",
  };
};

/** A line that is deeper than the one before, which has a value already. */
const deeperLine: Doctor = ({ code, pos }, { text, placeAt }) => {
  if (code !== "BLOCK_AS_IMPLICIT_KEY" || !text.slice(pos[0], pos[1] + 1).trim()) return undefined;
  const next = nextLine(text, pos[0]);
  const isDeeper =
    next !== undefined &&
    /^ */.exec(lineAt(text, next))![0].length > /^ */.exec(lineAt(text, pos[0]))![0].length;
  const colons = lineAt(text, pos[0]).match(/:(?= |$)/g)?.length ?? 0;
  if (!isDeeper || colons > 1) return undefined;
  return {
    code: "spaces",
    offset: next + lineAt(text, next).search(/\S/),
    problem: `the line is set deeper than line ${placeAt(pos[0]).line}, which has a value already`,
    mend: "give both lines the same spaces before them",
  };
};

const secondColon: Doctor = ({ code, pos }, { text }) => {
  if (code !== "BLOCK_AS_IMPLICIT_KEY") return undefined;
  const value = lineAt(text, pos[0]).slice(pos[0] - lineStart(text, pos[0]));
  const dash = /^-(?: |$)/.test(value);
  if (dash)
    return { code: "sign", offset: pos[0], problem: 'a value can\'t begin with "- "', mend: QUOTES_MEND };
  return {
    code: "second-colon",
    offset: pos[0],
    problem: 'there is a second colon (": ") on the line',
    mend: `put the value in quotes, as in '${value.replaceAll("'", "’").trim().slice(0, 60)}', or begin a new line`,
  };
};

const noColon: Doctor = ({ code, message, pos }, { text }) => {
  if (code !== "MULTILINE_IMPLICIT_KEY" && !message.startsWith("Implicit map keys need")) return undefined;
  const line = lineAt(text, pos[0]).slice(pos[0] - lineStart(text, pos[0]));
  const apart = unglued(line);
  return {
    code: "no-colon",
    offset: pos[0],
    problem: `${quote(line)} lacks a colon and a space after its name`,
    mend: apart
      ? `write ${quote(apart)}`
      : 'write a name, a colon, a space and a value, as in "width: 5/8 in"',
  };
};

const noComma: Doctor = ({ code, message, pos }, { text }) => {
  const inside = code === "BLOCK_IN_FLOW" && !/^-\s/.test(text.slice(pos[0], pos[0] + 2));
  if (!inside && !/^Missing , |^Missing space after :/.test(message)) return undefined;
  return {
    code: "no-comma",
    offset: pos[0],
    problem: "a comma or a space is missing inside the brackets",
    mend: 'write them as in "{ bar: 4 mm, tongue: 3 mm }"',
  };
};

const strayComma: Doctor = ({ message, pos }) =>
  /^Unexpected (?:,|empty item) in/.test(message)
    ? {
        code: "stray-comma",
        offset: pos[0],
        problem: "there is nothing before this comma",
        mend: "take the comma out",
      }
    : undefined;

const otherColumn: Doctor = ({ code, pos }, { text }) =>
  code === "BAD_INDENT"
    ? {
        code: "spaces",
        offset: lineStart(text, pos[0]) + Math.max(0, lineAt(text, pos[0]).search(/\S/)),
        problem: "the line begins in another column than those it belongs to",
        mend: "give lines that belong together the same spaces before them",
      }
    : undefined;

const badStart: Doctor = ({ code, message, pos }, { text }) => {
  const reserved = code === "BAD_SCALAR_START" || code === "BAD_ALIAS" || code === "BLOCK_IN_FLOW";
  if (!reserved && !/^Block scalar header|^Not a YAML token|block-seq-ind/.test(message)) return undefined;
  // Past a > or | yaml points at what follows the sign.
  const before = /[>|]\s*$/.exec(text.slice(lineStart(text, pos[0]), pos[0]));
  const offset = before ? pos[0] - before[0].length : pos[0];
  return {
    code: "sign",
    offset,
    problem: `a value can't begin with ${quote(text[offset] ?? "")}`,
    mend: QUOTES_MEND,
  };
};

const badEscape: Doctor = ({ code, pos }, { text }) =>
  code === "BAD_DQ_ESCAPE"
    ? {
        code: "backslash",
        offset: pos[0],
        problem: `${quote(text.slice(pos[0], pos[0] + 2))} has no meaning inside double quotes`,
        mend: "use single quotes, or leave the backslash out",
      }
    : undefined;

/** Text that follows where a value has been closed. */
const afterClosing: Doctor = ({ message, pos }, { text }) => {
  const before = text.slice(lineStart(text, pos[0]), pos[0]).trimEnd();
  if (!message.startsWith("Unexpected") || !/["'}\]]$/.test(before)) return undefined;
  const rest = quote(lineAt(text, pos[0]).slice(pos[0] - lineStart(text, pos[0])));
  const quoted = /["']$/.test(before);
  return {
    code: quoted ? "after-quote" : "after-bracket",
    offset: pos[0],
    problem: `${rest} stands behind the closing ${quoted ? "quote" : "bracket"}`,
    mend: quoted
      ? "put the whole value inside the quotes, or use none"
      : "put a comma between the two, or take away what stands behind the bracket",
  };
};

const otherwise = ({ pos }: YAMLError, { text }: Where): Diagnosis => ({
  code: "unreadable-line",
  offset: pos[0],
  problem: `${quote(lineAt(text, pos[0]))} can't be read as a name, a colon and a value`,
  mend: "look at the spaces before this line and the one above, and at its quotes and brackets",
});

const DOCTORS: readonly Doctor[] = [
  tab,
  openQuote,
  openBracket,
  strayBracket,
  deeperLine,
  secondColon,
  noColon,
  noComma,
  strayComma,
  otherColumn,
  badStart,
  badEscape,
  afterClosing,
];

/** What is wrong where yaml stumbled, and how to mend it. */
export function diagnose(error: YAMLError, where: Where): Diagnosis {
  for (const doctor of DOCTORS) {
    const found = doctor(error, where);
    if (found) return found;
  }
  return otherwise(error, where);
}
