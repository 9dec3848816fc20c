//! How a sheet is begun today: as usual, light in a light week, or light because nothing was gained for weeks.

use crate::device::sound::Sound;
use crate::programme::{Lately, LightWeek, Relief, relief};
use crate::say;
use crate::sheet::{Sheet, SheetId};
use crate::ui::model::{Model, Pairing};
use crate::ui::parts::{button, line};
use crate::ui::people::ask;
use crate::ui::stanchion::Stanchion;
use crate::words::{decimal, t};
use chrono::{DateTime, FixedOffset};
use leptos::prelude::*;

/// How a sheet is begun today.
#[derive(Clone, PartialEq)]
pub struct Beginning {
    /// The light week that the programme has for it now: it is begun so.
    pub light: Option<LightWeek>,
    /// A light session that is offered beside the usual one.
    relief: Option<Relief>,
}

impl Beginning {
    /// How `sheet` is begun; from the summaries and headings alone, so nothing of the history is read.
    pub fn of(model: &Model, sheet: &Sheet, now: DateTime<FixedOffset>) -> Beginning {
        let programme = model.programme();
        let planned = programme.filter(|programme| programme.plan.sheets().contains(&sheet.id));
        let light = planned.and_then(|programme| programme.light_now(now));
        let lightened: Vec<DateTime<FixedOffset>> = model
            .headings
            .iter()
            .filter(|heading| heading.light && heading.sheet_id == sheet.id)
            .map(|heading| heading.began)
            .collect();
        let lately = Lately {
            history: &|exercise| model.history(exercise),
            lightened: &lightened,
            curve: model.curve(),
            now,
        };
        let how = programme.and_then(|programme| programme.light);
        let how = how.unwrap_or_else(|| LightWeek::usual(now));
        let relief = match light {
            Some(_) => None,
            None => relief(sheet, how, &lately),
        };
        Beginning { light, relief }
    }

    /// Begins the sheet, to be called in a tap.
    pub fn begin(&self, app: Stanchion, id: SheetId) {
        begin(app, id, self.light);
    }

    /// Why it is light, and the tap that begins it the other way; nothing where it is begun as usual.
    pub fn beside(&self, app: Stanchion, id: SheetId) -> Vec<AnyView> {
        if let Some(light) = self.light {
            let said = say!(
                "A light week: {load} of the load, {sets} of the work sets.",
                load = decimal(&light.load().to_string()),
                sets = decimal(&light.sets().to_string()),
            );
            let usual = button("plain", "begin-usual", t("as usual instead"), move || {
                begin(app, id, None);
            });
            return vec![line("quiet", "offer-light", said), usual];
        }
        let Some(relief) = &self.relief else {
            return Vec::new();
        };
        let light = relief.light;
        vec![
            line("because", "light-because", relief.said()),
            button("wide", "begin-light", t("Begin it light"), move || {
                begin(app, id, Some(light));
            }),
        ]
    }
}

fn begin(app: Stanchion, id: SheetId, light: Option<LightWeek>) {
    // Inside the tap, or the browser stays silent.
    app.sound.with_value(Sound::unlock);
    // Whoever was chosen may have been removed since.
    let with = app.model.with_untracked(|model| {
        let with = model.with?;
        model.people.get(with).map(|person| person.id)
    });
    if let Some(with) = with {
        return ask(app, with, Pairing { sheet: id, light });
    }
    match light {
        Some(light) => app.begin_light(id, light),
        None => app.begin(id),
    }
}
