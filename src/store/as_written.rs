//! A fast reader of events that takes only the exact text this app writes: most of a file is events, and most of an event
//! is the same in all of them. Text that is written in any other way gives `None` and is left to the reader of any JSON.

use crate::json::Cursor;
use crate::session::{Amount, Done, EventId, Moment, Tick, What};
use crate::sheet::{BlockId, SetKey};
use crate::units::Load;
use chrono::{DateTime, FixedOffset, NaiveDate};
use serde::Deserialize;
use uuid::Uuid;

/// The digits of an id, its hyphens among them.
const ID: usize = 36;

/// A load and the text of it that was read last: most loads are that of the set before.
pub(super) type LastLoad<'t> = Option<(&'t str, Load)>;

/// Behind this text, where it comes next.
pub(super) fn past(file: &mut Cursor<'_>, text: &str) -> Option<()> {
    file.passes(text).then_some(())
}

/// The value that comes next, read like any JSON.
pub(super) fn value<'de, T: Deserialize<'de>>(file: &mut Cursor<'_>) -> Option<T> {
    let depth = file.depth();
    let value = T::deserialize(&mut *file).ok()?;
    file.close_to(depth).ok()?;
    Some(value)
}

/// The value behind this text, where it comes next; else what stands for none.
pub(super) fn optional<'de, T: Deserialize<'de> + Default>(
    file: &mut Cursor<'_>,
    text: &str,
) -> Option<T> {
    if file.passes(text) {
        value(file)
    } else {
        Some(T::default())
    }
}

/// An id behind its first quotation mark.
fn id(file: &mut Cursor<'_>) -> Option<Uuid> {
    let text = file.words_as_written()?;
    (text.len() == ID).then(|| text.parse().ok())?
}

/// A whole number of a type.
fn whole<T: TryFrom<i64>>(file: &mut Cursor<'_>) -> Option<T> {
    let number = i64::try_from(file.whole()?).ok()?;
    T::try_from(number).ok()
}

/// What an event begins with: its id and when it was, up to what happened.
pub(super) fn head(file: &mut Cursor<'_>) -> Option<(EventId, Moment)> {
    past(file, "{\"id\":\"")?;
    let own = EventId(id(file)?);
    past(file, ",\"at\":\"")?;
    let at = time(file.words_as_written()?)?;
    past(file, ",\"tick\":{\"run\":")?;
    let run = whole(file)?;
    past(file, ",\"ms\":")?;
    let ms = file.whole()?;
    past(file, "},\"what\":")?;
    let tick = Tick { run, ms };
    Some((own, Moment { at, tick }))
}

/// What most events say: that a set was started, or what was done in it.
pub(super) fn of_set<'t>(file: &mut Cursor<'t>, last: &mut LastLoad<'t>) -> Option<What> {
    if file.passes("{\"set_started\":{\"set\":") {
        let set = key(file)?;
        past(file, "}}")?;
        return Some(What::SetStarted { set });
    }
    past(file, "{\"set_done\":{\"set\":")?;
    let set = key(file)?;
    past(file, ",\"done\":{")?;
    let load = match file.passes("\"load\":\"") {
        true => Some(load(file, last)?),
        false => None,
    };
    if load.is_some() {
        past(file, ",")?;
    }
    past(file, "\"amount\":")?;
    let amount = amount(file)?;
    let reserve = match file.passes(",\"reserve\":") {
        true => Some(whole(file)?),
        false => None,
    };
    past(file, "}")?;
    let proposed = match file.passes(",\"proposed\":\"") {
        true => Some(self::load(file, last)?),
        false => None,
    };
    past(file, "}}")?;
    Some(What::SetDone {
        set,
        done: Done {
            load,
            amount,
            reserve,
        },
        proposed,
    })
}

/// Most are reps; the others are read like any JSON.
fn amount(file: &mut Cursor<'_>) -> Option<Amount> {
    if file.passes("{\"reps\":") {
        let reps = whole(file)?;
        past(file, "}")?;
        return Some(Amount::Reps(reps));
    }
    value(file)
}

