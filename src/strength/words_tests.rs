//! Checks of the sentences at the ends of a kit: what stays is not called a step, and assistance is never called a load.

use super::*;
use crate::strength::set_because::{GuidedStep, SetBecause, ShareOf};
use crate::units::{Reps, Rir};
use rust_decimal::Decimal;

fn kg(text: &str) -> Load {
    text.parse().unwrap()
}

fn moved(wish: Wish, at: &str, to: &str, assists: bool) -> Moved {
    Moved {
        at: kg(at),
        to: kg(to),
        wish,
        on: Equipment::Barbell,
        assists,
        named: None,
        bound: None,
        span: None,
    }
}

#[test]
fn a_load_is_said_where_it_is_not_the_end_of_a_longer_figure() {
    assert!(says("8, 8 at 5 kg: same load again", "5 kg"));
    assert!(says("5 kg again", "5 kg"));
    for longer in ["8, 8 at 5–7.5 kg", "15 kg again", "at 2,5 kg", "5–5 kg"] {
        assert!(!says(longer, "5 kg"), "{longer}");
    }
}

/// On a sheet no board stands beside the reason to say what the load is.
#[test]
fn a_reason_says_that_its_load_is_assistance() {
    let of = |because: Because| {
        let proposal = Proposal {
            block: crate::sheet::tests::block("[]").id,
            load: because.load(),
            because,
        };
        proposal.said(Unit::Kg, &LoadBasis::BodyMassMinus)
    };
    let (wanted, to) = (kg("20 kg"), kg("20 kg"));
    assert_eq!(
        of(Because::StartOfSheet { wanted, to }),
        "start of the sheet: 20 kg assistance"
    );
    assert_eq!(
        of(Because::SameAsLast {
            moved: moved(Wish::Same, "20 kg", "20 kg", true)
        }),
        "20 kg assistance last time: same assistance again"
    );
    assert_eq!(
        of(Because::OutOfKit {
            wanted,
            easiest: None
        }),
        "the kit makes nothing for 20 kg assistance: add what you have in Kit"
    );
}

#[test]
fn what_follows_at_either_end_of_the_kit() {
    let said = |wish, at, to, assists| Words::PLAIN.follows(&moved(wish, at, to, assists));
    for (wish, at, to, assists, says) in [
        (
            Wish::Easier,
            "20 kg",
            "20 kg",
            false,
            "nothing lighter on this bar, 20 kg again",
        ),
        (
            Wish::Easier,
            "20 kg",
            "17.5 kg",
            false,
            "a step down to 17.5 kg",
        ),
        (
            Wish::Easier,
            "40 kg",
            "40 kg",
            true,
            "no more assistance on this bar, 40 kg again",
        ),
        (
            Wish::Easier,
            "40 kg",
            "45 kg",
            true,
            "more assistance, back to 45 kg",
        ),
        (
            Wish::Harder,
            "40 kg",
            "40 kg",
            false,
            "nothing heavier on this bar, 40 kg again",
        ),
        (
            Wish::Harder,
            "5 kg",
            "5 kg",
            true,
            "no less assistance on this bar, 5 kg again",
        ),
        (
            Wish::Harder,
            "40 kg",
            "35 kg",
            false,
            "nothing as hard on this bar, 35 kg",
        ),
    ] {
        assert_eq!(said(wish, at, to, assists), says);
    }
}

#[test]
fn how_much_easier_it_gets_after_a_break() {
    let said = |less: Option<u8>, at, to, assists| {
        let less = less.map(Share::percent);
        Words::PLAIN.after_break(20, less, &moved(Wish::Easier, at, to, assists))
    };
    for (less, at, to, assists, says) in [
        (
            Some(10),
            "100 kg",
            "90 kg",
            false,
            "10 % lighter to come back, 90 kg",
        ),
        (
            Some(10),
            "90 kg",
            "80 kg",
            false,
            "10 % lighter to come back, nearest below is 80 kg",
        ),
        (
            None,
            "40 kg",
            "37.5 kg",
            false,
            "a step lighter to come back, 37.5 kg",
        ),
        (
            Some(10),
            "20 kg",
            "20 kg",
            false,
            "nothing lighter on this bar, 20 kg again",
        ),
        (
            Some(10),
            "15 kg",
            "20 kg",
            false,
            "nothing as light on this bar, 20 kg",
        ),
        (
            Some(10),
            "40 kg",
            "40 kg",
            true,
            "no more assistance on this bar, 40 kg again",
        ),
        (
            Some(10),
            "40 kg",
            "45 kg",
            true,
            "more assistance to come back, 45 kg",
        ),
        (
            Some(10),
            "45 kg",
            "40 kg",
            true,
            "nothing as light on this bar, 40 kg",
        ),
    ] {
        let says = format!("last done like this 20 days ago: {says}");
        assert_eq!(said(less, at, to, assists), says);
    }
}

