//! The kit: what stands in the garage; and the settings and data that belong to the phone.

mod data;
mod erase;
mod estimate;
mod gear;
mod hearing;
mod home;
mod language;
mod lists;
mod looks;
mod settings;
mod sound;
mod state;
mod things;

use crate::ui::parts::{h1, page};
use crate::ui::stanchion::stanchion;
use crate::words::t;
use leptos::prelude::*;

pub use hearing::{Hearing, hearing, loudness, settle as settle_sound};
pub use looks::{competition_discs, theme};
pub use settings::show_in;
pub use state::state_place;

/// The kit and the settings.
pub fn kit_place() -> AnyView {
    let app = stanchion();
    let mut inside = vec![h1(t("Kit")), settings::lifter(app)];
    inside.extend(gear::gear(app));
    inside.extend([
        estimate::estimate(app),
        sound::sound_settings(app),
        language::language(app),
        looks::looks(),
    ]);
    // Not while another one's file is looked at: what would be said and exported here is theirs, what is removed one's own.
    if app.model.with_untracked(|model| model.looks_at.is_none()) {
        inside.extend([
            settings::people(),
            data::data(app),
            home::home(app),
            erase::erase(app),
        ]);
    }
    inside.push(settings::about());
    page("kit", inside)
}
