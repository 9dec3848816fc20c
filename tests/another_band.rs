//! Another band on the floor: what is left of a block is done with it, and what was proposed is told beside it.

use crate::common;

use common::built::work;
use common::swaps::{Floor, kit, line, squat, swapped, to};
use stanchion::session::{Refusal, Swap};
use stanchion::sheet::{Block, LoadBasis};
use stanchion::units::Unit;

/// Pulls apart with a band of that name.
fn with_band(label: &str) -> Block {
    let mut block = squat(vec![work(3, 12, 15)]);
    block.basis = LoadBasis::Band(line(label));
    block.start = None;
    block
}

#[test]
fn another_band_is_for_the_sets_that_are_left_and_says_what_was_proposed() {
    let mut floor = Floor::open(&with_band("light"));
    let board = |floor: &Floor| {
        let state = floor.session.state();
        state.board(&floor.current(), &kit(), &[])
    };
    let take = |floor: &mut Floor, band: &str| {
        let swap = Swap::to_band(floor.session.state(), &floor.current(), &line(band));
        floor.act(swapped(swap.unwrap()))
    };
    let bands = floor.session.state().bands(&floor.current(), &kit());
    assert_eq!(bands, kit().parts().bands, "`light` is the light band");
    floor.log(None);
    take(&mut floor, "strong band").unwrap();
    let chosen = "band: strong band chosen (band: light)";
    assert_eq!(board(&floor).because(Unit::Kg), chosen);
    assert_eq!(board(&floor).cue, Some(line("Elbows high")));
    floor.log(None);
    assert_eq!(board(&floor).because(Unit::Kg), chosen, "the next set too");
    let same = Swap::to_band(
        floor.session.state(),
        &floor.current(),
        &line("strong band"),
    );
    assert_eq!(same, None, "it is in use already");

    // Back to what was proposed, by its name.
    take(&mut floor, "Light band").unwrap();
    assert_eq!(board(&floor).because(Unit::Kg), "as the sheet says");
    floor.undo();
    assert_eq!(board(&floor).because(Unit::Kg), chosen);

    let record = floor.record();
    let told: Vec<_> = record
        .blocks
        .iter()
        .map(|block| {
            let proposal = block.proposal.as_ref().unwrap();
            let proposed = proposal.said(Unit::Kg, &block.proposed_on);
            (
                block.lines.len(),
                block.block.basis.band().unwrap(),
                proposed,
            )
        })
        .collect();
    let told_as = |count, band: &str| (count, band.to_owned(), "band: light".to_owned());
    assert_eq!(
        told,
        [told_as(1, "band: light"), told_as(1, "band: strong band")]
    );
}

#[test]
fn a_band_that_the_kit_has_not_is_offered_first() {
    let mut floor = Floor::open(&with_band("red"));
    let bands = |floor: &Floor| {
        let bands = floor.session.state().bands(&floor.current(), &kit());
        bands.iter().map(ToString::to_string).collect::<Vec<_>>()
    };
    let offered = ["red", "light band", "middle band", "strong band"];
    assert_eq!(bands(&floor), offered);
    let state = floor.session.state();
    let swap = Swap::to_band(state, &floor.current(), &line("middle band")).unwrap();
    floor.act(swapped(swap.clone())).unwrap();
    assert_eq!(bands(&floor), offered, "the one of the sheet stays in it");
    assert_eq!(floor.act(swapped(swap)), Err(Refusal::SameExercise));

    // With a load there is no band to choose.
    let floor = Floor::open(&squat(vec![work(3, 5, 7)]));
    let state = floor.session.state();
    assert_eq!(
        Swap::to_band(state, &floor.current(), &line("light band")),
        None
    );
}

#[test]
fn the_sheet_says_nothing_of_the_band_of_another_exercise() {
    let written = squat(vec![work(3, 12, 15)]);
    let mut floor = Floor::open(&written);
    let because = |floor: &Floor| {
        let board = floor.session.state().board(&floor.current(), &kit(), &[]);
        board.because(Unit::Kg)
    };
    floor.act(swapped(to(&written, "band-row", &[]))).unwrap();
    assert_eq!(because(&floor), "a band");
    let band = line("strong band");
    let swap = Swap::to_band(floor.session.state(), &floor.current(), &band);
    floor.act(swapped(swap.unwrap())).unwrap();
    assert_eq!(because(&floor), "band: strong band chosen (a band)");
}
