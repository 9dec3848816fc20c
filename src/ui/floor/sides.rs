//! Each side with its own reps, where the sides do the set one after the other.

use super::hands::Hands;
use crate::session::{Amount, What};
use crate::sheet::Target;
use crate::ui::model::Model;
use crate::ui::parts::{Text, button, panel, quiet, stepper, text};
use crate::ui::seen::Seen;
use crate::units::Reps;
use crate::words::t;
use leptos::prelude::*;

/// Whether the sides of the set that is to be done now or next may differ in reps.
pub fn apart(model: &Model) -> bool {
    let slot = model
        .session
        .as_ref()
        .and_then(|session| session.state().current());
    slot.is_some_and(|slot| {
        slot.planned.sides.rounds() > 1 && matches!(slot.planned.target, Target::Reps(_))
    })
}

/// Reps of the first and the second side.
pub fn of(amount: &Amount) -> Option<(Reps, Reps)> {
    match amount {
        Amount::Sides { first, second } => Some((*first, *second)),
        Amount::Reps(reps) => Some((*reps, *reps)),
        _ => None,
    }
}

/// An amount with one of its sides stepped.
pub fn stepped(amount: &Amount, second: bool, more: bool) -> Option<Amount> {
    let (mut reps, by) = (of(amount)?, if more { 1 } else { -1 });
    let side = if second { &mut reps.1 } else { &mut reps.0 };
    *side = Reps::saturating(i64::from(*side) + by);
    Some(Amount::of_sides(reps.0, reps.1))
}

/// Two steppers, a side each; `step` is given whether it is the second side, and whether it is more.
pub fn steppers(reps: Seen<Option<(Reps, Reps)>>, step: Callback<(bool, bool)>) -> Vec<AnyView> {
    let figure = move |second: bool| -> Text {
        text(move || {
            let Some((first, other)) = reps.get() else {
                return String::new();
            };
            if second { other } else { first }.to_string()
        })
    };
    vec![
        quiet(t("first side")),
        stepper(t("first side"), "first-side", figure(false), move |more| {
            step.run((false, more))
        }),
        quiet(t("second side")),
        stepper(t("second side"), "second-side", figure(true), move |more| {
            step.run((true, more))
        }),
    ]
}

/// The panel of a set's two sides.
pub fn sides_panel(hands: Hands, close: Callback<()>) -> AnyView {
    let offer = hands.offer;
    let reps = Seen::new(move || offer.with(|offer| offer.as_ref().and_then(of)));
    let step = Callback::new(move |(second, more): (bool, bool)| {
        let set = hands
            .board
            .with_untracked(|board| board.as_ref().map(|board| board.key));
        let amount = offer.with_untracked(|offer| {
            let offered = offer.as_ref()?;
            stepped(offered, second, more).filter(|amount| amount != offered)
        });
        if let Some((set, amount)) = set.zip(amount) {
            hands.app.act(What::AmountChosen { set, amount });
        }
    });
    let mut inside = vec![quiet(t("The side you began with, then the other."))];
    inside.extend(steppers(reps, step));
    inside.push(button("wide strong", "sides-use", t("Use it"), move || {
        close.run(())
    }));
    panel("sides-panel", t("Reps of each side"), close, inside)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn reps(n: i64) -> Reps {
        Reps::saturating(n)
    }

    #[test]
    fn one_side_is_stepped_and_the_other_stays() {
        let eight = Amount::Reps(reps(8));
        let seven = stepped(&eight, true, false).unwrap();
        assert_eq!(of(&seven), Some((reps(8), reps(7))));
        assert_eq!(stepped(&seven, true, true), Some(eight));
        assert_eq!(
            of(&stepped(&seven, false, true).unwrap()),
            Some((reps(9), reps(7)))
        );
    }
}
