//! What is usual for a role: sets, reps, reserve, rest and tempo that a new block begins with.

use super::block::{Block, Role};
use super::kind::{SetKind, Sets};
use super::loads::LoadPolicy;
use super::progression::Progression;
use super::target::{RepTarget, Target};
use super::tempo::{Digit, Tempo};
use crate::units::{Reps, Rir, Seconds};
use crate::words::t;

/// What is usual for a role.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Usual {
    /// How many work sets.
    pub sets: u8,
    /// Reps of each.
    pub reps: RepTarget,
    /// Reps in reserve aimed at.
    pub reserve: Rir,
    /// Rest between sets, and after the last one.
    pub rest: Seconds,
    /// Tempo; none where speed counts and nobody counts seconds.
    pub tempo: Option<Tempo>,
    /// How the load moves from session to session.
    pub progression: Progression,
}

impl Role {
    /// What is usual.
    ///
    /// Rest: NSCA, strength and power 2–5 min, muscle-building 30–90 s, endurance at most 30 s (seen quoted). Reps:
    /// NSCA, power 1–5, strength at most 6, muscle-building 6–12, endurance 12 and more (from memory). Tempo: of the
    /// studied 2/0/2/0 (Wilk et al. 2018), within the 0.5–8 s a rep that grow alike (Schoenfeld et al. 2015). Which
    /// value inside a range, the number of sets and the reserve are common practice, no source.
    ///
    /// # Panics
    /// Never: the ranges are written here and rise.
    #[must_use]
    pub fn usual(self) -> Usual {
        let range = |low: i64, top: i64| {
            RepTarget::range(Reps::saturating(low), Reps::saturating(top))
                .expect("a written range rises")
        };
        let tempo = |eccentric: u8, concentric: Digit| {
            Some(Tempo {
                eccentric: Digit::Seconds(eccentric),
                stretch: Digit::Seconds(0),
                concentric,
                squeeze: Digit::Seconds(0),
            })
        };
        let (sets, reps, reserve, rest, tempo, progression) = match self {
            Role::Power => (3, range(3, 5), 5, 120, None, Progression::AsWritten),
            Role::Strength => (
                3,
                range(4, 6),
                2,
                150,
                tempo(2, Digit::Fast),
                Progression::default(),
            ),
            Role::Hypertrophy => (
                3,
                range(8, 12),
                2,
                90,
                tempo(3, Digit::Seconds(1)),
                Progression::default(),
            ),
            Role::Pump => (
                2,
                range(15, 20),
                1,
                30,
                tempo(2, Digit::Seconds(2)),
                Progression::default(),
            ),
        };
        Usual {
            sets,
            reps,
            reserve: Rir::saturating(reserve),
            rest: Seconds::saturating(rest),
            tempo,
            progression,
        }
    }

    /// Where what is usual comes from, in one line for the screen.
    #[must_use]
    pub fn usual_source(self) -> &'static str {
        t(match self {
            Role::Power => {
                "Usual for power: rest 2–5 min and 1–5 fast reps (NSCA). The choice inside is common practice."
            }
            Role::Strength => {
                "Usual for strength: rest 2–5 min, at most 6 reps (NSCA). The choice inside and the tempo are common practice."
            }
            Role::Hypertrophy => {
                "Usual for muscle-building: rest 30–90 s, 6–12 reps (NSCA); 0.5–8 s a rep grow alike (Schoenfeld 2015)."
            }
            Role::Pump => {
                "Usual for pump: rest at most 30 s, 12 reps and more (NSCA); tempo 2/0/2/0 as studied (Wilk 2018)."
            }
        })
    }
}

impl Usual {
    /// Its work sets as a line of a prescription.
    #[must_use]
    pub fn line(&self) -> Sets {
        Sets {
            kind: SetKind::Work,
            count: self.sets,
            target: Target::Reps(self.reps),
            reserve: vec![self.reserve],
            load: LoadPolicy::Same,
            tempo: None,
            rest: None,
        }
    }
}

impl Block {
    /// Gives the block another role. What still was as usual for the old role becomes what is usual for the new one;
    /// what was written otherwise stays.
    pub fn set_role(&mut self, role: Role) {
        let (old, new) = (self.role.usual(), role.usual());
        self.role = role;
        let usual = old.line();
        for sets in &mut self.sets {
            if *sets == usual {
                *sets = new.line();
            }
        }
        if self.rest == old.rest {
            self.rest = new.rest;
        }
        if self.rest_after == old.rest {
            self.rest_after = new.rest;
        }
        if self.tempo == old.tempo {
            self.tempo = new.tempo;
        }
        if self.progression == old.progression {
            self.progression = new.progression;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// NSCA (Essentials of Strength Training and Conditioning, seen quoted): rest of strength and power 2–5 min,
    /// muscle-building 30–90 s, endurance at most 30 s.
    #[test]
    fn the_usual_rest_is_inside_the_published_range() {
        let inside = |role: Role, least: u16, most: u16| {
            let rest = role.usual().rest.get();
            assert!((least..=most).contains(&rest), "{role:?}: {rest} s");
        };
        inside(Role::Power, 120, 300);
        inside(Role::Strength, 120, 300);
        inside(Role::Hypertrophy, 30, 90);
        inside(Role::Pump, 0, 30);
    }

    /// Schoenfeld, Ogborn, Krieger 2015, Sports Med 45(4):577–585: 0.5–8 s a repetition grow alike.
    #[test]
    fn the_usual_tempo_is_inside_the_published_range() {
        for role in [Role::Strength, Role::Hypertrophy, Role::Pump] {
            let seconds = role.usual().tempo.unwrap().rep_seconds();
            assert!((1..=8).contains(&seconds), "{role:?}: {seconds} s");
        }
    }
}
