//! How long the link of a sheet is, made by the built app in a browser.

use serde_json::json;

use crate::in_app;
use crate::say::{Failure, Outcome};
use crate::setup::Browser;

/// Six blocks as a lifter writes them; the tests of the link use them too.
const SIX_BLOCKS: &str = include_str!("../../tests/golden/six_blocks.txt");

/// Writes the sheet, opens what shares it and reads the link, each once it is there.
const SCRIPT: &str = "
    const part = (name) => document.querySelector(`[data-part=\"${name}\"]`);
    (async () => {
      (await seen(() => part('welcome-skip'))).click();
      await seen(() => part('place'));
      location.hash = '#/write';
      const lines = await seen(() => part('lines'));
      lines.value = TEXT;
      lines.dispatchEvent(new Event('input', { bubbles: true }));
      part('lines-keep').click();
      (await seen(() => part('share-sheet'))).click();
      const link = await seen(() => {
        const link = part('share-link')?.value ?? '';
        return link.includes('#/s/') && link;
      });
      done(link.length - link.indexOf('#/s/'));
    })();";

/// Characters of the link of a sheet of six blocks, from `#` on: what comes before is the host's.
pub fn length(browser: &Browser) -> Outcome<f64> {
    let script = SCRIPT.replace("TEXT", &json!(SIX_BLOCKS).to_string());
    let length = in_app::ask(browser, &script)?;
    length.as_f64().ok_or_else(|| {
        Failure::new(
            format!("the length of the link is {length}"),
            "open the app with `cargo xtask serve`, write a sheet and share it by hand",
        )
    })
}
