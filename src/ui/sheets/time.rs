//! How long a sheet takes, what its budget says, and what would bring it within.

use crate::ledger::Pace;
use crate::say;
use crate::sheet::{Cut, Off, Prediction, Sheet, apply, cuts};
use crate::ui::parts::{button, group, line, list, quiet, words};
use crate::units::clock;
use crate::words::{many, t};
use leptos::prelude::*;

/// The minutes of a sheet, as its row says them.
pub fn about(sheet: &Sheet, pace: Pace) -> String {
    let minutes = Prediction::of(sheet).minutes(pace.change_over());
    say!("about {minutes} min", minutes)
}

/// Seconds as a clock reading.
pub fn reading(seconds: u64) -> String {
    clock(i64::try_from(seconds).unwrap_or(i64::MAX))
}

/// The predicted minutes against the budget.
fn against_budget(sheet: &Sheet, pace: Pace) -> String {
    let Some(budget) = sheet.budget_minutes else {
        return about(sheet, pace);
    };
    let seconds = Prediction::of(sheet).seconds(pace.change_over());
    let limit = u64::from(budget.get()) * 60;
    if seconds > limit {
        // Both rounded the same way, or the figures would not add up.
        let (minutes, over) = (seconds.div_ceil(60), (seconds - limit).div_ceil(60));
        let about = say!("about {minutes} min", minutes);
        say!(
            "{about}, {over} min over the budget of {budget} min",
            about,
            over,
            budget
        )
    } else {
        let about = about(sheet, pace);
        say!("{about}, within the budget of {budget} min", about, budget)
    }
}

fn cut_words(sheet: &Sheet, cut: &Cut) -> String {
    let block = sheet.block(cut.block);
    let name = block.map_or_else(String::new, |block| block.exercise.said());
    let off = match cut.off {
        Off::Sets(sets) => many(usize::from(sets), "{n} set off", "{n} sets off"),
        Off::Whole => t("leave it out").to_owned(),
    };
    say!(
        "{name}: {off}, saves {time}",
        name,
        off,
        time = reading(cut.saves),
    )
}

/// The predicted time of a sheet; over its budget also what to shorten or cut, and a button that hands the shortened
/// sheet to `on_shorten`. Its version and time of writing are still those of `sheet`.
pub fn time_view(sheet: &Sheet, pace: Pace, on_shorten: Callback<Sheet>) -> AnyView {
    let said = pace.said() + " " + t("The warm-up list is not counted.");
    let mut inside = vec![
        line(
            "",
            "predicted",
            say!("Takes {length}.", length = against_budget(sheet, pace)),
        ),
        quiet(said),
    ];
    let made = sheet
        .budget_minutes
        .map(|budget| cuts(sheet, budget.get(), pace.change_over()))
        .unwrap_or_default();
    if !made.is_empty() {
        let short = apply(sheet, &made);
        let lines = made.iter().map(|cut| cut_words(sheet, cut).into_any());
        inside.push(quiet(t("What can be removed, the least important first:")));
        inside.push(list("", Some("cuts"), lines.collect()));
        let after = say!(
            "That makes it {length}.",
            length = against_budget(&short, pace),
        );
        inside.push(words("quiet", after));
        inside.push(button(
            "wide",
            "cuts-keep",
            t("Keep it shortened"),
            move || {
                on_shorten.run(short.clone());
            },
        ));
    }
    group(Some("sheet-time"), inside)
}
