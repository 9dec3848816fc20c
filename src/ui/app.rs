//! The app: the four places and what stands above all of them.

use super::floor::FloorPlace;
use super::kit::KitPlace;
use super::ledger::{LedgerPlace, SessionPlace};
use super::model::{Keeping, Stage};
use super::place::Place;
use super::sheets::{SheetPlace, SheetsPlace};
use super::stanchion::Stanchion;
use super::welcome::Welcome;
use super::{cueing, start};
use crate::device::dom;
use leptos::prelude::*;

/// The whole app.
#[component]
pub fn App() -> impl IntoView {
    let app = Stanchion::new();
    provide_context(app);
    cueing::run(app);
    start::start(app);
    let stage = app.of(|model| model.stage);
    let place = app.of(|model| model.place);
    let unsaved = app.of(|model| (model.unsaved > 0).then(|| model.unsaved.to_string()));
    let on_floor = app.of(|model| model.place == Place::Floor && model.session.is_some());
    Effect::new(move |_| dom::set_theme(super::kit::theme().as_deref()));
    view! {
        {move || match stage.get() {
            Stage::Opening => ().into_any(),
            Stage::Welcome => view! { <Welcome/> }.into_any(),
            Stage::Open => view! {
                <div
                    class="app"
                    class:on-floor=move || on_floor.get()
                    data-unsaved=move || unsaved.get()
                >
                    <Banners/>
                    <main class="place" id="place" tabindex="-1" data-part="place">
                        {move || match place.get() {
                            Place::Floor => view! { <FloorPlace/> }.into_any(),
                            Place::Sheets => view! { <SheetsPlace/> }.into_any(),
                            Place::Sheet(id) => view! { <SheetPlace id/> }.into_any(),
                            Place::Ledger => view! { <LedgerPlace/> }.into_any(),
                            Place::Session(id) => view! { <SessionPlace id/> }.into_any(),
                            Place::Kit => view! { <KitPlace/> }.into_any(),
                        }}
                    </main>
                    <Places/>
                </div>
            }
            .into_any(),
        }}
    }
}

/// The way between the places.
#[component]
fn Places() -> impl IntoView {
    let app = super::stanchion::stanchion();
    let at = app.of(|model| model.place.main());
    let link = move |place: Place, name: &'static str| {
        view! {
            <a
                class="places-link"
                href=place.href()
                data-part=format!("go-{}", name.to_lowercase())
                aria-current=move || (at.get() == place).then_some("page")
            >
                {name}
            </a>
        }
    };
    view! {
        <nav class="places" aria-label="Places" data-part="places">
            {link(Place::Floor, "Floor")}
            {link(Place::Sheets, "Sheets")}
            {link(Place::Ledger, "Ledger")}
            {link(Place::Kit, "Kit")}
        </nav>
    }
}

/// What the person must know wherever they are: storage that fails, a message, an update.
#[component]
fn Banners() -> impl IntoView {
    let app = super::stanchion::stanchion();
    let keeping = app.of(|model| (model.keeping.clone(), model.unsaved));
    let notice = app.of(|model| model.notice.clone());
    let update = app.of(|model| model.update_waits && !model.in_session());
    view! {
        <div class="banners" role="status" data-part="banners">
            {move || match keeping.get() {
                (Keeping::Safe, _) => ().into_any(),
                (Keeping::Nothing(why), _) => view! {
                    <p class="banner wrong" data-part="not-kept">
                        <strong>"Nothing will be kept on this device. "</strong>
                        {why}
                        " You can train; before you close this page, export in "
                        <a href=Place::Kit.href()>"Kit"</a>
                        "."
                    </p>
                }
                .into_any(),
                (Keeping::Failing(why), unsaved) => view! {
                    <p class="banner wrong" data-part="not-saved">
                        <strong>{format!("{unsaved} not saved. ")}</strong>
                        {why}
                        <button class="plain" on:click=move |_| app.write_again()>"Try again"</button>
                    </p>
                }
                .into_any(),
            }}
            {move || notice.get().map(|notice| view! {
                <p class="banner" class:wrong=notice.wrong data-part="notice">
                    <span>{notice.text}</span>
                    <button
                        class="plain"
                        data-part="notice-close"
                        on:click=move |_| app.model.update(|model| model.notice = None)
                    >
                        "Close"
                    </button>
                </p>
            })}
            {move || update.get().then(|| view! {
                <p class="banner" data-part="update">
                    <span>"A new version is ready."</span>
                    <button
                        class="plain"
                        data-part="update-take"
                        on:click=move |_| app.worker.with_value(|worker| {
                            if let Some(worker) = worker { worker.take_over() }
                        })
                    >
                        "Take it now"
                    </button>
                </p>
            })}
        </div>
    }
}
