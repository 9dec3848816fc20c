//! Generators of reasons, every one of them.

use super::quantities::{load, reps, rir, share};
use super::sheets::equipment;
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;
use stanchion::strength::{Because, Bound, Missed, Moved, Wish, WithBody};
use stanchion::units::Reps;

fn moved() -> BoxedStrategy<Moved> {
    let wish = select(vec![Wish::Harder, Wish::Same, Wish::Easier]);
    let named = option::of(load());
    let bound = option::of(select(vec![Bound::Tenth, Bound::KitStep]));
    let span = option::of([load(), load()]);
    (
        load(),
        load(),
        wish,
        equipment(),
        any::<bool>(),
        named,
        bound,
        span,
    )
        .prop_map(|(at, to, wish, on, assists, named, bound, span)| Moved {
            at,
            to,
            wish,
            on,
            assists,
            named,
            bound,
            span,
        })
        .boxed()
}

fn missed() -> impl Strategy<Value = Missed> {
    (load(), reps(), reps()).prop_map(|(at, reps, low)| Missed { at, reps, low })
}

fn with_body() -> impl Strategy<Value = WithBody> {
    (share(), load(), load(), any::<bool>(), load()).prop_map(|(share, e1rm, body, assists, to)| {
        WithBody {
            share,
            e1rm,
            body,
            assists,
            to,
        }
    })
}

type Range = (Vec<Reps>, Reps, Reps, Moved);

fn range() -> BoxedStrategy<Range> {
    (vec(reps(), 0..5), reps(), reps(), moved()).boxed()
}

/// Any reason.
pub fn because() -> BoxedStrategy<Because> {
    let known = prop_oneof![
        (load(), load()).prop_map(|(wanted, to)| Because::StartOfSheet { wanted, to }),
        Just(Because::NothingKnown {}),
        Just(Because::NoLoad {}),
        load().prop_map(|to| Because::GuidedStart { to }),
        (load(), option::of(load()))
            .prop_map(|(wanted, easiest)| Because::OutOfKit { wanted, easiest }),
        (load(), load()).prop_map(|(wanted, to)| Because::AsWritten { wanted, to }),
        (share(), load(), load()).prop_map(|(share, e1rm, to)| Because::ShareOfE1rm {
            share,
            e1rm,
            to
        }),
    ];
    let known = prop_oneof![
        6 => known,
        1 => (share(), load(), load()).prop_map(|(share, usual, to)| Because::LightWeek {
            share,
            usual,
            to
        }),
        1 => with_body().prop_map(Because::ShareWithBody),
        1 => (reps(), rir(), share(), (load(), load()), 0..4_u8).prop_map(
            |(reps, reserve, share, (e1rm, to), below)| Because::FromEstimate {
                reps,
                reserve,
                share,
                e1rm,
                below,
                to
            }
        ),
    ];
    let plain = prop_oneof![
        moved().prop_map(|moved| Because::SameAsLast { moved }),
        moved().prop_map(|moved| Because::AllDone { moved }),
        moved().prop_map(|moved| Because::NotAllDone { moved }),
        (0..20_u8, 1..20_u8, moved()).prop_map(|(done, more, moved)| Because::CutShort {
            done,
            planned: done + more,
            moved
        }),
        moved().prop_map(|moved| Because::NoEstimate { moved }),
        moved().prop_map(|moved| Because::BodyMassUnknown { moved }),
        moved().prop_map(|moved| Because::NoReserveSaid { moved }),
        (option::of(load()), load(), moved()).prop_map(|(tried, down_to, moved)| {
            Because::Lightened {
                tried,
                down_to,
                moved,
            }
        }),
    ];
    let counted = prop_oneof![
        range().prop_map(|(reps, low, top, moved)| Because::TopReached {
            reps,
            low,
            top,
            moved
        }),
        range().prop_map(|(reps, low, top, moved)| Because::InRange {
            reps,
            low,
            top,
            moved
        }),
        (range(), load(), any::<bool>()).prop_map(|((reps, low, aim, moved), next, last)| {
            Because::StepWaits {
                reps,
                low,
                aim,
                last,
                next,
                moved,
            }
        }),
        range().prop_map(|(reps, low, top, moved)| Because::BelowRange {
            reps,
            low,
            top,
            moved
        }),
        (reps(), reps(), reps(), moved()).prop_map(|(a, b, goal, moved)| Because::TwoOverTwice {
            reps: [a, b],
            goal,
            moved
        }),
        (reps(), reps(), moved()).prop_map(|(reps, goal, moved)| Because::NotTwiceYet {
            reps,
            goal,
            moved
        }),
    ];
    let reserved = prop_oneof![
        (rir(), rir(), moved()).prop_map(|(reserve, aim, moved)| Because::MoreInReserve {
            reserve,
            aim,
            moved
        }),
        (rir(), moved()).prop_map(|(reserve, moved)| Because::AsAimed { reserve, moved }),
        (rir(), rir(), moved()).prop_map(|(reserve, aim, moved)| Because::LessInReserve {
            reserve,
            aim,
            moved
        }),
    ];
    let aside = prop_oneof![
        (reps(), reps(), rir(), moved()).prop_map(|(reps, low, reserve, moved)| {
            Because::Disagrees {
                reps,
                low,
                reserve,
                moved,
            }
        }),
        (any::<u32>(), option::of(share()), moved())
            .prop_map(|(days, less, moved)| Because::AfterBreak { days, less, moved }),
        (any::<u32>(), moved()).prop_map(|(days, moved)| Because::LiesAhead { days, moved }),
        ([missed(), missed(), missed()], share(), moved()).prop_map(|(missed, less, moved)| {
            Because::Deload {
                missed,
                less,
                moved,
            }
        }),
    ];
    prop_oneof![known, plain, counted, reserved, aside].boxed()
}
