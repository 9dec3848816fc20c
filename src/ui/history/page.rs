//! One exercise: its strength over time, its best loads, reps at a load, volume load, tempo.

use super::bests::{best_lines, bests};
use crate::charts::Chart;
use crate::device::clock;
use crate::ledger::Past;
use crate::pictures::{
    Asked, Counted, Period, best_at_reps, both_loads, chosen, drawn, estimate, heaviest, hidden,
    loads_done, longest, no_estimate, reps_at_load, tempo_kept, volume,
};
use crate::sheet::ExerciseId;
use crate::ui::charts::{chart, periods};
use crate::ui::ledger::name_of;
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{
    button, choices, dynamic, group, h1, line, page, quiet, stepper, text, toggles_of, way, when,
};
use crate::ui::place::Place;
use crate::ui::reading::history_of;
use crate::ui::seen::Seen;
use crate::ui::stanchion::{Stanchion, stanchion};
use crate::units::Load;
use crate::words::{many_of, t, t_in};
use leptos::prelude::*;
use leptos::task::spawn_local;

/// How far the reading is.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Read {
    Reading,
    Done,
    Failed,
}

/// What the page depends on.
#[derive(Clone, Copy)]
struct Shown {
    app: Stanchion,
    pasts: Live<Vec<Past>>,
    read: Live<Read>,
    period: Live<Period>,
    /// Only what was done by the newest prescription.
    comparable: Live<bool>,
    /// The load of which the reps are shown: a place among those done; the newest one while none is chosen.
    load: Live<Option<usize>>,
}

impl Shown {
    /// A picture of what is chosen.
    fn of(self, draw: impl Fn(&[&Past], Asked) -> Chart + Send + Sync + 'static) -> Seen<Chart> {
        let asked = self.asked();
        Seen::new(move || {
            let (asked, comparable) = (asked.get(), self.comparable.get());
            self.pasts
                .with(|pasts| drawn(pasts, comparable, |history| draw(history, asked)))
        })
    }

    fn asked(self) -> Seen<Asked> {
        let unit = self.app.of(Model::unit);
        Seen::new(move || Asked {
            unit: unit.get(),
            period: self.period.get(),
            today: clock::wall().date_naive(),
        })
    }

    fn chosen<T>(self, f: impl FnOnce(&[&Past]) -> T) -> T {
        let comparable = self.comparable.get();
        self.pasts.with(|pasts| f(&chosen(pasts, comparable)))
    }

    fn read(self, id: ExerciseId) {
        self.read.set(Read::Reading);
        let keep = self.app.keep();
        spawn_local(async move {
            let read = match history_of(&keep, &id).await {
                Ok(pasts) => {
                    self.pasts.set(pasts);
                    Read::Done
                }
                Err(error) => {
                    self.app.complain(error.to_string());
                    Read::Failed
                }
            };
            // Whoever has left the page by now gets no notice.
            self.read.set(read);
        });
    }
}

/// All that was done of one exercise.
pub fn history_place(id: ExerciseId) -> AnyView {
    let app = stanchion();
    let shown = Shown {
        app,
        pasts: Live::new(Vec::new()),
        read: Live::new(Read::Reading),
        period: Live::new(Period::Year),
        comparable: Live::new(true),
        load: Live::new(None),
    };
    shown.read(id.clone());
    let of = id.clone();
    let title = app.of(move |model| name_of(model, &of));
    let of = id.clone();
    let best = app.of(move |model| best_lines(model, &of));
    let about = Place::Exercise(id.clone()).href();
    page(
        "history",
        vec![
            way(Place::Histories.href(), t("Exercises done")),
            h1(title),
            dynamic(move || match shown.read.get() {
                Read::Reading => line("quiet", "history-reading", t("Reading what was done.")),
                Read::Failed => failed(shown, id.clone()),
                Read::Done => done(shown),
            }),
            dynamic(move || bests(best.get())),
            way(about, t("What is known of this exercise")),
        ],
    )
}

fn failed(shown: Shown, id: ExerciseId) -> AnyView {
    let again = move || shown.read(id.clone());
    let said = line(
        "wrong-word",
        "history-failed",
        t("What was done could not be read. Nothing is lost by that: try once more."),
    );
    group(
        None,
        vec![
            said,
            button("wide", "history-again", t("Read again"), again),
        ],
    )
}

