//! What a chart laid out promises: all of it inside its box, figures that do not meet.

use super::*;
use crate::charts::chart::tests::dots;
use crate::charts::{Cell, Column, Ink, Mark, Row, Spot};
use proptest::prelude::*;

/// The places of a path, in tenths.
fn places(path: &str) -> Vec<(i64, i64)> {
    let mut places = Vec::new();
    for piece in path.split(['M', 'L']).skip(1) {
        let piece = piece.split(['h', 'H', 'V', 'Z']).next().unwrap();
        let (x, y) = piece.split_once(' ').unwrap();
        let tenths = |text: &str| (text.parse::<f64>().unwrap() * 10.0).round() as i64;
        places.push((tenths(x), tenths(y)));
    }
    places
}

fn lying(counts: &[i64]) -> Chart {
    let names = Grain::Names((0..counts.len()).map(|n| format!("muscle {n}")).collect());
    let spots: Vec<Spot> = (0..)
        .zip(counts)
        .map(|(y, x)| Spot { x: *x, y, from: 0 })
        .collect();
    let row = |spot: &Spot| Row {
        x: spot.x,
        y: spot.y,
        cells: vec![Cell::Of(spot.y), Cell::Of(spot.x)],
    };
    Chart {
        title: "Sets".to_owned(),
        about: String::new(),
        x: Axis::from_zero(Grain::count(), "sets"),
        y: Axis::of(names.clone(), ""),
        rows: spots.iter().map(row).collect(),
        marks: vec![Mark::new(Shape::Lying, Ink::Main, "", spots).wide(1)],
        columns: vec![
            Column::new("muscle", names),
            Column::new("sets", Grain::count()),
        ],
    }
}

#[test]
fn a_tap_finds_the_nearest_row() {
    let chart = dots(&[10_000, 10_500, 11_000]);
    let drawing = lay_out(&chart, 320);
    for (n, row) in chart.rows.iter().enumerate() {
        let (x, y) = drawing.place(row.x, row.y);
        assert_eq!(drawing.nearest(&chart, (x + 20, y - 300)), Some(n));
    }
    let chart = lying(&[4, 9, 2]);
    let drawing = lay_out(&chart, 320);
    let [(_, first), (_, y)] = [0, 1].map(|n| drawing.place(chart.rows[n].x, chart.rows[n].y));
    assert!(first < y, "the first name stands on top");
    assert_eq!(drawing.nearest(&chart, (3_000, y)), Some(1));
    assert_eq!(drawing.nearest(&dots(&[]), (0, 0)), None);
}

#[test]
fn an_empty_chart_and_one_of_a_single_value_are_drawn() {
    let empty = lay_out(&dots(&[]), 320);
    assert_eq!(empty.strokes.len(), 2);
    let one = lay_out(&dots(&[10_250]), 320);
    let words: Vec<&str> = one.words.iter().map(|words| words.words.as_str()).collect();
    assert_eq!(words, ["95", "100", "105", "110", "1 Jan", "kg"]);
}

#[test]
fn where_there_is_nothing_the_axis_begins_at_nothing() {
    let drawing = lay_out(&lying(&[0, 0]), 358);
    let words: Vec<&str> = drawing.words.iter().map(|it| it.words.as_str()).collect();
    assert!(words.contains(&"0"), "{words:?}");
    assert!(
        !words.iter().any(|it| it.contains(['-', '\u{2212}'])),
        "{words:?}"
    );
}

#[test]
fn bars_lie_beside_each_other() {
    let mut chart = dots(&[300, 500, 400]);
    chart.y.span = Some((0, 0));
    for spot in &mut chart.marks[0].spots {
        spot.from = 0;
    }
    chart.marks[0].shape = Shape::Bars;
    chart.marks[0].width = 1;
    let drawing = lay_out(&chart, 320);
    let bars = places(&drawing.strokes[2].path);
    assert_eq!(bars.len(), 3);
    let base = drawing.place(chart.rows[0].x, 0).1;
    assert!(bars.iter().all(|bar| bar.1 == base));
    assert!(bars.windows(2).all(|two| two[1].0 - two[0].0 > 500));
}

#[test]
fn ten_years_of_dots_are_a_path_of_bearable_length() {
    let values: Vec<i64> = (0..3_500).map(|n| 8_000 + n + (n * 37) % 900).collect();
    let drawing = lay_out(&dots(&values), 390);
    let length: usize = drawing.strokes.iter().map(|stroke| stroke.path.len()).sum();
    assert!(length < 50_000, "{length}");
}

proptest! {
    #[test]
    fn every_mark_and_every_figure_lies_inside_the_box(
        values in prop::collection::vec(-1_000_000_i64..100_000_000, 0..60),
        width in 0_i64..900,
        shape in prop::sample::select(vec![Shape::Line, Shape::Steps, Shape::Band, Shape::Dots, Shape::Rings, Shape::Squares, Shape::Notches, Shape::Bars]),
    ) {
        let mut chart = dots(&values);
        chart.marks[0].shape = shape;
        chart.marks[0].width = i64::from(shape == Shape::Bars);
        for spot in &mut chart.marks[0].spots {
            spot.from /= 2;
        }
        let drawing = lay_out(&chart, width);
        prop_assert!(drawing.width >= WIDTH_LEAST);
        let inside = |(x, y): (i64, i64)| (0..=drawing.width * 10).contains(&x) && (0..=drawing.height * 10).contains(&y);
        for stroke in &drawing.strokes {
            prop_assert!(places(&stroke.path).into_iter().all(inside), "{}", stroke.path);
        }
        for words in &drawing.words {
            let width = width_of(&words.words);
            let (from, to) = match words.anchor {
                "start" => (words.x, words.x + width),
                "end" => (words.x - width, words.x),
                _ => (words.x - width / 2, words.x + width / 2),
            };
            // Six figures on the narrowest screen may touch the edge; ordinary ones do not.
            let room = if drawing.width < 200 { 400 } else { 10 };
            prop_assert!(from >= -room && to <= drawing.width * 10 + room, "{words:?}");
        }
    }

    #[test]
    fn bars_that_lie_are_inside_too(counts in prop::collection::vec(0_i64..200, 1..20), width in 120_i64..900) {
        let drawing = lay_out(&lying(&counts), width);
        for stroke in &drawing.strokes {
            for (x, y) in places(&stroke.path) {
                prop_assert!((0..=drawing.width * 10).contains(&x) && (0..=drawing.height * 10).contains(&y));
            }
        }
    }
}
