//! The quiet line that says when it is time to export.

use super::export::{Form, export};
use crate::device::{clock, prefs};
use crate::say;
use crate::ui::model::Model;
use crate::ui::parts::{button, group, line, text, when};
use crate::ui::seen::Seen;
use crate::ui::stanchion::Stanchion;
use crate::words::{many, t};
use chrono::{DateTime, FixedOffset};
use leptos::prelude::*;

/// Preference: after how many sessions a reminder comes.
const AFTER: &str = "remind-after";
/// Preference: when everything was exported last.
const EXPORTED: &str = "exported";
/// What can be chosen: so many sessions; none is never.
pub const EVERY: [Option<u16>; 4] = [Some(5), Some(10), Some(20), None];

/// The settings of the reminder as they were kept; ten sessions where none were.
pub fn read_settings(model: &mut Model) {
    model.remind_after = prefs::get(AFTER).unwrap_or(Some(10));
    model.exported = prefs::get::<DateTime<FixedOffset>>(&model.pref(EXPORTED));
}

/// Reminds after so many sessions from now on.
pub fn remind_after(app: Stanchion, sessions: Option<u16>) {
    // What a preference cannot hold is chosen again next time; nothing else is lost.
    let _ = prefs::set(AFTER, &sessions);
    app.model.update(|model| model.remind_after = sessions);
}

/// Everything was exported just now.
pub fn exported_now(app: Stanchion) {
    let now = clock::wall();
    // Lost, the reminder comes once too often.
    let key = app.model.with_untracked(|model| model.pref(EXPORTED));
    let _ = prefs::set(&key, &now);
    app.model.update(|model| model.exported = Some(now));
}

/// How many sessions no export holds, once there are enough of them to remind; and whether there may be more.
fn overdue(model: &Model) -> Option<(usize, bool)> {
    let after = usize::from(model.remind_after?);
    if model.looks_at.is_some() {
        return None;
    }
    let since = |at: DateTime<FixedOffset>| model.exported.is_none_or(|exported| at > exported);
    let headings = model.headings.iter();
    let open = headings
        .filter(|heading| since(heading.ended.unwrap_or(heading.began)))
        .count();
    // Those that are not in the model are older.
    let older = model.sessions.saturating_sub(model.headings.len());
    let (open, more) = match model.exported {
        None => (open + older, false),
        Some(_) => (open, open == model.headings.len() && older > 0),
    };
    (open >= after).then_some((open, more))
}

/// The reminder, where one is due.
pub fn nudge(app: Stanchion) -> AnyView {
    let overdue = app.of(overdue);
    let due = Seen::new(move || overdue.get().is_some());
    when(due, move || {
        let said = text(move || match overdue.get().unwrap_or_default() {
            (open, true) if open != 1 => {
                say!("At least {open} sessions are in no export yet.", open)
            }
            (open, _) => many(
                open,
                "{n} session is in no export yet.",
                "{n} sessions are in no export yet.",
            ),
        });
        group(
            Some("remind"),
            vec![
                line("quiet", "remind-said", said),
                button("plain", "remind-export", t("Export now"), move || {
                    export(app, Form::Everything, || {});
                }),
            ],
        )
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ledger::Heading;

    fn heading(day: u32) -> Heading {
        let id = uuid::Uuid::from_u128(u128::from(day));
        crate::json::parse(&format!(
            "{{\"session\":\"{id}\",\"began\":\"2026-03-{day:02}T09:00:00Z\",\"sheet_id\":\"{id}\",\
             \"sheet\":\"Lower A\",\"sets_done\":1,\"volume\":\"0 kg\",\"minutes\":40}}"
        ))
        .expect("a heading")
    }

    #[test]
    fn sessions_since_the_last_export_are_counted() {
        let mut model = Model {
            headings: (1..=4).map(heading).collect(),
            remind_after: Some(3),
            ..Model::default()
        };
        assert_eq!(
            overdue(&model),
            Some((4, false)),
            "nothing was ever exported"
        );
        model.exported = DateTime::parse_from_rfc3339("2026-03-01T12:00:00Z").ok();
        assert_eq!(overdue(&model), Some((3, false)));
        model.sessions = 9;
        assert_eq!(overdue(&model), Some((3, false)), "the others are older");
        model.exported = DateTime::parse_from_rfc3339("2026-03-02T12:00:00Z").ok();
        assert_eq!(overdue(&model), None);
        model.exported = DateTime::parse_from_rfc3339("2026-02-28T12:00:00Z").ok();
        assert_eq!(
            overdue(&model),
            Some((4, true)),
            "some of them may be open too"
        );
        model.exported = None;
        assert_eq!(overdue(&model), Some((9, false)));
        model.remind_after = None;
        assert_eq!(overdue(&model), None, "never is never");
    }
}
