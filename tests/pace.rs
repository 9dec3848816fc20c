//! Change-overs as they are measured in a session, and the lifter's own pace that they tell.

use crate::common;

use common::events::event;
use common::shelves::Memory;
use common::{id, time};
use stanchion::ledger::{CHANGE_OVERS_LEAST, CHANGE_OVERS_NEWEST, Heading, Pace, SessionRecord};
use stanchion::quick::parse_sheet;
use stanchion::session::{Amount, Began, Done, Event, SessionId, What};
use stanchion::sheet::{SetKey, Sheet, unroll};
use stanchion::store::{Entry, Shelf, Turn};
use stanchion::strength::Curve;
use stanchion::units::{Reps, Seconds};

/// Three groups of one set each: 8 reps at 3/1/1/0, 40 s; a rest of 90 s after each.
fn sheet() -> Sheet {
    let mut n = 0;
    let mut ids = || {
        n += 1;
        id(n, n)
    };
    let line = |name| format!("{name}: 1 × 8; tempo 3/1/1/0; rest 1:30; both sides\n");
    let lines: String = ["Front squat", "Chin-up", "Push-up"].map(line).concat();
    let text = format!("# Lower A\n{lines}");
    parse_sheet(&text, &common::known::named, &mut ids, time(0)).unwrap()
}

/// A session of that sheet on day `n`: of each set the second of its start, if there is one, and of its log.
fn session(n: u64, sets: &[(Option<u64>, u64)]) -> Vec<Event> {
    let sheet = sheet();
    let keys: Vec<SetKey> = unroll(&sheet).iter().map(|set| set.key).collect();
    let began = What::Began(Box::new(Began {
        curve: Curve::default(),
        session: SessionId(id(n, 100 + n)),
        sheet,
        body_mass: None,
        proposals: Vec::new(),
        light: false,
        along: None,
    }));
    let mut events = vec![(0, began)];
    for (set, (start, log)) in keys.into_iter().zip(sets) {
        events.extend(start.map(|at| (at, What::SetStarted { set })));
        let done = Done {
            load: None,
            amount: Amount::Reps(Reps::new(8).unwrap()),
            reserve: None,
        };
        let proposed = None;
        events.push((
            *log,
            What::SetDone {
                set,
                done,
                proposed,
            },
        ));
    }
    let end = events.last().map_or(0, |(at, _)| *at);
    events.push((end, What::Ended));
    let day = n * 86_400_000;
    events
        .into_iter()
        .zip(0..)
        .map(|((at, what), salt)| event(salt, day + at * 1000, 1, what))
        .collect()
}

fn record(n: u64, sets: &[(Option<u64>, u64)]) -> SessionRecord {
    SessionRecord::from_events(&session(n, sets)).unwrap()
}

/// What the change-overs of a session took, in seconds.
fn measured(sets: &[(Option<u64>, u64)]) -> Vec<u16> {
    let record = record(1, sets);
    record.change_overs.iter().map(|it| it.get()).collect()
}

#[test]
fn a_change_over_runs_from_the_end_of_the_rest_to_the_start() {
    // Hand-worked: logged at 40, started at 200: 160 s less 90 of rest; then 240 to 330, just the rest.
    assert_eq!(
        measured(&[(Some(0), 40), (Some(200), 240), (Some(330), 370)]),
        [70, 0]
    );
    // Begun before the rest was over: never below 0.
    assert_eq!(
        measured(&[(Some(0), 40), (Some(100), 140), (None, 150)]),
        [0, 0]
    );
}

