//! Generators of sessions: random events over a random sheet.

use super::quantities::{load, metres, note, reps, rir, seconds};
use super::reasons::because;
use super::sheets::{block, sheet};
use super::{id, time};
use proptest::collection::vec;
use proptest::option;
use proptest::prelude::*;
use stanchion::heat::{Air, Humidity, Scale, Temperature};
use stanchion::session::{
    Along, Amount, Began, Done, Event, EventId, SessionId, StageAmount, Swap, Tick, What,
};
use stanchion::sheet::{Block, SetKey, Sheet, unroll};
use stanchion::strength::{Because, Curve, Proposal};
use stanchion::units::{Load, Rpe};

fn stage_amount() -> impl Strategy<Value = StageAmount> {
    prop_oneof![
        seconds().prop_map(StageAmount::Hold),
        reps().prop_map(StageAmount::Reps),
        reps().prop_map(StageAmount::Partials),
    ]
}

fn amount() -> impl Strategy<Value = Amount> {
    prop_oneof![
        4 => reps().prop_map(Amount::Reps),
        1 => seconds().prop_map(Amount::Timed),
        1 => metres().prop_map(Amount::Distance),
        1 => vec(stage_amount(), 1..4).prop_map(Amount::Stages),
        1 => (reps(), reps()).prop_map(|(first, second)| Amount::Sides { first, second }),
    ]
}

pub fn done() -> BoxedStrategy<Done> {
    (option::of(load()), amount(), option::of(rir()))
        .prop_map(|(load, amount, reserve)| Done {
            load,
            amount,
            reserve,
        })
        .boxed()
}

fn air() -> impl Strategy<Value = Air> {
    let celsius = (0..=600_i16).prop_map(|tenths| Temperature::new(tenths, Scale::Celsius));
    let fahrenheit =
        (320..=1400_i16).prop_map(|tenths| Temperature::new(tenths, Scale::Fahrenheit));
    (prop_oneof![celsius, fahrenheit], 0..=100_i64).prop_map(|(temperature, humidity)| Air {
        temperature: temperature.unwrap(),
        humidity: Humidity::try_from(humidity).unwrap(),
    })
}

/// What may happen to the sets of `keys`; an undo takes any of the events before it.
fn what(keys: Vec<SetKey>, groups: usize) -> BoxedStrategy<Choice> {
    let set = proptest::sample::select(keys);
    let key = || set.clone();
    let plain = prop_oneof![
        key().prop_map(|set| What::SetStarted { set }),
        (key(), option::of(amount())).prop_map(|(set, heard)| What::SetStopped { set, heard }),
        (key(), amount()).prop_map(|(set, amount)| What::AmountChosen { set, amount }),
        key().prop_map(|set| What::SetSkipped { set }),
        key().prop_map(|set| What::SetDropped { set }),
        key().prop_map(|set| What::SetAdded {
            block: set.block,
            line: set.line
        }),
        (key(), block(), option::of(load()), because())
            .prop_map(|(set, other, load, because)| swap(set, other, load, because)),
        Just((0..groups as u8).collect::<Vec<_>>())
            .prop_shuffle()
            .prop_map(|groups| What::OrderChanged { groups }),
        (key(), load(), option::of(load())).prop_map(|(set, load, proposed)| What::LoadChosen {
            set,
            load,
            proposed
        }),
        (key(), reps()).prop_map(|(set, reps)| What::RepsChosen { set, reps }),
        (key(), rir()).prop_map(|(set, reserve)| What::ReserveChosen { set, reserve }),
        (-600..=600_i32).prop_map(|by_seconds| What::RestChanged { by_seconds }),
        air().prop_map(|air| What::AirNoted { air }),
        Just(What::RestHeld),
        Just(What::RestEnded),
        (option::of(key()), note()).prop_map(|(set, text)| What::Noted { set, text }),
        (0..=10_i64).prop_map(|rpe| What::Rated {
            rpe: Rpe::new(rpe).unwrap()
        }),
        Just(What::Ended),
        Just(What::Resumed),
    ];
    prop_oneof![
        6 => (key(), done(), option::of(load()))
            .prop_map(|(set, done, proposed)| Choice::Plain(What::SetDone { set, done, proposed })),
        2 => (key(), done()).prop_map(|(set, done)| Choice::Plain(What::SetAmended { set, done })),
        6 => plain.prop_map(Choice::Plain),
        2 => any::<proptest::sample::Index>().prop_map(Choice::Undo),
    ]
    .boxed()
}

