//! What is counted along the courses, and added up over lifters.

/// How often something was so.
#[derive(Clone, Copy, Default, PartialEq, Debug)]
pub struct Often {
    yes: u64,
    all: u64,
}

impl Often {
    /// One case more.
    pub fn count(&mut self, yes: bool) {
        self.yes += u64::from(yes);
        self.all += 1;
    }

    /// The share, 0 to 1; none of no case.
    pub fn share(&self) -> Option<f64> {
        (self.all > 0).then(|| self.yes as f64 / self.all as f64)
    }

    fn plus(self, other: Often) -> Often {
        Often {
            yes: self.yes + other.yes,
            all: self.all + other.all,
        }
    }
}

/// A mean in the making.
#[derive(Clone, Copy, Default, PartialEq, Debug)]
pub struct Mean {
    sum: f64,
    all: u64,
}

impl Mean {
    /// One value more.
    pub fn add(&mut self, value: f64) {
        self.sum += value;
        self.all += 1;
    }

    /// The mean; none of no value.
    pub fn get(&self) -> Option<f64> {
        (self.all > 0).then(|| self.sum / self.all as f64)
    }

    fn plus(self, other: Mean) -> Mean {
        Mean {
            sum: self.sum + other.sum,
            all: self.all + other.all,
        }
    }
}

/// Foretold chances are compared with what came in so many classes.
pub const CLASSES: usize = 10;

/// Makes the tally, and adds one to another field by field.
macro_rules! tally {
    ($($(#[$doc:meta])* $field:ident: $kind:ty),* $(,)?) => {
        /// Everything that is counted.
        #[derive(Clone, Default, PartialEq, Debug)]
        pub struct Tally {
            $($(#[$doc])* pub $field: $kind,)*
            /// By the chance that was foretold for the range: mean chance, and how often it came.
            pub foretold: [(Mean, Often); CLASSES],
        }

        impl Tally {
            /// Both together.
            pub fn plus(self, other: &Tally) -> Tally {
                let mut foretold = self.foretold;
                for (mine, theirs) in foretold.iter_mut().zip(&other.foretold) {
                    *mine = (mine.0.plus(theirs.0), mine.1.plus(theirs.1));
                }
                Tally { $($field: self.$field.plus(other.$field),)* foretold }
            }
        }
    };
}

tally! {
    /// Growth of the true maximum over the whole course, as a share.
    gain: Mean,
    /// Sets with fewer reps than asked for.
    missed: Often,
    /// Sets to the limit.
    ground: Often,
    /// Weeks of training that were worth nothing.
    wasted_weeks: Often,
    /// The true maximum lies in the 80 % interval.
    level_inside: Often,
    /// The same among lifters who tell a reserve.
    level_inside_told: Often,
    /// The same among those who tell none.
    level_inside_untold: Often,
    /// It lies above it.
    level_above: Often,
    /// Estimate less truth, on the scale of logarithms.
    level_error: Mean,
    /// The standard deviation that the estimate claims.
    level_spread: Mean,
    /// Reps to failure in the first set lie in their interval.
    reps_inside: Often,
    /// A set that was called beyond what is supported could have been done.
    beyond_done: Often,
    /// A change over eight weeks is told as more than noise, upwards.
    told_up: Often,
    /// And was one.
    told_up_right: Often,
    /// A plateau is called while strength grew.
    plateau_while_gaining: Often,
    /// A plateau is called while it did not, or little.
    plateau_while_flat: Often,
}

impl Tally {
    /// A chance was foretold for the range, and the reps fell in it or not.
    pub fn in_range(&mut self, chance: f64, hit: bool) {
        let class = ((chance * CLASSES as f64) as usize).min(CLASSES - 1);
        let (mean, often) = &mut self.foretold[class];
        mean.add(chance);
        often.count(hit);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tallies_add_up() {
        let mut one = Tally::default();
        one.missed.count(true);
        one.gain.add(0.1);
        one.in_range(0.55, true);
        let mut two = Tally::default();
        two.missed.count(false);
        two.gain.add(0.2);
        two.in_range(0.51, false);
        let both = one.plus(&two);
        assert_eq!(both.missed.share(), Some(0.5));
        assert_eq!(both.gain.get(), Some(0.15000000000000002));
        assert_eq!(both.foretold[5].1.share(), Some(0.5));
        assert_eq!(Often::default().share(), None);
    }
}