/// 84 °F and 60 % are 88 °F, caution: a rest of 90 s is a tenth longer, up to the next 5 s, so 100 s.
#[test]
fn what_the_heat_adds_to_a_rest_is_no_change_over_and_was_foreseen() {
    let air = serde_json::from_str(r#"{"temperature":"84 °F","humidity":60}"#).unwrap();
    let mut events = session(1, &[(Some(0), 40), (Some(200), 240), (Some(340), 380)]);
    let cool = SessionRecord::from_events(&events).unwrap();
    // Noted at 50 s: the rest under way stays as it is, the next one is longer.
    events.push(event(99, 86_400_000 + 50_000, 1, What::AirNoted { air }));
    let hot = SessionRecord::from_events(&events).unwrap();
    let seconds = |record: &SessionRecord| -> Vec<u16> {
        record.change_overs.iter().map(|it| it.get()).collect()
    };
    assert_eq!(seconds(&cool), [70, 10]);
    assert_eq!(seconds(&hot), [70, 0]);
    assert_eq!((cool.longer_rests, hot.longer_rests), (0, 10));
    // Three sets of 40 s, two rests of 90 s, two change-overs of 60 s: 420 s, 7 min. In the heat 430, 8 min.
    let minutes = |record: &SessionRecord| record.predicted_minutes(Seconds::new(60).unwrap());
    assert_eq!((minutes(&cool), minutes(&hot)), (7, 8));
}

#[test]
fn without_a_start_the_set_itself_is_taken_off() {
    // Hand-worked: 40 to 240 less 90 of rest, less the 40 s of the set.
    assert_eq!(measured(&[(None, 40), (None, 240)]), [70]);
}

#[test]
fn a_pause_is_no_change_over() {
    // Hand-worked: 90 s of rest and 900 s beyond it count, one more does not.
    assert_eq!(measured(&[(Some(0), 40), (Some(1030), 1070)]), [900]);
    assert!(measured(&[(Some(0), 40), (Some(1031), 1071)]).is_empty());
}

fn heading(n: u64, change_overs: &[i64]) -> Heading {
    Heading {
        change_overs: change_overs
            .iter()
            .map(|n| Seconds::new(*n).unwrap())
            .collect(),
        ..Heading::of(&record(n, &[(None, 40)]), &[])
    }
}

fn pace(headings: &[Heading]) -> (u16, bool) {
    let pace = Pace::of(headings);
    (pace.change_over().get(), pace == Pace::Assumed)
}

#[test]
fn a_pace_is_assumed_until_five_change_overs_are_measured() {
    assert_eq!(CHANGE_OVERS_LEAST, 5);
    assert_eq!(pace(&[]), (60, true));
    assert_eq!(pace(&[heading(1, &[10, 20, 30, 40])]), (60, true));
    // Hand-worked: the middle of five; of six the middle between the third and the fourth.
    assert_eq!(pace(&[heading(1, &[50, 10, 30, 20, 40])]), (30, false));
    assert_eq!(
        pace(&[heading(2, &[60]), heading(1, &[50, 10, 30, 20, 40])]),
        (35, false)
    );
    assert!(Pace::of(&[]).said().contains("60 s"));
    let own = Pace::of(&[heading(1, &[50, 10, 30, 20, 40])]);
    assert!(own.said().contains("30 s") && own.said().contains("last 5"));
}

#[test]
fn only_the_newest_twenty_count() {
    assert_eq!(CHANGE_OVERS_NEWEST, 20);
    // The newest twenty: 10 of the newer session, and the last 10 of the older one.
    let older: Vec<i64> = [vec![500; 30], vec![40; 10]].concat();
    let headings = [heading(2, &[40; 10]), heading(1, &older)];
    assert_eq!(pace(&headings), (40, false));
    assert!(matches!(Pace::of(&headings), Pace::Measured { of: 20, .. }));
}

#[test]
fn what_is_predicted_is_what_was_known_when_the_session_began() {
    let plain = record(5, &[(Some(0), 40), (Some(200), 240), (Some(400), 440)]);
    // Hand-worked: 3 × 40 + 2 × 90 + 2 × 60 s = 420 s.
    let heading_of = Heading::of(&plain, &[]);
    assert_eq!(heading_of.predicted_minutes, Some(7));
    assert_eq!(
        heading_of.predicted_and_taken().unwrap(),
        "predicted 7 min, took 7 min"
    );
    // Change-overs of 240 s known before make it 780 s; those of a later session say nothing.
    let slow = [240; 5];
    assert_eq!(
        Heading::of(&plain, &[heading(4, &slow)]).predicted_minutes,
        Some(13)
    );
    assert_eq!(
        Heading::of(&plain, &[heading(6, &slow)]).predicted_minutes,
        Some(7)
    );
}

/// Change-overs of 240 s, twice a session: what the fourth session is predicted by.
#[test]
fn a_kept_heading_is_predicted_by_the_pace_of_those_before_it() {
    let slow = |n| record(n, &[(Some(0), 40), (Some(370), 410), (Some(740), 780)]);
    let records: Vec<SessionRecord> = (1..=4).map(slow).collect();
    let turn = |record: &SessionRecord| Turn {
        session: record.session,
        before: None,
        after: Some(Entry::of(record)),
    };
    let mut books = Memory::default();
    // The last comes first, as by an import of older ones.
    for record in records.iter().rev() {
        books.turn(&[turn(record)]);
    }
    let on = |shelf| books.0.iter().filter(move |((on, _), _)| *on == shelf);
    let read = |row: &String| {
        stanchion::json::parse::<Heading>(stanchion::store::open(row).unwrap()).unwrap()
    };
    let predicted: Vec<Option<u32>> = on(Shelf::Headings)
        .map(|(_, row)| read(row).predicted_minutes)
        .collect();
    // Of fewer than five change-overs nothing is told: 7 min as without any (worked by hand above).
    assert_eq!(predicted, [Some(7), Some(7), Some(7), Some(13)]);
    // The form of the books is kept with them.
    assert!(on(Shelf::Books).any(|((_, key), _)| key == "form"));
}

#[test]
fn a_heading_of_an_older_version_is_read() {
    let heading = heading(1, &[]);
    let mut old = serde_json::to_value(&heading).unwrap();
    let fields = old.as_object_mut().unwrap();
    assert!(fields.remove("predicted_minutes").is_some());
    assert!(!fields.contains_key("change_overs"));
    let read: Heading = serde_json::from_value(old).unwrap();
    assert_eq!(read.predicted_and_taken(), None);
    assert_eq!(read.minutes, heading.minutes);
}
