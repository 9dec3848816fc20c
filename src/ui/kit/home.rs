//! The home screen: how the app gets there, and why.

use crate::device::install::{Install, Way};
use crate::ui::parts::{button, dynamic, line, section};
use crate::ui::stanchion::Stanchion;
use crate::words::t;
use leptos::prelude::*;

/// What the person can do.
fn words_for(way: Way) -> &'static str {
    match way {
        Way::There => t(
            "Stanchion is on this phone's home screen and was opened from there. What is stored is kept apart from the browser.",
        ),
        Way::Offered => t(
            "On the home screen Stanchion opens like any app, without a network, and what is stored is kept longer.",
        ),
        Way::ShareSheet => t(
            "To put Stanchion on the home screen: open the browser's share sheet and choose Add to Home Screen. Browsers of \
             this kind clear a page that was not used for a week, but not what was opened from the home screen. What \
             was logged here does not go along: export it first and import it there.",
        ),
        Way::Menu => t(
            "To put Stanchion on the home screen: open the browser's menu and choose Install or Add to Home screen, if it \
             is there. It then opens like any app, without a network.",
        ),
    }
}

/// The section.
pub fn home(app: Stanchion) -> AnyView {
    let inside = dynamic(move || {
        let way = app.home.get();
        let mut inside = vec![line("quiet", "home", words_for(way).to_owned())];
        if way == Way::Offered {
            inside.push(button(
                "wide",
                "home-add",
                t("Put it on the home screen"),
                move || {
                    app.install.with_value(Install::ask);
                    app.home.set(app.install.with_value(Install::way));
                },
            ));
        }
        inside.into_any()
    });
    section(None, t("Home screen"), vec![inside])
}
