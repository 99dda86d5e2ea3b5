import type { Quantity } from "../../src/model/quantity.ts";

// Works the text of a step as a reader with a calculator would: the text and the named values in it,
// and nothing else. It shares no code with the formulas.

type Token =
  | { readonly kind: "number"; readonly value: number }
  | { readonly kind: "word"; readonly text: string };

const WORDS =
  /\s*(rounded up to a whole|rounded to the nearest|rounded down|the greatest of|the least of|the next odd number from|atan2|acos|sin|cos|tan|√|π|\d+(?:\.\d+)?(?: mm)?|[()+−×÷²,;-])/uy;

/** Splits the text; undefined when it holds words that are no arithmetic. */
function tokensOf(text: string): readonly Token[] | undefined {
  const tokens: Token[] = [];
  let at = 0;
  while (text.slice(at).trim() !== "") {
    WORDS.lastIndex = at;
    const found = WORDS.exec(text);
    if (!found) return undefined;
    const word = found[1]!;
    // A bare number beside lengths is said in mm, and all lengths are mm.
    const value = word === "π" ? Math.PI : Number(word.replace(" mm", ""));
    tokens.push(Number.isNaN(value) ? { kind: "word", text: word } : { kind: "number", value });
    at = WORDS.lastIndex;
  }
  return tokens;
}

/** Products bind before sums, from left to right, as in school. */
function work(tokens: readonly Token[]): number {
  let at = 0;
  const take = (...words: readonly string[]): string | undefined => {
    const t = tokens[at];
    if (t?.kind !== "word" || !words.includes(t.text)) return undefined;
    at += 1;
    return t.text;
  };
  const need = (word: string): void => {
    if (!take(word)) throw new Error(`"${word}" is missing at ${at}`);
  };
  const several = (): readonly number[] => {
    need("(");
    const found = [rounded()];
    while (take(",", ";")) found.push(rounded());
    need(")");
    return found;
  };
  const one = (): number => several()[0]!;
  function atom(): number {
    if (take("−", "-")) return -atom();
    if (take("√")) return Math.sqrt(one());
    if (take("sin")) return Math.sin(one());
    if (take("cos")) return Math.cos(one());
    if (take("tan")) return Math.tan(one());
    if (take("acos")) return Math.acos(one());
    if (take("atan2")) {
      const [y, x] = several();
      return Math.atan2(y!, x!);
    }
    if (take("the greatest of")) return Math.max(...several());
    if (take("the least of")) return Math.min(...several());
    if (take("the next odd number from")) {
      const whole = Math.ceil(squared() - 1e-6);
      return whole % 2 === 1 ? whole : whole + 1;
    }
    const t = tokens[at];
    if (t?.kind === "number") {
      at += 1;
      return t.value;
    }
    return one();
  }
  function squared(): number {
    const base = atom();
    return take("²") ? base * base : base;
  }
  function product(): number {
    let value = squared();
    for (let sign = take("×", "÷"); sign; sign = take("×", "÷")) {
      value = sign === "×" ? value * squared() : value / squared();
    }
    return value;
  }
  function total(): number {
    let value = product();
    for (let sign = take("+", "−"); sign; sign = take("+", "−")) {
      value = sign === "+" ? value + product() : value - product();
    }
    return value;
  }
  function rounded(): number {
    const value = total();
    if (take("rounded down")) return Math.floor(value + 1e-6);
    const how = take("rounded up to a whole", "rounded to the nearest");
    if (!how) return value;
    const step = total();
    const steps = value / step;
    return (how === "rounded to the nearest" ? Math.round(steps) : Math.ceil(steps - 1e-6)) * step;
  }
  const value = rounded();
  if (at < tokens.length) throw new Error(`left over from ${at}`);
  return value;
}

const fixed = (n: number): string => (n < 0 ? `(− ${(-n).toFixed(12)})` : n.toFixed(12));

/** A named value of a step, changed to see what it does. */
export type Changed = { readonly part: Quantity; readonly to: number };

/** The text of a step with each named value written as its number. */
export const written = (q: Quantity, changed?: Changed): string =>
  q.parts
    .map((p) => (typeof p === "string" ? p : fixed(p === changed?.part ? changed.to : p.value)))
    .join("");

/** What the text says the value is; undefined where it is said in words that are no arithmetic. */
export function readExpression(q: Quantity, changed?: Changed): number | undefined {
  const tokens = tokensOf(written(q, changed));
  return tokens === undefined || tokens.length === 0 ? undefined : work(tokens);
}

/** Every quantity in a history, each once. */
export function allIn(result: Quantity): readonly Quantity[] {
  const seen = new Set<Quantity>();
  const visit = (q: Quantity): void => {
    if (seen.has(q)) return;
    seen.add(q);
    for (const p of [...q.parts, ...q.inputs]) if (typeof p !== "string") visit(p);
  };
  visit(result);
  return [...seen];
}
