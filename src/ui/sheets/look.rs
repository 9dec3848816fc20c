//! One sheet as it is written, and what it would propose today.

use super::order::order_view;
use super::paper::paper;
use super::share::share;
use super::time::{reading, time_view};
use crate::draft::Draft;
use crate::ledger::Pace;
use crate::say;
use crate::session::SessionId;
use crate::sheet::{Block, BlockId, Group, Prediction, SetKind, Sheet, SheetId};
use crate::strength::{
    Foretold, Known, Proposal, Strength, body_mass_words, lacks_body_mass, moved_alike,
    plateau_said, propose,
};
use crate::ui::floor::Beginning;
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{button, dynamic, el, group, h1, h2, line, list, page, quiet, way, words};
use crate::ui::place::Place;
use crate::ui::sheets::words::{block_head, rule_line, sets_line};
use crate::ui::stanchion::{Stanchion, moment, stanchion};
use crate::units::{Load, Unit};
use crate::words::t;
use chrono::{DateTime, FixedOffset};
use leptos::prelude::*;

/// What the estimate says of a block.
#[derive(Clone, PartialEq)]
struct Told {
    block: BlockId,
    /// Its first work set.
    set: Foretold,
    /// Where the last weeks do not support it.
    caution: Option<&'static str>,
    /// That nothing was gained for weeks.
    plateau: Option<String>,
}

/// What is shown of a sheet.
#[derive(Clone, PartialEq)]
struct Shown {
    sheet: Sheet,
    proposals: Vec<Proposal>,
    foretold: Vec<Told>,
    last: Option<SessionId>,
    unit: Unit,
    pace: Pace,
    /// How it is begun today; none while a session is under way.
    beginning: Option<Beginning>,
    /// True while another one's ledger is looked at.
    looks: bool,
    body_mass: Option<Load>,
}

/// As of `now`: of another one the page would be another one, and a panel that is open on it would close.
fn shown(model: &Model, id: SheetId, now: DateTime<FixedOffset>) -> Option<Shown> {
    let sheet = model.sheet(id)?.clone();
    let looks = model.looks_at.is_some();
    // One's own history says nothing of another one's loads.
    let known = looks || sheet.written_for.is_none();
    let proposals: Vec<Proposal> = sheet
        .blocks()
        .filter(|_| known)
        .map(|block| propose(block, &model.today(&block.exercise.id, now)))
        .collect();
    let foretold = sheet
        .blocks()
        .zip(&proposals)
        .filter_map(|(block, proposal)| foretell(model, block, proposal.load?, now));
    let foretold = foretold.collect();
    let last = model.last_of(sheet.id).map(|(_, session)| session);
    let free = !model.in_session() && !looks && sheet.written_for.is_none();
    let beginning = free.then(|| Beginning::of(model, &sheet, now));
    Some(Shown {
        sheet,
        proposals,
        foretold,
        last,
        unit: model.unit(),
        pace: model.pace(),
        beginning,
        looks,
        body_mass: model.newest_body_mass(),
    })
}

/// What the estimate says of the first work set of `block` with `load`.
fn foretell(model: &Model, block: &Block, load: Load, now: DateTime<FixedOffset>) -> Option<Told> {
    let work = block.sets.iter().find(|sets| sets.kind == SetKind::Work)?;
    let asked = work.target.plain_reps()?;
    let history = moved_alike(model.history(&block.exercise.id), block);
    let curve = model.curve();
    let known = Known {
        strength: Strength::of(history.clone(), curve),
        body_mass: model.newest_body_mass(),
        now,
    };
    let set = Foretold::of(&known, &block.basis, load, asked)?;
    Some(Told {
        block: block.id,
        caution: set.caution(block),
        set,
        plateau: plateau_said(history, curve),
    })
}

/// What is said of it, and the cautions.
fn foretold_view(told: &Told, unit: Unit) -> Vec<AnyView> {
    let mut inside = vec![line("quiet", "foretold", told.set.said(unit))];
    let cautions = told.caution.map(str::to_owned);
    let cautions = cautions.into_iter().chain(told.plateau.clone());
    inside.extend(cautions.map(|caution| words("caution", caution)));
    inside
}

/// One sheet.
pub fn sheet_place(id: SheetId) -> AnyView {
    let app = stanchion();
    let now = moment().at;
    let shown = app.of(move |model| shown(model, id, now));
    dynamic(move || match shown.get() {
        None => nowhere(),
        Some(shown) => look(app, id, shown),
    })
}

fn all_sheets() -> AnyView {
    way(Place::Sheets.href(), t("All sheets"))
}

fn nowhere() -> AnyView {
    let inside = vec![h1(t("No such sheet")), all_sheets()];
    el("div").class("page").child(inside).view()
}

