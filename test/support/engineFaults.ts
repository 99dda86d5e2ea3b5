/** What the engine may not know: where it runs, when, in which language, or chance. */
const FORBIDDEN: readonly (readonly [pattern: RegExp, why: string])[] = [
  [/\bDate\.now\b|\bnew Date\(\s*\)|\bDate\(\s*\)/, "the clock"],
  [/\bMath\.random\b/, "chance"],
  [/\bIntl\b|\.toLocale\w*\(|\.localeCompare\(/, "the machine's language"],
  [/\bprocess\b\s*[.[]/, "the process"],
  [/\bBuffer\b/, "Node's own buffers"],
  [/\bperformance\b\s*[.[]/, "the clock"],
  [/from "node:/, "the machine"],
  // Their last bit differs between engines; units/trigonometry.ts reckons with + − × ÷ √ alone.
  [/\bMath\.(sin|cos|tan|asin|acos|atan2?|exp|log\d*|pow|cbrt)\b/, "engine-dependent functions"],
];

/** Lines of a source file that know too much; comments and texts don't count. */
export function engineFaults(source: string): readonly string[] {
  const bare = source.replace(/\/\*[\s\S]*?\*\//g, (c) => c.replace(/[^\n]/g, " ")).replace(/\/\/.*$/gm, "");
  return bare.split("\n").flatMap((text, i) => {
    const code =
      text.startsWith("import") || text.includes(" from ")
        ? text
        : text.replace(/"(?:[^"\\]|\\.)*"|`(?:[^`\\$]|\\.)*`/g, '""');
    return FORBIDDEN.filter(([pattern]) => pattern.test(code)).map(
      ([, why]) => `line ${i + 1} knows ${why}: ${text.trim()}`,
    );
  });
}
