import { existsSync } from "node:fs";
import { request } from "node:http";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { openBrowser } from "./openBrowser.ts";
import { ADDRESS, OURS, servePage } from "./servePage.ts";
import { type Ending, refused, said } from "./terminal.ts";

/** Always the same: orders are kept by the page's address, and another port would show none of them. */
export const PORT = 21736;

/** Where the build puts the page, beside the command. */
const BUILT = fileURLToPath(new URL("../page", import.meta.url));

type Place = { readonly folder: string; readonly port: number };

const urlOf = (port: number): string => `http://${ADDRESS}:${port}/`;

export type PageWords = { readonly open?: boolean };

/** Serves the page until it is stopped, and opens it. */
export async function page(
  { open = true }: PageWords,
  { folder, port }: Place = { folder: BUILT, port: PORT },
): Promise<Ending> {
  if (!existsSync(join(folder, "index.html")))
    return refused(
      "The page is not built yet. To mend: run npm run build in whittaw's folder, then try again",
    );
  try {
    await servePage(folder, port);
  } catch (e) {
    return notServed(e, port, open);
  }
  return said(
    `The page is at ${urlOf(port)} and is served to this machine alone.`,
    ...(await opened(port, open)),
    "Ctrl+C ends it. What you have open stays usable, and your orders stay in the browser.",
  );
}

async function opened(port: number, open: boolean): Promise<readonly string[]> {
  if (!open || (await openBrowser(urlOf(port)))) return [];
  return ["No browser could be opened from here: type that address into yours."];
}

async function notServed(e: unknown, port: number, open: boolean): Promise<Ending> {
  const { code } = e as NodeJS.ErrnoException;
  if (code !== "EADDRINUSE") return refused(`The page can't be served (${code ?? String(e)}).`);
  if (await isOurs(port))
    return said(`The page is served already, at ${urlOf(port)}`, ...(await opened(port, open)));
  return refused(
    `Port ${port} is taken by another program. The page takes no other port, for there your saved orders would not be found. To mend: end that program, then run whittaw page again`,
  );
}

/** Long enough for a program on the same machine, ms. */
const PATIENCE_MS = 2000;

/** Whether it is whittaw that has the port. */
const isOurs = (port: number): Promise<boolean> =>
  new Promise((resolve) => {
    const asked = request(urlOf(port), { method: "HEAD", timeout: PATIENCE_MS }, (answer) => {
      answer.resume();
      resolve(answer.headers[OURS] !== undefined);
    });
    asked.once("timeout", () => asked.destroy());
    asked.once("error", () => resolve(false));
    asked.end();
  });
