//! The list, a file for each pattern or two. A row: name | other names | means, what is moved, sides | main muscles |
//! also | cautions.

use super::entry::Entry;

/// Writes rows as entries of one pattern.
macro_rules! rows {
    ($pattern:ident: $([$name:literal | $others:literal | $means:ident $moved:ident $sides:ident
        | $($main:ident)+ | $($also:ident)* | $($caution:ident)*])+) => {
        &[$($crate::exercises::entry::Entry {
            name: $name,
            others: $others,
            main: 0 $(| $crate::exercises::muscle::Muscle::$main.bit())+,
            also: 0 $(| $crate::exercises::muscle::Muscle::$also.bit())*,
            cautions: 0 $(| $crate::exercises::caution::Caution::$caution.bit())*,
            pattern: $crate::sheet::Pattern::$pattern,
            means: $crate::exercises::means::Means::$means,
            moved: $crate::exercises::means::Moved::$moved,
            sides: $crate::sheet::SideMode::$sides,
        }),+]
    };
}

mod explosive;
mod legs;
mod pull;
mod push;
mod single_joint;
mod trunk;

const PARTS: [&[Entry]; 10] = [
    legs::SQUAT,
    legs::HINGE,
    push::ACROSS,
    push::UPWARD,
    pull::ACROSS,
    pull::DOWNWARD,
    trunk::CARRY,
    explosive::EXPLOSIVE,
    trunk::TRUNK,
    single_joint::SINGLE_JOINT,
];

const COUNT: usize = {
    let (mut count, mut part) = (0, 0);
    while part < PARTS.len() {
        count += PARTS[part].len();
        part += 1;
    }
    count
};

static ALL: [Entry; COUNT] = {
    let mut all = [PARTS[0][0]; COUNT];
    let (mut at, mut part) = (0, 0);
    while part < PARTS.len() {
        let mut row = 0;
        while row < PARTS[part].len() {
            all[at] = PARTS[part][row];
            at += 1;
            row += 1;
        }
        part += 1;
    }
    all
};

/// Every entry, by pattern.
#[must_use]
pub fn all() -> &'static [Entry] {
    &ALL
}
