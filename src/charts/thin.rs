//! Thousands of places thinned to what a screen can show; no peak is lost.
//!
//! Of a line the first, lowest, highest and last place of each column of pixels stay: the line drawn through them covers
//! the same pixels (Jugel, Jerzak, Hackenbroich, Markl 2014, "M4: a visualization-oriented time series data aggregation",
//! Proc. VLDB Endowment 7(10):797–808).

use crate::order;

/// A place in tenths of a unit; a unit is a pixel of an ordinary screen.
type Place = (i64, i64);

/// Tenths in a column or a cell: half a unit, as phones draw two or three pixels to a unit.
const CELL: i64 = 5;

/// A line's places that are needed to draw it; they rise in x.
#[must_use]
pub fn thin_line(places: &[Place]) -> Vec<Place> {
    columns(places, |column, kept| {
        let lowest = least(column, |place| place.1);
        let highest = least(column, |place| -place.1);
        let mut wanted = [0, lowest, highest, column.len() - 1];
        order::by_key(&mut wanted, |at| *at);
        for (n, at) in wanted.iter().enumerate() {
            if n == 0 || wanted[n - 1] != *at {
                kept.push(column[*at]);
            }
        }
    })
}

/// The dots that can be told apart: one of each cell, and the lowest and highest of each column; they rise in x.
#[must_use]
pub fn thin_dots(places: &[Place]) -> Vec<Place> {
    columns(places, |column, kept| {
        let lowest = least(column, |place| place.1);
        let highest = least(column, |place| -place.1);
        let mut cells: Vec<i64> = Vec::new();
        for (n, place) in column.iter().enumerate() {
            let cell = place.1.div_euclid(CELL);
            let new = !cells.contains(&cell);
            if new {
                cells.push(cell);
            }
            if new || n == lowest || n == highest {
                kept.push(*place);
            }
        }
    })
}

/// Goes through the columns.
fn columns(places: &[Place], keep: impl Fn(&[Place], &mut Vec<Place>)) -> Vec<Place> {
    let mut kept = Vec::new();
    let mut rest = places;
    while let Some(first) = rest.first() {
        let column = first.0.div_euclid(CELL);
        let end = rest
            .iter()
            .position(|place| place.0.div_euclid(CELL) != column);
        let (now, later) = rest.split_at(end.unwrap_or(rest.len()));
        keep(now, &mut kept);
        rest = later;
    }
    kept
}

/// Where the least is, by a key; the first of several.
fn least(column: &[Place], key: impl Fn(&Place) -> i64) -> usize {
    let mut least = 0;
    for (n, place) in column.iter().enumerate() {
        if key(place) < key(&column[least]) {
            least = n;
        }
    }
    least
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn few_places_stay_as_they_are() {
        let few = [(0, 5), (10, 7), (20, 1)];
        assert_eq!(thin_line(&few), few);
        assert_eq!(thin_dots(&few), few);
        assert_eq!(thin_line(&[]), []);
    }

    #[test]
    fn ten_years_fit_a_screen() {
        let places: Vec<Place> = (0..3_500)
            .map(|n| (n * 3_000 / 3_500, n * 7 % 1_800))
            .collect();
        assert!(thin_line(&places).len() <= 4 * 600);
        assert!(thin_dots(&places).len() <= places.len());
        let same = vec![(4, 4); 3_500];
        assert_eq!(thin_line(&same), [(4, 4), (4, 4)]);
        assert_eq!(thin_dots(&same), [(4, 4)]);
    }

    proptest! {
        #[test]
        fn no_extreme_is_lost_and_nothing_is_invented(
            mut places in prop::collection::vec((0_i64..400, -500_i64..500), 0..300),
        ) {
            places.sort_unstable_by_key(|place| place.0);
            for thinned in [thin_line(&places), thin_dots(&places)] {
                prop_assert!(thinned.iter().all(|place| places.contains(place)));
                prop_assert!(thinned.windows(2).all(|two| two[0].0.div_euclid(CELL) <= two[1].0.div_euclid(CELL)));
                for column in 0..80 {
                    let of = |list: &[Place]| {
                        let ys = list.iter().filter(|place| place.0.div_euclid(CELL) == column).map(|place| place.1);
                        (ys.clone().min(), ys.max())
                    };
                    prop_assert_eq!(of(&places), of(&thinned));
                }
            }
            // Every cell that had a dot has one.
            let cells = |list: &[Place]| -> std::collections::BTreeSet<Place> {
                list.iter().map(|place| (place.0.div_euclid(CELL), place.1.div_euclid(CELL))).collect()
            };
            prop_assert_eq!(cells(&places), cells(&thin_dots(&places)));
        }
    }
}
