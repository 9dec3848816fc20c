// Loads the app; if that cannot work, the static shell says why and what to do.

// This script runs while the page is still being read, and what takes longest is begun first. What looks at the page waits for
// all of it.
const tag = document.querySelector("script[data-wasm]");

/** The address of a file of this build, whatever path the page is hosted under. */
const address = (name) => new URL(tag.dataset[name], document.baseURI);

/** The bytes of a file. */
async function bytesOf(url) {
  const response = await fetch(url);
  if (!response.ok) throw new Error(`${url}: ${response.status}`);
  return new Uint8Array(await response.arrayBuffer());
}

/** A module, compiled while it arrives; its bytes compiled after that where the browser cannot do both, or where the host
 * sends the file as something else. */
async function compiled(url) {
  if (WebAssembly.compileStreaming) {
    try {
      return await WebAssembly.compileStreaming(fetch(url));
    } catch (error) {
      if (error instanceof WebAssembly.CompileError) throw error;
    }
  }
  return WebAssembly.compile(await bytesOf(url));
}

// The app is several modules (xtask/src/split): what whoever comes for the first time is shown, what the floor and later
// starts need besides, and the rest.

/** The addresses of the modules after the first; none where a build was not cut. */
const later = (tag.dataset.parts ?? "").split(" ").filter(Boolean).map((name) => new URL(name, document.baseURI));

/** Whether whoever comes has been here before, as far as is known. */
function isKnown() {
  try {
    return localStorage.getItem("stanchion.known") !== null;
  } catch {
    // No storage here: nobody ever is.
    return true;
  }
}

/** Whether this is a later start: the app has been here, or its service worker answers. */
const isLater = () => Boolean(navigator.serviceWorker?.controller) || isKnown();

/** The last module that is to be in its place before anything is shown. Who comes for the first time has something to read
 * while the others come; a phone that has been here before has all of them. */
