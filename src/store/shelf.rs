//! The object stores of the database, by name.

/// Name of the database of the first lifter; see [`super::Person`] for those of others.
pub const DATABASE: &str = "stanchion";
/// Version of its layout: which object stores there are. 2 added `drafts`, `exercises` and `programmes`, 3
/// `removed` and `imports`, 4 `histories`, `books`, `body` and `people`.
pub const DATABASE_VERSION: u32 = 4;
/// What follows the name of a database in the name of the one with a copy of it from before each change of the layout.
const SNAPSHOTS: &str = "-snapshot";
/// The one object store of that; key: the version of the layout that was left, a full stop, `json` for an export and `txt` for
/// all rows as they were.
pub const SNAPSHOT_SHELF: &str = "snapshots";

/// Name of the database with a copy of everything in `database` from before each change of the layout.
#[must_use]
pub fn snapshots_of(database: &str) -> String {
    database.to_owned() + SNAPSHOTS
}

/// Of the keys of [`SNAPSHOT_SHELF`] the one with the export of the highest version that was left.
#[must_use]
pub fn newest_export(keys: &[String]) -> Option<&String> {
    let version = |key: &String| key.strip_suffix(".json")?.parse::<u32>().ok();
    // As numbers: as text 10 comes before 9.
    let exports = keys.iter().filter_map(|key| Some((version(key)?, key)));
    let newest = exports.max_by_key(|(version, _)| *version);
    newest.map(|(_, key)| key)
}

/// An object store. Every row is a text sealed by [`super::row::seal`]; the key stands beside it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Shelf {
    /// Events of sessions under way, one row an event; key: event id.
    Events,
    /// Finished sessions, one row with all its events; key: session id.
    Sessions,
    /// Headings of finished sessions; key: [`super::heading_key`], by which they stand in the order of time. A book:
    /// can be rebuilt from the sessions.
    Headings,
    /// What was done of an exercise in a year; key: exercise id, a slash, the year of the beginning in UTC. A book.
    Histories,
    /// Exercise summaries; key: exercise id. A book.
    Summaries,
    /// In which form the books are, under `form`, and the newest session of each sheet, under `sheet/` and its id. A book.
    Books,
    /// Sheet records; key: sheet id, a slash, version.
    Sheets,
    /// Versions of one's own exercises; key: version.
    Exercises,
    /// Versions of programmes; key: version.
    Programmes,
    /// Sheets that are being written, not yet kept; key: sheet id.
    Drafts,
    /// Kit records; key: version.
    Kits,
    /// Lifter records; key: version.
    Lifters,
    /// Body masses; key: id.
    BodyMass,
    /// Corrections and removals of body masses, and measures of one's own; key: version.
    Body,
    /// Records of an import that had the id of another one but differed, and were not kept; key: kind and id.
    Aside,
    /// Notes that sessions were removed; key: session id.
    Removed,
    /// The last imports, so that they can be undone; key: id.
    Imports,
    /// Those who train with this phone, once they are several; key: their id. Only in the database of the first.
    People,
}

impl Shelf {
    /// The shelves of books: all that follows from the sessions and is kept so that nobody has to read them.
    pub const OF_BOOKS: [Shelf; 4] = [
        Shelf::Headings,
        Shelf::Histories,
        Shelf::Summaries,
        Shelf::Books,
    ];

    /// All of them.
    pub const ALL: [Shelf; 18] = [
        Shelf::Events,
        Shelf::Sessions,
        Shelf::Headings,
        Shelf::Histories,
        Shelf::Summaries,
        Shelf::Books,
        Shelf::Sheets,
        Shelf::Exercises,
        Shelf::Programmes,
        Shelf::Drafts,
        Shelf::Kits,
        Shelf::Lifters,
        Shelf::BodyMass,
        Shelf::Body,
        Shelf::Aside,
        Shelf::Removed,
        Shelf::Imports,
        Shelf::People,
    ];

    /// Name of the object store; it never changes.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Shelf::Events => "events",
            Shelf::Sessions => "sessions",
            Shelf::Headings => "headings",
            Shelf::Histories => "histories",
            Shelf::Summaries => "summaries",
            Shelf::Books => "books",
            Shelf::Sheets => "sheets",
            Shelf::Exercises => "exercises",
            Shelf::Programmes => "programmes",
            Shelf::Drafts => "drafts",
            Shelf::Kits => "kits",
            Shelf::Lifters => "lifters",
            Shelf::BodyMass => "body_mass",
            Shelf::Body => "body",
            Shelf::Aside => "aside",
            Shelf::Removed => "removed",
            Shelf::Imports => "imports",
            Shelf::People => "people",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::newest_export;

    #[test]
    fn the_newest_copy_is_that_of_the_highest_version() {
        let newest = |keys: &[&str]| {
            let keys: Vec<String> = keys.iter().map(|key| (*key).to_owned()).collect();
            newest_export(&keys).cloned()
        };
        let two = ["10.json", "10.txt", "9.json", "9.txt"];
        assert_eq!(newest(&two), Some("10.json".to_owned()));
        assert_eq!(
            newest(&["3.json", "4.txt", "x.json"]),
            Some("3.json".to_owned())
        );
        assert_eq!(newest(&["3.txt"]), None);
    }
}
