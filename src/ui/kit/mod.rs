//! The kit: what stands in the garage; and the settings and data that belong to the phone.

mod data;
mod gear;
mod lists;
mod settings;
mod sound;

use crate::ui::stanchion::stanchion;
use leptos::prelude::*;

pub use data::import_file;
pub use settings::theme;
pub use sound::{settle as settle_sound, sound_on};

/// The kit and the settings.
#[component]
pub fn KitPlace() -> impl IntoView {
    // The lists are edited by rows; they are laid out anew only when the kit itself changes.
    let _ = stanchion();
    view! {
        <div class="page" data-part="kit">
            <h1>"Kit"</h1>
            <settings::Lifter/>
            <gear::Gear/>
            <sound::SoundSettings/>
            <settings::Looks/>
            <data::Data/>
            <settings::About/>
        </div>
    }
}
