import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { createServer, type IncomingHttpHeaders, request, type Server } from "node:http";
import { type AddressInfo, connect } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { PORT, page } from "../../src/cli/page.ts";
import { servePage } from "../../src/cli/servePage.ts";

const root = mkdtempSync(join(tmpdir(), "whittaw-page-"));
const folder = join(root, "page");
mkdirSync(join(folder, "assets"), { recursive: true });
writeFileSync(join(folder, "index.html"), "<!doctype html><title>bench</title>");
writeFileSync(join(folder, "assets", "a.js"), "export {};");
writeFileSync(join(root, "secret.txt"), "not for anybody");

let server: Server;
let port = 0;
beforeAll(async () => {
  server = await servePage(folder, 0);
  port = (server.address() as AddressInfo).port;
});
afterAll(() => {
  server.close();
  rmSync(root, { recursive: true });
});

type Answer = {
  readonly status: number | undefined;
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
};

const ask = (path: string, { method = "GET", host = `127.0.0.1:${port}` } = {}): Promise<Answer> =>
  new Promise((resolve, reject) => {
    const asked = request({ host: "127.0.0.1", port, path, method, headers: { host } }, (answer) => {
      let body = "";
      answer.on("data", (part) => {
        body += part;
      });
      answer.on("end", () => resolve({ status: answer.statusCode, headers: answer.headers, body }));
    });
    asked.on("error", reject);
    asked.end();
  });

/** The whole answer to a request written by hand: a client would tidy its path. */
const raw = (path: string): Promise<string> =>
  new Promise((resolve, reject) => {
    let said = "";
    const socket = connect(port, "127.0.0.1", () =>
      socket.write(`GET ${path} HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\nConnection: close\r\n\r\n`),
    );
    socket.on("data", (part) => {
      said += part;
    });
    socket.on("end", () => resolve(said));
    socket.on("error", reject);
  });

describe("the page's server", () => {
  test("serves files with their type, a strict policy and no guessing of types", async () => {
    const { status, headers, body } = await ask("/");
    expect([status, body]).toEqual([200, "<!doctype html><title>bench</title>"]);
    expect(headers["content-type"]).toBe("text/html; charset=utf-8");
    expect(headers["x-content-type-options"]).toBe("nosniff");
    expect(headers["content-security-policy"]).toContain("default-src 'none'");
    expect(headers["content-security-policy"]).not.toContain("unsafe");
    const script = await ask("/assets/a.js?v=1");
    expect([script.status, script.headers["content-type"]]).toEqual([200, "text/javascript; charset=utf-8"]);
    expect(await ask("/", { method: "HEAD" })).toMatchObject({ status: 200, body: "" });
  });

  test.each([
    "/../secret.txt",
    "/assets/../../secret.txt",
    "/%2e%2e/secret.txt",
    "/..%2fsecret.txt",
    "//secret.txt",
    "/assets/..%5c..%5csecret.txt",
    "/assets",
    "/%00",
  ])("a request leads out of the folder no way: %s", async (path) => {
    const said = await raw(path);
    expect(said).toMatch(/^HTTP\/1\.1 404 /);
    expect(said).not.toContain("not for anybody");
  });

  test("nothing can be sent to it", async () => {
    for (const method of ["POST", "PUT", "DELETE", "OPTIONS"])
      expect(await ask("/", { method }), method).toMatchObject({
        status: 405,
        headers: { allow: "GET, HEAD" },
      });
  });

  test("another name that was led to this machine gets nothing; localhost is led to the address", async () => {
    expect(await ask("/", { host: `fernhollow.example:${port}` })).toMatchObject({ status: 421 });
    expect((await ask("/", { host: `fernhollow.example:${port}` })).body).not.toContain("bench");
    expect(await ask("/x", { host: `localhost:${port}` })).toMatchObject({
      status: 308,
      headers: { location: `http://127.0.0.1:${port}/` },
    });
  });

  test("it listens to this machine alone", () => {
    expect((server.address() as AddressInfo).address).toBe("127.0.0.1");
  });
});

describe("whittaw page", () => {
  test("the port is one that systems give to nobody by themselves", () => {
    // RFC 6335 (Cotton et al., 2011), section 6: dynamic ports begin at 49152; Linux begins at 32768.
    expect(PORT).toBeGreaterThan(1023);
    expect(PORT).toBeLessThan(32768);
  });

  test("where its own page is served already it says so", async () => {
    const ending = await page({ open: false }, { folder, port });
    expect(ending).toEqual({
      status: 0,
      out: [`The page is served already, at http://127.0.0.1:${port}/`],
      err: [],
    });
  });

  test("where another program has the port it takes no other one, and says what to do", async () => {
    const other = createServer((_, response) => response.end("something else"));
    await new Promise<void>((resolve) => other.listen(0, "127.0.0.1", resolve));
    const taken = (other.address() as AddressInfo).port;
    const ending = await page({ open: false }, { folder, port: taken });
    other.close();
    expect(ending.status).toBe(2);
    expect(ending.err.join()).toMatch(
      new RegExp(`^Port ${taken} is taken.*saved orders.*To mend: end that program`),
    );
  });

  test("a page that is not built is no page: it says how to build it", async () => {
    const ending = await page({ open: false }, { folder: join(root, "none"), port });
    expect(ending.status).toBe(2);
    expect(ending.err.join()).toContain("npm run build");
  });
});
