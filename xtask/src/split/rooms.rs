//! In which part of the app's WebAssembly each room of the source lies.
//!
//! It is a matter of time alone: a function that is called before its part is there is waited for. A room that is listed
//! too late makes a start or the floor wait, which an end-to-end test finds; one that is missing here makes the first part
//! larger.

/// How many parts there are.
pub const PARTS: usize = 3;

/// Rooms, each with the part in which it lies. What is not listed lies in the first part that calls it. Of the listings
/// that fit a path, the longest counts; of several paths in one name, the latest part.
const ROOMS: &[(usize, &str)] = &[
    (2, "char>::escape_debug_ext"),
    (2, "core::str::pattern::StrSearcher"),
    (1, "rust_decimal::decimal::Decimal as core::ops::arith"),
    (1, "rust_decimal::ops"),
    (0, "rust_decimal::ops::cmp"),
    (2, "stanchion::charts"),
    (1, "stanchion::cues"),
    (1, "stanchion::device::db::Db>::apply"),
    (2, "stanchion::device::db::Db>::keys"),
    (2, "stanchion::device::files"),
    (2, "stanchion::device::locks::Writer>::steal"),
    (2, "stanchion::device::locks::without_locks"),
    (2, "stanchion::device::picture"),
    (1, "stanchion::device::sound::Inner>::follow_state"),
    (1, "stanchion::device::sound::Sound>::play"),
    (1, "stanchion::device::wake::ask"),
    (2, "stanchion::draft"),
    (2, "stanchion::exercises::alike"),
    (2, "stanchion::heat"),
    (1, "stanchion::json"),
    (1, "stanchion::kit::plan"),
    (1, "stanchion::kit::reach"),
    (0, "stanchion::kit::reach::Kit>::new"),
    (0, "stanchion::kit::reach::Kit>::starter"),
    (1, "stanchion::ledger"),
    (2, "stanchion::pictures"),
    (1, "stanchion::programme"),
    (2, "stanchion::quick"),
    (1, "stanchion::session"),
    (0, "stanchion::session::effective"),
    (0, "stanchion::session::event"),
    (1, "stanchion::session::event::What as core::clone"),
    (0, "stanchion::session::machine"),
    (1, "stanchion::session::machine::Session as core::clone"),
    (1, "stanchion::session::machine::Session>::take"),
    (0, "stanchion::session::slot"),
    (0, "stanchion::session::state"),
    (1, "stanchion::session::state::State>::plan"),
    (1, "stanchion::session::state::State>::short"),
    (2, "stanchion::share"),
    (1, "stanchion::sheet"),
    (0, "stanchion::sheet::exercise"),
    (0, "stanchion::sheet::text"),
    (1, "stanchion::store"),
    (0, "stanchion::store::archive"),
    (0, "stanchion::store::body"),
    (2, "stanchion::store::import"),
    (0, "stanchion::store::people"),
    (0, "stanchion::store::record"),
    (0, "stanchion::store::row"),
    (0, "stanchion::store::shelved::sorted_out"),
    (1, "stanchion::strength"),
    (1, "stanchion::ui::app::banners"),
    (1, "stanchion::ui::app::open"),
    (2, "stanchion::ui::app::place_of"),
    (2, "stanchion::ui::ended"),
    (2, "stanchion::ui::away"),
    (0, "stanchion::ui::away::bring::look"),
    (0, "stanchion::ui::away::reminder"),
    (2, "stanchion::ui::body"),
    (2, "stanchion::ui::books"),
    (1, "stanchion::ui::books::apply_next"),
    (0, "stanchion::ui::books::are_kept_in"),
    (1, "stanchion::ui::books::turns"),
    (2, "stanchion::ui::change"),
    (2, "stanchion::ui::charts"),
    (2, "stanchion::ui::coach"),
    (0, "stanchion::ui::coach::view::looking"),
    (1, "stanchion::ui::cueing::under_way::next_said"),
    (2, "stanchion::ui::drafts"),
    (2, "stanchion::ui::exercises"),
    (1, "stanchion::ui::floor"),
    (2, "stanchion::ui::floor::band"),
    (2, "stanchion::ui::floor::finish"),
    (2, "stanchion::ui::floor::heat"),
    (2, "stanchion::ui::floor::help"),
    (2, "stanchion::ui::floor::more"),
    (2, "stanchion::ui::floor::panels"),
    (1, "stanchion::ui::floor::panels::reserve_panel"),
    (2, "stanchion::ui::floor::short"),
    (2, "stanchion::ui::floor::stages"),
    (2, "stanchion::ui::floor::swap"),
    (2, "stanchion::ui::gather"),
    (2, "stanchion::ui::history"),
    (2, "stanchion::ui::keep::Keep>::keys"),
    (2, "stanchion::ui::kit"),
    (0, "stanchion::ui::kit::hearing"),
    (0, "stanchion::ui::kit::looks"),
    (1, "stanchion::ui::kit::settings::show_in"),
    (2, "stanchion::ui::ledger"),
    (2, "stanchion::ui::own"),
    (1, "stanchion::ui::parts::panel"),
    (2, "stanchion::ui::people::list::set_gone"),
    (2, "stanchion::ui::people::pair"),
    (1, "stanchion::ui::people::pair::both"),
    (2, "stanchion::ui::people::place"),
    (2, "stanchion::ui::people::strip"),
    (1, "stanchion::ui::people::with"),
    (2, "stanchion::ui::programme"),
    (2, "stanchion::ui::sheets"),
    (1, "stanchion::ui::stanchion::Stanchion>::begin_in"),
    (2, "stanchion::ui::stanchion::Stanchion>::change_block"),
    (2, "stanchion::ui::stanchion::Stanchion>::change_draft"),
    (1, "stanchion::ui::stanchion::Stanchion>::drain"),
    (1, "stanchion::ui::stanchion::Stanchion>::happen_all"),
    (1, "stanchion::ui::stanchion::Stanchion>::id"),
    (1, "stanchion::ui::stanchion::Stanchion>::resume"),
    (2, "stanchion::ui::stanchion::Stanchion>::show_entry"),
    (1, "stanchion::ui::welcome::welcome::{closure#0}"),
    (2, "stanchion::ui::year"),
    (2, "wasm_streams"),
];

