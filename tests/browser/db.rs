//! The store of record, as it should be.

use crate::help::{patch, text};
use stanchion::device::db::{Db, DbError, Part, Write};
use stanchion::store::{DATABASE_VERSION, Shelf};
use wasm_bindgen_test::wasm_bindgen_test;

pub fn put(shelf: &str, key: &str, text: &str) -> Write {
    Write::Put {
        shelf: shelf.into(),
        key: key.into(),
        text: text.into(),
    }
}

fn pair(key: &str, text: &str) -> (String, String) {
    (key.into(), text.into())
}

#[wasm_bindgen_test]
async fn what_was_written_is_read_after_opening_again() {
    let shelves = ["events", "sheets"];
    let db = Db::open("test-reopen", 1, &shelves).await.unwrap();
    db.apply(vec![
        put("events", "b", "2 ½"),
        put("events", "a", "1"),
        put("sheets", "s", "{}"),
    ])
    .await
    .unwrap();
    drop(db);
    let db = Db::open("test-reopen", 1, &shelves).await.unwrap();
    assert_eq!(
        db.all("events").await.unwrap(),
        [pair("a", "1"), pair("b", "2 ½")]
    );
    assert_eq!(db.get("sheets", "s").await.unwrap().as_deref(), Some("{}"));
    assert_eq!(db.get("sheets", "t").await.unwrap(), None);
    db.apply(vec![
        Write::Delete {
            shelf: "events".into(),
            key: "a".into(),
        },
        put("events", "b", "two"),
        Write::Clear {
            shelf: "sheets".into(),
        },
    ])
    .await
    .unwrap();
    assert_eq!(db.all("events").await.unwrap(), [pair("b", "two")]);
    assert_eq!(db.count("sheets").await.unwrap(), 0);
}

#[wasm_bindgen_test]
async fn every_write_asks_for_strict_durability_and_reads_do_not() {
    let db = Db::open("test-strict", 1, &["events", "sheets"])
        .await
        .unwrap();
    let _spy = patch(
        "window.asked = [];
         const proto = IDBDatabase.prototype, old = proto.transaction;
         shadow(proto, 'transaction', {value(shelves, mode, options) {
             window.asked.push([Array.from(shelves).join('+'), mode, options?.durability]);
             const made = old.call(this, shelves, mode, options);
             window.asked.push(made.durability);
             return made;
         }});",
    );
    db.apply(vec![
        put("sheets", "k", "v"),
        put("events", "k", "v"),
        put("events", "l", "w"),
    ])
    .await
    .unwrap();
    assert_eq!(
        text("JSON.stringify(asked)"),
        r#"[["events+sheets","readwrite","strict"],"strict"]"#
    );
    assert_eq!(db.get("events", "k").await.unwrap().as_deref(), Some("v"));
    assert_eq!(
        text("JSON.stringify(asked[2])"),
        r#"["events","readonly",null]"#
    );
}

#[wasm_bindgen_test]
async fn an_empty_list_of_changes_opens_no_transaction() {
    let db = Db::open("test-empty", 1, &["events"]).await.unwrap();
    let _spy = patch(
        "shadow(IDBDatabase.prototype, 'transaction', {value() { throw new Error('asked') }});",
    );
    assert_eq!(db.apply(Vec::new()).await, Ok(()));
}

#[wasm_bindgen_test]
async fn five_hundred_events_come_back_in_order() {
    let db = Db::open("test-many", 1, &["events"]).await.unwrap();
    let key = |n: u32| format!("{n:04}");
    // 7 has no factor in common with 500, so every number comes once, in a stirred order.
    for n in (0..500).map(|n| n * 7 % 500) {
        db.apply(vec![put("events", &key(n), &format!("event {n}"))])
            .await
            .unwrap();
    }
    let all = db.all("events").await.unwrap();
    let expected: Vec<_> = (0..500).map(|n| (key(n), format!("event {n}"))).collect();
    assert_eq!(all, expected);
    assert_eq!(db.count("events").await.unwrap(), 500);
    let keys = |rows: Vec<(String, String)>| -> Vec<String> {
        rows.into_iter().map(|(key, _)| key).collect()
    };
    let last = async |span, most| keys(db.last("events", span, most).await.unwrap());
    let first = async |span, most| keys(db.first("events", span, most).await.unwrap());
    let (whole, middle) = (("", "~"), ("0100", "0103"));
    assert_eq!(last(whole, 3).await, ["0497", "0498", "0499"]);
    assert_eq!(last(whole, 1).await, ["0499"]);
    assert_eq!(last(middle, 2).await, ["0101", "0102"]);
    assert_eq!(last(middle, 3).await, ["0100", "0101", "0102"]);
    assert_eq!(last(middle, 4).await, ["0100", "0101", "0102"]);
    assert_eq!(last(whole, 0).await, [""; 0]);
    assert_eq!(last(("5", "6"), 3).await, [""; 0]);
    assert_eq!(last(("6", "5"), 3).await, [""; 0], "no span");
    assert_eq!(last(whole, 900).await.len(), 500);
    assert_eq!(first(whole, 2).await, ["0000", "0001"]);
    assert_eq!(first(middle, u32::MAX).await, ["0100", "0101", "0102"]);
    assert_eq!(first(("6", "5"), 3).await, [""; 0]);
    assert_eq!(db.keys("events").await.unwrap().len(), 500);
    let wanted = ["0007", "nowhere", "0003"].map(String::from);
    let some = db.some("events", &wanted).await.unwrap();
    assert_eq!(keys(some), ["0007", "0003"]);
}

