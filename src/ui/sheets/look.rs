//! One sheet as it is written, and what it would propose today.

use super::paper::paper;
use super::share::share;
use crate::device::sound::Sound;
use crate::session::SessionId;
use crate::sheet::{Block, Group, LoadBasis, SetKind, Sets, Sheet, SheetId, SideMode};
use crate::strength::{Proposal, propose};
use crate::ui::model::Model;
use crate::ui::parts::{
    button, counted, dynamic, group, h1, h2, line, list, page, quiet, way, words,
};
use crate::ui::place::Place;
use crate::ui::stanchion::{Stanchion, stanchion};
use crate::units::Unit;
use leptos::prelude::*;

/// One line of a prescription in the trade's notation.
pub(super) fn sets_line(sets: &Sets) -> String {
    let mut line = format!("{} × {}", sets.count, sets.target);
    match &sets.kind {
        SetKind::Work => {}
        SetKind::RampUp { shares } => {
            let shares: Vec<String> = shares.iter().map(ToString::to_string).collect();
            line = format!("ramp-up {line} at {}", shares.join(", "));
        }
        SetKind::BackOff { share } => line = format!("back-off {line} at {share} of the top set"),
        SetKind::Drop { drops, keep } => {
            let drops = counted(usize::from(*drops), "drop");
            line = format!("{line}, then {drops} to {keep}");
        }
        SetKind::Cluster { portions, pause } => {
            let portions = counted(usize::from(*portions), "portion");
            line = format!("{line}, {portions} with {pause} s between");
        }
        SetKind::ToFailure => line.push_str(" to technical failure"),
    }
    if !sets.reserve.is_empty() {
        let reserves: Vec<String> = sets.reserve.iter().map(ToString::to_string).collect();
        line.push_str(&format!(", {} in reserve", reserves.join(", ")));
    }
    line
}

pub(super) fn block_head(block: &Block) -> String {
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
    let said = proposal.because.said(unit);
    match proposal.load.map(|load| load.shown(unit)) {
        // Most reasons end in the load itself.
        Some(load) if !said.contains(&load) => format!("{load}: {said}"),
        _ => said,
    }
}

/// What is shown of a sheet.
#[derive(Clone, PartialEq)]
struct Shown {
    sheet: Sheet,
    proposals: Vec<Proposal>,
    last: Option<SessionId>,
    unit: Unit,
    in_session: bool,
}

fn shown(model: &Model, id: SheetId) -> Option<Shown> {
    let sheet = model.sheet(id)?.clone();
    let proposals = sheet
        .blocks()
        .map(|block| propose(block, model.history(&block.exercise.id), &model.kit))
        .collect();
    let last = model
        .headings
        .iter()
        .find(|heading| heading.sheet_id == sheet.id)
        .map(|heading| heading.session);
    Some(Shown {
        sheet,
        proposals,
        last,
        unit: model.unit(),
        in_session: model.in_session(),
    })
}

/// One sheet.
#[component]
pub fn SheetPlace(id: SheetId) -> impl IntoView {
    let app = stanchion();
    let shown = app.of(move |model| shown(model, id));
    dynamic(move || match shown.get() {
        None => nowhere(),
        Some(shown) => look(app, id, shown),
    })
}

fn all_sheets() -> AnyView {
    way(Place::Sheets.href(), "All sheets")
}

fn nowhere() -> AnyView {
    let inside = vec![h1("No such sheet"), all_sheets()];
    view! { <div class="page">{inside}</div> }.into_any()
}

fn look(app: Stanchion, id: SheetId, shown: Shown) -> AnyView {
    let with_loads = RwSignal::new(false);
    let mut inside = vec![
        paper(&shown.sheet, with_loads),
        all_sheets(),
        h1(shown.sheet.name.to_string()),
    ];
    if !shown.in_session {
        inside.push(button("wide strong", "begin", "Begin", move || {
            app.sound.with_value(Sound::unlock);
            app.begin(id);
        }));
    }
    inside.push(button("wide", "change-sheet", "Change it", move || {
        app.go(Place::Write(Some(id)));
    }));
    inside.push(share(app, &shown.sheet, with_loads));
    inside.extend(written(&shown));
    inside.extend(
        shown
            .last
            .map(|session| way(Place::Session(session).href(), "The last time")),
    );
    page("sheet-look", inside)
}

/// A sheet as it is written, without what it would propose.
pub(super) fn bare(sheet: Sheet, unit: Unit) -> Vec<AnyView> {
    written(&Shown {
        sheet,
        proposals: Vec::new(),
        last: None,
        unit,
        in_session: false,
    })
}

/// The sheet as it is written.
fn written(shown: &Shown) -> Vec<AnyView> {
    let sheet = &shown.sheet;
    let mut inside = Vec::new();
    if !sheet.notes.is_empty() {
        inside.push(quiet(sheet.notes.as_str().to_owned()));
    }
    if !sheet.warm_up.is_empty() {
        inside.push(h2("Warm-up"));
        inside.push(lines("", sheet.warm_up.iter().map(ToString::to_string)));
    }
    for a_group in &sheet.groups {
        let together = match a_group {
            Group::Straight(_) => None,
            Group::Pair { between, .. } => Some(format!("pair, {between} s between")),
            Group::Circuit { between, .. } => Some(format!("circuit, {between} s between")),
        };
        let mut blocks: Vec<AnyView> = together.map(quiet).into_iter().collect();
        for block in a_group.blocks() {
            let of_block = |proposal: &&Proposal| proposal.block == block.id;
            let proposal = shown.proposals.iter().find(of_block);
            let because = proposal.map(|proposal| proposal_line(proposal, shown.unit));
            blocks.push(block_as_written(block, because));
        }
        inside.push(group(None, blocks));
    }
    inside
}

fn lines(class: &'static str, lines: impl Iterator<Item = String>) -> AnyView {
    list(class, None, lines.map(IntoAny::into_any).collect())
}

fn block_as_written(block: &Block, because: Option<String>) -> AnyView {
    let mut inside = vec![
        h2(block.exercise.name.to_string()),
        quiet(block_head(block)),
        lines("lines", block.sets.iter().map(sets_line)),
    ];
    inside.extend(because.map(|because| line("because", "because", because)));
    let cautions = block.cautions.iter();
    inside.extend(cautions.map(|caution| words("caution", caution.to_string())));
    view! { <article class="block" data-part="block">{inside}</article> }.into_any()
}
