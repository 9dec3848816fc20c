//! One sheet as it is written, and what it would propose today.

use crate::session::SessionId;
use crate::sheet::{Block, Group, LoadBasis, SetKind, Sets, Sheet, SheetId, SideMode};
use crate::strength::{Proposal, propose};
use crate::ui::place::Place;
use crate::ui::stanchion::stanchion;
use crate::units::Unit;
use leptos::prelude::*;

/// One line of a prescription in the trade's notation.
fn sets_line(sets: &Sets) -> String {
    let mut line = format!("{} × {}", sets.count, sets.target);
    match &sets.kind {
        SetKind::Work => {}
        SetKind::RampUp { shares } => {
            let shares: Vec<String> = shares.iter().map(ToString::to_string).collect();
            line = format!("ramp-up {line} at {}", shares.join(", "));
        }
        SetKind::BackOff { share } => line = format!("back-off {line} at {share} of the top set"),
        SetKind::Drop { drops, keep } => line = format!("{line}, then {drops} drops to {keep}"),
        SetKind::Cluster { portions, pause } => {
            line = format!("{line}, {portions} portions with {pause} s between");
        }
        SetKind::ToFailure => line.push_str(" to technical failure"),
    }
    if !sets.reserve.is_empty() {
        let reserves: Vec<String> = sets.reserve.iter().map(ToString::to_string).collect();
        line.push_str(&format!(", {} in reserve", reserves.join(", ")));
    }
    line
}

fn block_head(block: &Block) -> String {
    let mut parts = vec![block.role.name().to_owned()];
    if let Some(tempo) = block.tempo {
        parts.push(format!("tempo {tempo}"));
    }
    match block.sides {
        SideMode::Both => {}
        SideMode::EachInTurn => parts.push("each side in turn".to_owned()),
        SideMode::OneHolds => parts.push("one side holds while the other works".to_owned()),
    }
    match &block.basis {
        LoadBasis::External | LoadBasis::Unloaded => {}
        LoadBasis::BodyMassPlus => parts.push("body mass and more".to_owned()),
        LoadBasis::BodyMassMinus => parts.push("body mass less assistance".to_owned()),
        LoadBasis::BodyMassShare(share) => parts.push(format!("{share} of body mass")),
        LoadBasis::Band(label) => parts.push(format!("{label} band")),
    }
    parts.push(format!("rest {}", block.rest.clock()));
    parts.join(" · ")
}

fn proposal_line(proposal: &Proposal, unit: Unit) -> String {
    match proposal.load {
        Some(load) => format!("{}: {}", load.shown(unit), proposal.because.said(unit)),
        None => proposal.because.said(unit),
    }
}

/// One sheet.
#[component]
pub fn SheetPlace(id: SheetId) -> impl IntoView {
    let app = stanchion();
    let shown = app.of(move |model| {
        let sheet = model.sheet(id)?.clone();
        let proposals: Vec<Proposal> = sheet
            .blocks()
            .map(|block| propose(block, model.history(&block.exercise.id), &model.kit))
            .collect();
        let last: Option<SessionId> = model
            .headings
            .iter()
            .find(|heading| heading.sheet == sheet.name)
            .map(|heading| heading.session);
        Some((sheet, proposals, last, model.unit(), model.in_session()))
    });
    move || match shown.get() {
        None => view! {
            <div class="page">
                <h1>"No such sheet"</h1>
                <p><a href=Place::Sheets.href()>"All sheets"</a></p>
            </div>
        }
        .into_any(),
        Some((sheet, proposals, last, unit, in_session)) => view! {
            <div class="page" data-part="sheet-look">
                <p><a href=Place::Sheets.href()>"All sheets"</a></p>
                <h1>{sheet.name.to_string()}</h1>
                <Show when=move || !in_session>
                    <button
                        class="wide strong"
                        data-part="begin"
                        on:click=move |_| {
                            app.sound.with_value(crate::device::sound::Sound::unlock);
                            app.begin(id);
                        }
                    >
                        "Begin"
                    </button>
                </Show>
                <Written sheet proposals unit/>
                {last.map(|session| view! {
                    <p><a href=Place::Session(session).href()>"The last time"</a></p>
                })}
            </div>
        }
        .into_any(),
    }
}

#[component]
fn Written(sheet: Sheet, proposals: Vec<Proposal>, unit: Unit) -> impl IntoView {
    let warm_up = (!sheet.warm_up.is_empty()).then(|| view! {
        <h2>"Warm-up"</h2>
        <ul>{sheet.warm_up.iter().map(|line| view! { <li>{line.to_string()}</li> }).collect_view()}</ul>
    });
    let notes = (!sheet.notes.is_empty())
        .then(|| view! { <p class="quiet">{sheet.notes.as_str().to_owned()}</p> });
    let groups = sheet
        .groups
        .iter()
        .map(|group| {
            let together = match group {
                Group::Straight(_) => None,
                Group::Pair { between, .. } => Some(format!("pair, {} s between", between)),
                Group::Circuit { between, .. } => Some(format!("circuit, {} s between", between)),
            };
            let blocks = group
                .blocks()
                .iter()
                .map(|block| {
                    let proposal = proposals.iter().find(|proposal| proposal.block == block.id);
                    view! { <Written1 block=block.clone() line=proposal.map(|p| proposal_line(p, unit))/> }
                })
                .collect_view();
            view! {
                <section class="group">
                    {together.map(|together| view! { <p class="quiet">{together}</p> })}
                    {blocks}
                </section>
            }
        })
        .collect_view();
    view! {
        {notes}
        {warm_up}
        {groups}
    }
}

/// One block as written.
#[component]
fn Written1(block: Block, line: Option<String>) -> impl IntoView {
    view! {
        <article class="block" data-part="block">
            <h2>{block.exercise.name.to_string()}</h2>
            <p class="quiet">{block_head(&block)}</p>
            <ul class="lines">
                {block.sets.iter().map(|sets| view! { <li>{sets_line(sets)}</li> }).collect_view()}
            </ul>
            {line.map(|line| view! { <p class="because" data-part="because">{line}</p> })}
            {block.cautions.iter().map(|line| view! { <p class="caution">{line.to_string()}</p> }).collect_view()}
        </article>
    }
}