fn key(file: &mut Cursor<'_>) -> Option<SetKey> {
    past(file, "{\"block\":\"")?;
    let block = BlockId(id(file)?);
    past(file, ",\"line\":")?;
    let line = whole(file)?;
    past(file, ",\"set\":")?;
    let set = whole(file)?;
    let drop = match file.passes(",\"drop\":") {
        true => whole(file)?,
        false => 0,
    };
    past(file, "}")?;
    Some(SetKey {
        block,
        line,
        set,
        drop,
    })
}

/// A load behind its first quotation mark.
fn load<'t>(file: &mut Cursor<'t>, last: &mut LastLoad<'t>) -> Option<Load> {
    let text = file.words_as_written()?;
    if let Some((_, load)) = last.filter(|(known, _)| *known == text) {
        return Some(load);
    }
    let load = text.parse().ok()?;
    *last = Some((text, load));
    Some(load)
}

/// The number of these digits.
fn number(digits: &[u8]) -> Option<u32> {
    digits.iter().try_fold(0_u32, |number, digit| {
        let value = digit.is_ascii_digit().then(|| u32::from(digit - b'0'));
        Some(number * 10 + value?)
    })
}

/// The time of a text such as `2026-03-02T18:00:00.125+01:00`, as chrono writes it.
fn time(text: &str) -> Option<DateTime<FixedOffset>> {
    let (local, mut rest) = text.as_bytes().split_at_checked(19)?;
    let [
        y0,
        y1,
        y2,
        y3,
        b'-',
        m0,
        m1,
        b'-',
        d0,
        d1,
        b'T',
        h0,
        h1,
        b':',
        n0,
        n1,
        b':',
        s0,
        s1,
    ] = *local
    else {
        return None;
    };
    let mut nanos = 0;
    if let Some(behind) = rest.strip_prefix(b".") {
        let places = behind
            .iter()
            .take_while(|byte| byte.is_ascii_digit())
            .count();
        let digits = behind.get(..places).filter(|_| (1..=9).contains(&places))?;
        nanos = (places..9).fold(number(digits)?, |nanos, _| nanos * 10);
        rest = behind.get(places..)?;
    }
    let east = match *rest {
        [b'Z'] => 0,
        [sign @ (b'+' | b'-'), h0, h1, b':', n0, n1] => {
            let minutes = number(&[n0, n1]).filter(|minutes| *minutes < 60)?;
            let seconds = (number(&[h0, h1])? * 3600 + minutes * 60).cast_signed();
            if sign == b'-' { -seconds } else { seconds }
        }
        _ => return None,
    };
    let year = number(&[y0, y1, y2, y3])?.cast_signed();
    let day = NaiveDate::from_ymd_opt(year, number(&[m0, m1])?, number(&[d0, d1])?)?;
    let (hour, minute) = (number(&[h0, h1])?, number(&[n0, n1])?);
    let local = day.and_hms_nano_opt(hour, minute, number(&[s0, s1])?, nanos)?;
    let zone = FixedOffset::east_opt(east)?;
    local.and_local_timezone(zone).single()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::json::{parse, text};
    use crate::session::{Event, StageAmount};
    use crate::units::{Reps, Rir, Seconds};
    use proptest::prelude::*;

    /// What a text is read as, and what is left of it.
    fn read<'t, T>(
        text: &'t str,
        how: impl FnOnce(&mut Cursor<'t>) -> Option<T>,
    ) -> Option<(T, &'t str)> {
        let mut cursor = Cursor::new(text);
        let read = how(&mut cursor)?;
        Some((read, text.get(cursor.place()..)?))
    }

    fn times() -> impl Strategy<Value = DateTime<FixedOffset>> {
        let seconds = -62_000_000_000_i64..250_000_000_000;
        let nanos = prop_oneof![
            Just(0_u32),
            (0_u32..1_000).prop_map(|ms| ms * 1_000_000),
            0_u32..1_000_000_000
        ];
        (seconds, nanos, -1_439_i32..1_440).prop_filter_map("no time", |(seconds, nanos, east)| {
            let at = DateTime::from_timestamp(seconds, nanos)?;
            Some(at.with_timezone(&FixedOffset::east_opt(east * 60)?))
        })
    }

    fn whats() -> impl Strategy<Value = What> {
        let set = (any::<u128>(), any::<u8>(), any::<u8>(), 0_u8..3).prop_map(
            |(block, line, set, drop)| SetKey {
                block: BlockId(Uuid::from_u128(block)),
                line,
                set,
                drop,
            },
        );
        let load = || {
            proptest::option::of((0_u32..80_000).prop_map(|quarters| {
                let plain = format!("{}.{:02} kg", quarters / 40, quarters % 40 * 5 / 2);
                plain.parse::<Load>().unwrap()
            }))
        };
        let reserve = proptest::option::of((0_i64..6).prop_map(Rir::saturating));
        let amount = (0_i64..200, 0..4).prop_map(|(number, kind)| {
            let reps = Reps::saturating(number);
            let seconds = Seconds::saturating(number);
            match kind {
                0 => Amount::Timed(seconds),
                1 => Amount::Stages(vec![
                    StageAmount::Hold(seconds),
                    StageAmount::Partials(reps),
                ]),
                2 => Amount::Sides {
                    first: reps,
                    second: Reps::MIN,
                },
                _ => Amount::Reps(reps),
            }
        });
        (set, any::<bool>(), load(), load(), amount, reserve).prop_map(
            |(set, started, load, proposed, amount, reserve)| {
                if started {
                    return What::SetStarted { set };
                }
                What::SetDone {
                    set,
                    done: Done {
                        load,
                        amount,
                        reserve,
                    },
                    proposed,
                }
            },
        )
    }

    proptest! {
        /// Whatever is written is read here, and as the reader of any JSON reads it.
        #[test]
        fn an_event_is_read_as_it_was_written(
            number in any::<u128>(),
            at in times(),
            run in any::<u32>(),
            ms in 0_u64..1_000_000_000_000_000_000,
            what in whats(),
        ) {
            let id = EventId(Uuid::from_u128(number));
            let event = Event { id, at, tick: Tick { run, ms }, what };
            let written = text(&event);
            let (head, rest) = read(&written, head).unwrap();
            prop_assert_eq!(head, (event.id, event.moment()));
            // To the offset, which two equal times may differ by.
            prop_assert_eq!(head.1.at.to_rfc3339(), event.at.to_rfc3339());
            let mut last = None;
            let (what, rest) = read(rest, |file| of_set(file, &mut last)).unwrap();
            prop_assert_eq!(&what, &event.what);
            prop_assert_eq!(rest, "}");
            prop_assert_eq!(parse::<Event>(&written).unwrap(), event);
        }

        /// No time is read that chrono reads otherwise or refuses.
        #[test]
        fn no_time_is_made_of_what_is_none(
            text in "(19|20)[0-9]{2}-[01][0-9]-[0-3][0-9][T ][0-2][0-9]:[0-6][0-9]:[0-6][0-9](\\.[0-9]{0,10})?(Z|z|[+-][0-2][0-9]:?[0-6][0-9])",
        ) {
            if let Some(read) = time(&text) {
                let theirs = DateTime::parse_from_rfc3339(&text).unwrap();
                prop_assert_eq!(read, theirs);
                prop_assert_eq!(read.offset(), theirs.offset());
            }
        }

        /// A letter that is another one makes nothing else of it: it is read as the reader of any JSON reads it, or not.
        #[test]
        fn what_is_spoiled_is_never_read_as_something_else(
            what in whats(),
            at in any::<prop::sample::Index>(),
            letter in "[ -~]",
        ) {
            let mut written = text(&what);
            let at = at.index(written.len());
            written.replace_range(at..=at, &letter);
            let mut last = None;
            if let Some((what, "")) = read(&written, |file| of_set(file, &mut last)) {
                prop_assert_eq!(parse::<What>(&written).unwrap(), what);
            }
        }
    }
}
