//! The public categories of the heat index, what to do in each, and how much longer to rest.

use super::index::HeatIndex;
use crate::say;
use crate::units::Seconds;
use crate::words::t;

/// A note on grip, for sets with a load.
#[must_use]
pub fn grip_words() -> &'static str {
    t("Hands sweat: chalk or straps; put the load down when the grip goes.")
}

/// The category of a heat index, as the National Weather Service publishes it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Category {
    /// Below 80 °F.
    None,
    /// From 80 °F.
    Caution,
    /// From 90 °F.
    ExtremeCaution,
    /// From 103 °F.
    Danger,
    /// From 125 °F.
    ExtremeDanger,
}

impl Category {
    /// The category of an index, rounded to whole degrees as on the chart. Where two bands share a bound, the more
    /// careful one has it.
    #[must_use]
    pub fn of(index: HeatIndex) -> Category {
        match index.whole() {
            ..80 => Category::None,
            80..90 => Category::Caution,
            90..103 => Category::ExtremeCaution,
            103..125 => Category::Danger,
            125.. => Category::ExtremeDanger,
        }
    }

    /// Its public name; `no heat caution` below all of them.
    #[must_use]
    pub fn name(self) -> &'static str {
        t(match self {
            Category::None => "no heat caution",
            Category::Caution => "caution",
            Category::ExtremeCaution => "extreme caution",
            Category::Danger => "danger",
            Category::ExtremeDanger => "extreme danger",
        })
    }

    /// What to do, in full.
    #[must_use]
    pub fn advice(self) -> &'static str {
        t(match self {
            Category::None => "Drink as usual. In full sun the heat is greater than this says.",
            Category::Caution => {
                "Drink before you are thirsty and rest longer, in the shade. Stop when you feel dizzy or sick. A physician's word and local rules go before this."
            }
            Category::ExtremeCaution => {
                "Drink often, rest longer in the shade, do less. Stop at dizziness, cramp or headache, and cool down. A physician's word and local rules go before this."
            }
            Category::Danger => {
                "Better train at another time or in a cooler place. If you go on: short, light, never alone; stop at the first dizziness. A physician's word and local rules go before this."
            }
            Category::ExtremeDanger => {
                "Stop: do not train here now. Go where it is cool and drink. Confusion or fainting is an emergency: call for help. A physician's word and local rules go before this."
            }
        })
    }

    /// What to do, in one quiet line on the board; none where the heat asks for nothing.
    #[must_use]
    pub fn brief(self) -> Option<&'static str> {
        Some(t(match self {
            Category::None => return None,
            Category::Caution => "Heat, caution: drink, rest longer.",
            Category::ExtremeCaution => {
                "Heat, extreme caution: drink, rest in the shade, stop at dizziness."
            }
            Category::Danger => "Heat, danger: better another time or place; stop at dizziness.",
            Category::ExtremeDanger => "Heat, extreme danger: stop, and cool down.",
        }))
    }

    /// By how many percent rests are stretched. Common practice, no source.
    #[must_use]
    pub fn stretch_percent(self) -> u8 {
        match self {
            Category::None => 0,
            Category::Caution => 10,
            Category::ExtremeCaution => 25,
            Category::Danger | Category::ExtremeDanger => 50,
        }
    }

    /// A rest in this heat: longer by the share, up to the next 5 s. No rest stays none.
    #[must_use]
    pub fn stretched(self, rest: Seconds) -> Seconds {
        match self.stretch_percent() {
            0 => rest,
            percent => {
                let hundredths = i64::from(rest) * (100 + i64::from(percent));
                Seconds::saturating((hundredths + 499) / 500 * 5)
            }
        }
    }

    /// Why a rest has the length `rest`; none where the heat asks for nothing.
    #[must_use]
    pub fn because(self, rest: Seconds) -> Option<String> {
        let rest = rest.clock();
        Some(match self {
            Category::None => return None,
            Category::Caution => say!("rest {rest}: a tenth longer in the heat", rest),
            Category::ExtremeCaution => say!("rest {rest}: a quarter longer in the heat", rest),
            Category::Danger | Category::ExtremeDanger => {
                say!("rest {rest}: half as long again in the heat", rest)
            }
        })
    }
}
