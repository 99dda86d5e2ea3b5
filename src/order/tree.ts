import { isAlias, isMap, isScalar, isSeq, type Node, type YAMLMap } from "yaml";
import type { Fault, TextPlace } from "../model/finding.ts";
import { quote } from "../units/quote.ts";
import { withoutDoubles } from "./doubles.ts";
import { type Entry, type EntryValue, FAULTY, under } from "./entry.ts";
import { type FileWords, ORDER_WORDS } from "./fileWords.ts";
import { codePoint } from "./guard.ts";
import { isEmptyNode as isEmpty, startOf } from "./layout.ts";
import { commaSlip, gluedSlip, nameFault } from "./names.ts";
import { type Parsed, parseText } from "./parse.ts";
import type { PlaceAt } from "./place.ts";

export type Tree = {
  /** Undefined when there is nothing to go on. */
  readonly entries: readonly Entry[] | undefined;
  readonly faults: readonly Fault[];
  /** From this line on the entries are guesses. */
  readonly guessedFrom: number;
};

/** A customer's whole address is shorter. */
const LONGEST_VALUE = 400;

type Context = { readonly placeAt: PlaceAt; readonly faults: Fault[] };

function textValue(text: string, key: string, place: TextPlace, faults: Fault[]): EntryValue {
  const trimmed = text.trim();
  const unseen = /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}]/u.exec(trimmed);
  if (unseen) {
    const lines = /[\n\p{Zl}\p{Zp}]/u.test(unseen[0]);
    const problem = lines
      ? "the value has several lines"
      : `the value holds a character that can't be seen (${codePoint(unseen[0])})`;
    faults.push({
      code: lines ? "several-lines" : "control-character",
      key,
      place,
      problem,
      mend: "write it on one line, in plain letters",
    });
    return FAULTY;
  }
  if (trimmed.length > LONGEST_VALUE) {
    const problem = `got ${trimmed.length} letters: ${quote(trimmed)}`;
    faults.push({
      code: "too-long",
      key,
      place,
      problem,
      allowed: `up to ${LONGEST_VALUE} letters`,
      mend: "shorten it",
    });
    return FAULTY;
  }
  return { kind: "text", text: trimmed };
}

/** Anchors and tags: told, and read past. */
function properties(node: Node, path: string, place: TextPlace, faults: Fault[]): void {
  const anchor = "anchor" in node && typeof node.anchor === "string";
  if (anchor) {
    faults.push({
      code: "anchor",
      key: path,
      place,
      problem: '"&" before a value has no meaning here',
      mend: "take out the & and its word, or put the whole value in quotes",
    });
  }
  if (node.tag !== undefined) {
    faults.push({
      code: "tag",
      key: path,
      place,
      problem: '"!" before a value has no meaning here',
      mend: "take out the ! and its word, or put the whole value in quotes",
    });
  }
}

function readValue(node: unknown, path: string, place: TextPlace, c: Context): EntryValue {
  if (isAlias(node)) {
    c.faults.push({
      code: "alias",
      key: path,
      place,
      problem: `got "*${node.source}", which points to another value`,
      mend: "write the value itself, or put it in quotes",
    });
    return FAULTY;
  }
  if (isScalar(node) || isMap(node) || isSeq(node)) properties(node, path, place, c.faults);
  if (isEmpty(node)) return { kind: "empty" };
  if (isMap(node)) return { kind: "map", entries: entriesOf(node, path, c) };
  if (isScalar(node)) return textValue(String(node.value), path, place, c.faults);
  return { kind: "list" };
}

function entriesOf(map: YAMLMap, path: string, c: Context): readonly Entry[] {
  const entries: Entry[] = [];
  let last: Entry | undefined;
  for (const pair of map.items) {
    const keyPlace = c.placeAt(startOf(pair.key));
    const key = isScalar(pair.key) ? String(pair.key.value) : "";
    const alone = map.flow && isEmpty(pair.value);
    const comma = alone ? commaSlip(key, last, path) : undefined;
    const fault =
      comma ?? nameFault(pair, path, keyPlace) ?? (alone ? gluedSlip(key, path, keyPlace) : undefined);
    if (fault) c.faults.push(fault);
    if (comma && last) entries[entries.length - 1] = { ...last, value: FAULTY };
    last = undefined;
    if (fault) continue;
    const place = isEmpty(pair.value) ? keyPlace : c.placeAt(startOf(pair.value));
    last = { key, keyPlace, place, value: readValue(pair.value, under(path, key), place, c) };
    entries.push(last);
  }
  return withoutDoubles(entries, path, c.faults);
}

function noEntries(parsed: Parsed, problem: string, at: number, mend: string): Tree {
  const guessed = parsed.guessedFrom < Number.POSITIVE_INFINITY;
  const fault: Fault = { code: "no-order", key: "", place: parsed.placeAt(at), problem, mend };
  return {
    entries: undefined,
    faults: guessed ? parsed.faults : [...parsed.faults, fault],
    guessedFrom: parsed.guessedFrom,
  };
}

/** Reads a text into names and texts, with all the faults that can be told without knowing the article. */
export function readTree(text: string, words: FileWords = ORDER_WORDS): Tree {
  const parsed = parseText(text, words);
  const { document, guessedFrom } = parsed;
  if (!document) return { entries: undefined, faults: parsed.faults, guessedFrom };
  const top: unknown = document.contents;
  if (top === null || isEmpty(top)) return noEntries(parsed, words.none, 0, words.begin);
  if (!isMap(top))
    return noEntries(
      parsed,
      `${words.one} is lines of a name, a colon and a value; this is something else`,
      startOf(top),
      words.begin,
    );
  const faults: Fault[] = [];
  properties(top, "", parsed.placeAt(startOf(top)), faults);
  const entries = entriesOf(top, "", { placeAt: parsed.placeAt, faults });
  const sure = faults.filter((f) => (f.place?.line ?? 0) < guessedFrom);
  return { entries, faults: [...parsed.faults, ...sure], guessedFrom };
}
