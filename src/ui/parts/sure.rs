//! A button for what cannot be taken back on screen: it asks once more.

use super::controls::button;
use super::frames::dynamic;
use crate::ui::live::Live;
use leptos::prelude::*;

/// A button that, once tapped, becomes another one that does it (its hook ends in `-sure`).
pub fn sure_button(
    part: &'static str,
    ask: &'static str,
    sure: &'static str,
    act: Callback<()>,
) -> AnyView {
    let asked = Live::new(false);
    dynamic(move || {
        if asked.get() {
            let do_it = move || act.run(());
            button("wide strong", format!("{part}-sure"), sure, do_it)
        } else {
            button("wide", part, ask, move || asked.set(true))
        }
    })
}
