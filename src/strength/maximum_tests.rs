//! Shares of the maximum where the body is moved: by the rule, within a session, and their laws.

use super::*;
use crate::kit::Kit;
use crate::sheet::Block;
use crate::strength::propose::tests::{block, performed};
use crate::strength::set_load::tests::{planned, work};
use crate::strength::{Because, Curve, Performance, Proposal, Today, propose, set_load};
use crate::units::Unit;
use proptest::prelude::*;
use serde_json::json;

fn kg(text: &str) -> Load {
    text.parse().unwrap()
}

fn kit() -> Kit {
    Kit::starter(Unit::Kg)
}

/// A block of the body on that basis whose rule is that share.
fn body(basis: &serde_json::Value, share: &str) -> Block {
    block(json!({
        "basis": basis,
        "exercise": {"id": "dip", "name": "Dip", "pattern": "push_upward", "equipment": "body"},
        "progression": {"share_of_e1rm": {"share": share}},
    }))
}

/// Once so many reps with that load, of a body of `mass`.
fn once(block: &Block, load: &str, reps: u16, mass: Option<Load>) -> Performance {
    let mut done = performed(&[(load, reps)], (5, 7));
    done.shape = block.shape();
    done.basis = Some(block.basis.clone());
    done.body_mass = mass;
    done
}

fn next(block: &Block, history: &[Performance], mass: Option<Load>) -> Proposal {
    let kit = kit();
    let now = history[0].at + chrono::TimeDelta::days(2);
    let today = Today {
        history,
        kit: &kit,
        now,
        curve: Curve::Epley,
        body_mass: mass,
    };
    propose(block, &today)
}

fn said(basis: &serde_json::Value, share: &str, done: (&str, u16), mass: Option<&str>) -> String {
    let block = body(basis, share);
    let then = Some(kg("80 kg"));
    let proposal = next(&block, &[once(&block, done.0, done.1, then)], mass.map(kg));
    proposal.because.to_string()
}

/// 80 kg of body and 20 kg on it for five reps: by Epley a maximum of 116.67 kg, the body in it.
#[test]
fn what_hangs_on_the_body_is_the_share_less_the_body() {
    let plus = json!("body_mass_plus");
    assert_eq!(
        said(&plus, "77.5 %", ("20 kg", 5), Some("80 kg")),
        "77.5 % of the estimated maximum 116.67 kg with the body is 90.42 kg, less 80 kg of body: 10.42 kg, nearest \
         below is 10 kg"
    );
    assert_eq!(
        said(&plus, "77.5 %", ("20 kg", 5), Some("84 kg")),
        "77.5 % of the estimated maximum 116.67 kg with the body is 90.42 kg, less 84 kg of body: 6.42 kg, nearest \
         below is 6.25 kg"
    );
    assert_eq!(
        said(&plus, "60 %", ("20 kg", 5), Some("80 kg")),
        "60 % of the estimated maximum 116.67 kg with the body is 70 kg, and the body alone is 80 kg: nothing added"
    );
}

#[test]
fn what_assists_is_the_body_less_the_share() {
    let minus = json!("body_mass_minus");
    // 60 kg moved for five reps: 70 kg.
    assert_eq!(
        said(&minus, "75 %", ("20 kg", 5), Some("80 kg")),
        "75 % of the estimated maximum 70 kg with the body is 52.5 kg of 80 kg of body: 27.5 kg of assistance"
    );
    assert_eq!(
        said(&minus, "72 %", ("20 kg", 5), Some("80 kg")),
        "72 % of the estimated maximum 70 kg with the body is 50.4 kg of 80 kg of body: 29.6 kg of assistance, nearest \
         above is 30 kg"
    );
    assert_eq!(
        said(&minus, "95 %", ("5 kg", 7), Some("70 kg")),
        "95 % of the estimated maximum 92.5 kg with the body is 87.88 kg, and the body alone is 70 kg: no assistance"
    );
}

/// A push-up moves 64 % of the body mass (Ebben et al. 2011, J Strength Cond Res 25(10):2891–2894, P2): 51.2 kg of 80.
#[test]
fn a_share_of_the_body_counts_as_that_share() {
    let push_up = json!({"body_mass_share": "64 %"});
    // 51.2 + 10 for five reps: 71.4 kg; 85 % of it is 60.69 kg.
    assert_eq!(
        said(&push_up, "85 %", ("10 kg", 5), Some("80 kg")),
        "85 % of the estimated maximum 71.4 kg with the body is 60.69 kg, less 51.2 kg of body: 9.49 kg, nearest \
         below is 8.75 kg"
    );
}

