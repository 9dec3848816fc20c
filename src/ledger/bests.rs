//! Bests of an exercise: the sets that no other set beats, the highest estimate that is more than noise, the most volume.

use super::history::Past;
use super::much::Much;
use super::volume::VolumeLoad;
use super::ways::{BestSet, Way, When, counted};
use crate::sheet::{LoadBasis, moved_part};
use crate::strength::{Curve, Shown, shown_by_all};
use crate::units::{Load, Reps};
use serde::{Deserialize, Serialize};

/// Up to how many reps the best load is asked for.
pub const BEST_REPS_MAX: u16 = 15;

/// The highest maximum by one curve of what is moved alike, as it was told last.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Highest {
    /// With which sides and what in the hands: see [`moved_part`].
    pub moved: String,
    /// The curve.
    pub curve: Curve,
    /// What was shown.
    pub shown: Shown,
    /// When.
    pub when: When,
}

/// The most volume of the exercise in one session.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MostVolume {
    /// Volume load of its work sets.
    pub volume: VolumeLoad,
    /// When.
    pub when: When,
}

/// The bests of one exercise.
///
/// Plain work sets with full reps count, and of holds, carries and sets in stages those that are no ramp-ups, back-offs,
/// drops or clusters; those of light sessions do not. Bands are told apart by their labels. A set of 8 is one of 5 too: the best load at 5
/// reps is the most load of any set of 5 or more. Of two equal ones the earlier is the best. Tempo and rests are not
/// looked at.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Bests {
    /// Way by way, in the order in which they were first done.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub ways: Vec<Way>,
    /// The highest maximum of each that is moved, curve by curve: the first that was shown, and after it each that was
    /// above the one before by more than the detectable change. A creeping gain is told once it can be told from noise.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub highest: Vec<Highest>,
    /// The most volume in a session.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub volume: Option<MostVolume>,
}

/// Something that was never as good before.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Best {
    /// A set that none before beats: more load at its reps, more reps at its load, or both.
    Set {
        /// What the load is added to.
        basis: LoadBasis,
        /// Its load.
        load: Load,
        /// Its reps.
        reps: Reps,
        /// The best load at so many reps before; none where so many were never done, and above
        /// [`BEST_REPS_MAX`] reps.
        load_before: Option<Load>,
        /// The most reps at such a load before; none where it was never lifted.
        reps_before: Option<Reps>,
    },
    /// The same of a set that was held, carried or done in stages.
    Much {
        /// What the load is added to.
        basis: LoadBasis,
        /// Its load.
        load: Load,
        /// How much was done.
        much: Much,
        /// The best load at so much or more before; none where so much was never done.
        load_before: Option<Load>,
        /// The most at such a load before; none where it was never used.
        much_before: Option<Much>,
    },
    /// A maximum above the highest before by more than noise.
    E1rm {
        /// By this curve.
        curve: Curve,
        /// The maximum.
        e1rm: Load,
        /// The highest before.
        before: Load,
        /// From how much on it could be told from noise, in hundredths of a percent.
        detectable: u32,
    },
    /// More volume in a session.
    Volume {
        /// So much so far.
        volume: VolumeLoad,
        /// The most before.
        before: VolumeLoad,
    },
}

impl Highest {
    fn is_of(&self, moved: &str, curve: Curve) -> bool {
        self.moved == moved && self.curve == curve
    }
}

/// The volume of one session's blocks together; none where nothing was lifted.
fn volume_of(session: &[&Past]) -> Option<VolumeLoad> {
    let mut volume = VolumeLoad::default();
    for past in session {
        volume.add(past.volume.kg());
    }
    (volume > VolumeLoad::default()).then_some(volume)
}

/// The best that a session shows of each that is moved by each curve, over its blocks.
fn shown_in<'a>(session: &[&'a Past]) -> Vec<(&'a str, Curve, Shown)> {
    let mut best: Vec<(&str, Curve, Shown)> = Vec::new();
    for past in session {
        let moved = moved_part(&past.performance.shape);
        for (curve, shown) in shown_by_all(&past.performance) {
            match best.iter_mut().find(|it| (it.0, it.1) == (moved, curve)) {
                None => best.push((moved, curve, shown)),
                Some((_, _, known)) if shown.e1rm > known.e1rm => *known = shown,
                Some(_) => {}
            }
        }
    }
    best
}

