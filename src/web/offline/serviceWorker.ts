// Keeps every file of the page on the device, so that it works without a network after the first visit.
// A new version is fetched whole beside the old one, and takes over when the page is next started.

export {};

declare const self: ServiceWorkerGlobalScope;

/** Both are filled in by the build. */
const FILES = "the list of files" as unknown as readonly string[];
const VERSION: string = "the version";

/** Caches belong to an origin, and the page may share it: only those of this folder are ours. */
const ours = (): string => `whittaw ${self.registration.scope} `;
const name = (): string => ours() + VERSION;

/** Kept by the folder's own address: some hosts answer the file's name with a redirection, which can't be kept. */
const START = "index.html";
const urlOf = (path: string): string => new URL(path === START ? "./" : path, self.registration.scope).href;

async function keepAll(): Promise<void> {
  const cache = await caches.open(name());
  // Past the browser's own cache: all files are of one version.
  await cache.addAll(FILES.map((path) => new Request(urlOf(path), { cache: "reload" })));
}

/** Also serves the page that brought it, so that the first visit can go on without a network. */
async function takeOver(): Promise<void> {
  const older = (await caches.keys()).filter((n) => n.startsWith(ours()) && n !== name());
  await Promise.all(older.map((n) => caches.delete(n)));
  await self.clients.claim();
}

async function answer(request: Request): Promise<Response> {
  const cache = await caches.open(name());
  const named = request.url.split(/[?#]/)[0] === new URL(START, self.registration.scope).href;
  const kept = await cache.match(named ? urlOf(START) : request, { ignoreSearch: true });
  return kept ?? fetch(request);
}

self.addEventListener("install", (event) => event.waitUntil(keepAll()));
self.addEventListener("activate", (event) => event.waitUntil(takeOver()));
self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method === "GET" && request.url.startsWith(self.registration.scope))
    event.respondWith(answer(request));
});