/// The shelves of version 1 of the layout, as installed phones have them.
const SHELVES_OF_1: [&str; 9] = [
    "events",
    "sessions",
    "headings",
    "summaries",
    "sheets",
    "kits",
    "lifters",
    "body_mass",
    "aside",
];

#[wasm_bindgen_test]
async fn the_layout_of_version_1_grows_into_todays() {
    let old = Db::open("test-layout", 1, &SHELVES_OF_1).await.unwrap();
    let row = |shelf: &str| put(shelf, "key", &format!("a row of {shelf}"));
    old.apply(SHELVES_OF_1.map(row).to_vec()).await.unwrap();
    drop(old);
    let shelves = Shelf::ALL.map(Shelf::name);
    let new = Db::open("test-layout", DATABASE_VERSION, &shelves)
        .await
        .unwrap();
    for shelf in SHELVES_OF_1 {
        assert_eq!(
            new.all(shelf).await.unwrap(),
            [pair("key", &format!("a row of {shelf}"))]
        );
    }
    for shelf in ["exercises", "programmes"] {
        assert_eq!(new.count(shelf).await.unwrap(), 0);
        new.apply(vec![row(shelf)]).await.unwrap();
        assert_eq!(new.count(shelf).await.unwrap(), 1);
    }
}

#[wasm_bindgen_test]
async fn a_higher_version_adds_shelves_and_keeps_what_is_there() {
    let old = Db::open("test-grow", 1, &["events"]).await.unwrap();
    old.apply(vec![put("events", "a", "1")]).await.unwrap();
    // The old connection is still open, as in another tab: it has to make way.
    let new = Db::open("test-grow", 2, &["events", "sheets"])
        .await
        .unwrap();
    assert_eq!(new.all("events").await.unwrap(), [pair("a", "1")]);
    new.apply(vec![put("sheets", "s", "{}")]).await.unwrap();
    assert_eq!(
        old.apply(vec![put("events", "b", "2")]).await,
        Err(DbError::Newer)
    );
    assert_eq!(new.count("events").await.unwrap(), 1);
}

/// Parts of several shelves in one go are what each of them is alone, whatever there is of it.
#[wasm_bindgen_test]
async fn several_parts_are_read_in_one_transaction() {
    let db = Db::open("test-several", 1, &["a", "b", "empty"])
        .await
        .unwrap();
    let long = "né ".repeat(400);
    let keys = ["k1/1", "k1/2", "k2/1", "k3", "k3/0", "k3/1", "k4/9"];
    let mut writes: Vec<Write> = keys.iter().map(|key| put("a", key, key)).collect();
    writes.push(put("b", "only", &long));
    db.apply(writes).await.unwrap();
    let _spy = patch(
        "window.asked = 0;
         const proto = IDBDatabase.prototype, old = proto.transaction;
         shadow(proto, 'transaction', {value(...given) { window.asked += 1; return old.apply(this, given); }});",
    );
    let parts = [
        ("a", Part::All),
        ("a", Part::Newest),
        ("a", Part::Last(3)),
        ("a", Part::Last(50)),
        ("a", Part::Last(1)),
        ("a", Part::Count),
        ("a", Part::From("k3")),
        ("a", Part::From("k9")),
        ("b", Part::All),
        ("empty", Part::All),
        ("empty", Part::Newest),
        ("empty", Part::Last(2)),
        ("empty", Part::Count),
        ("a", Part::Any),
        ("empty", Part::Any),
    ];
    let answers = db.several(&parts).await.unwrap();
    assert_eq!(text("String(asked)"), "1");
    assert_eq!((answers[0].count(), answers[5].count()), (7, 7));
    assert_eq!((answers[13].count(), answers[14].count()), (1, 0));
    let of = |keys: &[&str]| keys.iter().map(|key| pair(key, key)).collect::<Vec<_>>();
    let expected = [
        of(&keys),
        of(&["k1/2", "k2/1", "k3/1", "k4/9"]),
        of(&keys[4..]),
        of(&keys),
        of(&keys[6..]),
        of(&[]),
        of(&keys[3..]),
        of(&[]),
        vec![pair("only", &long)],
        of(&[]),
        of(&[]),
        of(&[]),
        of(&[]),
    ];
    for ((answer, expected), part) in answers.into_iter().zip(expected).zip(parts) {
        assert_eq!(answer.rows(), expected, "{part:?}");
    }
}
