//! A file on its way in: looked at first, then taken in whole or left; and taken back with one tap.

use super::whole::{gather, replace, running};
use crate::device::clock;
use crate::device::files::read_text;
use crate::say;
use crate::store::{Archive, FILE_BYTES_MAX, Merged, Person, Shelf, Taken, join, read_file};
use crate::ui::change::delete;
use crate::ui::coach::look_at;
use crate::ui::keep::{put, put_json};
use crate::ui::model::{Gives, Incoming, Model, Stage};
use crate::ui::parts::{button, dynamic, line, panel, quiet};
use crate::ui::sheets::look_at_file;
use crate::ui::stanchion::Stanchion;
use crate::words::t;
use leptos::ev::Event as DomEvent;
use leptos::prelude::*;
use leptos::task::spawn_local;
use leptos::wasm_bindgen::JsCast;
use std::sync::Arc;

/// How many imports can be taken back, the newest first.
const IMPORTS_KEPT: usize = 3;

/// Reads the file that was chosen, and says what an import of it would do.
pub fn import_file(app: Stanchion, event: &DomEvent) {
    take_file(app, event, false);
}

/// Looks at a file that was opened with the app or sent to it: one that holds a sheet alone is shown as a sheet. It is
/// looked at whoever may write just now, for it comes once; whether it may be taken in is asked when it is.
pub async fn open_received(app: Stanchion, file: web_sys::File) {
    if let Err(why) = look_into(app, &file, true).await {
        app.complain(refused(&file.name(), &why));
    }
}

/// As [`import_file`]; a file that holds one sheet and nothing else is shown as a sheet.
pub fn open_sheet_file(app: Stanchion, event: &DomEvent) {
    take_file(app, event, true);
}

/// The field and the file that was chosen in it.
pub fn chosen_file(event: &DomEvent) -> Option<(web_sys::HtmlInputElement, web_sys::File)> {
    let input: web_sys::HtmlInputElement = event.target()?.dyn_into().ok()?;
    let file = input.files()?.get(0)?;
    Some((input, file))
}

fn take_file(app: Stanchion, event: &DomEvent, look_first: bool) {
    let Some((input, file)) = chosen_file(event) else {
        return;
    };
    if !app.may_write() {
        return;
    }
    app.change(async move {
        let looked = look_into(app, &file, look_first).await;
        // The same file may be chosen again.
        input.set_value("");
        if let Err(why) = looked {
            app.complain(refused(&file.name(), &why));
        }
    });
}

fn refused(name: &str, why: &str) -> String {
    say!("{name}: nothing was imported: {why}", name, why)
}

async fn look_into(app: Stanchion, file: &web_sys::File, look_first: bool) -> Result<(), String> {
    let text = read_text(file, FILE_BYTES_MAX)
        .await
        .map_err(|error| error.to_string())?;
    if look_first && look_at_file(app, &text).await {
        return Ok(());
    }
    let theirs = read_file(text).map_err(|error| error.to_string())?;
    let (ours, _) = gather(app).await.map_err(|error| error.to_string())?;
    let Merged { news, summary, .. } = joined(app, ours, theirs.clone()).await?;
    let gives = match summary.is_nothing() {
        true => Gives::Nothing,
        false if news == Archive::default() => Gives::Aside,
        false => Gives::News,
    };
    let incoming = Incoming {
        name: file.name(),
        said: summary.to_string(),
        gives,
        away: theirs.removed.len(),
        archive: Arc::new(theirs),
    };
    app.model.update(|model| {
        model.notice = None;
        model.incoming = Some(incoming);
    });
    Ok(())
}

/// Both together; what differs and was set aside by an import before is known.
async fn joined(app: Stanchion, ours: Archive, theirs: Archive) -> Result<Merged, String> {
    let mut merged = join(ours, theirs).map_err(|error| error.to_string())?;
    if !merged.summary.conflicts.is_empty() {
        let aside = app.keep().keys(Shelf::Aside).await;
        let aside = aside.map_err(|error| error.to_string())?;
        merged.summary.leave_out_aside(&aside);
    }
    Ok(merged)
}

/// Reads which imports can be taken back: only Kit asks, and what an import of years added is a long list.
pub fn read_imports(app: Stanchion) {
    spawn_local(async move {
        let (keep, mut lost) = (app.keep(), Vec::new());
        let imports = keep.records::<Taken>(Shelf::Imports, &mut lost).await;
        app.set_aside(lost);
        // Unreadable, there is none to take back.
        let imports = imports.unwrap_or_default();
        let last = imports.into_iter().max_by_key(|taken| taken.id);
        app.model
            .update(|model| model.last_import = last.map(Arc::new));
    });
}

/// Leaves the file that was looked at.
pub fn leave_out(app: Stanchion) {
    app.model.update(|model| model.incoming = None);
}

/// Takes in the file that was looked at: all of it in one write, or nothing.
pub fn bring_in(app: Stanchion) {
    let Some(incoming) = app.model.with_untracked(|model| model.incoming.clone()) else {
        return;
    };
    if !app.may_write() {
        return;
    }
    leave_out(app);
    app.change(async move {
        let taken = take_in(app, &incoming).await;
        read_imports(app);
        match taken {
            Ok(said) => app.say(said),
            Err(why) => app.complain(refused(&incoming.name, &why)),
        }
    });
}

