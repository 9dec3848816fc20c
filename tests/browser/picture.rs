//! A drawing saved as a picture of pixels.

use crate::help::{patch, text, until};
use stanchion::charts::{Axis, Chart, Grain, Ink, Mark, Shape, Spot, size_of, to_svg};
use stanchion::device::picture::{NoPicture, save_png};
use wasm_bindgen_test::wasm_bindgen_test;

fn chart() -> Chart {
    let bar = |x, y| Spot { x, y, from: 0 };
    Chart {
        title: "Volume load & <more>".to_owned(),
        x: Axis::of(Grain::count(), "set"),
        y: Axis::from_zero(Grain::count(), "kg"),
        marks: vec![Mark::new(Shape::Bars, Ink::Main, "", vec![bar(1, 3), bar(2, 9)]).wide(1)],
        ..Chart::default()
    }
}

#[wasm_bindgen_test]
async fn a_chart_becomes_a_png_of_twice_its_units() {
    let _patch = patch(
        "window.saved = '';
         shadow(HTMLAnchorElement.prototype, 'click', {value() {
             const name = this.download;
             fetch(this.href).then(async (reply) => {
                 const blob = await reply.blob();
                 const drawn = await createImageBitmap(blob);
                 window.saved = [name, blob.type, drawn.width, drawn.height].join('|') });
         }});",
    );
    let chart = chart();
    let (width, height) = size_of(&chart);
    let done = save_png("load.png", &to_svg(&chart), (width, height), 2).await;
    assert_eq!(done, Ok(()));
    until("the picture was fetched", || !text("saved").is_empty()).await;
    let expected = format!("load.png|image/png|{}|{}", width * 2, height * 2);
    assert_eq!(text("saved"), expected);
}

#[wasm_bindgen_test]
async fn what_the_browser_cannot_draw_is_told() {
    let drawn = save_png("load.png", "no drawing", (10, 10), 2).await;
    assert!(matches!(drawn, Err(NoPicture::CannotDraw(_))), "{drawn:?}");
    let _patch = patch("shadow(HTMLCanvasElement.prototype, 'getContext', {value: () => null});");
    let svg = to_svg(&chart());
    let drawn = save_png("load.png", &svg, size_of(&chart()), 2).await;
    let told = drawn.expect_err("there is no brush").to_string();
    assert!(told.ends_with("Save it as SVG instead."), "{told}");
}
