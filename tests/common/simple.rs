//! What the ledger says of sessions by a simple path over their events: everything folded, nothing kept, every set looked at.

use super::counted::{Kind, REPS_MAX, counting, kind_of, so_much};
use super::shelves::Memory;
use rust_decimal::Decimal;
use stanchion::ledger::{Bests, BlockRecord, ExerciseSummary, Heading, Past, SessionRecord};
use stanchion::session::{Event, SessionId};
use stanchion::sheet::{Equipment, ExerciseId, LoadBasis, SetKind};
use stanchion::store::{LastOf, Shelf, open};
use stanchion::strength::{Curve, Performance, mdc95, shown};
use stanchion::units::Load;
use std::collections::{BTreeMap, BTreeSet};

/// All sessions by their events.
pub type Sessions = BTreeMap<SessionId, Vec<Event>>;

/// All sessions in the order of time.
pub fn records(sessions: &Sessions) -> Vec<SessionRecord> {
    let records = sessions.values();
    let mut records: Vec<SessionRecord> = records
        .filter_map(|events| SessionRecord::from_events(events).ok())
        .collect();
    records.sort_by_key(|record| (record.began, record.session));
    records
}

/// One block done in one session.
struct Block1<'a> {
    record: &'a SessionRecord,
    block: &'a BlockRecord,
}

fn blocks_of<'a>(records: &'a [SessionRecord], exercise: &ExerciseId) -> Vec<Block1<'a>> {
    let mut all = Vec::new();
    for record in records {
        for block in &record.blocks {
            if block.block.exercise.id == *exercise && !block.lines.is_empty() {
                all.push(Block1 { record, block });
            }
        }
    }
    all
}

fn exercises(records: &[SessionRecord]) -> Vec<ExerciseId> {
    let blocks = records.iter().flat_map(|record| &record.blocks);
    let done = blocks.filter(|block| !block.lines.is_empty());
    let mut ids: Vec<ExerciseId> = done.map(|block| block.block.exercise.id.clone()).collect();
    ids.sort();
    ids.dedup();
    ids
}

/// Minutes predicted for the session at `at`: the middle of the last 20 change-overs within 60 sessions, 60 s below five.
fn predicted(records: &[SessionRecord], at: usize) -> u32 {
    let before = &records[at.saturating_sub(60)..at];
    let all: Vec<i64> = before
        .iter()
        .flat_map(|record| {
            record
                .change_overs
                .iter()
                .map(|seconds| i64::from(seconds.get()))
        })
        .collect();
    let mut newest = all[all.len().saturating_sub(20)..].to_vec();
    newest.sort_unstable();
    let change_over = match newest.len() {
        0..5 => 60,
        n if n % 2 == 1 => newest[n / 2],
        n => (newest[n / 2 - 1] + newest[n / 2]) / 2,
    };
    let seconds = stanchion::units::Seconds::saturating(change_over);
    ((records[at].predicted.seconds(seconds) + records[at].longer_rests).div_ceil(60)) as u32
}

/// Kilograms moved times reps over the sets of a block that are no ramp-ups.
fn volume(one: &Block1) -> Decimal {
    let body = one.record.body_mass.map(Load::kg);
    let basis = &one.block.block.basis;
    let mut sum = Decimal::ZERO;
    for line in &one.block.lines {
        if matches!(line.kind, SetKind::RampUp { .. }) {
            continue;
        }
        let written = line.load.map(Load::kg);
        let extra = written.unwrap_or_default();
        let moved = match basis {
            LoadBasis::External => written,
            LoadBasis::BodyMassPlus => body.map(|body| body + extra),
            LoadBasis::BodyMassMinus => body.map(|body| (body - extra).max(Decimal::ZERO)),
            LoadBasis::BodyMassShare(share) => body.map(|body| body * share.factor() + extra),
            LoadBasis::Band(_) | LoadBasis::Unloaded => None,
        };
        let reps = line.amount.reps_of_sides(one.block.block.sides.rounds());
        sum += moved.unwrap_or_default() * Decimal::from(reps);
    }
    sum.normalize()
}

fn rows<T: serde::de::DeserializeOwned>(books: &Memory, shelf: Shelf) -> Vec<(String, T)> {
    let all = books.0.iter().filter(|((on, _), _)| *on == shelf);
    all.map(|((_, key), row)| {
        let json = open(row).unwrap();
        (key.clone(), stanchion::json::parse(json).unwrap())
    })
    .collect()
}

