//! Where a person is in the app, as it stands in the fragment of the address: the back gesture leads back.

use crate::session::SessionId;
use crate::sheet::{BlockId, ExerciseId, SheetId};
use uuid::Uuid;

/// A place, or an open item in one.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub enum Place {
    /// The session under way, or the choice of a sheet to begin.
    #[default]
    Floor,
    /// All sheets.
    Sheets,
    /// One sheet.
    Sheet(SheetId),
    /// A sheet to be written: another version of one, or a new one.
    Write(Option<SheetId>),
    /// All exercises that are known.
    Exercises,
    /// One exercise.
    Exercise(ExerciseId),
    /// What is known of an exercise to be written: of one, or of a new one.
    WriteExercise(Option<ExerciseId>),
    /// The programme to be written.
    Programme,
    /// A sheet that is being written by taps.
    Draft(SheetId),
    /// A block of it.
    DraftBlock(SheetId, BlockId),
    /// The choice of an exercise for it: a block more, or another exercise for one.
    DraftExercise(SheetId, Option<BlockId>),
    /// The sheet of a link, looked at before it is kept. Its code is in the model.
    Shared,
    /// All sessions.
    Ledger,
    /// Two periods of the ledger side by side.
    Compare,
    /// One session.
    Session(SessionId),
    /// The exercises that were done.
    Histories,
    /// All that was done of one exercise.
    History(ExerciseId),
    /// Body mass and measures.
    Body,
    /// A year at a glance.
    Year(i32),
    /// This week and those before it.
    Weeks,
    /// A period on one page.
    Report,
    /// What stands in the garage, settings and data.
    Kit,
    /// Those who train with this phone.
    Lifters,
    /// Versions, storage and faults, for a report.
    State,
}

impl Place {
    /// Reads a fragment such as `#/ledger/0198…`. What cannot be read is the floor.
    #[must_use]
    pub fn from_fragment(fragment: &str) -> Place {
        let path = fragment.trim_start_matches(['#', '/']);
        let (head, item) = path.split_once('/').unwrap_or((path, ""));
        if head == "s" {
            return Place::Shared;
        }
        if head == "write" {
            return Place::Write(Uuid::try_parse(item).ok().map(SheetId));
        }
        if head == "draft" {
            return Place::in_draft(item).unwrap_or(Place::Sheets);
        }
        let exercise = ExerciseId::new(item).ok();
        match (head, exercise) {
            ("exercises", Some(id)) => return Place::Exercise(id),
            ("exercises", None) => return Place::Exercises,
            ("exercise", id) => return Place::WriteExercise(id),
            _ => {}
        }
        if head == "ledger"
            && let Some(place) = Place::in_ledger(item)
        {
            return place;
        }
        match (head, Uuid::try_parse(item)) {
            ("sheets", Ok(id)) => Place::Sheet(SheetId(id)),
            ("sheets", Err(_)) => Place::Sheets,
            ("ledger", _) if item == "compare" => Place::Compare,
            ("ledger", Ok(id)) => Place::Session(SessionId(id)),
            ("ledger", Err(_)) => match item {
                "weeks" => Place::Weeks,
                "report" => Place::Report,
                _ => Place::Ledger,
            },
            ("programme", _) => Place::Programme,
            ("kit", _) if item == "state" => Place::State,
            ("kit", _) if item == "lifters" => Place::Lifters,
            ("kit", _) => Place::Kit,
            _ => Place::Floor,
        }
    }

    /// Reads what stands behind `ledger/` and is no session.
    fn in_ledger(path: &str) -> Option<Place> {
        let (head, item) = path.split_once('/').unwrap_or((path, ""));
        match head {
            "exercise" => Some(ExerciseId::new(item).map_or(Place::Histories, Place::History)),
            "body" => Some(Place::Body),
            "year" => {
                let year = item.parse().ok().filter(|year| (1..=9999).contains(year));
                year.map(Place::Year)
            }
            _ => None,
        }
    }

    /// Reads what stands behind `draft/`: a sheet, then nothing, `exercise`, a block, or a block and `exercise`.
    fn in_draft(path: &str) -> Option<Place> {
        let id = |text: &str| Uuid::try_parse(text).ok();
        let parts: Vec<&str> = path.split('/').collect();
        let sheet = SheetId(id(parts.first()?)?);
        match parts[1..] {
            [] => Some(Place::Draft(sheet)),
            ["exercise"] => Some(Place::DraftExercise(sheet, None)),
            [block] => Some(Place::DraftBlock(sheet, BlockId(id(block)?))),
            [block, "exercise"] => Some(Place::DraftExercise(sheet, Some(BlockId(id(block)?)))),
            _ => None,
        }
    }

    /// The code of a sheet in a fragment such as `#/s/AQE…`.
    #[must_use]
    pub fn code_in(fragment: &str) -> Option<&str> {
        let path = fragment.trim_start_matches(['#', '/']);
        path.strip_prefix("s/")
    }

