//! QR codes of links.

use super::{code_of, six_blocks};
use stanchion::share::{QR_BYTES_MAX, link, qr};

#[test]
fn a_qr_code_is_read_by_another_library_as_the_same_link() {
    for text in [
        link("https://boathouse.example/", &code_of(&six_blocks())),
        "x".repeat(QR_BYTES_MAX),
    ] {
        let code = qr(&text).unwrap();
        let scale = 3;
        let side = code.side() * scale;
        let mut picture = rqrr::PreparedImage::prepare_from_greyscale(side, side, |x, y| {
            if code.is_dark(x / scale, y / scale) {
                0
            } else {
                255
            }
        });
        let grids = picture.detect_grids();
        assert_eq!(grids.len(), 1);
        let (_, told) = grids[0].decode().unwrap();
        assert_eq!(told, text);
    }
}

#[test]
fn a_link_too_long_for_a_qr_code_says_what_to_use() {
    let bytes = QR_BYTES_MAX + 1;
    let Err(too_long) = qr(&"x".repeat(bytes)) else {
        panic!("{bytes} bytes fit");
    };
    let said = too_long.to_string();
    assert!(said.contains("1732") && said.contains("the file"), "{said}");
}

#[test]
fn the_path_of_a_qr_code_fills_its_dark_modules_and_leaves_the_quiet_zone() {
    let code = qr("boathouse").unwrap();
    let mut filled = std::collections::BTreeSet::new();
    for run in code.path().split('M').skip(1) {
        let (at, rest) = run.split_once('h').unwrap();
        let (x, y) = at.split_once(' ').unwrap();
        let (x, y): (usize, usize) = (x.parse().unwrap(), y.parse().unwrap());
        let length: usize = rest.split('v').next().unwrap().parse().unwrap();
        filled.extend((x..x + length).map(|x| (x, y)));
    }
    for y in 0..code.side() {
        for x in 0..code.side() {
            assert_eq!(filled.contains(&(x, y)), code.is_dark(x, y), "{x} {y}");
            let inner = 4..code.side() - 4;
            assert!(!code.is_dark(x, y) || (inner.contains(&x) && inner.contains(&y)));
        }
    }
    // Version 1: 21 modules and the quiet zone.
    assert_eq!(code.side(), 29);
}
