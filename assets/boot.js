// Loads the app; if that cannot work, the static shell says why and what to do.

// The look that was chosen, before anything is painted for long; the app sets it again and knows why.
try {
  const look = JSON.parse(localStorage.getItem("stanchion.theme"));
  if (look) document.documentElement.dataset.theme = look;
  // Whoever comes for the first time has something to read while the app loads.
  if (localStorage.getItem("stanchion.known") === null) document.getElementById("shell-first").hidden = false;
} catch {
  // No storage here: the look of the phone.
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
  globalThis.stanchionWords = [file.language, file.decimal_mark, ...Object.entries(texts).flat()].join("\0");
  document.documentElement.lang = file.language;
  // What the home screen says of the app: the system reads it when the app is installed, and now and then after that.
  document.querySelector("link[rel=manifest]").href = `manifest.${file.language}.webmanifest`;
  for (const element of document.querySelectorAll("[data-words]")) element.textContent = t(element.textContent.trim());
}

const spoken = speak().catch((error) => console.error(error));

const tag = document.querySelector("script[data-wasm]");

/** The address of a file of this build, whatever path the page is hosted under. */
const address = (name) => new URL(tag.dataset[name], document.baseURI);

/** Replaces the shell's one sentence. Does nothing once the app has removed the shell. */
function say(sentence) {
  const word = document.getElementById("shell-word");
  if (word) {
    word.textContent = t(sentence);
    word.classList.add("failed");
  }
}

/** The app's WebAssembly, compiled while it arrives; its address where the browser cannot do that, or where the host
 * sends the file as something else. */
async function compiled() {
  if (!WebAssembly.compileStreaming) return address("wasm");
  try {
    return await WebAssembly.compileStreaming(fetch(address("wasm")));
  } catch (error) {
    if (error instanceof WebAssembly.CompileError) throw error;
    return address("wasm");
  }
}

async function boot() {
  if (typeof WebAssembly !== "object") {
    say("This browser cannot run WebAssembly, which Stanchion is made of. Update the browser, or switch off its lockdown mode for this address.");
    return;
  }
  try {
    const [{ default: init }, module] = await Promise.all([import(address("js")), compiled(), spoken]);
    // A task of its own: what was touched while the app was compiled comes first.
    await new Promise((later) => setTimeout(later));
    await init({ module_or_path: module });
  } catch (error) {
    console.error(error);
    say(
      error instanceof WebAssembly.CompileError || error instanceof WebAssembly.LinkError
        ? "This browser is too old for Stanchion. Update the browser and load the page again."
        : error instanceof WebAssembly.RuntimeError
          ? "Stanchion stopped while starting. What was logged is still on this device. Load the page again."
          : "A part of Stanchion could not be loaded. Check the connection and load the page again.",
    );
  }
}

boot();
