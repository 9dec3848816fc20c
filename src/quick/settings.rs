//! What the kind of sets needs: shares of a ramp-up or back-off, drops, portions; or the words to failure.

use super::cursor::{Cursor, Read};
use super::load::{share, shares};
use super::sets::Named;
use super::target::seconds;
use crate::sheet::SetKind;
use crate::words::t;

/// The kind that the line named, and what was read of it.
pub(super) struct KindSettings {
    named: Named,
    kind: Option<SetKind>,
}

impl KindSettings {
    pub fn new(named: Named) -> KindSettings {
        KindSettings { named, kind: None }
    }

    /// Reads the setting of this kind when it comes next.
    pub fn read(&mut self, c: &mut Cursor) -> Read<bool> {
        let kind = match self.named {
            Named::RampUp if c.word("at") => SetKind::RampUp { shares: shares(c)? },
            Named::BackOff if c.word("at") => SetKind::BackOff { share: share(c)? },
            Named::Drop if c.word("drops") => drops(c)?,
            Named::Cluster if c.word("in") => cluster(c)?,
            Named::Work if c.word("to failure") => SetKind::ToFailure,
            _ => return Ok(false),
        };
        self.kind = Some(kind);
        Ok(true)
    }

    /// The kind, once all settings were read.
    pub fn finish(self, c: &mut Cursor) -> Read<SetKind> {
        let missing = t(match self.named {
            Named::Work => return Ok(self.kind.unwrap_or(SetKind::Work)),
            Named::ToFailure => return Ok(SetKind::ToFailure),
            Named::RampUp => "shares of the work load like at 40 %, 60 %, 80 %",
            Named::BackOff => "a share of the heaviest load like at 80 %",
            Named::Drop => "how many drops and what each leaves like drops 2 to 80 %",
            Named::Cluster => "portions and the pause between them like in 4 pause 15",
        });
        self.kind.ok_or_else(|| c.fault(missing))
    }
}

fn drops(c: &mut Cursor) -> Read<SetKind> {
    let drops = c.whole(1, 5, t("1 to 5 drops"))? as u8;
    if !c.word("to") {
        return Err(c.fault(t("to and the share that a drop leaves like to 80 %")));
    }
    let keep = share(c)?;
    Ok(SetKind::Drop { drops, keep })
}

fn cluster(c: &mut Cursor) -> Read<SetKind> {
    let portions = c.whole(2, 10, t("2 to 10 portions"))? as u8;
    if !c.word("pause") {
        return Err(c.fault(t("pause and a time like pause 15")));
    }
    let pause = seconds(c)?;
    Ok(SetKind::Cluster { portions, pause })
}