pub fn headings_agree(books: &Memory, records: &[SessionRecord]) {
    let headings: Vec<(String, Heading)> = rows(books, Shelf::Headings);
    let kept: Vec<_> = headings
        .iter()
        .map(|(_, it)| {
            (
                it.session,
                it.began,
                it.sets_done as usize,
                it.predicted_minutes,
                it.volume.kg(),
            )
        })
        .collect();
    let told: Vec<_> = records
        .iter()
        .enumerate()
        .map(|(at, record)| {
            let sum: Decimal = record
                .blocks
                .iter()
                .map(|block| volume(&Block1 { record, block }))
                .sum();
            let sets = record
                .blocks
                .iter()
                .map(|block| block.lines.len())
                .sum::<usize>();
            let minutes = predicted(records, at);
            (
                record.session,
                record.began,
                sets,
                Some(minutes),
                sum.normalize(),
            )
        })
        .collect();
    assert_eq!(kept, told, "keys stand in the order of time, one a session");
}

pub fn histories_agree(books: &Memory, records: &[SessionRecord]) {
    let kept: Vec<(String, Vec<Past>)> = rows(books, Shelf::Histories);
    let mut told: BTreeMap<String, Vec<_>> = BTreeMap::new();
    for exercise in exercises(records) {
        for one in blocks_of(records, &exercise) {
            let year = one.record.began.naive_utc().format("%Y");
            let loads: Vec<_> = one
                .block
                .lines
                .iter()
                .map(|line| (line.load, line.amount.full_reps().min(REPS_MAX)))
                .collect();
            told.entry(format!("{exercise}/{year}")).or_default().push((
                one.record.session,
                one.record.light,
                volume(&one),
                loads,
            ));
        }
    }
    let kept: BTreeMap<String, Vec<_>> = kept
        .into_iter()
        .map(|(key, pasts)| {
            let pasts = pasts.iter().map(|past| {
                let sets = past.performance.sets.iter();
                let loads = sets
                    .map(|set| (set.load, u32::from(set.reps.get())))
                    .collect();
                (past.session(), past.light, past.volume.kg(), loads)
            });
            (key, pasts.collect())
        })
        .collect();
    assert_eq!(kept, told);
}

pub fn summaries_agree(books: &Memory, records: &[SessionRecord]) {
    let kept: Vec<(String, ExerciseSummary)> = rows(books, Shelf::Summaries);
    let mut kept: BTreeMap<String, ExerciseSummary> = kept.into_iter().collect();
    for exercise in exercises(records) {
        let mut all = blocks_of(records, &exercise);
        let Some(newest) = all.last().map(|one| one.record) else {
            continue;
        };
        let name_of_newest = all.last().map(|one| one.block.block.exercise.name.clone());
        all.retain(|one| !one.record.light);
        let summary = kept.remove(exercise.as_str()).expect("a summary");
        assert_eq!(summary.last_done, newest.began, "light or not");
        let last = all.last().map(|one| one.block.block.exercise.name.clone());
        assert_eq!(Some(&summary.name), last.or(name_of_newest).as_ref());
        let newest = &all[all.len().saturating_sub(24)..];
        let sessions: Vec<_> = newest.iter().map(|one| one.record.session.0).collect();
        let known: Vec<_> = summary.performances.iter().map(|it| it.session).collect();
        assert_eq!(known, sessions);
        bests_agree(&summary.bests, &all);
    }
    assert!(kept.is_empty(), "summaries of nothing: {kept:?}");
}

/// A set that counts for bests: its load, how much was done, its session.
type Tried = (Load, u32, SessionId);

