//! The data in own hands: export, import and its undo, the reminder, what the browser promises.

use crate::device::files::save_as;
use crate::device::persist::Keeping as Promise;
use crate::say;
use crate::store::Taken;
use crate::ui::away::{
    EVERY, Form, export, import_file, not_in_the_file, read_imports, refused, remind_after, share,
    take_import_back,
};
use crate::ui::layout::newest_copy;
use crate::ui::live::Live;
use crate::ui::parts::{
    button, choices, dynamic, file_field, line, quiet, section, text, toggles_of, when,
};
use crate::ui::seen::Seen;
use crate::ui::stanchion::Stanchion;
use crate::units::day;
use crate::words::t;
use leptos::prelude::*;
use leptos::task::spawn_local;

/// Saves the rows that could not be read, and records that an import found twice with different content, as they are.
fn save_aside(app: Stanchion) {
    let rows = app.model.with_untracked(|model| model.aside.join("\n"));
    if !save_as("stanchion-aside.txt", "text/plain", &rows) {
        app.complain(refused());
    }
}

/// Saves the copy from before the last update that changed how data is stored.
fn save_copy(app: Stanchion) {
    spawn_local(async move {
        match newest_copy(app.keep().name()).await {
            Ok(Some(text)) if save_as("stanchion-before.json", "application/json", &text) => {}
            Ok(Some(_)) => app.complain(refused()),
            Ok(None) => app.complain(t("There is no copy any more.")),
            Err(error) => app.complain(error.to_string()),
        }
    });
}

/// What the browser promised of what is kept.
pub fn promise_words(promise: Option<Promise>) -> &'static str {
    match promise {
        Some(Promise::Promised) => {
            t("This browser promised to keep what is stored here until you clear it.")
        }
        Some(Promise::AsLongAsThereIsRoom) => t(
            "This browser has not promised to keep what is stored here: it may clear it when space is short.",
        ),
        Some(Promise::Unknown) => {
            t("This browser does not say whether it keeps what is stored here.")
        }
        None => t("This browser was not asked yet whether it keeps what is stored here."),
    }
}

fn last_import(taken: &Taken) -> String {
    say!(
        "Last import, {day}: {what}.",
        day = day(taken.at),
        what = taken.said
    )
}

/// The last import, and the way back from it.
fn undo_import(app: Stanchion) -> AnyView {
    read_imports(app);
    let said = app.of(|model| model.last_import.as_deref().map(last_import));
    dynamic(move || match said.get() {
        None => ().into_any(),
        Some(said) => vec![
            line("quiet", "import-last", said),
            button(
                "wide",
                "import-undo",
                t("Take this import back"),
                move || {
                    take_import_back(app);
                },
            ),
        ]
        .into_any(),
    })
}

/// After how many sessions a reminder comes.
fn reminder(app: Stanchion) -> AnyView {
    let labels = EVERY.map(|sessions| match sessions {
        Some(sessions) => (sessions.to_string(), t("sessions")),
        None => (t("never").to_owned(), ""),
    });
    let after = app.of(|model| model.remind_after);
    let pressed = Seen::new(move || {
        let at = EVERY.iter().position(|sessions| *sessions == after.get())?;
        i64::try_from(at).ok()
    });
    let choose = move |n: i64| {
        let chosen = usize::try_from(n).ok().and_then(|n| EVERY.get(n));
        remind_after(app, chosen.copied().flatten());
    };
    let inside = toggles_of("remind-after", labels, pressed, choose);
    choices("choices two", t("Remind me to export after"), inside)
}

/// That sheets which are being written are in no file.
fn drafts(app: Stanchion) -> AnyView {
    let drafts = app.of(|model| {
        let drafts = model.drafts.values();
        drafts.filter(|draft| draft.is_unkept()).count()
    });
    dynamic(move || match not_in_the_file(drafts.get()) {
        Some(said) => line("caution", "export-drafts", said),
        None => ().into_any(),
    })
}

/// Export and import.
pub fn data(app: Stanchion) -> AnyView {
    let aside = app.of(|model| !model.aside.is_empty());
    let copied = Live::new(false);
    spawn_local(async move {
        let copy = newest_copy(app.keep().name()).await;
        // The place may have been left meanwhile.
        copied.set(copy.is_ok_and(|copy| copy.is_some()));
    });
    let promise = app.of(|model| model.promise);
    let exported = app.of(|model| model.exported);
    let exported = text(move || match exported.get() {
        Some(at) => say!("Exported last on {day}.", day = day(at)),
        None => t("Not exported from this phone yet.").to_owned(),
    });
    section(
        None,
        t("Your data"),
        vec![
            quiet(t(
                "Everything in one file: keep a copy where you keep what matters. Its form is documented and open.",
            )),
            line("quiet", "exported", exported),
            drafts(app),
            button("wide", "export", t("Export everything"), move || {
                export(app, Form::Everything, || {});
            }),
            button("wide", "share", t("Send it to another app"), move || {
                share(app)
            }),
            button(
                "wide",
                "export-sets",
                t("Sets as a table (CSV)"),
                move || {
                    export(app, Form::Table, || {});
                },
            ),
            quiet(t("Remind me to export after so many sessions:")),
            reminder(app),
            file_field("import", t("Import a file"), move |event| {
                import_file(app, &event);
            }),
            quiet(t(
                "You see what an import would do before anything is written, and can take it back.",
            )),
            undo_import(app),
            when(aside, move || {
                button("wide", "aside", t("Save what was set aside"), move || {
                    save_aside(app);
                })
            }),
            when(copied, move || {
                button(
                    "wide",
                    "copy",
                    t("Save the copy from before the last update"),
                    move || save_copy(app),
                )
            }),
            line(
                "quiet",
                "promise",
                text(move || promise_words(promise.get()).to_owned()),
            ),
            quiet(t(
                "Some browsers clear what a site stored when it was not used for a week or so. Put Stanchion on the \
                 home screen: there it is kept. What was stored before stays in the browser, so export it there first \
                 and import it here.",
            )),
        ],
    )
}
