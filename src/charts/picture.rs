//! A chart as the text of an SVG file: title, picture and key, with its colours inside.

use super::chart::{Chart, Mark, Shape};
use super::layout::{Drawing, Words, lay_out};
use super::marks::class_of;
use super::pen::{Pen, tenths_text};
use crate::words::{SOFT_HYPHEN, file_word};

/// Width of a saved picture, in units.
pub const PICTURE_WIDTH: i64 = 640;

/// Units around the picture.
const EDGE: i64 = 16;

/// Units that a line of text takes.
const LINE: i64 = 20;

/// The looks of a saved picture: those of `style/charts.css` with the colours of a light ground, and of a dark one where
/// the phone asks for it.
const STYLE: &str = "\
svg{--ground:#fbfaf6;--chalk:#14181b;--dust:#353c40;--line:#6a7478;--faint:#c4c3ba;--amber:#6b4500;\
font:13px system-ui,sans-serif}\
@media(prefers-color-scheme:dark){svg{--ground:#000;--chalk:#f4f1ea;--dust:#c3cacd;--line:#6f7c82;--faint:#39444a;\
--amber:#efb13e}}\
.ground{fill:var(--ground)}text{fill:var(--dust)}.title{fill:var(--chalk);font-size:18px;font-weight:700}\
path{fill:none}.chart-grid{stroke:var(--faint)}.chart-axis{stroke:var(--line)}\
.upright{stroke:var(--chalk);stroke-width:3}\
.ink-main{color:var(--amber)}.ink-second{color:var(--chalk)}.ink-third{color:var(--dust)}.ink-quiet{color:var(--line)}\
.mark-line{stroke:currentColor;stroke-width:2.5;stroke-linejoin:round}\
.mark-line.ink-second{stroke-dasharray:7 4}.mark-line.ink-third{stroke-dasharray:2 3}\
.mark-line.ink-quiet{stroke-width:1.5}\
.mark-band{fill:currentColor;fill-opacity:.25}\
.mark-dots,.mark-rings{stroke:currentColor;stroke-width:6;stroke-linecap:round}\
.mark-rings{stroke-width:8}.mark-hole{stroke:var(--ground);stroke-width:4;stroke-linecap:round}\
.mark-notches{stroke:currentColor;stroke-width:4}\
.mark-squares{stroke:currentColor;stroke-width:6;stroke-linecap:square}\
.mark-bars{fill:currentColor}.mark-bars.ink-second,.mark-bars.ink-third{fill-opacity:.2;stroke:currentColor}\
.mark-bars.ink-third{stroke-dasharray:3 2}";

/// The chart as an SVG file that stands alone.
#[must_use]
pub fn to_svg(chart: &Chart) -> String {
    let drawing = lay_out(chart, PICTURE_WIDTH);
    let keyed = keyed(chart);
    let keys = i64::try_from(keyed.len()).unwrap_or(0);
    let (width, height) = framed(&drawing, keys);
    let mut out = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}\" height=\"{height}\" viewBox=\"0 0 {width} {height}\" \
         role=\"img\" aria-label=\"{}\"><desc>{}</desc><style>{STYLE}</style>\
         <rect class=\"ground\" width=\"{width}\" height=\"{height}\"/>",
        plain(&chart.title),
        plain(&chart.about),
    );
    let title = EDGE + 14;
    out.push_str(&format!(
        "<text class=\"title\" x=\"{EDGE}\" y=\"{title}\">{}</text>",
        plain(&chart.title)
    ));
    let top = EDGE + LINE + 8;
    out.push_str(&format!("<g transform=\"translate({EDGE} {top})\">"));
    put(&mut out, &drawing);
    for (n, mark) in (0..).zip(keyed) {
        let y = (drawing.height + LINE + n * LINE) * 10;
        let piece = key_path(mark, (60, y - 45));
        path(&mut out, &class_of(mark), &piece);
        if mark.shape == Shape::Rings {
            path(&mut out, "mark-hole", &piece);
        }
        let words = Words {
            x: 240,
            y,
            anchor: "start",
            words: mark.name.clone(),
        };
        text(&mut out, &words);
    }
    out.push_str("</g></svg>\n");
    out
}