#[test]
fn without_the_body_mass_the_load_stays_and_says_so() {
    for (basis, what) in [
        ("body_mass_plus", "load"),
        ("body_mass_minus", "assistance"),
    ] {
        assert_eq!(
            said(&json!(basis), "75 %", ("20 kg", 5), None),
            format!(
                "body mass unknown, so no share of the maximum can be taken (give yours in Kit): same {what} again"
            )
        );
    }
    let block = body(&json!("body_mass_plus"), "75 %");
    let unknown_then = [once(&block, "20 kg", 5, None)];
    let proposal = next(&block, &unknown_then, Some(kg("80 kg")));
    assert!(matches!(proposal.because, Because::NoEstimate { .. }));
    assert_eq!(proposal.load, Some(kg("20 kg")));
}

/// Not one rep: the maximum lies below what was tried, the body in it.
#[test]
fn a_load_that_did_not_move_at_all_is_taken_as_too_much() {
    let tried = |basis: &str, load: &str| {
        let block = body(&json!(basis), "75 %");
        let mass = Some(kg("80 kg"));
        next(&block, &[once(&block, load, 0, mass)], mass).load
    };
    // 75 % of 120 kg is 90 kg, of 60 kg 45 kg.
    assert_eq!(tried("body_mass_plus", "40 kg"), Some(kg("10 kg")));
    assert_eq!(tried("body_mass_minus", "20 kg"), Some(kg("35 kg")));
}

#[test]
fn a_line_of_a_session_takes_the_share_with_the_body() {
    let of = |basis: &str, share: &str, body_mass: Option<&str>| {
        let mut block = body(&json!(basis), "80 %");
        block.sets =
            serde_json::from_value(json!([work(1, json!({ "share_of_e1rm": share }))])).unwrap();
        let maximum = Maximum {
            e1rm: Some(kg("120 kg")),
            body_mass: body_mass.map(kg),
        };
        let base = Some(kg("15 kg"));
        let got = set_load(&block, &planned(&block)[0], base, &[], maximum, &kit());
        got.because.to_string()
    };
    assert_eq!(
        of("body_mass_plus", "75 %", Some("80 kg")),
        "75 % of the estimated maximum 120 kg with the body is 90 kg, less 80 kg of body: 10 kg"
    );
    assert_eq!(
        of("body_mass_minus", "60 %", Some("80 kg")),
        "60 % of the estimated maximum 120 kg with the body is 72 kg of 80 kg of body: 8 kg of assistance, nearest \
         above is 8.75 kg"
    );
    assert_eq!(
        of("body_mass_plus", "75 %", None),
        "body mass unknown, so no share of the maximum can be taken (give yours in Kit): work load 15 kg"
    );
}

fn some_basis() -> impl Strategy<Value = serde_json::Value> {
    prop::sample::select(vec![
        json!("body_mass_plus"),
        json!("body_mass_minus"),
        json!({"body_mass_share": "64 %"}),
    ])
}

/// What the law of the heavier body says of one case; masses and loads are in tenths of a kilogram.
fn heavier_is_not_more(
    basis: &serde_json::Value,
    percent: u8,
    done: (u16, u16),
    then: u16,
    (light, heavy): (u16, u16),
) -> Result<(), TestCaseError> {
    let tenths = |n: u16| kg(&format!("{}.{} kg", n / 10, n % 10));
    let block = body(basis, &format!("{percent} %"));
    let load = tenths(done.0).to_string();
    let history = [once(&block, &load, done.1, Some(tenths(then)))];
    let proposed = [light, heavy].map(|mass| next(&block, &history, Some(tenths(mass))));
    let said = format!("{} / {}", proposed[0].because, proposed[1].because);
    match (proposed[0].load, proposed[1].load) {
        (Some(light), Some(heavy)) if block.basis.assists() => {
            prop_assert!(heavy >= light, "{said}");
        }
        (Some(light), Some(heavy)) => prop_assert!(heavy <= light, "{said}"),
        (_, None) => prop_assert!(block.basis.assists(), "{said}"),
        (None, Some(_)) => prop_assert!(false, "{said}"),
    }
    for (proposal, mass) in proposed.iter().zip([light, heavy]) {
        let Some(load) = proposal.load else {
            let out = matches!(proposal.because, Because::OutOfKit { .. });
            prop_assert!(out, "{}", proposal.because);
            continue;
        };
        prop_assert!(kit().choices(block.exercise.equipment).contains(load));
        if let Because::ShareWithBody(taken) = proposal.because {
            match system_load(&block.basis, Some(load), Some(tenths(mass))) {
                Ok(moved) => {
                    let most = taken.moved().max(taken.body);
                    prop_assert!(moved <= most, "{}", proposal.because);
                }
                // The next assistance that there is takes off all of the body.
                Err(_) => prop_assert!(block.basis.assists() && load >= tenths(mass), "{said}"),
            }
        }
    }
    Ok(())
}

