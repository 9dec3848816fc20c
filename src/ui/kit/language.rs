//! The language of the app: as the browser, or one that was chosen. It holds from the next load of the page on.

use crate::device::{language, place};
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{choices, el, line, section, text, yes_or_no};
use crate::ui::seen::Seen;
use crate::ui::stanchion::Stanchion;
use crate::words::t;
use leptos::prelude::*;
use leptos::task::spawn_local;

/// The languages, as in BCP 47, and what each calls itself: a name that is never translated.
const LANGUAGES: [(&str, &str); 2] = [("en", "English"), ("de", "Deutsch")];

/// Whether something is under way that a load of the page would break off.
fn is_busy(app: Stanchion) -> bool {
    app.unsaved.get_untracked() > 0 || app.model.with_untracked(Model::any_in_session)
}

/// The choice of a language.
pub fn language(app: Stanchion) -> AnyView {
    let chosen = Live::new(language::chosen());
    let waits = Live::new(false);
    let choice = move |which: Option<&'static str>, words: &'static str| {
        let pressed = Seen::new(move || chosen.get().as_deref() == which);
        let choose = move || {
            if chosen.with_untracked(|chosen| chosen.as_deref() == which) {
                return;
            }
            spawn_local(async move {
                if let Err(why) = language::choose(which).await {
                    app.complain(why.to_string());
                    return;
                }
                app.worker.with_value(|worker| {
                    if let Some(worker) = worker {
                        worker.keep_language();
                    }
                });
                chosen.set(which.map(str::to_owned));
                if is_busy(app) {
                    waits.set(true);
                } else {
                    place::reload();
                }
            });
        };
        let hook = which.unwrap_or("browser");
        // Its own name is to be spoken in its own language.
        el("button")
            .class("choice")
            .part(format!("language-{hook}"))
            .set("lang", which)
            .follow("aria-pressed", move || yes_or_no(pressed.get()))
            .on_tap(Callback::new(move |()| choose()))
            .child(words)
            .view()
    };
    let mut inside = vec![choice(None, t("as the browser"))];
    inside.extend(LANGUAGES.map(|(which, words)| choice(Some(which), words)));
    let said = text(move || {
        let said = match waits.get() {
            true => t("Something is under way: the language changes when the app is opened next."),
            false => "",
        };
        said.to_owned()
    });
    section(
        None,
        t("Language"),
        vec![
            choices("choices words", t("Language"), inside),
            line("quiet", "language-said", said),
        ],
    )
}

#[cfg(test)]
mod tests {
    use super::LANGUAGES;
    use std::path::Path;

    #[test]
    fn every_language_that_there_is_a_file_of_can_be_chosen_and_is_loaded() {
        let assets = Path::new(env!("CARGO_MANIFEST_DIR")).join("assets");
        let boot = std::fs::read_to_string(assets.join("boot.js")).expect("the loader");
        let (_, listed) = boot.split_once("const LANGUAGES = [").expect("its list");
        let listed = listed.split(']').next().unwrap_or_default();
        let files = std::fs::read_dir(assets.join("words")).expect("the files of words");
        let mut files: Vec<String> = files
            .map(|file| {
                let name = file.expect("a file").file_name();
                name.to_string_lossy().trim_end_matches(".json").to_owned()
            })
            .collect();
        files.sort_unstable();
        let mut others: Vec<&str> = LANGUAGES.map(|(which, _)| which).to_vec();
        others.retain(|which| *which != "en");
        others.sort_unstable();
        assert_eq!(files, others);
        let wanted: Vec<String> = others.iter().map(|which| format!("\"{which}\"")).collect();
        assert_eq!(listed, wanted.join(", "));
    }
}