async fn take_in(app: Stanchion, incoming: &Incoming) -> Result<String, String> {
    let alone = app.alone(&app.keep()).await;
    let alone = alone.map_err(|error| error.to_string())?;
    let (mine, _) = gather(app).await.map_err(|error| error.to_string())?;
    let theirs = Archive::clone(&incoming.archive);
    let merged = joined(app, mine.clone(), theirs).await?;
    if running(app).is_some_and(|id| merged.archive.removed.get(id).is_some()) {
        return Err(t("It removes the session that is under way: end it first.").to_owned());
    }
    // Of two records with one id that differ, the one that is not kept is set aside, never thrown away.
    let conflicts = merged.summary.conflicts.iter();
    let mut more: Vec<_> = conflicts
        .map(|conflict| put_json(Shelf::Aside, &conflict.key(), &conflict.dropped))
        .collect();
    let said = merged.summary.to_string();
    // What changes no record leaves nothing to take back, and must not take the place of what does.
    if merged.news != Archive::default() {
        let taken = Taken::between(
            &mine,
            &merged.archive,
            (app.id(), clock::wall(), said.clone()),
        );
        // The newest can be taken back, one after the other; their ids rise.
        let keys = app.keep().keys(Shelf::Imports).await;
        let keys = keys.map_err(|error| error.to_string())?;
        let surplus = (keys.len() + 1).saturating_sub(IMPORTS_KEPT);
        more.extend(
            keys[..surplus]
                .iter()
                .map(|key| delete(Shelf::Imports, key)),
        );
        more.push(put(Shelf::Imports, &taken.id.to_string(), &taken));
    }
    replace(app, alone, &mine, &merged.archive, more)
        .await
        .map_err(|error| error.to_string())?;
    if open_if_known(app) {
        Ok(said)
    } else {
        Ok(say!(
            "{said}. There are no settings of a lifter in it: choose yours here, then open.",
            said
        ))
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

/// Takes the last import back: exactly what it added goes, what it replaced or removed comes back.
pub fn take_import_back(app: Stanchion) {
    let Some(taken) = app.model.with_untracked(|model| model.last_import.clone()) else {
        return;
    };
    if !app.may_write() {
        return;
    }
    app.change(async move {
        let back = async {
            let alone = app.alone(&app.keep()).await;
            let alone = alone.map_err(|error| error.to_string())?;
            let (mine, _) = gather(app).await.map_err(|error| error.to_string())?;
            let before = taken
                .take_back(mine.clone())
                .map_err(|error| error.to_string())?;
            if running(app).is_some_and(|id| !before.sessions.contains_key(&id)) {
                return Err(t("It holds the session that is under way: end it first.").to_owned());
            }
            let what = taken.undone(&mine, &before);
            let more = vec![delete(Shelf::Imports, &taken.id.to_string())];
            replace(app, alone, &mine, &before, more)
                .await
                .map_err(|error| error.to_string())?;
            Ok(what)
        };
        let back = back.await;
        read_imports(app);
        match back {
            Ok(what) => app.say(say!("Taken back: {what}.", what)),
            Err(why) => app.complain(say!("The import was not taken back. {why}", why)),
        }
    });
}

/// That the file is somebody else's, where it says so.
fn of_another(model: &Model) -> Option<String> {
    let theirs = model.incoming.as_ref()?.archive.lifter.newest()?;
    let theirs = theirs.name.as_ref()?;
    let own = model.person().and_then(Person::given);
    let own = own.or_else(|| model.lifter.as_ref()?.name.as_ref())?;
    (own != theirs).then(|| {
        say!(
            "This is {theirs}'s file, and {own} is here. An import mixes both into one ledger.",
            theirs,
            own
        )
    })
}

/// Looks at the file that was chosen and takes nothing in.
fn look_only(app: Stanchion) {
    let incoming = app.model.with_untracked(|model| model.incoming.clone());
    if let Some(incoming) = incoming {
        leave_out(app);
        look_at(app, &incoming.archive, &incoming.name);
    }
}

/// What an import of the chosen file would do, before anything of it is written.
pub fn look(app: Stanchion) -> AnyView {
    let incoming = app.of(|model| {
        let incoming = model.incoming.as_ref()?;
        Some((
            incoming.name.clone(),
            incoming.said.clone(),
            incoming.gives,
            incoming.away,
        ))
    });
    dynamic(move || {
        let Some((name, said, gives, away)) = incoming.get() else {
            return ().into_any();
        };
        let leave = Callback::new(move |()| leave_out(app));
        let mut inside = vec![quiet(name), line("", "import-said", said)];
        let other = app.model.with_untracked(of_another);
        if let Some(other) = other {
            inside.push(line("caution", "import-other", other));
        }
        if away > 0 {
            inside.push(quiet(t(
                "What was removed on the other phone is removed here too.",
            )));
        }
        if gives == Gives::Nothing {
            inside.push(quiet(t("All of it is here already.")));
            inside.push(button(
                "wide strong",
                "import-leave",
                t("Leave it"),
                move || {
                    leave_out(app);
                },
            ));
        } else {
            inside.push(quiet(t(match gives {
                Gives::News => "Nothing is written yet. It can be taken back afterwards, in Kit.",
                _ => "Nothing of yours changes: what differs is set aside, in Kit.",
            })));
            inside.push(button(
                "wide strong",
                "import-take",
                t("Import"),
                move || bring_in(app),
            ));
            inside.push(button(
                "wide",
                "import-look",
                t("Only look at it"),
                move || {
                    look_only(app);
                },
            ));
            inside.push(button("wide", "import-leave", t("Leave it"), move || {
                leave_out(app)
            }));
        }
        panel("import-panel", t("Import"), leave, inside)
    })
}
