//! How a reason writes a load: in which unit, on which basis, what the kit made of it.

use super::moved::Moved;
use super::words::on;
use crate::say;
use crate::sheet::{Equipment, LoadBasis};
use crate::units::{Load, Unit};
use crate::words::t;

/// How loads are written.
#[derive(Clone, Copy)]
pub(super) struct Words<'a> {
    /// The unit on display; none for each in the unit it was typed in.
    unit: Option<Unit>,
    /// What they are of.
    basis: &'a LoadBasis,
}

impl Words<'static> {
    /// Each load in the unit it was typed in, moved alone.
    pub(super) const PLAIN: Words<'static> = Words {
        unit: None,
        basis: &LoadBasis::External,
    };
}

impl<'a> Words<'a> {
    pub(super) fn of(unit: Unit, basis: &'a LoadBasis) -> Words<'a> {
        Words {
            unit: Some(unit),
            basis,
        }
    }

    /// The unit in which a load is written.
    pub(super) fn unit_of(self, load: Load) -> Unit {
        self.unit.unwrap_or(load.unit())
    }

    pub(super) fn load(self, load: Load) -> String {
        self.basis.shown(load, self.unit_of(load))
    }

    /// The same with what it does to the body, where nothing else in the sentence says so: "20 kg assistance".
    pub(super) fn told(self, load: Load) -> String {
        self.basis.told(load, self.unit_of(load))
    }

    /// A load as the means by which something was done: "at 60 kg", "with 5 kg added", "with nothing added".
    pub(super) fn at(self, load: Load) -> String {
        if load.is_zero() && self.basis.nothing().is_some() {
            t(match self.basis.assists() {
                true => "with no assistance",
                false => "with nothing added",
            })
            .to_owned()
        } else {
            self.by(load.shown(self.unit_of(load)))
        }
    }

    /// The same of a load that was written out.
    fn by(self, load: String) -> String {
        match self.basis.nothing() {
            Some(_) => say!("with {load}", load = self.basis.does(load)),
            None => say!("at {load}", load),
        }
    }

    /// "a step down to 57.5 kg". Nothing at all is no load to go to.
    pub(super) fn down_to(self, to: Load) -> String {
        match self.basis.nothing().filter(|_| to.is_zero()) {
            Some(_) => format!("{}, {}", t("a step down"), self.at(to)),
            None => say!("a step down to {load}", load = self.load(to)),
        }
    }

    /// What a load came to, where the kit does not make just the wanted one.
    pub(super) fn fitted(self, wanted: Load, to: Load) -> String {
        if to == wanted {
            return String::new();
        }
        let to_said = self.load(to);
        if to < wanted {
            say!(", nearest below is {load}", load = to_said)
        } else {
            say!(", nearest above is {load}", load = to_said)
        }
    }

    /// What a load came to, and that it is just the wanted one where it is.
    pub(super) fn made(self, wanted: Load, to: Load) -> String {
        if to == wanted {
            format!(", {}", self.load(to))
        } else {
            self.fitted(wanted, to)
        }
    }

    /// What the sets that a reason names were done with: "at 60 kg", or "at 60–67.5 kg" where they differ.
    pub(super) fn lifted(self, moved: &Moved) -> String {
        let [least, most] = moved.span.unwrap_or([moved.at; 2]);
        if least == most {
            return self.at(most);
        }
        let unit = self.unit_of(most);
        self.by(format!("{}–{}", least.figure(unit), most.shown(unit)))
    }

    /// "40 % of 30 kg, the lightest on this bar: 20 kg".
    pub(super) fn lightest(self, share: &str, equipment: Equipment, to: Load) -> String {
        say!(
            "{share}, the lightest {place}: {load}",
            share,
            place = on(equipment),
            load = self.load(to)
        )
    }

    /// "40 % of 80 kg, nearest below is 30 kg". What is heavier is the lightest on the bar, the stack or the handles in use, which a
    /// reason that is stored does not name; a lighter bar may stand beside.
    pub(super) fn share(self, of: &str, wanted: Load, to: Load) -> String {
        if to == wanted {
            say!("{share} is {load}", share = of, load = self.load(to))
        } else if to > wanted {
            say!(
                "{share}, the lightest with the same equipment: {load}",
                share = of,
                load = self.load(to)
            )
        } else {
            format!("{of}{}", self.fitted(wanted, to))
        }
    }
}
