//! The kit of the model: the one that is kept, or that of a usual garage. That is made when somebody looks at it: a start
//! shows nothing of it, and all that makes it would be compiled for that.

use crate::kit::Kit;
use crate::units::Unit;
use std::ops::Deref;
use std::sync::OnceLock;

/// A kit; by default that of a usual garage.
#[derive(Debug, Clone, Default)]
pub struct Garage(OnceLock<Kit>);

impl Deref for Garage {
    type Target = Kit;

    fn deref(&self) -> &Kit {
        self.0.get_or_init(|| Kit::starter(Unit::Kg))
    }
}

impl PartialEq for Garage {
    fn eq(&self, other: &Garage) -> bool {
        **self == **other
    }
}

impl From<Kit> for Garage {
    fn from(kit: Kit) -> Garage {
        Garage(OnceLock::from(kit))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_kit_that_is_kept_is_there_and_else_that_of_a_usual_garage() {
        assert_eq!(*Garage::default(), Kit::starter(Unit::Kg));
        let kept = Kit::starter(Unit::Lb);
        assert_eq!(*Garage::from(kept.clone()), kept);
    }
}
