//! What a session came to in one exercise: its volume load, and the tempo kept.

use super::asked::{Asked, day, in_parts};
use crate::charts::{Axis, Cell, Chart, Column, Grain, Ink, Mark, Row, Shape, Spot};
use crate::ledger::{Past, TempoKept};
use crate::strength::Unfed;
use crate::units::{KG_PER_LB, Unit};
use crate::words::{many_of, t, t_in};
use rust_decimal::Decimal;
use uuid::Uuid;

/// Goes through the sessions in the period: what was done in several blocks of one is one.
fn sessions<'a>(history: &[&'a Past], asked: Asked) -> Vec<Vec<&'a Past>> {
    let mut sessions: Vec<Vec<&Past>> = Vec::new();
    let mut last: Option<Uuid> = None;
    for past in history.iter().filter(|past| asked.holds(past)) {
        let id = past.performance.session;
        match sessions.last_mut().filter(|_| last == Some(id)) {
            Some(session) => session.push(past),
            None => sessions.push(vec![past]),
        }
        last = Some(id);
    }
    sessions
}

/// The volume load of each session in this exercise.
#[must_use]
pub fn volume(history: &[&Past], asked: Asked) -> Chart {
    let grain = || Grain::Number {
        decimals: 0,
        unit: asked.unit.sign(),
    };
    let rows: Vec<Row> = sessions(history, asked)
        .into_iter()
        .filter_map(|session| {
            let kg: Decimal = session.iter().map(|past| past.volume.kg()).sum();
            let amount = match asked.unit {
                Unit::Kg => kg,
                Unit::Lb => kg / KG_PER_LB,
            };
            let sets = session.iter().flat_map(|past| &past.performance.sets);
            let sets = sets.filter(|set| set.unfed != Some(Unfed::RampUp)).count();
            let light = session.iter().any(|past| past.light);
            let (x, y) = (day(session[0]), in_parts(amount, 0));
            (y > 0).then(|| Row {
                x,
                y,
                cells: vec![
                    Cell::Of(x),
                    Cell::Of(y),
                    Cell::Of(i64::try_from(sets).unwrap_or(i64::MAX)),
                    if light {
                        Cell::Words(t("light week").to_owned())
                    } else {
                        Cell::Empty
                    },
                ],
            })
        })
        .collect();
    let bar = |row: &Row| Spot {
        x: row.x,
        y: row.y,
        from: 0,
    };
    let x = asked.days();
    let from = x.span.map(|span| span.0);
    let first = from.or(rows.first().map(|row| row.x)).unwrap_or(0);
    let last = rows.last().map_or(first, |row| row.x);
    // So wide that a bar can be seen and two days still be told apart in a quarter.
    let wide = ((last - first) / 120).max(1);
    let is_light = |row: &&Row| matches!(row.cells[3], Cell::Words(_));
    let usual = rows.iter().filter(|row| !is_light(row)).map(bar);
    let light = rows.iter().filter(is_light).map(bar);
    let about = t(if rows.is_empty() {
        "No volume load in this period."
    } else {
        "Full reps times load, summed over the work sets of each session."
    });
    Chart {
        title: t("Volume load").to_owned(),
        about: about.to_owned(),
        x,
        y: Axis::from_zero(grain(), asked.unit.sign()),
        marks: vec![
            Mark::new(Shape::Bars, Ink::Main, "", usual.collect()).wide(wide),
            Mark::new(Shape::Bars, Ink::Second, t("light week"), light.collect()).wide(wide),
        ],
        columns: vec![
            Column::new(t("day"), Grain::Days),
            Column::unsaid(t("volume load"), grain()),
            Column::many(t("work sets"), "{n} work set", "{n} work sets"),
            Column::unsaid(t("week"), Grain::count()),
        ],
        rows,
    }
}

/// Which share of the sets by tempo took the time of it, session by session; none where none was ever timed.
#[must_use]
pub fn tempo_kept(history: &[&Past], asked: Asked) -> Option<Chart> {
    if history.iter().all(|past| past.tempo.is_empty()) {
        return None;
    }
    let grain = || Grain::Number {
        decimals: 0,
        unit: "%",
    };
    let rows: Vec<Row> = sessions(history, asked)
        .into_iter()
        .filter_map(|session| {
            let timed = session.iter().map(|past| past.tempo);
            let tempo = timed.fold(TempoKept::default(), TempoKept::plus);
            let x = day(session[0]);
            (!tempo.is_empty()).then(|| {
                let (kept, sets) = (i64::from(tempo.kept), i64::from(tempo.sets));
                // Rounded to the nearest.
                let y = (200 * kept + sets) / (2 * sets);
                let of = many_of(
                    tempo.sets as usize,
                    "{kept} of {n} set",
                    "{kept} of {n} sets",
                    &[("kept", &kept)],
                );
                Row {
                    x,
                    y,
                    cells: vec![Cell::Of(x), Cell::Of(y), Cell::Words(of)],
                }
            })
        })
        .collect();
    let about = [
        t("No set by tempo in this period was started by ear."),
        t(
            "Of the sets by tempo that were started by ear, so many took their time: reps times the digits of the tempo, or longer.",
        ),
    ];
    Some(Chart {
        title: t("Tempo kept").to_owned(),
        y: Axis::of(grain(), "%").spanning(0, 100),
        columns: vec![
            Column::new(t("day"), Grain::Days),
            Column::unsaid(t_in("chart", "kept"), grain()),
            Column::unsaid(t("sets"), Grain::count()),
        ],
        ..asked.over_time(rows, about)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pictures::Period;
    use crate::strength::SetResult;
    use crate::units::Reps;
    use chrono::NaiveDate;

    #[test]
    fn ramp_ups_are_no_work_sets_and_a_share_is_rounded() {
        let mut past: Past = serde_json::from_str(
            "{\"name\":\"front squat\",\"performance\":{\"session\":\"00000000-0000-0000-0000-000000000001\",\
             \"at\":\"2026-03-02T09:00:00Z\",\"shape\":\"\",\"sets\":[]},\
             \"sheet\":\"00000000-0000-0000-0000-000000000001\",\"volume\":\"600 kg\"}",
        )
        .unwrap();
        let set = |unfed: Option<Unfed>| SetResult {
            stretch: None,
            stages: Vec::new(),
            load: None,
            reps: Reps::saturating(5),
            low: Reps::saturating(5),
            top: Reps::saturating(5),
            reserve: None,
            work: unfed.is_none(),
            to_limit: false,
            to_spare: false,
            unfed,
        };
        past.performance.sets = vec![set(Some(Unfed::RampUp)), set(None), set(Some(Unfed::Drop))];
        past.tempo = TempoKept { sets: 3, kept: 2 };
        let asked = Asked {
            unit: Unit::Kg,
            period: Period::All,
            today: NaiveDate::from_ymd_opt(2026, 3, 20).unwrap(),
        };
        let chart = volume(&[&past], asked);
        assert_eq!(chart.cell(&chart.rows[0], 2), "2 work sets");
        let chart = tempo_kept(&[&past], asked).unwrap();
        let cells = [1, 2].map(|column| chart.cell(&chart.rows[0], column));
        assert_eq!(cells, ["67 %", "2 of 3 sets"]);
        past.tempo = TempoKept { sets: 1, kept: 0 };
        let chart = tempo_kept(&[&past], asked).unwrap();
        assert_eq!(chart.cell(&chart.rows[0], 2), "0 of 1 set");
    }
}
