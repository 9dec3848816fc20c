//! A period as one printable page.

use super::list::name_of;
use super::report_words::{estimates, told};
use super::week_charts::volume_chart;
use crate::device::dom;
use crate::ledger::{
    Course, Heading, Period, VolumeLoad, Week, best_said, course, days_told, halves_said,
    muscles_of, tenths_a_week, weeks,
};
use crate::say;
use crate::sheet::{ExerciseId, Line, Note};
use crate::store::BodyEntry;
use crate::ui::charts::chart;
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{
    Mode, button, choices, dynamic, el, field, h1, line, list, page, quiet, table_of, toggles_of,
    way, wrong_word,
};
use crate::ui::place::Place;
use crate::ui::reading::{first_day, headings_between, history_of};
use crate::ui::seen::{Seen, whenever};
use crate::ui::stanchion::{Stanchion, moment, stanchion};
use crate::units::{Load, Unit, date, iso_date, minutes_said, parse_date};
use crate::words::{decimal, many, t, t_in};
use chrono::{Days, NaiveDate};
use leptos::prelude::*;
use leptos::task::spawn_local;

/// Periods that are one tap away, in weeks.
const PERIODS: [i64; 4] = [4, 8, 13, 26];

/// Most exercises on the page: those with the most sets.
const EXERCISES_MAX: usize = 14;

/// Most notes on the page: the newest.
const NOTES_MAX: usize = 6;

/// Most characters of a note.
const NOTE_CHARS: usize = 140;

/// Everything on the page.
#[derive(Clone, PartialEq)]
struct Report {
    first: NaiveDate,
    last: NaiveDate,
    lifter: Option<String>,
    headings: Vec<Heading>,
    weeks: Vec<Week>,
    /// How many days they are told of.
    days: u32,
    courses: Vec<(String, u32, Course)>,
    /// How many exercises are not on the page.
    left_off: usize,
    body_mass: Option<(Load, Load)>,
    unit: Unit,
}

/// A period on one page.
pub fn report_place() -> AnyView {
    let app = stanchion();
    let today = moment().at.date_naive();
    let back = move |weeks: i64| {
        let days = Days::new(weeks.unsigned_abs() * 7 - 1);
        today.checked_sub_days(days).unwrap_or(today)
    };
    let first = Live::new(iso_date(back(PERIODS[1])));
    let last = Live::new(iso_date(today));
    let wrong = Live::new(None::<String>);
    let report = Live::new(None::<Report>);
    let wanted = Live::new(None);
    whenever(
        move || match (parse_date(&first.get()), parse_date(&last.get())) {
            (Some(first), Some(last)) if first <= last => {
                wrong.set(None);
                wanted.set(Some((first, last)));
                make(app, wanted, report);
            }
            (Some(_), Some(_)) => {
                wrong.set(Some(
                    t("The last day lies before the first: change one of them.").to_owned(),
                ));
            }
            _ => wrong.set(Some(
                t("A report needs its first and its last day.").to_owned(),
            )),
        },
    );
    let labels = PERIODS.map(|weeks| (many(weeks as usize, "{n} week", "{n} weeks"), ""));
    let pressed = Seen::new(move || {
        let to_today = last.get() == iso_date(today);
        let of = |weeks: &i64| to_today && first.get() == iso_date(back(*weeks));
        PERIODS
            .iter()
            .position(of)
            .and_then(|n| i64::try_from(n).ok())
    });
    let periods = toggles_of("report-of", labels, pressed, move |n| {
        let of = usize::try_from(n).ok().and_then(|n| PERIODS.get(n));
        if let Some(weeks) = of {
            first.set(iso_date(back(*weeks)));
            last.set(iso_date(today));
        }
    });
    let between = vec![
        field(
            "report-first",
            Mode::Day,
            t_in("day", "from"),
            first,
            false,
            move |typed| first.set(typed),
        ),
        field(
            "report-last",
            Mode::Day,
            t_in("day", "to"),
            last,
            false,
            move |typed| last.set(typed),
        ),
    ];
    let asked = vec![
        way(Place::Ledger.href(), t("Ledger")),
        h1(t("Report")),
        choices("choices two", t("the last"), periods),
        el("div").class("between").child(between).view(),
        wrong_word("report-wrong", wrong),
        button(
            "wide",
            "report-print",
            t("Print, or keep as PDF"),
            dom::print,
        ),
    ];
    page(
        "report",
        vec![
            el("div").class("report-asked").child(asked).view(),
            dynamic(move || report.with(|report| report.as_ref().map(paper).into_any())),
        ],
    )
}

