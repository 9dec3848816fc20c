//! Muscles, in the trade's words.

use crate::say;
use crate::words::{later, t};
use serde::{Deserialize, Serialize};

/// A muscle, or several that work as one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs)]
pub enum Muscle {
    Quadriceps,
    Hamstrings,
    Glutes,
    Calves,
    Shins,
    Adductors,
    HipFlexors,
    SpinalErectors,
    Abdominals,
    Obliques,
    Lats,
    UpperBack,
    Trapezius,
    Chest,
    FrontDeltoid,
    SideDeltoid,
    RearDeltoid,
    RotatorCuff,
    Biceps,
    Triceps,
    Forearms,
    Neck,
}

impl Muscle {
    /// Every muscle, from the legs up.
    pub const ALL: [Muscle; 22] = [
        Muscle::Quadriceps,
        Muscle::Hamstrings,
        Muscle::Glutes,
        Muscle::Calves,
        Muscle::Shins,
        Muscle::Adductors,
        Muscle::HipFlexors,
        Muscle::SpinalErectors,
        Muscle::Abdominals,
        Muscle::Obliques,
        Muscle::Lats,
        Muscle::UpperBack,
        Muscle::Trapezius,
        Muscle::Chest,
        Muscle::FrontDeltoid,
        Muscle::SideDeltoid,
        Muscle::RearDeltoid,
        Muscle::RotatorCuff,
        Muscle::Biceps,
        Muscle::Triceps,
        Muscle::Forearms,
        Muscle::Neck,
    ];

    /// The name on screen, in the language that is spoken.
    #[must_use]
    pub fn name(self) -> &'static str {
        first_of(t(self.words()))
    }

    /// The name in English, for what a program reads.
    #[must_use]
    pub fn key(self) -> &'static str {
        first_of(self.words())
    }

    /// The name, then after commas what else people type for it, in English.
    pub(super) fn words(self) -> &'static str {
        later(match self {
            Muscle::Quadriceps => "quadriceps,quads legs thighs",
            Muscle::Hamstrings => "hamstrings,legs",
            Muscle::Glutes => "glutes,hips",
            Muscle::Calves => "calves,calf legs",
            Muscle::Shins => "shins,tibialis legs",
            Muscle::Adductors => "adductors,groin legs",
            Muscle::HipFlexors => "hip flexors",
            Muscle::SpinalErectors => "spinal erectors,lower back",
            Muscle::Abdominals => "abdominals,abs core",
            Muscle::Obliques => "obliques,core",
            Muscle::Lats => "lats,back",
            Muscle::UpperBack => "upper back,rhomboids",
            Muscle::Trapezius => "trapezius,traps",
            Muscle::Chest => "chest,pecs",
            Muscle::FrontDeltoid => "front deltoid,delts shoulders",
            Muscle::SideDeltoid => "side deltoid,delts shoulders",
            Muscle::RearDeltoid => "rear deltoid,delts shoulders",
            Muscle::RotatorCuff => "rotator cuff,shoulders",
            Muscle::Biceps => "biceps,arms",
            Muscle::Triceps => "triceps,arms",
            Muscle::Forearms => "forearms,grip arms",
            Muscle::Neck => "neck",
        })
    }

    /// This muscle's bit in a set of muscles.
    pub(super) const fn bit(self) -> u32 {
        1 << self as u32
    }
}

fn first_of(words: &'static str) -> &'static str {
    words.split(',').next().unwrap_or_default()
}

/// A set of muscles. In a file a list in which each stands once.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(try_from = "Vec<Muscle>", into = "Vec<Muscle>")]
pub struct Muscles(u32);

impl Muscles {
    /// The set of those bits of [`Muscle::bit`].
    pub(super) const fn of_bits(bits: u32) -> Muscles {
        Muscles(bits)
    }

    /// Its muscles, from the legs up.
    pub fn iter(self) -> impl Iterator<Item = Muscle> + use<> {
        let all = Muscle::ALL.into_iter();
        all.filter(move |muscle| self.has(*muscle))
    }

    /// True when `muscle` is in it.
    #[must_use]
    pub fn has(self, muscle: Muscle) -> bool {
        self.0 & muscle.bit() != 0
    }

    /// This set with `muscle` in it.
    #[must_use]
    pub fn with(self, muscle: Muscle) -> Muscles {
        Muscles(self.0 | muscle.bit())
    }

    /// This set without `muscle`.
    #[must_use]
    pub fn without(self, muscle: Muscle) -> Muscles {
        Muscles(self.0 & !muscle.bit())
    }

    /// What is in both.
    #[must_use]
    pub fn and(self, other: Muscles) -> Muscles {
        Muscles(self.0 & other.0)
    }

    /// True when there is none in it.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0 == 0
    }
}

impl TryFrom<Vec<Muscle>> for Muscles {
    type Error = String;

    fn try_from(list: Vec<Muscle>) -> Result<Muscles, String> {
        let mut all = Muscles::default();
        for muscle in list {
            if all.has(muscle) {
                return Err(say!(
                    "{muscle} stands twice: name each once",
                    muscle = muscle.name()
                ));
            }
            all = all.with(muscle);
        }
        Ok(all)
    }
}

impl From<Muscles> for Vec<Muscle> {
    fn from(muscles: Muscles) -> Vec<Muscle> {
        muscles.iter().collect()
    }
}
