//! A warning about the order of two blocks; found by `exercises::order_check`, kept here once the writer settled it.

use super::block::BlockId;
use super::group::Sheet;
use serde::{Deserialize, Serialize};

/// Most settled warnings of a sheet: more than 40 blocks can give.
pub const SETTLED_MAX: usize = 4000;

/// What speaks against the order.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum WarningKind {
    /// Fast before heavy before lighter before burn-out.
    Role,
    /// The earlier block tires the grip that the later one needs.
    Grip,
    /// The earlier block tires the lower back that the later one needs.
    LowerBack,
    /// The earlier block tires a muscle that the later, heavier one works most.
    SameMuscle,
}

/// The later block would be better off before the earlier one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OrderWarning {
    /// What speaks against the order.
    pub kind: WarningKind,
    /// The block that stands first.
    pub earlier: BlockId,
    /// The block that stands later.
    pub later: BlockId,
}

impl Sheet {
    /// Settles a warning, so that it stays away, or unsettles it.
    pub fn settle(&mut self, warning: OrderWarning, settled: bool) {
        self.settled.retain(|other| *other != warning);
        if settled {
            self.settled.push(warning);
        }
        self.forget_unknown();
    }

    /// Forgets settled warnings about blocks that are no longer there.
    pub fn forget_unknown(&mut self) {
        let ids: Vec<BlockId> = self.blocks().map(|block| block.id).collect();
        self.settled
            .retain(|warning| ids.contains(&warning.earlier) && ids.contains(&warning.later));
    }
}
