//! What stands in the garage: bars, plates, handles, dumbbells, stacks, bands, and the smallest step of all else.

use super::lists::{Adder, Row};
use crate::kit::{Bar, Handle, Kit, KitParts, PlatePairs, Stack};
use crate::sheet::Line;
use crate::ui::model::Model;
use crate::ui::stanchion::{Stanchion, stanchion};
use crate::units::{Load, Unit};
use leptos::prelude::*;

/// Changes the kit; what does not hold together is refused in words.
fn change(app: Stanchion, edit: impl FnOnce(&mut KitParts)) -> Result<(), String> {
    let mut parts = app.model.with_untracked(|model| model.kit.parts().clone());
    edit(&mut parts);
    let kit = Kit::new(parts).map_err(|error| error.to_string())?;
    app.keep_kit(kit);
    Ok(())
}

/// Changes the kit by taking something away, which cannot fail.
fn take(app: Stanchion, edit: impl FnOnce(&mut KitParts)) {
    if let Err(why) = change(app, edit) {
        app.complain(why);
    }
}

/// Reads a load that must not be zero.
fn mass(text: &str, unit: Unit) -> Result<Load, String> {
    let load = Load::parse_in(text, unit).map_err(|error| error.to_string())?;
    if load.is_zero() {
        Err("a mass is above 0".to_owned())
    } else {
        Ok(load)
    }
}

/// Reads a name.
fn name(text: &str) -> Result<Line, String> {
    Line::new(text).map_err(|error| error.to_string())
}

/// Everything in the garage.
#[component]
pub fn Gear() -> impl IntoView {
    view! {
        <Bars/>
        <Plates/>
        <Dumbbells/>
        <Handles/>
        <Stacks/>
        <Bands/>
        <SmallestStep/>
    }
}

#[component]
fn Bars() -> impl IntoView {
    let app = stanchion();
    let unit = app.of(Model::unit);
    let bars = app.of(|model| model.kit.parts().bars.clone());
    view! {
        <section class="group" data-part="bars">
            <h2>"Bars"</h2>
            <p class="quiet">"Weigh yours with its collars: bars of home gyms differ from what is written on them."</p>
            <ul class="rows">
                {move || bars.get().into_iter().enumerate().map(|(i, bar)| view! {
                    <Row
                        text=format!("{} · {}", bar.name, bar.mass.shown(unit.get()))
                        remove=move || take(app, |kit| { kit.bars.remove(i); })
                    />
                }).collect_view()}
            </ul>
            <Adder
                part="bar"
                fields=vec!["name", "mass"]
                add=move |typed| {
                    let bar = Bar { name: name(&typed[0])?, mass: mass(&typed[1], unit.get_untracked())? };
                    change(app, |kit| kit.bars.push(bar))
                }
            />
        </section>
    }
}

#[component]
fn Plates() -> impl IntoView {
    let app = stanchion();
    let unit = app.of(Model::unit);
    let plates = app.of(|model| model.kit.parts().plates.clone());
    view! {
        <section class="group" data-part="plates">
            <h2>"Plates, in pairs"</h2>
            <ul class="rows">
                {move || plates.get().into_iter().enumerate().map(|(i, plate)| view! {
                    <Row
                        text=format!("{} · {} pairs", plate.mass.shown(unit.get()), plate.pairs)
                        remove=move || take(app, |kit| { kit.plates.remove(i); })
                    />
                }).collect_view()}
            </ul>
            <Adder
                part="plate"
                fields=vec!["mass of one", "pairs"]
                add=move |typed| {
                    let pairs = typed[1].trim().parse().map_err(|_| "pairs are a number from 1 to 20".to_owned())?;
                    let plate = PlatePairs { mass: mass(&typed[0], unit.get_untracked())?, pairs };
                    change(app, |kit| {
                        kit.plates.retain(|other| other.mass != plate.mass);
                        kit.plates.push(plate);
                    })
                }
            />
        </section>
    }
}