/// The block of `set` done as the exercise of another one.
fn swap(set: SetKey, other: Block, load: Option<Load>, because: Because) -> What {
    What::BlockSwapped(Box::new(Swap {
        exercise: other.exercise,
        basis: other.basis,
        sides: other.sides,
        cautions: other.cautions,
        proposal: Proposal {
            block: set.block,
            load,
            because,
        },
    }))
}

/// An event before it has its place.
#[derive(Debug, Clone)]
enum Choice {
    Plain(What),
    /// Undo of one of the events before, the beginning not among them.
    Undo(proptest::sample::Index),
}

/// A curve, the default often: then it is left out.
pub fn curve() -> impl Strategy<Value = Curve> {
    prop_oneof![
        Just(Curve::default()),
        proptest::sample::select(Curve::ALL.to_vec())
    ]
}

fn began(session: SessionId, sheet: Sheet) -> BoxedStrategy<What> {
    let proposals: Vec<_> = sheet
        .blocks()
        .map(|block| (Just(block.id), option::of(load()), because()))
        .collect();
    let along = option::of((0..9_u64, any::<bool>()));
    (option::of(load()), proposals, any::<bool>(), curve(), along)
        .prop_map(move |(body_mass, proposals, light, curve, along)| {
            let proposals = proposals
                .into_iter()
                .map(|(block, load, because)| Proposal {
                    block,
                    load,
                    because,
                })
                .collect();
            What::Began(Box::new(Began {
                session,
                sheet: sheet.clone(),
                body_mass,
                proposals,
                light,
                curve,
                along: along.map(|(n, first)| Along {
                    lifter: super::id(n, 7),
                    session: session_id(n + 100),
                    first,
                }),
            }))
        })
        .boxed()
}

/// The events of session number `n`: a beginning and up to 40 more, ids rising, now and then another run.
pub fn session(n: u64) -> BoxedStrategy<Vec<Event>> {
    sheet()
        .prop_flat_map(move |sheet| {
            let keys: Vec<SetKey> = unroll(&sheet).iter().map(|set| set.key).collect();
            let rest = vec(
                (what(keys, sheet.groups.len()), 0..300_000_u64, 0..9_u8),
                0..40,
            );
            (began(session_id(n), sheet), rest)
        })
        .prop_map(move |(began, rest)| lay(n, began, rest))
        .boxed()
}

/// The id of session number `n`.
pub fn session_id(n: u64) -> SessionId {
    SessionId(id(n * 100_000_000, n))
}

fn lay(n: u64, began: What, rest: Vec<(Choice, u64, u8)>) -> Vec<Event> {
    let mut ms = n * 100_000_000;
    let mut run = 1;
    let mut events = vec![event(n, ms, run, began)];
    for (choice, after, restart) in rest {
        ms += 1 + after;
        run += u32::from(restart == 0);
        let what = match choice {
            Choice::Plain(what) => what,
            Choice::Undo(_) if events.len() == 1 => What::RestEnded,
            Choice::Undo(index) => What::Undone {
                event: events[1 + index.index(events.len() - 1)].id,
            },
        };
        events.push(event(n, ms, run, what));
    }
    events
}

/// An event `ms` after the morning.
pub fn event(salt: u64, ms: u64, run: u32, what: What) -> Event {
    Event {
        id: EventId(id(ms, salt)),
        at: time(ms),
        tick: Tick { run, ms },
        what,
    }
}