impl Bests {
    /// The bests of a history, the oldest first.
    #[must_use]
    pub fn of(history: &[Past]) -> Bests {
        let mut bests = Bests::default();
        let sessions = history.chunk_by(|a, b| a.performance.session == b.performance.session);
        for session in sessions {
            bests.take(session);
        }
        bests
    }

    /// Takes in what one session did of the exercise, block by block. It is later than all that was taken before.
    pub fn take(&mut self, session: &[Past]) {
        let session = counting(session);
        let Some(when) = session.first().map(|past| When::of(past)) else {
            return;
        };
        self.take_sets(&session, when);
        for (moved, curve, shown) in shown_in(&session) {
            let mut highest = self.highest.iter_mut();
            match highest.find(|known| known.is_of(moved, curve)) {
                None => self.highest.push(Highest {
                    moved: moved.to_owned(),
                    curve,
                    shown,
                    when,
                }),
                Some(known) => {
                    let (by, detectable) = shown.above(&known.shown);
                    if by > detectable {
                        (known.shown, known.when) = (shown, when);
                    }
                }
            }
        }
        if let Some(volume) = volume_of(&session)
            && self.volume.is_none_or(|most| volume > most.volume)
        {
            self.volume = Some(MostVolume { volume, when });
        }
    }

    fn take_sets(&mut self, session: &[&Past], when: When) {
        for past in session {
            let Some(basis) = &past.performance.basis else {
                continue;
            };
            let sets = past.performance.sets.iter();
            for (load, much) in sets.filter_map(|set| counted(basis, set)) {
                let way = Way::empty(past, basis, much);
                self.way(way, much).put(BestSet { load, much, when });
            }
        }
    }

    /// The one of these ways that is like `new`, which is put among them where none is.
    fn way(&mut self, new: Way, much: Much) -> &mut Way {
        let mut ways = self.ways.iter();
        let place = ways.position(|way| way.is_of(&new, much));
        let place = place.unwrap_or_else(|| {
            self.ways.push(new);
            self.ways.len() - 1
        });
        &mut self.ways[place]
    }

    /// What `now` beats that `before` did not: two states of one session, which is not among these bests, as
    /// [`super::pasts_of`] gives them. Handed in before and after a set was logged it says what that set beat; with
    /// nothing before, what the session did.
    ///
    /// Sets first, each once and only those that the session itself did not beat again, then the estimate by each curve
    /// (see [`Best::counts`]), then the volume.
    #[must_use]
    pub fn beaten_by(&self, before: &[Past], now: &[Past]) -> Vec<Best> {
        let mut known = self.clone();
        known.take(before);
        let (now, mut beaten) = (counting(now), Vec::new());
        let mut session = Bests::default();
        if let Some(first) = now.first() {
            session.take_sets(&now, When::of(first));
        }
        for way in &session.ways {
            let Some(much) = way.sets.first().map(|set| set.much) else {
                continue;
            };
            let mut ways = known.ways.iter();
            if let Some(known) = ways.find(|known| known.is_of(way, much)) {
                let sets = way.sets.iter();
                beaten.extend(sets.filter_map(|set| known.beaten_by(set.load, set.much)));
            }
        }
        // What was told before in the same session is not told again: the mark stays that of before it.
        let (shows, showed) = (shown_in(&now), shown_in(&counting(before)));
        for highest in &self.highest {
            let told = |shows: &[(&str, Curve, Shown)]| {
                let mut shows = shows.iter();
                let alike = shows.find(|(moved, curve, _)| highest.is_of(moved, *curve));
                let shown = alike?.2;
                let (by, detectable) = shown.above(&highest.shown);
                (by > detectable).then_some((shown, detectable))
            };
            if let Some((shown, detectable)) = told(&shows)
                && told(&showed).is_none()
            {
                beaten.push(Best::E1rm {
                    curve: highest.curve,
                    e1rm: shown.e1rm,
                    before: highest.shown.e1rm,
                    detectable: (detectable * 10_000.0).round() as u32,
                });
            }
        }
        if let (Some(most), Some(volume)) = (&self.volume, volume_of(&now))
            && volume > most.volume
            && volume_of(&counting(before)).is_none_or(|before| before <= most.volume)
        {
            beaten.push(Best::Volume {
                volume,
                before: most.volume,
            });
        }
        beaten
    }
}

/// The blocks that count: those of no light session.
fn counting(session: &[Past]) -> Vec<&Past> {
    session.iter().filter(|past| !past.light).collect()
}

#[cfg(test)]
#[path = "bests_tests.rs"]
mod tests;
