// Text that others wrote, made safe to stand in an XML file.

/** Characters that XML 1.0 allows nowhere: controls other than tab and breaks, lone surrogates, U+FFFE, U+FFFF. */
function allowed(char: string): boolean {
  const code = char.codePointAt(0)!;
  if (code < 0x20) return code === 0x09 || code === 0x0a || code === 0x0d;
  return !(code >= 0xd800 && code <= 0xdfff) && code !== 0xfffe && code !== 0xffff;
}

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
  "\t": "&#9;",
  "\n": "&#10;",
  "\r": "&#13;",
};

/** The text for use between tags or inside quotes; what XML cannot hold becomes U+FFFD. */
export const escapeXml = (text: string): string =>
  Array.from(text, (char) => ENTITIES[char] ?? (allowed(char) ? char : "\ufffd")).join("");

/** Makes ids: only letters, figures, dots, dashes and underscores, never twice the same, never one of `taken`. */
export function idMaker(taken: readonly string[]): (wanted: string) => string {
  const used = new Set(taken);
  return (wanted) => {
    const plain = wanted.replace(/[^A-Za-z0-9._-]/g, "-");
    const base = /^[A-Za-z_]/.test(plain) ? plain : `_${plain}`;
    let id = base;
    for (let n = 2; used.has(id); n += 1) id = `${base}-${n}`;
    used.add(id);
    return id;
  };
}
