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

const tag = document.querySelector("script[data-wasm]");

/** The address of a file of this build, whatever path the page is hosted under. */
const address = (name) => new URL(tag.dataset[name], document.baseURI);

/** Replaces the shell's one sentence. Does nothing once the app has removed the shell. */
function say(sentence) {
  const word = document.getElementById("shell-word");
  if (word) {
    word.textContent = sentence;
    word.classList.add("failed");
  }
}

async function boot() {
  if (typeof WebAssembly !== "object") {
    say("This browser cannot run WebAssembly, which Stanchion is made of. Update the browser, or switch off its lockdown mode for this address.");
    return;
  }
  try {
    const { default: init } = await import(address("js"));
    await init({ module_or_path: address("wasm") });
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
