// What an order's text says at first sight, faulty or not; the engine reads it in earnest once it is opened.

/** No order is longer: the engine's own limit, kept here so that the page need not load the engine for it. */
export const LARGEST_BYTES = 1_000_000;

const QUOTED = /^"([^"]*)"|^'([^']*)'/;

/** What stands behind a name at the left margin, without comment and quotes; "" where there is no such line. */
export function lineOf(text: string, name: string): string {
  const start = new RegExp(`^["']?${name}["']?[ \\t]*:(.*)$`, "m").exec(text)?.[1]?.trim() ?? "";
  const quoted = QUOTED.exec(start);
  if (quoted) return quoted[1] ?? quoted[2] ?? "";
  return start.replace(/(^|\s)#.*$/, "").trim();
}

const has = (text: string, names: string): boolean =>
  new RegExp(`^["']?(${names})["']?[ \\t]*:`, "m").test(text);

/** A shop file has rates and no article. */
export const isShopFile = (text: string): boolean =>
  !has(text, "article") && has(text, "shop|currency|labour|price");

/** What the file's first comment says it is. */
export const firstComment = (text: string): string => {
  const lines = text.split("\n");
  const end = lines.findIndex((line) => !line.startsWith("#"));
  return lines
    .slice(0, end < 0 ? lines.length : end)
    .map((line) => line.replace(/^#\s?/, "").trim())
    .join(" ")
    .trim();
};
