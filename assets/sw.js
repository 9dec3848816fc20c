// The service worker: serves one whole build from one cache, and nothing else.
// The build writes `BUILD = { version, files: { address: digest }, words: { address: digest } }` above this line's copy in dist/.
// `files` is what every phone needs; of `words`, the texts of other languages, a phone keeps those that it speaks.
// A new build waits until a page asks for it, so that no session is ever pulled from under a lifter.

const scope = new URL(self.registration.scope);
// The path keeps two copies on one host apart; no path holds a space, so no prefix begins another.
const PREFIX = `stanchion-${scope.pathname} `;
const CACHE = PREFIX + BUILD.version;

/** Addresses, absolute, with the digests that their bytes must have. */
const digests = (list) => new Map(Object.entries(list).map(([path, digest]) => [new URL(path, scope).href, digest]));

/** Every address of this build that every phone needs. */
const files = digests(BUILD.files);
/** The texts of the other languages. */
const words = digests(BUILD.words);

/** The cached address that answers a request, or undefined if the request is not ours to answer. */
function ours(request) {
  if (request.method !== "GET") return undefined;
  const url = new URL(request.url);
  url.search = "";
  url.hash = "";
  if (url.pathname === scope.pathname + "index.html") url.pathname = scope.pathname;
  return files.has(url.href) || words.has(url.href) ? url.href : undefined;
}

/** The request for a file of this build. `reload` passes by the browser's own cache; the digest refuses a file of another
 * build, so with a half-copied upload the old build stays. */
const wanted = (url) =>
  new Request(url, { cache: "reload", integrity: files.get(url) ?? words.get(url) });

/** The names of our caches. Other apps may live on the same host: only those with our prefix are ours. */
const ourCaches = async () => (await caches.keys()).filter((name) => name.startsWith(PREFIX));

/** The languages that this phone speaks: those whose texts a build before this one keeps, or this one does. */
async function spoken() {
  const kept = await Promise.all(
    (await ourCaches()).map(async (name) => (await (await caches.open(name)).keys()).map((request) => request.url)),
  );
  return [...words.keys()].filter((url) => kept.flat().includes(url));
}

/** Keeps the texts of a language from now on. */
async function keep(url) {
  const cache = await caches.open(CACHE);
  if (!(await cache.match(url))) await cache.add(wanted(url));
}

// The texts of the phone's languages come with the build that says them, before it takes over.
async function install() {
  const urls = [...files.keys(), ...(await spoken())];
  const cache = await caches.open(CACHE);
  await cache.addAll(urls.map(wanted));
}

self.addEventListener("install", (event) => event.waitUntil(install()));

async function activate() {
  // A language that was chosen while this build waited; without a network it comes when it is next asked for.
  await Promise.allSettled((await spoken()).map(keep));
  const old = (await ourCaches()).filter((name) => name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
}

self.addEventListener("activate", (event) => event.waitUntil(activate()));

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
  event.respondWith(answer(url, event.request));
});

/** A file from the cache; texts of a language that are not there yet are kept from now on. */
async function answer(url, request) {
  if (words.has(url)) await keep(url);
  const cache = await caches.open(CACHE);
  return (await cache.match(url, { ignoreVary: true })) ?? fetch(request);
}

self.addEventListener("message", (event) => {
  // The only way a waiting build takes over: the person said yes.
  if (event.data?.type === "take-over") self.skipWaiting();
  // A page that no build serves yet, or another one, speaks this language.
  if (event.data?.type === "keep") {
    const url = new URL(event.data.address, scope).href;
    if (words.has(url)) event.waitUntil(keep(url));
  }
});