fn look(app: Stanchion, id: SheetId, shown: Shown) -> AnyView {
    let with_loads = Live::new(false);
    let mut inside = vec![
        paper(&shown.sheet, with_loads, shown.unit),
        all_sheets(),
        h1(shown.sheet.name.to_string()),
    ];
    if let Some(beginning) = shown.beginning.clone() {
        let word = match beginning.light {
            Some(_) => t("Begin, light"),
            None => t("Begin"),
        };
        let beside = beginning.beside(app, id);
        inside.push(button("wide strong", "begin", word, move || {
            beginning.begin(app, id);
        }));
        inside.extend(beside);
    }
    let whom = shown.sheet.written_for.as_ref();
    inside.extend(whom.map(|whom| line("because", "sheet-for", say!("Written for {whom}.", whom))));
    let theirs = shown.looks && whom.is_none();
    inside.push(change(app, id, theirs));
    let revise = Callback::new(move |changed| app.revise_sheet(changed));
    inside.push(time_view(&shown.sheet, shown.pace, revise));
    inside.push(
        app.model
            .with_untracked(|model| order_view(&shown.sheet, &model.exercises, revise)),
    );
    inside.push(share(app, &shown.sheet, with_loads));
    inside.extend(written(&shown));
    if !shown.looks {
        inside.push(el("div").class("more").child(others(app, id)).view());
    }
    inside.extend(
        shown
            .last
            .map(|session| way(Place::Session(session).href(), t("The last time"))),
    );
    page("sheet-look", inside)
}

/// The way to change a sheet, or to write the next one from it where it is another one's.
fn change(app: Stanchion, id: SheetId, theirs: bool) -> AnyView {
    if theirs {
        let word = t("Write their next sheet from it");
        return button("wide strong", "write-next", word, move || {
            app.write_next(id);
        });
    }
    let begun = app
        .model
        .with_untracked(|model| model.drafts.get(&id).is_some_and(Draft::is_changed));
    let word = match begun {
        true => t("Go on changing it"),
        false => t("Change it"),
    };
    button("wide", "change-sheet", word, move || app.open_draft(id))
}

/// What else can be done with a sheet.
fn others(app: Stanchion, id: SheetId) -> Vec<AnyView> {
    vec![
        button("", "copy-sheet", t("Copy it as a new sheet"), move || {
            app.copy_sheet(id)
        }),
        button("", "remove-sheet", t("Remove it"), move || {
            app.remove_sheet(id);
            app.go(Place::Sheets);
        }),
    ]
}

/// A sheet as it is written, without what it would propose.
pub(super) fn bare(sheet: Sheet, unit: Unit) -> Vec<AnyView> {
    written(&Shown {
        sheet,
        proposals: Vec::new(),
        foretold: Vec::new(),
        last: None,
        unit,
        pace: Pace::Assumed,
        beginning: None,
        looks: false,
        body_mass: None,
    })
}

/// The sheet as it is written.
fn written(shown: &Shown) -> Vec<AnyView> {
    let sheet = &shown.sheet;
    let prediction = Prediction::of(sheet);
    let mut inside = Vec::new();
    if !sheet.notes.is_empty() {
        inside.push(quiet(sheet.notes.said().to_owned()));
    }
    if !sheet.warm_up.is_empty() {
        inside.push(h2(t("Warm-up")));
        inside.push(lines(
            "",
            sheet.warm_up.iter().map(|line| line.said().to_owned()),
        ));
    }
    for a_group in &sheet.groups {
        let together = match a_group {
            Group::Straight(_) => None,
            Group::Pair { between, .. } => Some(say!("pair, {between} s between", between)),
            Group::Circuit { between, .. } => Some(say!("circuit, {between} s between", between)),
        };
        let mut blocks: Vec<AnyView> = together.map(quiet).into_iter().collect();
        for block in a_group.blocks() {
            let of_block = |proposal: &&Proposal| proposal.block == block.id;
            let proposal = shown.proposals.iter().find(of_block);
            let because = proposal.map(|proposal| proposal.said(shown.unit, &block.basis));
            let foretold = shown.foretold.iter().find(|told| told.block == block.id);
            let mut told = foretold
                .map(|told| foretold_view(told, shown.unit))
                .unwrap_or_default();
            let asks = proposal.is_some_and(|proposal| !proposal.because.asks_body_mass());
            if asks && lacks_body_mass(block, shown.body_mass) {
                told.push(line("quiet", "no-body-mass", body_mass_words()));
            }
            blocks.push(block_as_written(
                block,
                &prediction,
                shown.unit,
                because,
                told,
            ));
        }
        inside.push(group(None, blocks));
    }
    inside
}

fn lines(class: &'static str, lines: impl Iterator<Item = String>) -> AnyView {
    list(class, None, lines.map(IntoAny::into_any).collect())
}

fn block_as_written(
    block: &Block,
    prediction: &Prediction,
    unit: Unit,
    because: Option<String>,
    foretold: Vec<AnyView>,
) -> AnyView {
    let mut inside = vec![
        h2(block.exercise.said()),
        // A no-break space: the figure stays with its word.
        quiet(say!(
            "{head} · takes\u{a0}{time}",
            head = block_head(block),
            time = reading(prediction.of_block(block)),
        )),
        lines(
            "lines",
            block
                .sets
                .iter()
                .map(|sets| sets_line(sets, &block.basis, unit)),
        ),
    ];
    inside.extend(rule_line(block, unit).map(quiet));
    let cues = block.cues.iter();
    inside.extend(cues.map(|cue| quiet(cue.said().to_owned())));
    inside.extend(because.map(|because| line("because", "because", because)));
    inside.extend(foretold);
    let cautions = block.cautions.iter();
    inside.extend(cautions.map(|caution| words("caution", caution.said().to_owned())));
    el("article")
        .class("block")
        .part("block")
        .child(inside)
        .view()
}
