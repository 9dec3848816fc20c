//! The app: the four places and what stands above all of them.

use super::away::{Form, export, look};
use super::body::body_place;
use super::coach::{self, compare_place};
use super::exercises::{exercise_place, exercises_place, write_exercise_place};
use super::floor::floor_place;
use super::history::{histories_place, history_place};
use super::kit::{kit_place, state_place};
use super::ledger::{ledger_place, report_place, session_place, weeks_place};
use super::model::{Keeping, Notice, Stage};
use super::parts::{apart, button, dynamic, el, h1, page, when};
use super::people::{bar, lifters_place};
use super::place::Place;
use super::programme::programme_place;
use super::sheets::{
    draft_block_place, draft_exercise_place, draft_place, shared_place, sheet_place, sheets_place,
    write_place,
};
use super::stanchion::Stanchion;
use super::unsaved::waits;
use super::wanted::Ahead;
use super::welcome::welcome;
use super::year::year_place;
use super::{cueing, looking, start};
use crate::device::sound::{Sound, State};
use crate::device::{dom, rest};
use crate::say;
use crate::ui::seen::{Seen, whenever};
use crate::words::t;
use leptos::prelude::*;

/// The whole app, on what was [read ahead](super::read_ahead).
pub fn app(ahead: Ahead) -> impl IntoView {
    let app = Stanchion::new();
    provide_context(app);
    cueing::run(app);
    looking::run(app);
    start::start(app, ahead);
    whenever(move || dom::set_theme(super::kit::theme().as_deref()));
    // Another one's ledger is another app: nothing of a screen goes over.
    let stage = app.of(|model| (model.stage, model.looks_at.clone()));
    let stages = dynamic(move || match stage.get().0 {
        Stage::Opening => ().into_any(),
        Stage::Welcome => untrack(welcome),
        Stage::Open => open(app),
    });
    vec![stages, look(app)]
}

/// The app in use: banners, the place one is at, and the way to the others.
fn open(app: Stanchion) -> AnyView {
    let at = app.of(|model| model.place.clone());
    let on_floor = app.of(|model| model.place == Place::Floor && model.session.is_some());
    let unsaved = app
        .unsaved
        .seen(|unsaved| (*unsaved > 0).then(|| unsaved.to_string()));
    // What a place reads while it is made is not followed: it is made once, and what changes in it follows by itself.
    let place = dynamic(move || {
        let at = at.get();
        let is_here = at == Place::Floor || app.whole.get();
        untrack(move || if is_here { place_of(at) } else { coming(&at) })
    });
    let banners = vec![banners(app), bar(app)];
    let places = places(app);
    el("div")
        .follow("class", move || {
            if on_floor.get() {
                "app on-floor"
            } else {
                "app"
            }
        })
        .follow("data-unsaved", move || unsaved.get())
        .child(banners)
        .child(
            el("main")
                .class("place")
                .set("id", "place")
                .set("tabindex", "-1")
                .part("place")
                .child(place),
        )
        .child(places)
        .view()
}

/// Said until a place is there: all but the floor come with the rest of the app.
fn coming(at: &Place) -> AnyView {
    rest::bring();
    let name = match at.main() {
        Place::Sheets => t("Sheets"),
        Place::Ledger => t("Ledger"),
        _ => t("Kit"),
    };
    let text = t("The rest of the app is being loaded; the floor is ready.");
    let said = el("p").set("role", "status").part("coming").child(text);
    page("coming-place", vec![h1(name), said.view()])
}

/// The place that one is at.
fn place_of(at: Place) -> AnyView {
    match at {
        Place::Floor => apart(floor_place),
        Place::Sheets => apart(sheets_place),
        Place::Sheet(id) => apart(|| sheet_place(id)),
        Place::Write(id) => apart(|| write_place(id)),
        Place::Exercises => apart(exercises_place),
        Place::Exercise(id) => apart(|| exercise_place(id)),
        Place::WriteExercise(id) => apart(|| write_exercise_place(id)),
        Place::Programme => apart(programme_place),
        Place::Draft(id) => apart(|| draft_place(id)),
        Place::DraftBlock(sheet, block) => apart(|| draft_block_place(sheet, block)),
        Place::DraftExercise(sheet, block) => apart(|| draft_exercise_place(sheet, block)),
        Place::Shared => apart(shared_place),
        Place::Ledger => apart(ledger_place),
        Place::Compare => apart(compare_place),
        Place::Session(id) => apart(|| session_place(id)),
        Place::Histories => apart(histories_place),
        Place::History(id) => apart(|| history_place(id)),
        Place::Body => apart(body_place),
        Place::Year(year) => apart(|| year_place(year)),
        Place::Weeks => apart(weeks_place),
        Place::Report => apart(report_place),
        Place::Kit => apart(kit_place),
        Place::Lifters => apart(lifters_place),
        Place::State => apart(state_place),
    }
}

