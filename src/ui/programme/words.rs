//! What a programme says, in words.

use crate::programme::{LightWeek, Plan};
use crate::say;
use crate::sheet::SheetId;
use crate::ui::model::Model;
use crate::units::{WEEK, date, weekday};
use crate::words::{decimal, t};
use chrono::{DateTime, FixedOffset};

/// The name of a sheet, or that it is gone.
pub fn sheet_name(model: &Model, id: SheetId) -> String {
    model.sheet(id).map_or_else(
        || t("a sheet that was removed").to_owned(),
        |sheet| sheet.name.to_string(),
    )
}

/// How the sheets follow each other.
pub fn plan_said(model: &Model, plan: &Plan) -> String {
    match plan {
        Plan::Rotation(rotation) => {
            let names = rotation.sheets().iter();
            let names: Vec<String> = names.map(|id| sheet_name(model, *id)).collect();
            say!("{names}, and again", names = names.join(" → "))
        }
        Plan::Weekdays(days) => {
            let days = WEEK.map(weekday).zip(days.days());
            let days = days.filter_map(|(day, sheet)| Some((day, (*sheet)?)));
            let said: Vec<String> = days
                .map(|(day, sheet)| format!("{day} {}", sheet_name(model, sheet)))
                .collect();
            said.join(" · ")
        }
    }
}

/// When a light week comes, and how light it is.
pub fn light_said(light: &LightWeek, now: DateTime<FixedOffset>) -> String {
    let when = if light.is_now(now) {
        t("this week is light").to_owned()
    } else {
        say!(
            "the next begins on {day}",
            day = date(light.next_from(now).date())
        )
    };
    say!(
        "every {n} weeks one is light, with {load} of the load and {sets} of the work sets; {when}",
        n = light.every(),
        load = decimal(&light.load().to_string()),
        sets = decimal(&light.sets().to_string()),
        when,
    )
}
