//! stub
use super::*;
use crate::kit::Kit;
use crate::sheet::*;
use crate::units::*;
#[derive(Debug, Clone, PartialEq)]
pub struct DoneSet {
    pub key: SetKey,
    pub load: Option<Load>,
    pub reps: Option<Reps>,
}
#[derive(Debug, Clone, PartialEq)]
pub struct SetBecause;
impl std::fmt::Display for SetBecause {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "x")
    }
}
#[derive(Debug, Clone, PartialEq)]
pub struct Prescribed {
    pub load: Option<Load>,
    pub because: SetBecause,
}
pub fn best_e1rm(_h: &[Performance]) -> Option<Load> {
    None
}
pub fn set_load(
    _b: &Block,
    _s: &PlannedSet,
    _p: Option<&Proposal>,
    _d: &[DoneSet],
    _e: Option<Load>,
    _k: &Kit,
) -> Prescribed {
    Prescribed {
        load: None,
        because: SetBecause,
    }
}
pub fn propose(b: &Block, _h: &[Performance], _k: &Kit) -> Proposal {
    Proposal {
        block: b.id,
        load: b.start,
        because: Because::StartOfSheet {},
    }
}
pub fn jump_caution(_a: Option<Load>, _b: Load) -> bool {
    false
}