fn done(shown: Shown) -> AnyView {
    if shown.pasts.with_untracked(Vec::is_empty) {
        let words = t("Not done yet. After the first session its pictures are here.");
        return line("quiet", "history-empty", words);
    }
    let curve = shown.app.of(Model::curve);
    let strength = shown.of(move |history, asked| estimate(history, asked, curve.get()));
    let moved = shown.of(|history, asked| both_loads(history, asked).unwrap_or_default());
    let tempo = shown.of(|history, asked| tempo_kept(history, asked).unwrap_or_default());
    // What never has an estimate has no best loads by reps either, and mostly no volume load.
    let estimated = Seen::new(move || shown.chosen(no_estimate).is_none());
    vec![
        asking(shown),
        chart("history-estimate", strength),
        by_kind(shown),
        when(estimated, move || chart("history-best", shown.of(best_at_reps))),
        at_load(shown),
        when(estimated, move || chart("history-volume", shown.of(volume))),
        when(named(moved), move || chart("history-moved", moved)),
        when(named(tempo), move || chart("history-tempo", tempo)),
        when(estimated, || {
            quiet(t("What a change must be to be more than noise: 2.77 times the typical error of the estimate (Hopkins 2000; \
             noise from test and retest, Grgic et al. 2020). It describes, it does not judge."))
        }),
    ]
    .into_any()
}

/// Whether there is a picture of that kind at all.
fn named(chart: Seen<Chart>) -> Seen<bool> {
    Seen::new(move || chart.with(|it| !it.title.is_empty()))
}

/// Holds, carries and reps without a load in figures: the most of each session, and the most load.
fn by_kind(shown: Shown) -> AnyView {
    let picture = |draw: fn(&[&Past], Asked) -> Option<Chart>| {
        shown.of(move |history, asked| draw(history, asked).unwrap_or_default())
    };
    let longest_held = picture(|all, asked| longest(all, asked, Counted::Seconds));
    let held = picture(|all, asked| heaviest(all, asked, Counted::Seconds));
    let farthest = picture(|all, asked| longest(all, asked, Counted::Metres));
    let carried = picture(|all, asked| heaviest(all, asked, Counted::Metres));
    let most = picture(|all, asked| longest(all, asked, Counted::Reps));
    vec![
        when(named(longest_held), move || {
            chart("history-longest", longest_held)
        }),
        when(named(held), move || chart("history-held-load", held)),
        when(named(farthest), move || chart("history-farthest", farthest)),
        when(named(carried), move || {
            chart("history-carried-load", carried)
        }),
        when(named(most), move || chart("history-most-reps", most)),
    ]
    .into_any()
}

/// The choice of the period, and of the prescriptions.
fn asking(shown: Shown) -> AnyView {
    let several = shown
        .pasts
        .with_untracked(|pasts| chosen(pasts, true).len() < pasts.len());
    let mut inside = vec![periods("history-period", shown.period)];
    if several {
        let at = Seen::new(move || Some(i64::from(!shown.comparable.get())));
        let labels = [
            (t("same prescription").to_owned(), t("as the last time")),
            (
                t_in("prescriptions", "all").to_owned(),
                t("whatever was asked"),
            ),
        ];
        let which = toggles_of("history-which", labels, at, move |n| {
            shown.comparable.set(n == 0);
            shown.load.set(None);
        });
        inside.push(choices("choices two", t("which prescriptions"), which));
        inside.push(of_others(shown));
    }
    group(None, inside)
}

/// That something of the period is hidden by the choice of one prescription.
fn of_others(shown: Shown) -> AnyView {
    let asked = shown.asked();
    let hidden = Seen::new(move || {
        let asked = asked.get();
        let comparable = shown.comparable.get();
        let hidden = || shown.pasts.with(|pasts| hidden(pasts, asked));
        comparable.then(hidden).filter(|count| *count > 0)
    });
    dynamic(move || match hidden.get() {
        None => ().into_any(),
        Some(count) => line(
            "quiet",
            "history-hidden",
            many_of(
                count,
                "“{one}” hides what was asked otherwise in {n} session of this period.",
                "“{one}” hides what was asked otherwise in {n} sessions of this period.",
                &[("one", &t("same prescription"))],
            ),
        ),
    })
}

/// Reps at one load, and the choice of it.
fn at_load(shown: Shown) -> AnyView {
    let loads = Seen::new(move || shown.chosen(loads_done));
    // The newest load is what a person looks for first.
    let newest = Seen::new(move || {
        let load = shown.chosen(|history| {
            let last = *history.last()?;
            loads_done(&[last]).pop().map(|(load, _)| load)
        });
        loads.with(|loads| loads.iter().position(|(other, _)| Some(*other) == load))
    });
    let at = move || shown.load.get().or(newest.get()).unwrap_or(0);
    let load = Seen::new(move || {
        let at = at();
        loads.with(|loads| loads.get(at).map_or(Load::ZERO, |(load, _)| *load))
    });
    let picture = shown.of(move |history, asked| reps_at_load(history, asked, load.get()));
    let unit = shown.app.of(Model::unit);
    let figure = text(move || load.get().shown(unit.get()));
    let step = move |more: bool| {
        let last = loads.with_untracked(Vec::len).saturating_sub(1);
        let now = untrack(at);
        let next = if more { now + 1 } else { now.saturating_sub(1) };
        shown.load.set(Some(next.min(last)));
    };
    let any = Seen::new(move || loads.with(|loads| !loads.is_empty()));
    when(any, move || {
        vec![
            chart("history-reps", picture),
            stepper(t("load"), "history-load", figure, step),
        ]
        .into_any()
    })
}
