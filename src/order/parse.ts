import { Composer, type CST, type Document, Lexer, Parser } from "yaml";
import type { Fault } from "../model/finding.ts";
import { type FileWords, ORDER_WORDS } from "./fileWords.ts";
import { guardText } from "./guard.ts";
import { type PlaceAt, placesIn } from "./place.ts";
import { syntaxOf } from "./syntax.ts";

// From text to yaml's document. Nothing is resolved here: no anchors, tags, numbers, dates or nulls.

/** An order of all dimensions with a comment to each has under 5,000 of yaml's smallest parts. */
const MOST_PARTS = 50_000;
/** An order is 4 deep at the most. */
const DEEPEST = 24;

export type Parsed = {
  /** Undefined when the text can't be taken for YAML at all. */
  readonly document: Document.Parsed | undefined;
  readonly faults: readonly Fault[];
  /** From this line on yaml had to guess what was meant; Infinity when it did not. */
  readonly guessedFrom: number;
  readonly placeAt: PlaceAt;
};

function hasTooManyParts(text: string): boolean {
  let parts = 0;
  for (const _ of new Lexer().lex(text)) if (++parts > MOST_PARTS) return true;
  return false;
}

/** The first part that lies too deep; walked with a list, for a recursion might not come back. */
function tooDeep(document: CST.Document): CST.Token | undefined {
  const open: { token: CST.Token; depth: number }[] = document.value
    ? [{ token: document.value, depth: 1 }]
    : [];
  for (let next = open.pop(); next; next = open.pop()) {
    if (next.depth > DEEPEST) return next.token;
    if (!("items" in next.token)) continue;
    for (const { key, value } of next.token.items) {
      for (const token of [key, value]) if (token) open.push({ token, depth: next.depth + 1 });
    }
  }
  return undefined;
}

const refusal = (code: string, problem: string, mend: string, at?: ReturnType<PlaceAt>): Fault => ({
  code,
  key: "",
  ...(at ? { place: at } : {}),
  problem,
  mend,
});

const tooMuch = ({ noun, one }: FileWords): Fault =>
  refusal(
    "too-large",
    `the file holds more lines and values than any ${noun} can have`,
    `name ${one}, or take out what doesn't belong to it`,
  );

/** Faults of things that YAML has and an order has no use for, outside the document itself. */
function strangers(
  tokens: readonly CST.Token[],
  placeAt: PlaceAt,
  { noun, one }: FileWords,
): readonly Fault[] {
  const directives = tokens
    .filter((t) => t.type === "directive")
    .map((t) => refusal("directive", `${one} has no % lines`, "take the line out", placeAt(t.offset)));
  const [first, second] = tokens.filter((t) => t.type === "document");
  const deep = first && tooDeep(first);
  return [
    ...directives,
    ...(second
      ? [
          refusal(
            "several-orders",
            "a second document begins here",
            `keep one ${noun} in a file, and take out the line "---" or "..."`,
            placeAt(second.offset),
          ),
        ]
      : []),
    ...(deep
      ? [
          refusal(
            "too-deep",
            "there are too many brackets or steps inside each other",
            "take them out",
            placeAt(deep.offset),
          ),
        ]
      : []),
  ];
}

/** Everything up to the second document; what follows it is not looked at. */
function firstDocument(tokens: readonly CST.Token[]): readonly CST.Token[] {
  const documents = tokens.filter((t) => t.type === "document");
  return documents[1] ? tokens.slice(0, tokens.indexOf(documents[1])) : tokens;
}

/** Reads a text as YAML; every scalar stays text. Never throws. */
export function parseText(text: string, words: FileWords = ORDER_WORDS): Parsed {
  const unread = (fault: Fault, placeAt: PlaceAt): Parsed => ({
    document: undefined,
    faults: [fault],
    guessedFrom: 1,
    placeAt,
  });
  const refused = guardText(text, words);
  if (refused) return unread(refused, () => ({ line: 1, column: 1 }));
  const placeAt = placesIn(text);
  if (hasTooManyParts(text)) return unread(tooMuch(words), placeAt);
  const tokens = [...new Parser().parse(text)];
  const found = strangers(tokens, placeAt, words);
  if (found.some((f) => f.code === "too-deep"))
    return { document: undefined, faults: found, guessedFrom: 1, placeAt };
  const composer = new Composer({
    schema: "failsafe",
    // Looked for by the reader itself, which knows the path; yaml compares each key with each.
    uniqueKeys: false,
    prettyErrors: false,
    keepSourceTokens: true,
  });
  const [document] = [...composer.compose(firstDocument(tokens), true, text.length)];
  if (!document) return { document, faults: found, guessedFrom: 1, placeAt };
  const syntax = syntaxOf(document as Document.Parsed, text, placeAt);
  return {
    document: document as Document.Parsed,
    faults: [...found, ...syntax.faults],
    guessedFrom: syntax.guessedFrom,
    placeAt,
  };
}
