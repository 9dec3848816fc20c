//! The sheet of a link: unpacked, looked at, and only then kept or left.

use super::look::bare;
use super::share::code_of;
use crate::device::{clock, pack, place as address};
use crate::exercises::give_back_cautions;
use crate::say;
use crate::share::{LinkFault, Sealed, UNPACKED_BYTES_MAX, single_sheet, unseal};
use crate::sheet::{Sheet, SheetVersion};
use crate::store::{self, SheetRecord, Shelf};
use crate::ui::model::{Model, Shared};
use crate::ui::parts::{button, dynamic, h1, line, page, quiet, way};
use crate::ui::place::Place;
use crate::ui::stanchion::{Stanchion, stanchion};
use crate::units::Unit;
use crate::words::t;
use leptos::prelude::*;
use leptos::task::spawn_local;

/// Opens the code of a link, or puts away the one that was open.
pub fn open_link(app: Stanchion, code: Option<&str>) {
    let shared = code.map(|code| Shared {
        code: code.to_owned(),
        read: None,
    });
    app.model.update(|model| model.shared = shared);
    let Some(code) = code.map(str::to_owned) else {
        return;
    };
    spawn_local(async move {
        let read = open(&code).await.map(Box::new);
        app.model.update(|model| {
            // Another link may have been opened meanwhile.
            if let Some(shared) = model.shared.as_mut().filter(|shared| shared.code == code) {
                shared.read = Some(read.map_err(|fault| fault.to_string()));
            }
        });
    });
}

async fn open(code: &str) -> Result<Sheet, LinkFault> {
    let sealed = unseal(code)?;
    let sheet = unpack(&sealed).await?;
    Ok(sealed.with_cautions(sheet, give_back_cautions))
}

async fn unpack(sealed: &Sealed) -> Result<Sheet, LinkFault> {
    let Some(packed) = sealed.packed() else {
        return sealed.sheet(None);
    };
    match pack::inflate(packed, UNPACKED_BYTES_MAX).await {
        Ok(unpacked) => sealed.sheet(Some(&unpacked)),
        Err(pack::PackError::Absent) => sealed.sheet(None),
        Err(pack::PackError::Broken) => Err(LinkFault::Broken),
        Err(pack::PackError::TooLarge) => Err(LinkFault::TooLarge),
    }
}

/// Shows the sheet of a file that holds it alone, the way a link is shown. False where there is more in the file, or
/// less, or the sheet is too long for that.
pub async fn look_at_file(app: Stanchion, text: &str) -> bool {
    let Ok(archive) = store::read(text) else {
        return false;
    };
    let Some(sheet) = single_sheet(&archive) else {
        return false;
    };
    let Ok(code) = code_of(sheet).await else {
        return false;
    };
    app.model.update(|model| model.notice = None);
    address::go(&format!("{}{code}", Place::Shared.fragment()));
    true
}

/// How the sheet of a link stands to those that are there.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Known {
    /// There is none of its id.
    New,
    /// This very version is there.
    Same,
    /// An older version is there.
    Newer,
    /// A newer version is there.
    Older,
}

impl Known {
    fn of(model: &Model, sheet: &Sheet) -> Known {
        match model.sheet(sheet.id) {
            None => Known::New,
            Some(there) if there.version == sheet.version => Known::Same,
            Some(there) if there.version < sheet.version => Known::Newer,
            Some(_) => Known::Older,
        }
    }
}

/// The sheet of the link that was opened.
pub fn shared_place() -> AnyView {
    let app = stanchion();
    let shown = app.of(|model| {
        let read = model.shared.as_ref()?.read.clone()?;
        Some(read.map(|sheet| (Known::of(model, &sheet), sheet, model.unit())))
    });
    dynamic(move || {
        let inside = match shown.get() {
            None => vec![quiet(t("Unpacking the sheet."))],
            Some(Err(why)) => vec![
                h1(t("No sheet in this link")),
                line("", "shared-wrong", why),
                quiet(t("Nothing was kept.")),
                way(Place::Sheets.href(), t("To the sheets")),
            ],
            Some(Ok((known, sheet, unit))) => {
                let mut inside = vec![h1(sheet.name.to_string())];
                inside.extend(choice(app, known, &sheet));
                inside.extend(start_loads(&sheet, unit).map(quiet));
                inside.extend(bare(*sheet, unit));
                inside
            }
        };
        page("shared", inside)
    })
}