function needed() {
  if (!/^#?\/?(floor)?$/.test(location.hash)) return later.length;
  return isLater() ? Math.min(1, later.length) : 0;
}

/** What is brought before anything is shown: the script of the app, its first module, and those that are needed besides. */
const begun =
  typeof WebAssembly === "object"
    ? [import(address("js")), compiled(address("wasm")), ...later.slice(0, needed()).map(compiled)]
    : [];

/** The store of record as it is on this device, opened while the app comes: null where there is none, undefined where it could
 * not be opened. For the app (`src/device/db/connection.rs`). */
function opened(name) {
  const store = new Promise((give) => {
    const request = indexedDB.open(name);
    let isNew = false;
    request.onupgradeneeded = () => {
      isNew = true;
      request.transaction.abort();
    };
    request.onerror = (event) => {
      event.preventDefault();
      give(isNew ? null : undefined);
    };
    request.onsuccess = () => {
      // Until the app has it, and for ever if it comes too late.
      request.result.onversionchange = () => request.result.close();
      give(request.result);
    };
  });
  // Where the browser refuses at once, the app finds that out and says so.
  store.catch(() => {});
  return Object.assign(store, { store: name });
}

if (tag.dataset.store) globalThis.stanchionStore = opened(tag.dataset.store);

/** Fulfilled when all of the page is there. */
const page = new Promise((done) => {
  if (document.readyState !== "loading") done();
  else addEventListener("DOMContentLoaded", () => done());
});

// The look that was chosen, before anything is painted for long; the app sets it again and knows why.
try {
  const look = JSON.parse(localStorage.getItem("stanchion.theme"));
  if (look) document.documentElement.dataset.theme = look;
} catch {
  // No storage here: the look of the phone.
}

// Whoever comes for the first time has something to read while the app loads. In a later start the app is there before the shell
// is due, which the style sheet keeps back for a second.
page.then(() => {
  const first = document.getElementById("shell-first");
  if (first) first.hidden = isKnown();
  if (!isLater()) showShell();
});

/** Shows the static shell now. */
function showShell() {
  document.getElementById("shell")?.classList.add("now");
}

/** The languages that there is a file of, beside English. */
const LANGUAGES = ["de"];

/** The language that was chosen; null follows the browser. */
function chosen() {
  try {
    return JSON.parse(localStorage.getItem("stanchion.language"));
  } catch {
    // No storage here: the language of the browser.
    return null;
  }
}

/** The address of the texts of a language that was chosen, or else of the first of the browser's that the app speaks; null
 * for English, which needs none. */
function wordsOf(chosen) {
  const wanted = chosen ? [chosen] : (navigator.languages ?? [navigator.language]);
  const spoken = wanted.map((it) => it.split("-")[0].toLowerCase());
  const found = spoken.find((it) => it === "en" || LANGUAGES.includes(it)) ?? "en";
  return found === "en" ? null : `words/${found}.json`;
}

// For the app, which brings the texts of a language before it is chosen (`src/device/language.rs`).
globalThis.stanchionWordsOf = wordsOf;

/** The texts of the language by their English ones; empty in English. */
let texts = {};

/** A text in the language of the page. */
const t = (english) => texts[english] ?? english;

/** Brings the texts of the language: to the static shell, and to the app (`src/device/language.rs`). English stays
 * where they cannot be had. */
async function speak() {
  const address = wordsOf(chosen());
  if (address === null) return;
  const file = await (await fetch(new URL(address, document.baseURI))).json();
  texts = file.texts;
  // The app reads no JSON for it: its parts in a row, a zero between them.
  globalThis.stanchionWords = [file.language, file.decimal_mark + (file.group_mark ?? ""), ...Object.entries(texts).flat()].join("\0");
  document.documentElement.lang = file.language;
  await page;
  // What the home screen says of the app: the system reads it when the app is installed, and now and then after that.
  document.querySelector("link[rel=manifest]").dataset.later = `manifest.${file.language}.webmanifest`;
  for (const element of document.querySelectorAll("[data-words]")) element.textContent = t(element.textContent.trim());
}

const spoken = speak().catch((error) => console.error(error));

/** Replaces the shell's one sentence. Does nothing once the app has removed the shell. */
function say(sentence) {
  const word = document.getElementById("shell-word");
  if (word) {
    showShell();
    word.textContent = t(sentence);
    word.classList.add("failed");
  }
}

/** Said where a file of this build cannot be had. */
const MISSING = "A part of Stanchion could not be loaded. Check the connection and load the page again.";

/** What each module that is there exports, by its number; none before the app runs. */
const there = {};

/** How many modules are there. */
const count = () => Object.keys(there).length;

// For the app: whether all are there.
Object.defineProperty(globalThis, "stanchionWhole", { get: () => count() > later.length });

/** The bytes of modules, by their number, while they come. */
const coming = [];

/** The bytes of modules, by their number, that are here and wait to be compiled. */
const here = [];

/** Brings the bytes of a module, once; asked again, one that could not be had is tried again. */
function bring(part) {
  coming[part] ??= bytesOf(later[part - 1]).then(
    (bytes) => (here[part] = bytes),
    (error) => {
      coming[part] = undefined;
      throw error;
    },
  );
  return coming[part];
}

/** Puts a module in, unless it is there; those before it are. */
function put(part, module) {
  here[part] = undefined;
  if (there[part]) return;
  there[part] = new WebAssembly.Instance(module, there).exports;
  if (globalThis.stanchionWhole) dispatchEvent(new Event("stanchion-whole"));
}

/** A file, and nothing else happens before it is there. No service worker answers such a request: without a network there is
 * none. So whoever shows a place or a panel of a module waits for it in peace (`Stanchion::whole`), and this is for the rest. */
function fileAtOnce(url) {
  const request = new XMLHttpRequest();
  request.open("GET", url, false);
  // Bytes as characters: a request that is waited for gives no others.
  request.overrideMimeType("text/plain; charset=x-user-defined");
  request.send();
  if (request.status !== 200) throw new Error(`${url}: ${request.status}`);
  return Uint8Array.from(request.responseText, (byte) => byte.charCodeAt(0) & 0xff);
}

/** For the app: brings a module and those before it, and what called comes back when they are there. With 0, brings all that
 * are missing, one after the other, and comes back at once. */
globalThis.stanchionPart = (part) => {
  if (part === 0) {
    completePage();
    bringRest();
    return;
  }
  // Which function that was: target/modules.txt has its number.
  performance.mark("stanchion-waited", { detail: new Error().stack });
  try {
    while (!there[part]) {
      const next = count();
      put(next, new WebAssembly.Module(here[next] ?? fileAtOnce(later[next - 1])));
    }
  } catch (error) {
    // What was under way is broken off; what was logged is stored.
    const word = document.createElement("p");
    word.className = "banner wrong";
    word.role = "alert";
    word.textContent = t(MISSING);
    document.body.prepend(word);
    throw error;
  }
};

/** Gives the page its icon and its manifest, which wait until the first screen is there. */
function completePage() {
  for (const link of document.querySelectorAll("link[data-later]")) {
    link.href = link.dataset.later;
    delete link.dataset.later;
  }
}

/** Milliseconds after which what could not be had is asked for again, and the most. */
const SOON = 1000;
const LATE = 60_000;

/** How many it is the next time: each time twice as many. */
let patience = SOON;
let again;

/** Brings all that are missing. A network that is there and fails tells nobody when it works again, so it is asked. */
function bringRest() {
  bringAll().catch((error) => {
    console.error(error);
    clearTimeout(again);
    again = setTimeout(bringRest, patience);
    patience = Math.min(2 * patience, LATE);
  });
}

async function bringAll() {
  while (count() <= later.length) {
    const part = count();
    // Compiled aside from the page, which is in use.
    put(part, await WebAssembly.compile(await bring(part)));
  }
}

// What could not be had without a network is had with one.
addEventListener("online", () => {
  patience = SOON;
  if (there[0]) bringRest();
});

async function boot() {
  if (typeof WebAssembly !== "object") {
    await page;
    say("This browser cannot run WebAssembly, which Stanchion is made of. Update the browser, or switch off its lockdown mode for this address.");
    return;
  }
  try {
    const [{ default: init }, module, ...parts] = await Promise.all(begun);
    await Promise.all([spoken, page]);
    // A task of its own: what was touched while the app was compiled comes first.
    await new Promise((later) => setTimeout(later));
    there[0] = await init({ module_or_path: module });
    // The app shows its first screen in the next task.
    for (const [at, part] of parts.entries()) put(at + 1, part);
  } catch (error) {
    console.error(error);
    await page;
    say(
      error instanceof WebAssembly.CompileError || error instanceof WebAssembly.LinkError
        ? "This browser is too old for Stanchion. Update the browser and load the page again."
        : error instanceof WebAssembly.RuntimeError
          ? "Stanchion stopped while starting. What was logged is still on this phone. Load the page again."
          : MISSING,
    );
  }
}

boot();