    /// The fragment that leads here, without its `#`.
    #[must_use]
    pub fn fragment(&self) -> String {
        match self {
            Place::Floor => "/floor".to_owned(),
            Place::Sheets => "/sheets".to_owned(),
            Place::Sheet(id) => format!("/sheets/{}", id.0),
            Place::Write(None) => "/write".to_owned(),
            Place::Write(Some(id)) => format!("/write/{}", id.0),
            Place::Exercises => "/exercises".to_owned(),
            Place::Exercise(id) => format!("/exercises/{id}"),
            Place::WriteExercise(None) => "/exercise".to_owned(),
            Place::WriteExercise(Some(id)) => format!("/exercise/{id}"),
            Place::Programme => "/programme".to_owned(),
            Place::Draft(id) => format!("/draft/{}", id.0),
            Place::DraftBlock(id, block) => format!("/draft/{}/{}", id.0, block.0),
            Place::DraftExercise(id, None) => format!("/draft/{}/exercise", id.0),
            Place::DraftExercise(id, Some(block)) => {
                format!("/draft/{}/{}/exercise", id.0, block.0)
            }
            Place::Shared => "/s/".to_owned(),
            Place::Ledger => "/ledger".to_owned(),
            Place::Compare => "/ledger/compare".to_owned(),
            Place::Session(id) => format!("/ledger/{}", id.0),
            Place::Histories => "/ledger/exercise".to_owned(),
            Place::History(id) => format!("/ledger/exercise/{id}"),
            Place::Body => "/ledger/body".to_owned(),
            Place::Year(year) => format!("/ledger/year/{year}"),
            Place::Weeks => "/ledger/weeks".to_owned(),
            Place::Report => "/ledger/report".to_owned(),
            Place::Kit => "/kit".to_owned(),
            Place::Lifters => "/kit/lifters".to_owned(),
            Place::State => "/kit/state".to_owned(),
        }
    }

    /// The address of a link that leads here.
    #[must_use]
    pub fn href(&self) -> String {
        format!("#{}", self.fragment())
    }

    /// The main place that this one belongs to.
    #[must_use]
    pub fn main(&self) -> Place {
        match self {
            Place::Sheet(_)
            | Place::Shared
            | Place::Write(_)
            | Place::Exercises
            | Place::Exercise(_)
            | Place::WriteExercise(_)
            | Place::Programme
            | Place::Draft(_)
            | Place::DraftBlock(..)
            | Place::DraftExercise(..) => Place::Sheets,
            Place::Compare
            | Place::Session(_)
            | Place::Histories
            | Place::History(_)
            | Place::Body
            | Place::Year(_)
            | Place::Weeks
            | Place::Report => Place::Ledger,
            Place::Lifters | Place::State => Place::Kit,
            main => main.clone(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_place_is_found_again_by_its_fragment() {
        let id = Uuid::from_u128(7);
        for place in [
            Place::Floor,
            Place::Sheets,
            Place::Sheet(SheetId(id)),
            Place::Write(None),
            Place::Write(Some(SheetId(id))),
            Place::Exercises,
            Place::Exercise(ExerciseId::new("back-squat").unwrap()),
            Place::WriteExercise(None),
            Place::WriteExercise(Some(ExerciseId::new("back-squat").unwrap())),
            Place::Programme,
            Place::Draft(SheetId(id)),
            Place::DraftBlock(SheetId(id), BlockId(id)),
            Place::DraftExercise(SheetId(id), None),
            Place::DraftExercise(SheetId(id), Some(BlockId(id))),
            Place::Shared,
            Place::Ledger,
            Place::Compare,
            Place::Session(SessionId(id)),
            Place::Histories,
            Place::History(ExerciseId::new("back-squat").unwrap()),
            Place::Body,
            Place::Year(2026),
            Place::Weeks,
            Place::Report,
            Place::Kit,
            Place::Lifters,
            Place::State,
        ] {
            assert_eq!(Place::from_fragment(&place.fragment()), place);
        }
    }

    #[test]
    fn a_fragment_with_a_code_leads_to_its_sheet() {
        assert_eq!(Place::from_fragment("#/s/AQE-_x"), Place::Shared);
        assert_eq!(Place::code_in("#/s/AQE-_x"), Some("AQE-_x"));
        assert_eq!(Place::code_in("/s/a/b"), Some("a/b"));
        assert_eq!(Place::code_in("#/sheets/s"), None);
    }

    #[test]
    fn an_unknown_fragment_is_the_floor() {
        for fragment in ["", "#", "#/nowhere", "#/floor/x"] {
            assert_eq!(Place::from_fragment(fragment), Place::Floor);
        }
        for fragment in ["#/sheets/no-id", "#/draft/no-id", "#/draft"] {
            assert_eq!(Place::from_fragment(fragment), Place::Sheets);
        }
    }
}
