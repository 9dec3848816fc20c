//! Muscles, in the trade's words.

/// A muscle, or several that work as one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
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

    /// The name on screen.
    #[must_use]
    pub fn name(self) -> &'static str {
        self.words().split(',').next().unwrap_or_default()
    }

    /// The name, then after commas what else people type for it.
    pub(super) fn words(self) -> &'static str {
        match self {
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
        }
    }

    /// This muscle's bit in a set of muscles.
    pub(super) const fn bit(self) -> u32 {
        1 << self as u32
    }
}
