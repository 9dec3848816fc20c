//! The order of a sheet's blocks: which later block would be hurt by an earlier one, and why.
//!
//! Order by role and same muscle: NSCA guidance on exercise order (power, other multi-joint, then assistance work) and
//! the ACSM position stand of 2009 (large before small muscles, several joints before one), both from memory. Grip and
//! lower back: common practice, no source. What nobody knows is judged by role and pattern alone.

use super::{Catalogue, KnownExercise, Muscle};
use crate::sheet::{
    Block, Equipment, Group, OrderWarning, Pattern, Role, SetKind, Sheet, WarningKind,
};
use crate::words::t;

/// Every warning about the order of `sheet`, settled or not: of each later block at most one of a kind, and of two
/// blocks only the most telling. Blocks done together are not held against each other, but for grip and lower back.
#[must_use]
pub fn order_check(sheet: &Sheet, exercises: &Catalogue) -> Vec<OrderWarning> {
    let blocks: Vec<Seen> = sheet
        .groups
        .iter()
        .enumerate()
        .flat_map(|(at, group)| seen(at, group, exercises))
        .collect();
    let mut warnings = Vec::new();
    for (place, later) in blocks.iter().enumerate() {
        let mut kinds = Vec::new();
        // The nearest of the earlier blocks first: it is the one to change places with.
        for earlier in blocks[..place].iter().rev() {
            if let Some(kind) = earlier.hurts(later)
                && !kinds.contains(&kind)
            {
                kinds.push(kind);
                warnings.push(OrderWarning {
                    kind,
                    earlier: earlier.block.id,
                    later: later.block.id,
                });
            }
        }
    }
    warnings
}

/// A block with what is known of its exercise.
pub(super) struct Seen<'a> {
    group: usize,
    pub(super) block: &'a Block,
    known: Option<KnownExercise<'a>>,
    stage: Stage,
}

/// Where in a session a block belongs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Stage {
    Fast,
    Heavy,
    Lighter,
    BurnOut,
}

fn seen<'a>(
    group: usize,
    of: &'a Group,
    exercises: &'a Catalogue,
) -> impl Iterator<Item = Seen<'a>> {
    of.blocks().iter().map(move |block| Seen {
        group,
        block,
        known: exercises.of(block.exercise.id.as_str()),
        stage: Stage::of(block),
    })
}

impl Stage {
    /// The stage by the block's role; work sets that all go to technical failure are a burn-out whatever the role.
    pub(super) fn of(block: &Block) -> Stage {
        let mut work = block.sets.iter().filter(|sets| sets.kind.is_work());
        match block.role {
            _ if work.clone().next().is_some() && work.all(|s| s.kind == SetKind::ToFailure) => {
                Stage::BurnOut
            }
            Role::Power => Stage::Fast,
            Role::Strength => Stage::Heavy,
            Role::Hypertrophy => Stage::Lighter,
            Role::Pump => Stage::BurnOut,
        }
    }
}