/// The name of a file for it, without its ending: `volume-load-2026-02-03`.
#[must_use]
pub fn file_stem(title: &str, day: &str) -> String {
    let stem = file_word(title, 60);
    if stem.is_empty() {
        format!("chart-{day}")
    } else {
        format!("{stem}-{day}")
    }
}

/// Width and height of the text of [`to_svg`] in units.
#[must_use]
pub fn size_of(chart: &Chart) -> (i64, i64) {
    let drawing = lay_out(chart, PICTURE_WIDTH);
    let keys = i64::try_from(keyed(chart).len()).unwrap_or(0);
    framed(&drawing, keys)
}

/// The marks that the key names: those of which something is drawn.
#[must_use]
pub fn keyed(chart: &Chart) -> Vec<&Mark> {
    let marks = chart.marks.iter();
    let named = marks.filter(|mark| !mark.name.is_empty() && !mark.spots.is_empty());
    named.collect()
}

fn framed(drawing: &Drawing, keys: i64) -> (i64, i64) {
    (
        drawing.width + 2 * EDGE,
        drawing.height + 2 * EDGE + LINE + 8 + keys * LINE,
    )
}

/// A piece of the mark for the key, 12 units wide, its middle at this place (in tenths).
#[must_use]
pub fn key_path(mark: &Mark, (x, y): (i64, i64)) -> String {
    let mut pen = Pen::new();
    match mark.shape {
        Shape::Line | Shape::Steps => pen.line(&[(x - 60, y), (x + 90, y)]),
        Shape::Dots | Shape::Rings | Shape::Squares => pen.dot((x, y)),
        Shape::Notches => pen.line(&[(x, y - 70), (x, y + 70)]),
        Shape::Band | Shape::Bars | Shape::Lying | Shape::Pegs => {
            pen.bar((x - 60, y - 50), (x + 60, y + 50))
        }
    }
    pen.path()
}

fn put(out: &mut String, drawing: &Drawing) {
    for stroke in &drawing.strokes {
        path(out, &stroke.class, &stroke.path);
    }
    for words in &drawing.words {
        text(out, words);
    }
}

fn path(out: &mut String, class: &str, data: &str) {
    out.push_str(&format!("<path class=\"{class}\" d=\"{data}\"/>"));
}

fn text(out: &mut String, words: &Words) {
    out.push_str(&format!(
        "<text x=\"{}\" y=\"{}\" text-anchor=\"{}\">{}</text>",
        tenths_text(words.x),
        tenths_text(words.y),
        words.anchor,
        plain(&words.words)
    ));
}

/// Text that no reader takes for markup.
fn plain(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            // A picture parts no words.
            SOFT_HYPHEN => {}
            // XML 1.0 has no place for these.
            control if control.is_control() => out.push(' '),
            letter => out.push(letter),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::charts::chart::tests::dots;

    #[test]
    fn a_file_has_a_name_that_every_system_takes() {
        assert_eq!(
            file_stem("Back squat: e1RM, kg", "2026-02-03"),
            "back-squat-e1rm-kg-2026-02-03"
        );
        assert_eq!(file_stem("–", "2026-02-03"), "chart-2026-02-03");
        assert_eq!(
            file_stem("Körper\u{ad}gewicht", "2026-02-03"),
            "koerpergewicht-2026-02-03"
        );
        assert_eq!(
            file_stem("Größe, Übung", "2026-02-03"),
            "groesse-uebung-2026-02-03"
        );
    }

    #[test]
    fn a_picture_stands_alone_and_holds_no_markup_of_a_name() {
        let mut chart = dots(&[10_000, 10_400]);
        chart.title = "Pr\u{ad}ess <b> & \"pull\"\u{1}".to_owned();
        chart.marks[0].name = "sets".to_owned();
        let svg = to_svg(&chart);
        assert!(svg.contains("Press &lt;b&gt; &amp; &quot;pull&quot; "));
        assert!(!svg.contains("<b>"));
        assert!(svg.starts_with("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"672\""));
        assert!(svg.contains(">sets</text>"));
        assert!(!svg.contains("http:") || svg.matches("http:").count() == 1);
        for (open, close) in [
            ("<text", "</text>"),
            ("<g ", "</g>"),
            ("<style", "</style>"),
        ] {
            assert_eq!(svg.matches(open).count(), svg.matches(close).count());
        }
    }
}