/// Reads what the period holds, and makes its page.
fn make(
    app: Stanchion,
    wanted: Live<Option<(NaiveDate, NaiveDate)>>,
    report: Live<Option<Report>>,
) {
    let Some((first, last)) = wanted.get_untracked() else {
        return;
    };
    spawn_local(async move {
        match read(app, first, last).await {
            Ok(made) => {
                // Another period may have been chosen, or the page left, meanwhile.
                if wanted.try_get_untracked() == Some(Some((first, last))) {
                    report.set(Some(made));
                }
            }
            Err(error) => app.complain(error),
        }
    });
}

async fn read(app: Stanchion, first: NaiveDate, last: NaiveDate) -> Result<Report, String> {
    let period = Period::new(first, last).map_err(|wrong| wrong.to_string())?;
    let keep = app.keep();
    let said = |error: crate::device::db::DbError| error.to_string();
    let headings = headings_between(&keep, first, last).await.map_err(said)?;
    let since = first_day(&keep).await.map_err(said)?;
    let mut done: Vec<(ExerciseId, u32)> = Vec::new();
    for share in headings.iter().flat_map(|heading| &heading.shares) {
        match done.iter_mut().find(|(id, _)| *id == share.exercise) {
            Some((_, sets)) => *sets += share.sets,
            None => done.push((share.exercise.clone(), share.sets)),
        }
    }
    done.retain(|(_, sets)| *sets > 0);
    crate::order::by_key(&mut done, |(_, sets)| std::cmp::Reverse(*sets));
    let left_off = done.len().saturating_sub(EXERCISES_MAX);
    done.truncate(EXERCISES_MAX);
    let today = moment().at.date_naive();
    let (begin, end) = days_told(&headings, (first, last), since, today);
    let curve = app.model.with_untracked(Model::curve);
    let mut courses = Vec::new();
    for (id, sets) in done {
        let pasts = history_of(&keep, &id).await.map_err(said)?;
        let name = app.model.with_untracked(|model| name_of(model, &id));
        courses.push((name, sets, course(&pasts, curve, period)));
    }
    Ok(app.model.with_untracked(|model| {
        // By rising time.
        let mut within = model
            .body
            .iter()
            .filter(|entry| (first..=last).contains(&entry.at.date_naive()))
            .filter_map(BodyEntry::mass);
        let first_mass = within.next();
        let body_mass = first_mass.map(|mass| (mass, within.next_back().unwrap_or(mass)));
        Report {
            first,
            last,
            lifter: called(model).map(ToString::to_string),
            weeks: weeks(&headings, &model.exercises, begin, end),
            days: u32::try_from((end - begin).num_days() + 1).unwrap_or(1),
            headings,
            courses,
            left_off,
            body_mass,
            unit: model.unit(),
        }
    }))
}

/// Whose report it is: where several train with this phone, by the name in their list; else by the settings.
fn called(model: &Model) -> Option<&Line> {
    let person = model.person().map(|person| &person.name);
    person.or_else(|| model.lifter.as_ref()?.name.as_ref())
}

/// The page itself: on the screen under the choice of the period, on paper alone.
fn paper(report: &Report) -> AnyView {
    let period = say!(
        "{first} to {last}",
        first = date(report.first),
        last = date(report.last)
    );
    let title = match &report.lifter {
        Some(lifter) => format!("{lifter}, {period}"),
        None => period,
    };
    let weeks = report.weeks.clone();
    let unit = report.unit;
    let volume = text_of(report);
    let mut inside = vec![
        el("h2")
            .class("report-title")
            .part("report-title")
            .child(title)
            .view(),
        line("", "report-facts", volume),
    ];
    if !report.headings.iter().any(Heading::has_sets) {
        inside.push(quiet(t("Nothing was done in this period.")));
    } else {
        let pictured = Seen::new(move || volume_chart(&weeks, unit));
        inside.push(chart("report-volume", pictured));
        inside.push(exercises(report));
        inside.push(muscles(report));
        inside.push(notes(report));
    }
    el("article")
        .class("report-page")
        .part("report-page")
        .child(inside)
        .view()
}

