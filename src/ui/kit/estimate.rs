//! The curve that maximums are estimated by: the lifter's choice.

use crate::strength::Curve;
use crate::ui::model::Model;
use crate::ui::parts::{choices, line, quiet, section, toggle};
use crate::ui::seen::Seen;
use crate::ui::stanchion::Stanchion;
use crate::words::t;
use leptos::prelude::*;

/// The choice of a curve, each with its source and for which reps it holds.
pub fn estimate(app: Stanchion) -> AnyView {
    let chosen = app.of(Model::curve);
    let one = |(n, curve): (usize, Curve)| {
        let pressed = Seen::new(move || chosen.get() == curve);
        let choose = move || {
            if chosen.get_untracked() != curve {
                app.keep_curve(curve);
            }
        };
        vec![
            toggle(format!("curve-{n}"), curve.name(), "", pressed, choose),
            line("quiet", "curve-about", curve.told()),
        ]
        .into_any()
    };
    let curves = Curve::ALL.into_iter().enumerate().map(one).collect();
    section(
        Some("estimate"),
        t("Estimate"),
        vec![
            quiet(t(
                "The curve from reps to your maximum. It counts from the next session on, for loads that are a share of \
                 the maximum. Epley unless you choose: from 2 to 12 reps it is within 1.5 % of the middle of the seven \
                 formulas, and it can be checked in the head.",
            )),
            choices("named", t("Curve"), curves),
        ],
    )
}