/// The way between the places.
fn places(app: Stanchion) -> AnyView {
    let at = app.of(|model| model.place.main());
    let links = vec![
        way_to(at, Place::Floor, "go-floor", t("Floor")),
        way_to(at, Place::Sheets, "go-sheets", t("Sheets")),
        way_to(at, Place::Ledger, "go-ledger", t("Ledger")),
        way_to(at, Place::Kit, "go-kit", t("Kit")),
    ];
    el("nav")
        .class("places")
        .set("aria-label", t("Places"))
        .part("places")
        .child(links)
        .view()
}

fn way_to(at: Seen<Place>, place: Place, part: &'static str, name: &'static str) -> AnyView {
    let href = place.href();
    let current = move || (at.get() == place).then_some("page");
    el("a")
        .class("places-link")
        .set("href", href)
        .part(part)
        .follow("aria-current", current)
        .child(name)
        .view()
}

/// A banner with something to tap behind its text.
pub fn banner(part: &'static str, wrong: bool, text: String, act: AnyView) -> AnyView {
    banner_of(part, wrong, el("span").child(text).view(), act)
}

fn banner_of(part: &'static str, wrong: bool, said: AnyView, act: AnyView) -> AnyView {
    let class = if wrong { "banner wrong" } else { "banner" };
    el("div")
        .class(class)
        .part(part)
        .child(said)
        .child(act)
        .view()
}

/// What the person must know wherever they are: storage that fails, a message, an update.
fn banners(app: Stanchion) -> AnyView {
    let keeping = app.of(|model| model.keeping.clone());
    let notice = app.of(|model| model.notice.clone());
    let follows = app.of(|model| model.follows);
    let update = app.of(|model| model.update_waits && !model.any_in_session());
    // Who trains needs the room for the set: why is folded.
    let brief = app.of(|model| model.place == Place::Floor && model.in_session());
    let inside = vec![
        dynamic(move || {
            let keeping = keeping.get();
            // How much waits stands only there; elsewhere it is not followed.
            let fails = matches!(keeping, Keeping::Failing(_));
            let unsaved = if fails { app.unsaved.get() } else { 0 };
            of_keeping(app, keeping, unsaved, brief.get())
        }),
        dynamic(move || match notice.get() {
            Some(Notice { text, wrong }) => banner("notice", wrong, text, close_notice(app)),
            None => ().into_any(),
        }),
        coach::looking(app),
        when(app.unheard, move || unheard(app)),
        when(follows, move || in_use_elsewhere(app)),
        when(update, move || {
            banner(
                "update",
                false,
                t("A new version is ready.").to_owned(),
                take_update(app),
            )
        }),
    ];
    el("div")
        .class("banners")
        .set("role", "status")
        .part("banners")
        .child(inside)
        .view()
}

fn of_keeping(app: Stanchion, keeping: Keeping, unsaved: usize, brief: bool) -> AnyView {
    match keeping {
        Keeping::Safe => ().into_any(),
        Keeping::Nothing(why) => {
            let text = say!(
                "Nothing new will be kept on this phone. {why} You can train; before you close this page, export.",
                why
            );
            // Folded and unfolded it says the same: a reader does not say it again with each change of place.
            let folded = el("details")
                .set("open", !brief)
                .child(el("summary").child(t("Not kept on this phone.")))
                .child(text);
            banner_of("not-kept", true, folded.view(), export_now(app))
        }
        // What could not be read at the start; nothing waits.
        Keeping::Failing(why) if unsaved == 0 => banner("not-saved", true, why, export_now(app)),
        Keeping::Failing(why) => {
            let keep = app.keep();
            let what = app
                .model
                .with_untracked(|model| waits(model, &keep, unsaved));
            let again = button("plain", "write-again", t("Try again"), move || {
                app.write_again()
            });
            let act = vec![again, export_now(app)].into_any();
            banner("not-saved", true, format!("{what} {why}"), act)
        }
    }
}

/// Cues are under way that cannot be heard; any tap may bring the sound back, this one says so.
fn unheard(app: Stanchion) -> AnyView {
    let inside = match app.sound.with_value(Sound::state) {
        State::Absent => t("No sound in this browser: the board counts.").into_any(),
        _ => button("plain", "sound-again", t("No sound: tap"), move || {
            app.sound.with_value(Sound::unlock);
        }),
    };
    el("div")
        .class("banner wrong loud")
        .part("no-sound")
        .child(inside)
        .view()
}

fn export_now(app: Stanchion) -> AnyView {
    button("plain", "export-now", t("Export now"), move || {
        export(app, Form::Everything, || {});
    })
}

fn close_notice(app: Stanchion) -> AnyView {
    button("plain", "notice-close", t("Close"), move || {
        app.model.update(|model| model.notice = None)
    })
}

/// Another tab writes: that, and the way to do it here.
pub fn in_use_elsewhere(app: Stanchion) -> AnyView {
    let text = t("Stanchion is in use in another tab or window; here you can look.").to_owned();
    let take_over = button("plain", "take-over", t("Take over here"), move || {
        app.take_over();
    });
    banner("follows", true, text, take_over)
}

fn take_update(app: Stanchion) -> AnyView {
    button("plain", "update-take", t("Take it now"), move || {
        app.worker.with_value(|worker| {
            if let Some(worker) = worker {
                worker.take_over();
            }
        });
    })
}