#[test]
fn an_assistance_that_takes_off_all_of_the_body_is_the_next_there_is() {
    // 30 % of 40 − 36.6 kg is 1.02 kg: of 64.8 kg of body 63.78 kg are to be taken off.
    heavier_is_not_more(&json!("body_mass_minus"), 30, (366, 1), 400, (406, 648)).unwrap();
    let block = body(&json!("body_mass_minus"), "30 %");
    let history = [once(&block, "36.6 kg", 1, Some(kg("40 kg")))];
    let load = next(&block, &history, Some(kg("64.8 kg"))).load.unwrap();
    assert!(load >= kg("64.8 kg"), "{load}");
}

proptest! {
    /// A heavier body carries no more and is assisted no less; what is moved in all is no more than the share, but where the
    /// body alone is more. Where nothing in the kit assists so much, the heavier body is given nothing, and told so.
    #[test]
    fn a_heavier_body_is_never_given_more(
        basis in some_basis(),
        percent in 30..=100_u8,
        done in (0..400_u16, 1..12_u16),
        then in 400..1500_u16,
        now in 400..1500_u16,
        heavier in 0..400_u16,
    ) {
        heavier_is_not_more(&basis, percent, done, then, (now, now + heavier))?;
    }

    /// More reps, more load or less assistance last time: never less to be moved this time.
    #[test]
    fn more_done_with_the_body_never_gives_less(
        basis in some_basis(),
        percent in 30..=100_u8,
        done in (100..400_u16, 1..9_u16),
        more in (0..100_u16, 0..4_u16),
        mass in 500..1500_u16,
    ) {
        let tenths = |n: u16| kg(&format!("{}.{} kg", n / 10, n % 10));
        let block = body(&basis, &format!("{percent} %"));
        let mass = Some(tenths(mass));
        let assists = block.basis.assists();
        let harder = if assists { done.0 - more.0 } else { done.0 + more.0 };
        let moved = |load: u16, reps: u16| {
            let history = [once(&block, &tenths(load).to_string(), reps, mass)];
            let load = next(&block, &history, mass).load;
            system_load(&block.basis, load, mass).map_err(|why| why.to_string()).unwrap()
        };
        prop_assert!(moved(harder, done.1 + more.1) >= moved(done.0, done.1));
    }

    /// The body mass typed in pounds moves no proposal by more than a step of the kit.
    #[test]
    fn a_body_mass_in_pounds_says_the_same(basis in some_basis(), mass in 400..1500_u16, done in (0..400_u16, 1..12_u16)) {
        let block = body(&basis, "80 %");
        let mass = kg(&format!("{}.{} kg", mass / 10, mass % 10));
        let history = [once(&block, &format!("{}.{} kg", done.0 / 10, done.0 % 10), done.1, Some(mass))];
        let pounds = mass.to_unit(Unit::Lb).round(1);
        let loads = [mass, pounds].map(|mass| next(&block, &history, Some(mass)).load.unwrap().kg());
        prop_assert!((loads[0] - loads[1]).abs() <= kit().parts().smallest_step.kg());
    }
}

#[test]
fn of_an_assistance_without_a_body_mass_no_share_is_taken() {
    let half =
        |basis: &LoadBasis| Maximum::default().share_of(basis, kg("40 kg"), Share::percent(50));
    // Half the assistance would be a harder set.
    assert_eq!(half(&LoadBasis::BodyMassMinus), kg("40 kg"));
    assert_eq!(half(&LoadBasis::BodyMassPlus), kg("20 kg"));
}