/// The listings that fit none of these names: of rooms that moved or went.
pub fn vain<'a>(names: impl Iterator<Item = &'a str>) -> Vec<&'static str> {
    let mut vain: Vec<&str> = ROOMS.iter().map(|(_, room)| *room).collect();
    for name in names {
        if vain.is_empty() {
            break;
        }
        let name = without_builds(name);
        vain.retain(|room| !beginnings(&name).any(|path| leads_to(path, room)));
    }
    vain
}

/// The part of a function, by its whole name, such as
/// `<alloc[0f…]::vec::Vec<stanchion[1a…]::sheet::Sheet> as core[2b…]::clone::Clone>::clone`.
pub fn part_of(name: &str) -> usize {
    let name = without_builds(name);
    beginnings(&name).map(of_path).max().unwrap_or(0)
}

/// The paths in a name, each with what stands behind it.
fn beginnings(name: &str) -> impl Iterator<Item = &str> {
    let places = name.char_indices().map(|(at, _)| at);
    let paths = places.filter(|at| {
        let before = name[..*at].chars().next_back();
        !before.is_some_and(|before| is_of_path(before) || before == ':')
    });
    paths.map(|at| &name[at..])
}

fn of_path(path: &str) -> usize {
    let rooms = ROOMS.iter().filter(|(_, room)| leads_to(path, room));
    let longest = rooms.max_by_key(|(_, room)| room.len());
    longest.map_or(0, |(part, _)| *part)
}

/// Whether a path is a room's or leads into it.
fn leads_to(path: &str, room: &str) -> bool {
    let inside = path.strip_prefix(room);
    inside.is_some_and(|inside| !inside.starts_with(is_of_path))
}

fn is_of_path(c: char) -> bool {
    c.is_ascii_alphanumeric() || c == '_'
}

/// A name without the marks that say which build of a crate is meant.
fn without_builds(name: &str) -> String {
    let mut pieces = name.split('[');
    let mut whole = pieces.next().unwrap_or_default().to_owned();
    for piece in pieces {
        match piece.split_once(']') {
            Some((build, rest))
                if !build.is_empty() && build.chars().all(|c| c.is_ascii_hexdigit()) =>
            {
                whole.push_str(rest);
            }
            _ => {
                whole.push('[');
                whole.push_str(piece);
            }
        }
    }
    whole
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn the_longest_listing_of_a_path_counts_and_the_latest_part_of_a_name() {
        let of = |path: &str| part_of(&format!("stanchion[0f1e2d3c4b5a6978]::{path}"));
        assert_eq!(of("ui::app::anything"), 0);
        assert_eq!(of("ui::floor::board::board"), 1);
        assert_eq!(of("ui::kit::gear::bars::{closure#0}"), 2);
        assert_eq!(of("ui::kit::hearing::mode"), 0);
        assert_eq!(of("ui::kitchen"), 0);
        let both = "<alloc[1]::vec::Vec<stanchion[2]::ui::floor::Row> as core[3]::convert::From<[stanchion[2]::ui::kit::Row; 3]>>::from";
        assert_eq!(part_of(both), 2);
        // The path of another crate that ends alike is another one.
        assert_eq!(part_of("other::stanchion::ui::kit::gear"), 0);
    }

    #[test]
    fn no_listing_is_said_twice_and_none_says_what_holds_without_it() {
        let mut seen = BTreeSet::new();
        for (part, room) in ROOMS {
            assert!(seen.insert(room), "{room} is listed twice");
            assert!(*part < PARTS, "{room} is in part {part}");
            let others = ROOMS.iter().filter(|(_, other)| other != room);
            let above = others.filter(|(_, other)| leads_to(room, other));
            let above = above
                .max_by_key(|(_, other)| other.len())
                .map_or(0, |(part, _)| *part);
            assert_ne!(above, *part, "{room} is there already");
        }
    }
}
