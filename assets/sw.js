// The service worker: serves one whole build from one cache, and nothing else.
// The build writes `BUILD = { version, files: { address: digest } }` above this line's copy in dist/.
// A new build waits until a page asks for it, so that no session is ever pulled from under a lifter.

const scope = new URL(self.registration.scope);
// The path keeps two copies on one host apart; no path holds a space, so no prefix begins another.
const PREFIX = `stanchion-${scope.pathname} `;
const CACHE = PREFIX + BUILD.version;

/** Every address of this build, absolute, with the digest that its bytes must have. */
const files = new Map(
  Object.entries(BUILD.files).map(([path, digest]) => [new URL(path, scope).href, digest]),
);

/** The cached address that answers a request, or undefined if the request is not ours to answer. */
function ours(request) {
  if (request.method !== "GET") return undefined;
  const url = new URL(request.url);
  url.search = "";
  url.hash = "";
  if (url.pathname === scope.pathname + "index.html") url.pathname = scope.pathname;
  return files.has(url.href) ? url.href : undefined;
}

// `reload` passes by the browser's own cache; the digest refuses a file of another build, so a
// half-copied upload fails here and the old build stays.
self.addEventListener("install", (event) => {
  const wanted = [...files].map(([url, integrity]) => new Request(url, { cache: "reload", integrity }));
  event.waitUntil(caches.open(CACHE).then((cache) => cache.addAll(wanted)));
});

// Other apps may live on the same host: only caches with our prefix are ours to delete.
self.addEventListener("activate", (event) => {
  event.waitUntil(
    caches.keys().then((names) =>
      Promise.all(
        names
          .filter((name) => name.startsWith(PREFIX) && name !== CACHE)
          .map((name) => caches.delete(name)),
      ),
    ),
  );
});

// A file that another app sends is left where the page finds it (src/device/received.rs), and the page is opened. It goes
// nowhere else: no host ever sees it.
const RECEIVED = "stanchion received";

async function receive(request) {
  const file = (await request.formData()).get("file");
  if (file) {
    const cache = await caches.open(RECEIVED);
    await cache.put(new URL("./received", scope), new Response(file));
  }
  return Response.redirect(new URL("./?received", scope), 303);
}

self.addEventListener("fetch", (event) => {
  if (event.request.method === "POST" && new URL(event.request.url).pathname === scope.pathname + "receive") {
    event.respondWith(receive(event.request));
    return;
  }
  const url = ours(event.request);
  if (url === undefined) return;
  event.respondWith(
    caches
      .open(CACHE)
      .then((cache) => cache.match(url, { ignoreVary: true }))
      .then((hit) => hit ?? fetch(event.request)),
  );
});

// The only way a waiting build takes over: the person said yes.
self.addEventListener("message", (event) => {
  if (event.data?.type === "take-over") self.skipWaiting();
});
