//! Everything in one file, or the sets as a table.

use super::reminder::exported_now;
use super::whole::gather_from;
use crate::device::db::DbError;
use crate::device::files::{Outgoing, Sharing, Target, choose, save, share_file};
use crate::say;
use crate::store::{Person, Shelf, csv};
use crate::ui::gather::file;
use crate::ui::keep::Keep;
use crate::ui::stanchion::Stanchion;
use crate::units::iso_day;
use crate::words::{many, t};
use leptos::task::spawn_local;

/// What is said where the browser takes no file.
pub fn refused() -> &'static str {
    t("The browser refused the download. Try again, or open this page in another browser.")
}

/// What is written.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Form {
    /// Everything, to be imported again.
    Everything,
    /// The sets, a row each, for a spreadsheet.
    Table,
}

impl Form {
    fn kind(self) -> &'static str {
        match self {
            Form::Everything => "application/json",
            Form::Table => "text/csv",
        }
    }

    /// The name of the file; of several lifters it holds the name of the one it is of.
    fn name(self, of: Option<&Person>) -> String {
        let day = iso_day(crate::device::clock::wall());
        let of = of.and_then(Person::in_file_name);
        let of = of.map_or_else(String::new, |of| of + "-");
        match self {
            Form::Everything => format!("stanchion-{of}{day}.json"),
            Form::Table => format!("stanchion-{of}sets-{day}.csv"),
        }
    }
}

/// Writes the file where the person chooses, or into the downloads. To be called in a tap. `done` is told when it is
/// written.
pub fn export(app: Stanchion, form: Form, done: impl Fn() + 'static) {
    export_of(app, None, form, done);
}

/// As [`export`], of those whose database that is; none for the one in use.
pub fn export_of(app: Stanchion, database: Option<String>, form: Form, done: impl Fn() + 'static) {
    let own = app.keep();
    spawn_local(async move {
        let name = app.model.with_untracked(|model| {
            let of = |name: &String| model.people.here().find(|one| one.database == *name);
            let person = database.as_ref().map_or_else(|| model.person(), of);
            form.name(person)
        });
        // First the question where: later it would be no part of the tap any more.
        let target = choose(&name, form.kind()).await;
        if matches!(target, Target::Cancelled) {
            return;
        }
        let keep = match &database {
            Some(name) => app.records_of(name).await.0,
            None => own,
        };
        let (text, left) = match text(app, &keep, form).await {
            Ok(written) => written,
            Err(why) => return app.complain(why),
        };
        let said = match target {
            Target::Chosen(file) => match file.write(form.kind(), &text).await {
                Ok(()) => say!("{name} is written.", name = file.name()),
                Err(why) => {
                    return app.complain(say!(
                        "{name} could not be written ({why}). Choose another place.",
                        name = file.name(),
                        why
                    ));
                }
            },
            _ if save(&name, form.kind(), &text) => say!("{name} is in your downloads.", name),
            _ => return app.complain(refused()),
        };
        if form == Form::Everything && !app.has_left(&keep) {
            exported_now(app);
        }
        say(app, said, left);
        done();
    });
}

/// Hands everything to another app; where the browser cannot, it is a download. To be called in a tap.
pub fn share(app: Stanchion) {
    spawn_local(async move {
        let form = Form::Everything;
        let name = app.model.with_untracked(|model| form.name(model.person()));
        let (text, left) = match text(app, &app.keep(), form).await {
            Ok(written) => written,
            Err(why) => return app.complain(why),
        };
        match share_file(&name, &text).await {
            Sharing::Shared => exported_now(app),
            Sharing::Cancelled => {}
            Sharing::Unsupported if save(&name, form.kind(), &text) => {
                exported_now(app);
                say(app, say!("{name} is in your downloads.", name), left);
            }
            Sharing::Unsupported => app.complain(refused()),
        }
    });
}

/// What is kept and not in the file.
#[derive(Clone, Copy)]
struct Left {
    /// Records that could not be read.
    lost: usize,
    /// Sheets that are being written: they have no version yet by which two phones could tell which is newer.
    drafts: usize,
}

/// That so many sheets are being written and not in the file; nothing where there are none.
pub fn not_in_the_file(drafts: usize) -> Option<String> {
    (drafts > 0).then(|| {
        many(
            drafts,
            "{n} sheet that is being written is not in the file: keep it, then export.",
            "{n} sheets that are being written are not in the file: keep them, then export.",
        )
    })
}

/// Says what was written, and what is not in it.
fn say(app: Stanchion, said: String, Left { lost, drafts }: Left) {
    let said = match not_in_the_file(drafts) {
        Some(more) => format!("{said} {more}"),
        None => said,
    };
    if lost == 0 {
        app.say(said);
    } else {
        app.complain(say!("{said} {lost} records could not be read and are not in it: save what was set aside too.", said, lost));
    }
}

/// The text of the file, and what is not in it.
async fn text(app: Stanchion, keep: &Keep, form: Form) -> Result<(Outgoing, Left), String> {
    let said = |error: DbError| error.to_string();
    match form {
        Form::Everything => {
            let now = crate::device::clock::wall();
            let mut text = Outgoing::default();
            let out = &mut |piece: &str| text.push(piece);
            let lost = file(keep, now, out).await.map_err(said)?;
            let drafts = keep.rows(Shelf::Drafts).await.map_err(said)?.len();
            let left = Left {
                lost: lost.len(),
                drafts,
            };
            if !app.has_left(keep) {
                app.set_aside(lost);
            }
            Ok((text, left))
        }
        Form::Table => {
            let (archive, lost) = gather_from(app, keep).await.map_err(said)?;
            Ok((Outgoing::of(csv(&archive)), Left { lost, drafts: 0 }))
        }
    }
}
