//! What the load of a block is added to, and the load to start from.

use super::hand::{At, Hand};
use super::sets::step_share;
use crate::kit::Kit;
use crate::sheet::{Block, Equipment, Exercise, Line, LoadBasis, Pattern};
use crate::ui::parts::{Mode, button, dynamic, el, read_name};
use crate::ui::seen::Seen;
use crate::ui::sheets::doubts::{doubt_list, start_doubt};
use crate::units::{Load, Share};
use crate::words::{decimal, t};
use leptos::prelude::*;

/// Names of the bases in the order of the choices.
fn bases() -> [&'static str; 6] {
    [
        t("load alone"),
        t("body + load"),
        t("body − assistance"),
        t("share of body"),
        t("band"),
        t("no load"),
    ]
}

/// What the load is added to.
pub fn basis(hand: Hand) -> AnyView {
    let at = At::default();
    let chosen = hand.pick_by(
        at,
        "basis",
        t("what is moved"),
        &bases(),
        basis_of,
        move |n| {
            let kit = hand.app.model.with_untracked(|model| model.kit.clone());
            hand.change(&mut |block| set_basis(block, n, &kit));
        },
    );
    let inside = hand.depends(
        at,
        |block, at| format!("{:?}", basis_of(block, at)),
        of_basis,
    );
    vec![chosen, inside].into_any()
}

fn basis_of(block: &Block, _: At) -> Option<i64> {
    Some(match block.basis {
        LoadBasis::External => 0,
        LoadBasis::BodyMassPlus => 1,
        LoadBasis::BodyMassMinus => 2,
        LoadBasis::BodyMassShare(_) => 3,
        LoadBasis::Band(_) => 4,
        LoadBasis::Unloaded => 5,
    })
}

/// Another basis. The share to begin with is that of a push-up (Ebben et al. 2011, J Strength Cond Res
/// 25(10):2891–2894), the band one of the kit.
fn set_basis(block: &mut Block, n: i64, kit: &Kit) {
    if basis_of(block, At::default()) == Some(n) {
        return;
    }
    block.basis = match n {
        0 => LoadBasis::External,
        1 => LoadBasis::BodyMassPlus,
        2 => LoadBasis::BodyMassMinus,
        3 => LoadBasis::BodyMassShare(Share::percent(64)),
        4 => LoadBasis::Band(first_band(block, kit)),
        _ => LoadBasis::Unloaded,
    };
    if !block.basis.has_load() {
        block.start = None;
    }
}

/// The band to begin with: the strongest where it takes some of the body off, as in a pull-up, else the lightest.
fn first_band(block: &Block, kit: &Kit) -> Line {
    let Exercise {
        pattern, equipment, ..
    } = block.exercise;
    let helps = pattern == Pattern::PullDownward && equipment == Equipment::Body;
    let band = kit.easiest_band(helps).cloned();
    band.unwrap_or_else(|| Line::new(t("band")).expect("a written line is fit"))
}

fn of_basis(hand: Hand, at: At) -> AnyView {
    let basis = hand.now(at, basis_of);
    match basis {
        Some(3) => hand.step(
            at,
            "basis-share",
            t("of the body mass"),
            |block, _| match &block.basis {
                LoadBasis::BodyMassShare(share) => decimal(&share.to_string()),
                _ => String::new(),
            },
            |block, _, by| {
                if let LoadBasis::BodyMassShare(share) = &mut block.basis {
                    *share = step_share(*share, by);
                }
            },
        ),
        Some(4) => which_band(hand, at),
        _ => ().into_any(),
    }
}

/// The label of the band, and those in the kit to choose from.
fn which_band(hand: Hand, at: At) -> AnyView {
    let typed = hand.typed(
        at,
        "basis-band",
        Mode::Text,
        t("which band"),
        |block, _| match &block.basis {
            LoadBasis::Band(label) => label.to_string(),
            _ => String::new(),
        },
        |block, _, typed, _| {
            block.basis = LoadBasis::Band(read_name(typed)?);
            Ok(())
        },
    );
    let bands = hand.app.of(|model| model.kit.parts().bands.clone());
    let own = dynamic(move || {
        let own = bands.get().into_iter().map(|label| {
            button("small", "basis-band-own", label.to_string(), move || {
                hand.change(&mut |block| block.basis = LoadBasis::Band(label.clone()));
            })
        });
        el("div")
            .class("arrange")
            .child(own.collect::<Vec<_>>())
            .view()
    });
    vec![typed, own].into_any()
}

/// The load to start from while there is no history.
pub fn start(hand: Hand) -> AnyView {
    hand.only_while(
        At::default(),
        |block, _| block.basis.has_load(),
        |hand, at| vec![start_field(hand, at), start_unmade(hand)].into_any(),
    )
}

fn start_field(hand: Hand, at: At) -> AnyView {
    hand.typed(
        at,
        "start",
        Mode::Decimal,
        t("work load to start from, until there is a history; may be empty"),
        |block, _| {
            let start = block.start.map(|load| decimal(&load.to_string()));
            start.unwrap_or_default()
        },
        |block, _, typed, unit| {
            block.start = match typed.trim() {
                "" => None,
                typed => Some(Load::parse_in(typed, unit).map_err(|unfit| unfit.to_string())?),
            };
            Ok(())
        },
    )
}

/// That the kit cannot make it, and what it makes instead.
fn start_unmade(hand: Hand) -> AnyView {
    let said = Seen::new(move || hand.it.with(|block| start_doubt(hand.app, block.as_ref()?)));
    let inside = dynamic(move || doubt_list("start-doubt", said.get().into_iter().collect()));
    el("div").set("role", "status").child(inside).view()
}