/// Sums, session load and body mass in one paragraph.
fn text_of(report: &Report) -> String {
    let headings = report.headings.iter().filter(|it| it.has_sets());
    let count = headings.clone().count();
    let minutes: u32 = headings.clone().map(|it| it.minutes).sum();
    let volume = headings.fold(VolumeLoad::default(), |sum, it| sum.plus(it.volume));
    let of_weeks = |value: &dyn Fn(&Week) -> u32| report.weeks.iter().map(value).sum::<u32>();
    let unrated = of_weeks(&|week| week.load.unrated);
    let missing = match unrated {
        0 => String::new(),
        n => many(
            n as usize,
            " ({n} session without a rating not in it)",
            " ({n} sessions without a rating not in it)",
        ),
    };
    let mass = match report.body_mass {
        Some((begin, end)) if begin == end => {
            say!(" Body mass {mass}.", mass = end.shown(report.unit))
        }
        Some((begin, end)) => say!(
            " Body mass {begin} at the start, {end} at the end.",
            begin = begin.shown(report.unit),
            end = end.shown(report.unit)
        ),
        None => String::new(),
    };
    say!(
        "{sessions}, {time}, {sets}, {hard} of them hard. Volume load {volume}. Session load {load}{missing}.{mass}",
        sessions = many(count, "{n} session", "{n} sessions"),
        time = minutes_said(minutes),
        sets = many(of_weeks(&|week| week.sets) as usize, "{n} set", "{n} sets"),
        hard = of_weeks(&|week| week.hard),
        volume = volume.shown(report.unit),
        load = of_weeks(&|week| week.load.total()),
        missing,
        mass,
    )
}

/// What moved: estimate at begin and end, the change told apart from noise, the best set.
fn exercises(report: &Report) -> AnyView {
    let unit = report.unit;
    let rows = report.courses.iter().map(|(name, sets, course)| {
        vec![
            name.clone(),
            sets.to_string(),
            best_said(course.best.as_ref(), unit),
            estimates(course.estimate.as_ref(), unit),
            told(course.change),
        ]
    });
    let heads = [
        t("exercise"),
        t("sets"),
        t("best set"),
        t("estimated maximum, start to end"),
        t_in("chart", "change"),
    ];
    let heads = heads.map(str::to_owned).to_vec();
    let name = t("Exercises").to_owned();
    let rows = rows.collect();
    let table = table_of(
        "report-table",
        Some("report-exercises"),
        name.clone(),
        name,
        heads,
        rows,
    );
    let more = (report.left_off > 0).then(|| {
        quiet(many(
            report.left_off,
            "{n} exercise more, with fewer sets, not on this page.",
            "{n} exercises more, with fewer sets, not on this page.",
        ))
    });
    let system = t(
        "Where the body is moved, the estimate counts it. The change is told apart from noise by what is known of \
                  the doubt at both ends.",
    );
    vec![table, quiet(system), more.into_any()].into_any()
}

/// Sets of each muscle, in all and a week.
fn muscles(report: &Report) -> AnyView {
    let items: Vec<AnyView> = muscles_of(&report.weeks)
        .iter()
        .map(|sets| {
            let a_week = tenths_a_week(sets.halves(), report.days);
            say!(
                "{muscle} {sets} ({a_week} a week)",
                muscle = sets.muscle.name(),
                sets = halves_said(sets.halves()),
                a_week = decimal(&format!("{}.{}", a_week / 10, a_week % 10)),
            )
            .into_any()
        })
        .collect();
    let inside = vec![
        el("h3").child(t("Sets of each muscle")).view(),
        quiet(t(
            "1 for a main muscle, 0.5 for one that also works (Pelland et al. 2024, preprint).",
        )),
        list("report-muscles", Some("report-muscles"), items),
    ];
    inside.into_any()
}

/// The newest notes.
fn notes(report: &Report) -> AnyView {
    let noted = report.headings.iter().filter_map(|heading| {
        let note = heading.note.as_ref().map(Note::as_str)?;
        let cut: String = note.chars().take(NOTE_CHARS).collect();
        let more = if cut.len() < note.len() { "…" } else { "" };
        let day = date(heading.began.date_naive());
        Some(format!("{day}: {}{more}", cut.replace('\n', " ")).into_any())
    });
    let items: Vec<AnyView> = noted.take(NOTES_MAX).collect();
    if items.is_empty() {
        return ().into_any();
    }
    vec![
        el("h3").child(t("Notes")).view(),
        list("report-notes", Some("report-notes"), items),
    ]
    .into_any()
}
