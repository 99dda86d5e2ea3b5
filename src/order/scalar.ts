// How a value's text is written so that it reads back the same.

/** Begins with a letter, digit or fraction and holds nothing that YAML gives a meaning to. */
const PLAIN = /^[\p{L}\p{N}.½¼¾⅛⅜⅝⅞][^\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}\uFFFD]*$/u;
/** A colon or a number sign can be signs of YAML; so can, in brackets, these. */
const COLON_OR_COMMENT = /:(?:\s|$)|\s#/;
const IN_BRACKETS = /[,[\]{}:"']/;

/** What JSON leaves as it is and an order's text may not hold. */
const UNTYPED = /[\x7F-\x9F\p{Zl}\p{Zp}\uFEFF\uFFFD]/gu;

const escaped = (char: string): string => `\\u${char.charCodeAt(0).toString(16).padStart(4, "0")}`;

/** A value as it stands in an order: bare where that is safe, in double quotes where it is not. */
export function scalarText(value: string, inBrackets: boolean): string {
  const trimmed = value.trim() === value;
  const plain =
    trimmed && PLAIN.test(value) && !COLON_OR_COMMENT.test(value) && !(inBrackets && IN_BRACKETS.test(value));
  // What JSON writes is a double-quoted scalar of YAML, escapes and all.
  return plain ? value : JSON.stringify(value).replace(UNTYPED, escaped);
}