#[test]
fn a_guided_start_says_where_the_kit_ends() {
    let said = |from, to, step| {
        let (reserve, aim) = (Rir::saturating(6), Rir::saturating(2));
        Words::PLAIN.guided(
            kg(from),
            Some(Reps::saturating(6)),
            (reserve, None, aim),
            step,
            kg(to),
        )
    };
    assert_eq!(
        said("100 kg", "100 kg", GuidedStep::Larger),
        "6 at 100 kg with 5 or more left, 2 aimed at: 100 kg again, the kit ends there"
    );
    assert_eq!(
        said("20 kg", "17.5 kg", GuidedStep::Down),
        "6 at 20 kg with 5 or more left, 2 aimed at: a step down to 17.5 kg"
    );
}

#[test]
fn the_body_alone_has_no_figure_the_first_time() {
    let words = Words::of(Unit::Kg, &LoadBasis::BodyMassPlus);
    assert_eq!(
        words.guided_start(kg("0 kg")),
        "first time: begin light with nothing added, say how much you had left, and the next load follows"
    );
    assert_eq!(
        words.guide_unsaid(kg("0 kg")),
        "what you had left was not said: nothing added again; say it, and the next load follows"
    );
}

/// A load of zero of itself is a figure: a bar of unknown mass.
#[test]
fn what_is_lifted_with_the_body_alone_is_words_in_every_reason() {
    let body = |at, to, wish| Because::TopReached {
        reps: vec![Reps::saturating(12); 2],
        low: Reps::saturating(8),
        top: Reps::saturating(12),
        moved: moved(wish, at, to, false),
    };
    let said = |because: &Because, basis| because.said(Unit::Kg, basis);
    let plus = &LoadBasis::BodyMassPlus;
    assert_eq!(
        said(&body("0 kg", "1.25 kg", Wish::Harder), plus),
        "12, 12 with nothing added: top of 8–12 reached, next step on this bar is 1.25 kg"
    );
    assert_eq!(
        said(&body("0 kg", "0 kg", Wish::Harder), plus),
        "12, 12 with nothing added: top of 8–12 reached, nothing heavier on this bar, nothing added again"
    );
    assert_eq!(
        said(&body("1.25 kg", "0 kg", Wish::Easier), plus),
        "12, 12 with 1.25 kg added: top of 8–12 reached, a step down, with nothing added"
    );
    assert_eq!(
        said(&body("0 kg", "0 kg", Wish::Same), &LoadBasis::External),
        "12, 12 at 0 kg: top of 8–12 reached, same load again"
    );
    let minus = &LoadBasis::BodyMassMinus;
    assert_eq!(
        said(&body("20 kg", "17.5 kg", Wish::Same), minus),
        "12, 12 with 20 kg assistance: top of 8–12 reached, same load again, nearest below is 17.5 kg"
    );
    let over = moved(Wish::Same, "5 kg", "5 kg", false).over([kg("5 kg"), kg("7.5 kg")]);
    assert_eq!(
        said(&Because::AllDone { moved: over }, plus),
        "every rep done with 5–7.5 kg added: same load again"
    );
    assert_eq!(
        said(
            &Because::AllDone {
                moved: moved(Wish::Harder, "0 kg", "0 kg", true)
            },
            minus
        ),
        "every rep done with no assistance: no less assistance on this bar, no assistance again"
    );
    let half = SetBecause::Shared {
        of: ShareOf::WorkLoad,
        share: Share::new(Decimal::from(50)).unwrap(),
        whole: kg("0 kg"),
        to: kg("0 kg"),
        on: Equipment::Body,
    };
    assert_eq!(half.said(Unit::Kg, plus), "work load: nothing added");
}

#[test]
fn where_the_kit_has_nothing_the_nearest_is_told_for_what_it_is() {
    let said = |wanted, easiest: Option<&str>| Words::PLAIN.not_made(kg(wanted), easiest.map(kg));
    assert_eq!(
        said("15 kg", Some("20 kg")),
        "the kit makes nothing as light as 15 kg, its lightest is 20 kg: take that only if it is light for you"
    );
    assert_eq!(
        said("50 kg", Some("45 kg")),
        "the kit makes no assistance as large as 50 kg, its largest is 45 kg"
    );
}
