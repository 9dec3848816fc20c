//! The note on a session of the ledger, written or changed.

use super::changed::Changing;
use crate::session::What;
use crate::sheet::{Note, SetKey};
use crate::ui::live::Live;
use crate::ui::parts::{area, button, panel, wrong_word};
use crate::words::t;
use leptos::prelude::*;

/// A field for a note of many lines.
pub fn note_area(part: &'static str, name: &'static str, written: Live<String>) -> AnyView {
    let typed = Callback::new(move |text| written.set(text));
    area(part, name, written.into(), true, typed)
}

/// The event that writes a note, or why it cannot be written.
pub fn noted(set: Option<SetKey>, written: &str) -> Result<What, String> {
    let text = Note::new(written).map_err(|error| error.to_string())?;
    Ok(What::Noted { set, text })
}

/// The panel with the note on the session.
pub fn note_panel(changing: Changing, close: Callback<()>) -> AnyView {
    let before = changing.app.model.with_untracked(|model| {
        let note = model.opened.as_ref()?.state().note.clone()?;
        Some(note.as_str().to_owned())
    });
    let before = before.unwrap_or_default();
    let written = Live::new(before.clone());
    let wrong = Live::new(None::<String>);
    let keep = move || {
        let now = written.get_untracked();
        match noted(None, &now) {
            Ok(what) => {
                if now == before || changing.make(t("The note is kept."), vec![what]) {
                    close.run(());
                }
            }
            Err(why) => wrong.set(Some(why)),
        }
    };
    let inside = vec![
        note_area("annotate-text", t("note on this session"), written),
        wrong_word("annotate-wrong", wrong),
        button("wide strong", "annotate-keep", t("Keep the note"), keep),
    ];
    panel("annotate-panel", t("Note on this session"), close, inside)
}