impl Seen<'_> {
    /// The most telling warning about `later` standing after this block.
    fn hurts(&self, later: &Seen) -> Option<WarningKind> {
        let together = self.group == later.group;
        // What follows lighter than it came is in the order that everybody uses.
        let as_heavy = later.stage <= self.stage;
        if self.tires_grip() && later.needs_grip() && (as_heavy || self.is_of_the_grip()) {
            Some(WarningKind::Grip)
        } else if as_heavy && self.tires_lower_back() && later.needs_lower_back() {
            Some(WarningKind::LowerBack)
        } else if together {
            None
        } else if self.wears_out(later)
            && in_common(self.block, self.known, later.block, later.known).is_some()
        {
            Some(WarningKind::SameMuscle)
        } else {
            (later.stage < self.stage).then_some(WarningKind::Role)
        }
    }

    fn pattern(&self) -> Pattern {
        self.block.exercise.pattern
    }

    fn works(&self, muscle: Muscle) -> bool {
        self.known
            .is_some_and(|known| known.main().has(muscle) || known.also().has(muscle))
    }

    /// True for sets that leave something tired behind: heavy ones, and those to failure.
    fn is_hard(&self) -> bool {
        self.stage == Stage::Heavy || goes_to_failure(self.block)
    }

    /// True for carries by the hands and work for the forearms itself.
    fn is_of_the_grip(&self) -> bool {
        match self.known {
            Some(known) => known.main().has(Muscle::Forearms),
            None => self.pattern() == Pattern::Carry,
        }
    }

    /// True when it leaves the grip tired.
    fn tires_grip(&self) -> bool {
        self.is_of_the_grip() || (self.is_hard() && self.hangs_by_the_hands())
    }

    /// True for hinges and pulls whose load hangs by the hands.
    fn hangs_by_the_hands(&self) -> bool {
        let pulls = match self.pattern() {
            Pattern::Hinge | Pattern::PullDownward | Pattern::PullAcross => true,
            Pattern::Explosive => self.block.exercise.equipment != Equipment::Body,
            _ => false,
        };
        let unknown_hang = self.pattern() == Pattern::PullDownward
            && self.block.exercise.equipment == Equipment::Body;
        match self.known {
            Some(_) => pulls && self.works(Muscle::Forearms),
            None => unknown_hang,
        }
    }

    /// True when a tired grip would end its sets early.
    fn needs_grip(&self) -> bool {
        self.stage != Stage::BurnOut && self.hangs_by_the_hands()
    }

    /// True when it leaves the lower back tired: hard hinges and rows bent over.
    fn tires_lower_back(&self) -> bool {
        let bends = match self.known {
            Some(_) => {
                matches!(self.pattern(), Pattern::Hinge | Pattern::PullAcross)
                    && self.works(Muscle::SpinalErectors)
            }
            None => self.pattern() == Pattern::Hinge && self.is_barbell(),
        };
        bends && self.stage != Stage::Fast
    }

    /// True when a tired lower back would make it unsafe or weak: heavy or fast squats and hinges.
    fn needs_lower_back(&self) -> bool {
        let held = match self.known {
            Some(_) => {
                matches!(
                    self.pattern(),
                    Pattern::Squat | Pattern::Hinge | Pattern::Explosive
                ) && self.works(Muscle::SpinalErectors)
            }
            None => matches!(self.pattern(), Pattern::Squat | Pattern::Hinge) && self.is_barbell(),
        };
        held && self.stage <= Stage::Heavy
    }

    fn is_barbell(&self) -> bool {
        self.block.exercise.equipment == Equipment::Barbell
    }

    /// True when `later` is the heavier of the two, or comes as heavy after sets to failure.
    fn wears_out(&self, later: &Seen) -> bool {
        let one_joint = |seen: &Seen| seen.pattern() == Pattern::SingleJoint;
        let heavier = later.stage < self.stage
            || (later.stage == self.stage && one_joint(self) && !one_joint(later));
        let spent = goes_to_failure(self.block) && later.stage <= self.stage;
        later.stage != Stage::BurnOut && (heavier || spent)
    }
}

fn goes_to_failure(block: &Block) -> bool {
    let mut kinds = block.sets.iter().map(|sets| &sets.kind);
    kinds.any(|kind| *kind == SetKind::ToFailure)
}

/// What both blocks work most, in words: the first main muscle in common, or of unknown exercises the pattern.
pub(super) fn shared(
    earlier: &Block,
    later: &Block,
    exercises: &Catalogue,
) -> Option<&'static str> {
    let known = |block: &Block| exercises.of(block.exercise.id.as_str());
    in_common(earlier, known(earlier), later, known(later))
}

fn in_common(
    earlier: &Block,
    one: Option<KnownExercise>,
    later: &Block,
    other: Option<KnownExercise>,
) -> Option<&'static str> {
    match (one, other) {
        (Some(one), Some(other)) => one.main().and(other.main()).iter().next().map(Muscle::name),
        _ if earlier.exercise.pattern == later.exercise.pattern => {
            of_pattern(later.exercise.pattern)
        }
        _ => None,
    }
}

/// What a pattern works, where it says so.
fn of_pattern(pattern: Pattern) -> Option<&'static str> {
    match pattern {
        Pattern::Squat => Some(t("knees and thighs")),
        Pattern::Hinge => Some(t("hips and backs of the thighs")),
        Pattern::PushAcross | Pattern::PushUpward => Some(t("pushing muscles")),
        Pattern::PullAcross | Pattern::PullDownward => Some(t("pulling muscles")),
        Pattern::Carry | Pattern::Explosive | Pattern::Trunk | Pattern::SingleJoint => None,
    }
}