/// Every load at each number of reps, every number of reps at each load, by looking at all sets.
fn bests_agree(bests: &Bests, all: &[Block1]) {
    let mut ways: BTreeMap<(String, String, Kind), Vec<Tried>> = BTreeMap::new();
    for one in all {
        let basis = stanchion::json::text(&one.block.block.basis);
        for (load, kind, reps) in counting(one.block) {
            let moved = match kind {
                Kind::Staged => one.block.block.shape(),
                _ => moved(one.block),
            };
            let way = (moved, basis.clone(), kind);
            let sets = ways.entry(way).or_default();
            sets.push((load, reps, one.record.session));
        }
    }
    assert_eq!(bests.ways.len(), ways.len());
    for way in &bests.ways {
        let kind = kind_of(way.sets[0].much);
        let basis = stanchion::json::text(&way.basis);
        let sets = &ways[&(way.moved.clone(), basis, kind)];
        let effort = |load: Load| {
            let kg = load.kg();
            if way.basis == LoadBasis::BodyMassMinus {
                -kg
            } else {
                kg
            }
        };
        for count in 1..=30 {
            let enough = sets.iter().filter(|(_, reps, _)| *reps >= count);
            let most = enough.clone().map(|(load, ..)| effort(*load)).max();
            let best = way.at(so_much(kind, i64::from(count)));
            assert_eq!(best.map(|best| effort(best.load)), most, "{count} {kind:?}");
        }
        for (load, ..) in sets {
            let as_hard = sets
                .iter()
                .filter(|(other, ..)| effort(*other) >= effort(*load));
            let most = as_hard.map(|(_, reps, _)| *reps).max();
            let best = way.at_load(*load).map(|best| best.much.get());
            assert_eq!(best, most, "{load}");
        }
        for best in &way.sets {
            let same = |(load, reps, _): &&Tried| *load == best.load && *reps == best.much.get();
            let first = sets.iter().find(same).unwrap();
            assert_eq!(best.when.session, first.2.0, "the earlier of equal ones");
        }
    }
    let mut most: Option<(Decimal, SessionId)> = None;
    let mut sessions: Vec<SessionId> = all.iter().map(|one| one.record.session).collect();
    sessions.dedup();
    for session in &sessions {
        let blocks = all.iter().filter(|one| one.record.session == *session);
        let sum: Decimal = blocks.map(volume).sum();
        if sum > most.map_or(Decimal::ZERO, |(most, _)| most) {
            most = Some((sum.normalize(), *session));
        }
    }
    let kept = bests
        .volume
        .map(|most| (most.volume.kg(), SessionId(most.when.session)));
    assert_eq!(kept, most);
    let ways: BTreeSet<String> = all.iter().map(|one| moved(one.block)).collect();
    let by_each = ways
        .iter()
        .flat_map(|way| Curve::ALL.map(|curve| (way, curve)));
    for (way, curve) in by_each {
        let mut mark: Option<(f64, f64, SessionId)> = None;
        for session in &sessions {
            let blocks = all.iter().filter(|one| one.record.session == *session);
            let blocks = blocks.filter(|one| moved(one.block) == *way);
            let shows = blocks.filter_map(|one| shown(&performance(one), curve));
            let shows = shows.map(|it| (kg(it.e1rm), f64::from(it.error) / 10_000.0));
            let Some((e1rm, error)) = shows.max_by(|a, b| a.0.total_cmp(&b.0)) else {
                continue;
            };
            let beyond = mark.is_none_or(|(before, its, _)| {
                let typical = ((error * error + its * its) / 2.0).sqrt();
                e1rm / before - 1.0 > mdc95(typical).exp() - 1.0
            });
            if beyond {
                mark = Some((e1rm, error, *session));
            }
        }
        let mut highest = bests.highest.iter();
        let kept = highest.find(|it| it.moved == *way && it.curve == curve);
        let kept = kept.map(|it| (kg(it.shown.e1rm), SessionId(it.when.session)));
        assert_eq!(
            kept,
            mark.map(|(e1rm, _, session)| (e1rm, session)),
            "{way} by {curve:?}"
        );
    }
}

/// With which sides and what in the hands, as the bests tell it.
fn moved(block: &BlockRecord) -> String {
    let block = &block.block;
    let sides = stanchion::json::text(&block.sides);
    let hands = match (&block.basis, block.exercise.equipment) {
        (LoadBasis::External, Equipment::Handle) => "\"dumbbell\"".to_owned(),
        (LoadBasis::External, other) => stanchion::json::text(&other),
        _ => "null".to_owned(),
    };
    format!("[{sides},{hands}]")
}

fn kg(load: Load) -> f64 {
    load.kg().to_string().parse().unwrap()
}

fn performance(one: &Block1) -> Performance {
    let all = stanchion::ledger::pasts_of(one.record);
    let place = one
        .record
        .blocks
        .iter()
        .filter(|block| !block.lines.is_empty())
        .position(|block| std::ptr::eq(block, one.block))
        .unwrap();
    all[place].1.performance.clone()
}

pub fn lasts_agree(books: &Memory, records: &[SessionRecord]) {
    let mut told: BTreeMap<String, SessionId> = BTreeMap::new();
    let done = |record: &&SessionRecord| record.blocks.iter().any(|it| !it.lines.is_empty());
    for record in records.iter().filter(done) {
        told.insert(format!("sheet/{}", record.sheet.0), record.session);
    }
    let kept: BTreeMap<String, SessionId> = books
        .0
        .iter()
        .filter(|((shelf, key), _)| *shelf == Shelf::Books && key != "form")
        .map(|((_, key), row)| {
            let last: LastOf = stanchion::json::parse(open(row).unwrap()).unwrap();
            (key.clone(), last.session)
        })
        .collect();
    assert_eq!(kept, told);
}