#[component]
fn Dumbbells() -> impl IntoView {
    let app = stanchion();
    let unit = app.of(Model::unit);
    let dumbbells = app.of(|model| model.kit.parts().dumbbells.clone());
    view! {
        <section class="group" data-part="dumbbells">
            <h2>"Dumbbells and kettlebells"</h2>
            <ul class="rows">
                {move || dumbbells.get().into_iter().enumerate().map(|(i, load)| view! {
                    <Row
                        text=load.shown(unit.get())
                        remove=move || take(app, |kit| { kit.dumbbells.remove(i); })
                    />
                }).collect_view()}
            </ul>
            <Adder
                part="dumbbell"
                fields=vec!["mass of one"]
                add=move |typed| {
                    let load = mass(&typed[0], unit.get_untracked())?;
                    change(app, |kit| {
                        kit.dumbbells.retain(|other| *other != load);
                        kit.dumbbells.push(load);
                    })
                }
            />
        </section>
    }
}

#[component]
fn Handles() -> impl IntoView {
    let app = stanchion();
    let unit = app.of(Model::unit);
    let handle = app.of(|model| model.kit.parts().handles.clone());
    view! {
        <section class="group" data-part="handles">
            <h2>"Loadable handles"</h2>
            <ul class="rows">
                {move || handle.get().map(|handle| view! {
                    <Row
                        text=format!("{} × {}", handle.count, handle.mass.shown(unit.get()))
                        remove=move || take(app, |kit| kit.handles = None)
                    />
                })}
            </ul>
            <Adder
                part="handle"
                fields=vec!["mass of one", "count"]
                add=move |typed| {
                    let count = typed[1].trim().parse().map_err(|_| "handles are 1 or 2".to_owned())?;
                    let mass = mass(&typed[0], unit.get_untracked())?;
                    change(app, |kit| kit.handles = Some(Handle { mass, count }))
                }
            />
        </section>
    }
}

#[component]
fn Stacks() -> impl IntoView {
    let app = stanchion();
    let unit = app.of(Model::unit);
    let stacks = app.of(|model| model.kit.parts().stacks.clone());
    view! {
        <section class="group" data-part="stacks">
            <h2>"Weight stacks"</h2>
            <ul class="rows">
                {move || stacks.get().into_iter().enumerate().map(|(i, stack)| view! {
                    <Row
                        text=format!(
                            "{} · {} to {} by {}",
                            stack.name,
                            stack.first.figure(unit.get()),
                            stack.last.shown(unit.get()),
                            stack.step.figure(unit.get()),
                        )
                        remove=move || take(app, |kit| { kit.stacks.remove(i); })
                    />
                }).collect_view()}
            </ul>
            <Adder
                part="stack"
                fields=vec!["name", "first", "step", "last"]
                add=move |typed| {
                    let unit = unit.get_untracked();
                    let stack = Stack {
                        name: name(&typed[0])?,
                        first: mass(&typed[1], unit)?,
                        step: mass(&typed[2], unit)?,
                        last: mass(&typed[3], unit)?,
                        add_ons: Vec::new(),
                    };
                    change(app, |kit| kit.stacks.push(stack))
                }
            />
        </section>
    }
}

#[component]
fn Bands() -> impl IntoView {
    let app = stanchion();
    let bands = app.of(|model| model.kit.parts().bands.clone());
    view! {
        <section class="group" data-part="bands">
            <h2>"Bands"</h2>
            <ul class="rows">
                {move || bands.get().into_iter().enumerate().map(|(i, band)| view! {
                    <Row text=band.to_string() remove=move || take(app, |kit| { kit.bands.remove(i); })/>
                }).collect_view()}
            </ul>
            <Adder
                part="band"
                fields=vec!["label"]
                add=move |typed| {
                    let band = name(&typed[0])?;
                    change(app, |kit| kit.bands.push(band))
                }
            />
        </section>
    }
}

#[component]
fn SmallestStep() -> impl IntoView {
    let app = stanchion();
    let unit = app.of(Model::unit);
    let step = app.of(|model| model.kit.parts().smallest_step);
    let wrong = RwSignal::new(None::<String>);
    let typed = move |text: String| {
        let kept = mass(&text, unit.get_untracked())
            .and_then(|step| change(app, |kit| kit.smallest_step = step));
        wrong.set(kept.err());
    };
    view! {
        <section class="group">
            <h2>"Smallest step"</h2>
            <label class="field">
                <span>{move || format!("of load hung on the body, or of anything else, {}", unit.get())}</span>
                <input
                    type="text"
                    inputmode="decimal"
                    data-part="smallest-step"
                    prop:value=move || step.get().figure(unit.get())
                    on:change=move |event| typed(event_target_value(&event))
                />
            </label>
            <p class="wrong-word" role="alert">{move || wrong.get()}</p>
        </section>
    }
}
