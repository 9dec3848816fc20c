//! Packing with what the browser has.

use crate::help::patch;
use stanchion::device::pack::{PackError, deflate, inflate};
use wasm_bindgen_test::wasm_bindgen_test;

/// `boathouse boathouse` by another library (zlib 1.2.13, raw DEFLATE).
const PACKED: [u8; 14] = [
    0x4b, 0xca, 0x4f, 0x2c, 0xc9, 0xc8, 0x2f, 0x2d, 0x4e, 0x55, 0x48, 0x82, 0xb1, 0x00,
];

#[wasm_bindgen_test]
async fn what_is_packed_comes_back() {
    for bytes in [Vec::new(), b"Front squat".to_vec(), vec![7; 100_000]] {
        let packed = deflate(&bytes).await.expect("this browser packs");
        assert_eq!(inflate(&packed, bytes.len()).await, Ok(bytes.clone()));
        assert!(packed.len() < bytes.len() / 100 + 20);
    }
}

#[wasm_bindgen_test]
async fn it_is_the_packing_of_everyone_else() {
    let text = b"boathouse boathouse".to_vec();
    assert_eq!(inflate(&PACKED, 100).await, Ok(text));
}

#[wasm_bindgen_test]
async fn what_unpacks_to_too_much_is_stopped() {
    let bomb = deflate(&vec![0; 20_000_000]).await.expect("packed");
    assert!(bomb.len() < 100_000);
    assert_eq!(inflate(&bomb, 256 * 1024).await, Err(PackError::TooLarge));
    let six = deflate(b"123456").await.expect("packed");
    assert_eq!(inflate(&six, 5).await, Err(PackError::TooLarge));
    assert_eq!(inflate(&six, 6).await, Ok(b"123456".to_vec()));
}

#[wasm_bindgen_test]
async fn broken_data_is_told() {
    let packed = deflate("Front squat: 3 × 5–7".as_bytes())
        .await
        .expect("packed");
    for broken in [
        &packed[..packed.len() - 2],
        &[&packed[..], &[0, 1, 2]].concat(),
        &[0xff; 40],
        &[],
    ] {
        assert_eq!(inflate(broken, 1000).await, Err(PackError::Broken));
    }
}

#[wasm_bindgen_test]
async fn a_browser_without_it_says_so() {
    let absent = patch(
        "shadow(window, 'CompressionStream', {value: undefined});
         shadow(window, 'DecompressionStream', {value: undefined});",
    );
    assert_eq!(deflate(b"x").await, None);
    assert_eq!(inflate(&PACKED, 100).await, Err(PackError::Absent));
    drop(absent);
    // An older one has the class, and refuses this format.
    let _older = patch(
        "shadow(window, 'CompressionStream', {value: class { constructor() { throw new TypeError() } }});",
    );
    assert_eq!(deflate(b"x").await, None);
}
