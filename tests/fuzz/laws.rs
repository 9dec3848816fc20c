//! What must hold for any bytes that come from outside. The fuzzer tries them on millions of texts, and the tests on the
//! texts that were kept (`corpus/`): those that a fuzzer is started with, and those that once broke something.

use chrono::{DateTime, FixedOffset};
use flate2::read::DeflateDecoder;
use stanchion::json;
use stanchion::quick::{parse_block, parse_sheet, print_block, print_sheet};
use stanchion::session::Event;
use stanchion::share::{UNPACKED_BYTES_MAX, unseal};
use stanchion::sheet::Named;
use stanchion::store::{Archive, SessionLog, Taken, csv, import, open, read, seal, write};
use std::io::Read;
use uuid::Uuid;

fn now() -> DateTime<FixedOffset> {
    DateTime::parse_from_rfc3339("2026-01-05T09:00:00+01:00").expect("a time")
}

fn nobody(_: &str) -> Option<Named> {
    None
}

/// A file: refused with a sentence, or read so that it is written and read the same, and an import of it twice is one.
pub fn file(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else {
        return;
    };
    match read(text) {
        Err(why) => assert!(!why.to_string().is_empty()),
        Ok(archive) => {
            let written = write(&archive, now());
            assert_eq!(read(&written).as_ref(), Ok(&archive));
            let once = import(Archive::default(), text)
                .expect("it was read")
                .archive;
            assert_eq!(once, archive);
            assert!(
                import(once, text)
                    .expect("it was read")
                    .summary
                    .is_nothing()
            );
            assert!(csv(&archive).ends_with("\r\n"));
        }
    }
}

/// A quick line, or a sheet of them: places of faults lie inside, and what is read is printed so that it is read again.
pub fn line(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else {
        return;
    };
    if let Ok(written) = parse_block(text, &nobody) {
        let printed = print_block(written.look(), &nobody);
        let again = parse_block(&printed, &nobody).expect("a printed line is read");
        assert_eq!(again.look(), written.look(), "{printed}");
    }
    let mut n = 0;
    let mut ids = || {
        n += 1;
        Uuid::from_u128(n)
    };
    match parse_sheet(text, &nobody, &mut ids, now()) {
        Ok(sheet) => {
            sheet.check().expect("a sheet that was read is sound");
            assert!(!print_sheet(&sheet, &nobody).is_empty());
        }
        Err(faults) => {
            let lines: Vec<&str> = text.split('\n').collect();
            assert!(!faults.is_empty());
            for fault in faults {
                assert!(fault.column <= lines[fault.line - 1].chars().count() + 1);
            }
        }
    }
}

/// The code of a link: refused, or a sound sheet.
pub fn link(bytes: &[u8]) {
    let Ok(code) = std::str::from_utf8(bytes) else {
        return;
    };
    let Ok(sealed) = unseal(code) else { return };
    let sheet = match sealed.packed() {
        None => sealed.sheet(None),
        Some(packed) => {
            let mut text = Vec::new();
            let most = UNPACKED_BYTES_MAX as u64 + 1;
            if DeflateDecoder::new(packed)
                .take(most)
                .read_to_end(&mut text)
                .is_err()
            {
                return;
            }
            sealed.sheet(Some(&text))
        }
    };
    if let Ok(sheet) = sheet {
        sheet.check().expect("a sheet that was read is sound");
    }
}

/// A row of the database: refused, or the very row that its text seals to.
pub fn row(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else {
        return;
    };
    if let Ok(json) = open(text) {
        assert_eq!(seal(json), text);
    }
    assert_eq!(open(&seal(text)), Ok(text));
}

/// JSON: read or refused as `serde_json` does it, and what is kept in rows comes back as it was.
pub fn json(bytes: &[u8]) {
    let Ok(text) = std::str::from_utf8(bytes) else {
        return;
    };
    let ours = json::parse::<serde_json::Value>(text);
    if let Ok(value) = &ours {
        let again = json::text(value);
        assert_eq!(json::parse::<serde_json::Value>(&again).as_ref(), Ok(value));
    }
    if let Ok(event) = json::parse::<Event>(text) {
        assert_eq!(json::parse::<Event>(&json::text(&event)), Ok(event));
    }
    if let Ok(log) = json::parse::<SessionLog>(text) {
        assert_eq!(json::parse::<SessionLog>(&log.to_json()), Ok(log));
    }
    if let Ok(taken) = json::parse::<Taken>(text) {
        // What was before may be no file any more: then it says so.
        let _ = taken.take_back(Archive::default());
    }
}
