//! The data in own hands: export of everything as one file, import of such a file.

use crate::device::files::{Sharing, read_text, save_as, share_file};
use crate::store::{FILE_BYTES_MAX, import, write};
use crate::ui::gather::gather;
use crate::ui::layout::newest_copy;
use crate::ui::model::Stage;
use crate::ui::parts::{button, file_field, quiet, section, when};
use crate::ui::sheets::look_at_file;
use crate::ui::stanchion::Stanchion;
use crate::ui::{start, take};
use crate::units::iso_day;
use leptos::ev::Event as DomEvent;
use leptos::prelude::*;
use leptos::task::spawn_local;
use leptos::wasm_bindgen::JsCast;

/// What is said when a download is refused.
const REFUSED: &str =
    "The browser refused the download. Try again, or open this page in another browser.";

/// Offers everything as a file, or hands it to another app. What could not be read is not in it, and that is said.
pub fn export(app: Stanchion, share: bool) {
    spawn_local(async move {
        let gathered = match gather(&app.keep()).await {
            Ok(gathered) => gathered,
            Err(error) => return app.complain(error.to_string()),
        };
        let lost = app.set_aside(gathered.unreadable);
        let now = crate::device::clock::wall();
        let text = write(&gathered.archive, now);
        let name = format!("stanchion-{}.json", iso_day(now));
        if share {
            match share_file(&name, &text).await {
                Sharing::Shared | Sharing::Cancelled => return,
                Sharing::Unsupported => {}
            }
        }
        match (save_as(&name, "application/json", &text), lost) {
            (false, _) => app.complain(REFUSED),
            (true, 0) => app.say(format!("{name} is in your downloads.")),
            (true, lost) => app.complain(format!(
                "{name} is in your downloads. {lost} records could not be read and are not in it: save what was set aside too."
            )),
        }
    });
}

/// Reads the file that was chosen, and takes in what is new in it.
pub fn import_file(app: Stanchion, event: &DomEvent) {
    take_file(app, event, false);
}

/// As [`import_file`]; a file that holds one sheet and nothing else is shown before it is kept.
pub fn open_sheet_file(app: Stanchion, event: &DomEvent) {
    take_file(app, event, true);
}

fn take_file(app: Stanchion, event: &DomEvent, look_first: bool) {
    let input = event
        .target()
        .and_then(|target| target.dyn_into::<web_sys::HtmlInputElement>().ok());
    let Some(input) = input else { return };
    let Some(file) = input.files().and_then(|files| files.get(0)) else {
        return;
    };
    if !app.may_write() {
        return;
    }
    spawn_local(async move {
        let taken = take_in(app, &file, look_first).await;
        // The same file may be chosen again.
        input.set_value("");
        match taken {
            Ok(Some(summary)) => app.say(summary),
            Ok(None) => {}
            Err(why) => app.complain(format!("{}: nothing was imported. {why}", file.name())),
        }
    });
}

/// What an import came to in words; none where the file is only looked at so far.
async fn take_in(
    app: Stanchion,
    file: &web_sys::File,
    look_first: bool,
) -> Result<Option<String>, String> {
    let text = read_text(file, FILE_BYTES_MAX)
        .await
        .map_err(|error| error.to_string())?;
    if look_first && look_at_file(app, &text).await {
        return Ok(None);
    }
    let keep = app.keep();
    let ours = gather(&keep).await.map_err(|error| error.to_string())?;
    let ours = ours.archive;
    let merged = import(ours, &text).map_err(|error| error.to_string())?;
    let writes = app.model.with_untracked(|model| {
        let running = model
            .session
            .as_ref()
            .map(|session| session.state().began.session);
        take::writes(model, &merged, running)
    });
    keep.apply(writes)
        .await
        .map_err(|error| error.to_string())?;
    start::read(app).await.map_err(|error| error.to_string())?;
    let summary = merged.summary.to_string();
    if open_if_known(app) {
        Ok(Some(summary))
    } else {
        Ok(Some(format!(
            "{summary}. There are no settings of a lifter in it: choose yours here, then open."
        )))
    }
}

/// Leaves the welcome when there is a lifter now. False where the welcome must stay.
fn open_if_known(app: Stanchion) -> bool {
    let known = app.model.with_untracked(|model| model.lifter.is_some());
    let welcoming = app
        .model
        .with_untracked(|model| model.stage == Stage::Welcome);
    if known && welcoming {
        app.model.update(|model| model.stage = Stage::Open);
    }
    known || !welcoming
}

/// Saves the rows that could not be read, and records that an import found twice with different content, as they are.
fn save_aside(app: Stanchion) {
    let rows = app.model.with_untracked(|model| model.aside.join("\n"));
    if !save_as("stanchion-aside.txt", "text/plain", &rows) {
        app.complain(REFUSED);
    }
}

/// Saves the copy from before the last update that changed how data is stored.
fn save_copy(app: Stanchion) {
    spawn_local(async move {
        match newest_copy().await {
            Ok(Some(text)) if save_as("stanchion-before.json", "application/json", &text) => {}
            Ok(Some(_)) => app.complain(REFUSED),
            Ok(None) => app.complain("There is no copy any more."),
            Err(error) => app.complain(error.to_string()),
        }
    });
}

/// Export and import.
pub fn data(app: Stanchion) -> AnyView {
    let aside = app.of(|model| !model.aside.is_empty());
    let copied = RwSignal::new(false);
    spawn_local(async move {
        let copy = newest_copy().await;
        // The place may have been left meanwhile.
        let _ = copied.try_set(copy.is_ok_and(|copy| copy.is_some()));
    });
    section(
        None,
        "Your data",
        vec![
            quiet(
                "Everything in one file: keep a copy where you keep what matters. Its form is documented and open.",
            ),
            button("wide", "export", "Export everything", move || {
                export(app, false);
            }),
            button("wide", "share", "Send it to another app", move || {
                export(app, true);
            }),
            file_field("import", "Import a file", move |event| {
                import_file(app, &event);
            }),
            quiet("An import adds what is new. It never overwrites or removes anything."),
            when(aside, move || {
                button("wide", "aside", "Save what was set aside", move || {
                    save_aside(app)
                })
            }),
            when(copied, move || {
                button(
                    "wide",
                    "copy",
                    "Save the copy from before the last update",
                    move || save_copy(app),
                )
            }),
        ],
    )
}
