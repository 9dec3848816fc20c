//! What programs read is the same in every language: files, the table of the sets, sheets as text, what tells like from
//! like.

use super::files;
use stanchion::quick::print_sheet;
use stanchion::store::{csv, read, write};
use stanchion::words::{Catalogue, speak};

const FILES: [&str; 4] = [
    include_str!("../golden/v1.json"),
    include_str!("../golden/v1-own.json"),
    include_str!("../golden/v1-hands.json"),
    include_str!("../../assets/demo/boathouse.json"),
];

/// All that is written of a file.
fn written(text: &str) -> Vec<String> {
    let archive = read(text).expect("a golden file");
    let at = "2026-11-25T12:00:00+01:00".parse().expect("a time");
    let mut written = vec![write(&archive, at), csv(&archive)];
    for sheet in archive.current_sheets() {
        written.push(print_sheet(sheet, &|_| None));
        written.extend(sheet.blocks().map(|block| block.shape()));
        written.extend(
            sheet
                .blocks()
                .flat_map(|block| &block.sets)
                .map(|sets| sets.target.to_string()),
        );
    }
    written
}

#[test]
fn what_programs_read_is_the_same_in_every_language() {
    let english = FILES.map(written);
    for file in files::all() {
        let texts = file.texts.iter().cloned();
        let texts = texts.map(|(english, text)| (english.into(), text.into()));
        let (language, mark) = (
            file.language.clone().into(),
            file.decimal_mark.clone().into(),
        );
        let catalogue = Catalogue::new(language, mark, texts.collect());
        speak(Some(Box::leak(Box::new(catalogue))));
        let other = FILES.map(written);
        // What is said does change, or nothing was tried.
        assert_ne!(stanchion::words::t("work set"), "work set", "{}", file.name);
        speak(None);
        assert!(english == other, "{} changes what programs read", file.name);
    }
}
