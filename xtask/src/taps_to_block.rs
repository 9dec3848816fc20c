//! How many taps a block takes, from the list of sheets to the kept sheet, in the built app.

use crate::in_app;
use crate::say::{Failure, Outcome};
use crate::setup::Browser;

/// Taps together a sheet with one block: four sets of front squats at rising loads, tempo and rest as they come. Gives
/// the number of taps, or what the sheet says instead.
const SCRIPT: &str = "
    const part = (name, words) => [...document.querySelectorAll(`[data-part=\"${name}\"]`)]
      .find((one) => one.innerText.trim().startsWith(words ?? ''));
    let taps = 0;
    const tap = async (name, words) => {
      (await seen(() => part(name, words))).click();
      taps += 1;
    };
    (async () => {
      await tap('welcome-skip');
      await tap('go-sheets');
      taps = 0;
      await tap('write-sheet');
      await tap('draft-add');
      await tap('pattern-0');
      await tap('exercise-take', 'Front squat');
      await tap('set-line');
      await tap('line-count-more');
      await tap('policy-1');
      await tap('line-done');
      await tap('draft-back');
      await tap('draft-keep');
      const said = (await seen(() => part('sheet-look'))).innerText;
      const whole = ['4 × 4–6', 'rising by the smallest step', 'tempo 2/0/X/0', 'rest 2:30'];
      done(whole.every((words) => said.includes(words)) ? taps : said);
    })();";

/// Taps for a block of four sets at rising loads, tempo and rest being those that are usual.
pub fn count(browser: &Browser) -> Outcome<f64> {
    let taps = in_app::ask(browser, SCRIPT)?;
    taps.as_f64().ok_or_else(|| {
        Failure::new(
            format!("the sheet that was tapped together says {taps}"),
            "open the app with `cargo xtask serve` and write a sheet by hand",
        )
    })
}