/// What is known of the sheet, and what can be done with it.
fn choice(app: Stanchion, known: Known, sheet: &Sheet) -> Vec<AnyView> {
    let said = match known {
        Known::New => t("A sheet that was sent to you. Nothing is kept yet."),
        Known::Same => t("You have this sheet already."),
        Known::Newer => t(
            "A newer version of a sheet that you have. Kept, it takes the place of yours: to have both, copy yours first.",
        ),
        Known::Older => t("An older version of a sheet that you have: yours is newer and stays."),
    };
    let id = sheet.id;
    let mut inside = vec![line("", "shared-known", said)];
    if matches!(known, Known::New | Known::Newer) {
        let sheet = sheet.clone();
        inside.push(button(
            "wide strong",
            "shared-keep",
            t("Keep this sheet"),
            move || keep(app, sheet.clone()),
        ));
        inside.push(button("wide", "shared-leave", t("Leave it"), move || {
            app.go(Place::Sheets);
        }));
    }
    if known != Known::New {
        let class = if known == Known::Newer {
            "wide"
        } else {
            "wide strong"
        };
        let look = move || app.go(Place::Sheet(id));
        inside.push(button(class, "shared-look", t("To your sheet"), look));
    }
    inside
}

/// The loads to start from that came along.
fn start_loads(sheet: &Sheet, unit: Unit) -> Option<String> {
    let started = || {
        sheet
            .blocks()
            .filter_map(|block| Some((block, block.start?)))
    };
    let loads: Vec<String> = started()
        .map(|(block, load)| format!("{} {}", block.exercise.said(), block.basis.told(load, unit)))
        .collect();
    let any = |assists: bool| started().any(|(block, _)| block.basis.assists() == assists);
    // Less of a load is the safe side, less of an assistance is not.
    let advice = match (any(false), any(true)) {
        (false, false) => return None,
        (true, false) => t("They are the writer's; take less when in doubt."),
        (false, true) => t("They are the writer's; take more assistance when in doubt."),
        (true, true) => {
            t("They are the writer's; when in doubt take less load, and more assistance.")
        }
    };
    Some(say!(
        "Loads to start from are on it: {loads}. {advice}",
        loads = loads.join(", "),
        advice
    ))
}

/// Keeps the sheet and shows it. Where it was removed here since, it comes back as a version of now.
fn keep(app: Stanchion, mut sheet: Sheet) {
    if !app.may_write() {
        return;
    }
    spawn_local(async move {
        let keep = app.keep();
        let mut lost = Vec::new();
        let stored = keep.records::<SheetRecord>(Shelf::Sheets, &mut lost);
        let stored = match stored.await {
            Ok(stored) => stored,
            Err(error) => return app.complain(error.to_string()),
        };
        let of_it = stored.iter().filter(|record| record.sheet_id() == sheet.id);
        if of_it.map(SheetRecord::version).max() > Some(sheet.version) {
            sheet.version = SheetVersion(app.id());
            sheet.written = clock::wall();
        }
        // Versions written here later are greater, even if the clock of the other phone is ahead.
        app.see_id(sheet.version.0);
        let id = sheet.id;
        app.keep_sheet(sheet);
        app.go(Place::Sheet(id));
    });
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quick::parse_sheet;
    use uuid::Uuid;

    fn said(blocks: &str) -> Option<String> {
        let mut n = 0;
        let mut ids = || {
            n += 1;
            Uuid::from_u128(n)
        };
        let written = "2026-03-01T08:00:00+01:00".parse().unwrap();
        let text = format!("# Lower A\n{blocks}\n");
        let sheet = parse_sheet(&text, &|_: &str| None, &mut ids, written).unwrap();
        start_loads(&sheet, Unit::Kg)
    }

    #[test]
    fn the_safe_side_of_an_assistance_is_more_of_it() {
        let (squat, pull_up) = ("Squat: 3 × 5; 62.5 kg", "Pull-up: 3 × 8; −20 kg assistance");
        assert_eq!(said("Squat: 3 × 5"), None);
        assert_eq!(
            said(squat).unwrap(),
            "Loads to start from are on it: Squat 62.5 kg. They are the writer's; take less when in doubt."
        );
        assert_eq!(
            said(pull_up).unwrap(),
            "Loads to start from are on it: Pull-up 20 kg assistance. They are the writer's; take more assistance when in doubt."
        );
        assert_eq!(
            said(&format!("{squat}\n{pull_up}")).unwrap(),
            "Loads to start from are on it: Squat 62.5 kg, Pull-up 20 kg assistance. They are the writer's; when in doubt take less load, and more assistance."
        );
    }
}
