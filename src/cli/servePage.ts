import { readdirSync, readFileSync } from "node:fs";
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import { extname, join } from "node:path";

// Serves the built page to this machine alone. Only files that were in the folder when it started are
// known, each by its whole path: no request can name another.

export const ADDRESS = "127.0.0.1";

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json",
  ".webmanifest": "application/manifest+json",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".ttf": "font/ttf",
};

/** The page's own policy and, which only a header can say, that no other page may frame it. */
const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; worker-src 'self'; font-src 'self'; connect-src 'self'; img-src 'self' blob: data:; manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/** By this header whittaw knows its own page on the port again. */
export const OURS = "x-whittaw";

const HEADERS = {
  "content-security-policy": POLICY,
  "x-content-type-options": "nosniff",
  "referrer-policy": "no-referrer",
  "cross-origin-opener-policy": "same-origin",
  "cross-origin-resource-policy": "same-origin",
  // The service worker keeps the files; what the browser keeps beside it could be of another version.
  "cache-control": "no-cache",
  [OURS]: "page",
};

/** Paths of the folder's files as requests name them, "/assets/a.js". */
function filesIn(folder: string): ReadonlyMap<string, string> {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((e) => e.isFile());
  const paths = files.map((e) => join(e.parentPath, e.name));
  const named = paths.map((path): [string, string] => [
    path.slice(folder.length).replaceAll("\\", "/").replace(/^\/*/, "/"),
    path,
  ]);
  return new Map(
    named.flatMap(([url, path]) =>
      url === "/index.html"
        ? [
            [url, path],
            ["/", path],
          ]
        : [[url, path]],
    ),
  );
}

type Answer = {
  readonly status: number;
  readonly headers?: Record<string, string>;
  readonly body?: Buffer | string;
};

/** What a request gets. A name other than this machine's own could be a foreign page's that was led here. */
function answerTo(request: IncomingMessage, files: ReadonlyMap<string, string>): Answer {
  const { method, url, headers } = request;
  const port = request.socket.localPort;
  const own = `${ADDRESS}:${port}`;
  if (headers.host === `localhost:${port}`) return { status: 308, headers: { location: `http://${own}/` } };
  if (headers.host !== own) return { status: 421, body: `Whittaw answers at http://${own} alone.\n` };
  if (method !== "GET" && method !== "HEAD")
    return { status: 405, headers: { allow: "GET, HEAD" }, body: "Files can only be read here.\n" };
  const path = files.get(url?.split(/[?#]/)[0] ?? "");
  if (path === undefined) return { status: 404, body: "There is no such file.\n" };
  const type = TYPES[extname(path)] ?? "application/octet-stream";
  return { status: 200, headers: { "content-type": type }, body: readFileSync(path) };
}

function send(
  response: ServerResponse,
  { status, headers = {}, body = "" }: Answer,
  withBody: boolean,
): void {
  const words = typeof body === "string" ? { "content-type": "text/plain; charset=utf-8" } : {};
  const length = { "content-length": String(Buffer.byteLength(body)) };
  response.writeHead(status, { ...HEADERS, ...words, ...length, ...headers });
  response.end(withBody ? body : undefined);
}

/** Serves the folder; port 0 lets the system choose. Rejects with the system's error when the port is taken. */
export function servePage(folder: string, port: number): Promise<Server> {
  const files = filesIn(folder);
  const server = createServer((request, response) => {
    try {
      send(response, answerTo(request, files), request.method !== "HEAD");
    } catch {
      send(response, { status: 500, body: "The file can't be read. Build the page again.\n" }, true);
    }
  });
  return new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen({ host: ADDRESS, port, exclusive: true }, () => resolve(server));
  });
}
