//! Paths written in tenths of a unit, without a float.

/// Writes the data of an SVG path.
#[derive(Debug, Default, Clone)]
pub struct Pen {
    path: String,
}

impl Pen {
    /// An empty path.
    #[must_use]
    pub fn new() -> Pen {
        Pen::default()
    }

    /// The data.
    #[must_use]
    pub fn path(self) -> String {
        self.path
    }

    fn to(&mut self, letter: char, (x, y): (i64, i64)) {
        self.path.push(letter);
        self.tenths(x);
        self.path.push(' ');
        self.tenths(y);
    }

    fn tenths(&mut self, tenths: i64) {
        self.path.push_str(&tenths_text(tenths));
    }

    /// A line through these places.
    pub fn line(&mut self, places: &[(i64, i64)]) {
        for (n, place) in places.iter().enumerate() {
            self.to(if n == 0 { 'M' } else { 'L' }, *place);
        }
    }

    /// A line that stays until the next place.
    pub fn steps(&mut self, places: &[(i64, i64)]) {
        let mut before: Option<i64> = None;
        for place in places {
            match before {
                None => self.to('M', *place),
                Some(y) => {
                    self.to('L', (place.0, y));
                    self.to('L', *place);
                }
            }
            before = Some(place.1);
        }
    }

    /// The area between two lines.
    pub fn area(&mut self, upper: &[(i64, i64)], lower: &[(i64, i64)]) {
        if upper.is_empty() {
            return;
        }
        self.line(upper);
        for place in lower.iter().rev() {
            self.to('L', *place);
        }
        self.path.push('Z');
    }

    /// A dot: the round or square end of a line without length.
    pub fn dot(&mut self, place: (i64, i64)) {
        self.to('M', place);
        self.path.push_str("h0");
    }

    /// A filled box between two corners.
    pub fn bar(&mut self, from: (i64, i64), to: (i64, i64)) {
        self.to('M', from);
        self.path.push('H');
        self.tenths(to.0);
        self.path.push('V');
        self.tenths(to.1);
        self.path.push('H');
        self.tenths(from.0);
        self.path.push('Z');
    }
}

/// Tenths as a number: 125 is `12.5`, −5 is `-.5`.
pub fn tenths_text(tenths: i64) -> String {
    let sign = if tenths < 0 { "-" } else { "" };
    let size = tenths.unsigned_abs();
    match (size / 10, size % 10) {
        (whole, 0) => format!("{sign}{whole}"),
        (whole, part) => format!("{sign}{whole}.{part}"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn path(draw: impl FnOnce(&mut Pen)) -> String {
        let mut pen = Pen::new();
        draw(&mut pen);
        pen.path()
    }

    #[test]
    fn paths_are_short_and_exact() {
        let places = [(0, 100), (105, 50), (-5, 9)];
        assert_eq!(path(|pen| pen.line(&places)), "M0 10L10.5 5L-0.5 0.9");
        assert_eq!(path(|pen| pen.steps(&places[..2])), "M0 10L10.5 10L10.5 5");
        assert_eq!(
            path(|pen| pen.area(&places[..2], &[(0, 200), (105, 200)])),
            "M0 10L10.5 5L10.5 20L0 20Z"
        );
        assert_eq!(path(|pen| pen.dot((15, 20))), "M1.5 2h0");
        assert_eq!(path(|pen| pen.bar((10, 20), (30, 55))), "M1 2H3V5.5H1Z");
        assert_eq!(path(|pen| pen.area(&[], &[])), "");
    }
}
