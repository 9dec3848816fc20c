//! The store of record part by part: what is written while more of it is made, and read while more of it is got.

use crate::db::put;
use crate::help::{number, patch, text};
use stanchion::device::db::{Answer, Db, DbError, Parts, Write};
use std::cell::RefCell;
use wasm_bindgen_test::wasm_bindgen_test;

/// Writes in so many parts of two each, and the numbers of the parts that were asked for.
struct Pairs {
    parts: Vec<[Write; 2]>,
    asked: Vec<usize>,
}

impl Pairs {
    fn of(count: u32) -> Pairs {
        let part = |n: u32| {
            [
                put("a", &format!("{n:02}"), "one"),
                put("b", &format!("{n:02}"), "other"),
            ]
        };
        Pairs {
            parts: (0..count).map(part).collect(),
            asked: Vec::new(),
        }
    }
}

impl Parts for Pairs {
    fn shelves(&self) -> Vec<&str> {
        vec!["b", "a"]
    }

    fn piece(&mut self, number: usize) -> Option<&[Write]> {
        self.asked.push(number);
        self.parts.get(number).map(<[Write; 2]>::as_slice)
    }
}

async fn counts(db: &Db) -> (usize, usize) {
    let count = async |shelf| db.count(shelf).await.expect("a count");
    (count("a").await, count("b").await)
}

#[wasm_bindgen_test]
async fn parts_are_one_transaction_that_is_synced() {
    let db = Db::open("test-parts", 1, &["a", "b"]).await.unwrap();
    let _spy = patch(
        "window.asked = [];
         const proto = IDBDatabase.prototype, old = proto.transaction;
         shadow(proto, 'transaction', {value(shelves, mode, options) {
             window.asked.push([Array.from(shelves).join('+'), mode, options?.durability].join());
             return old.call(this, shelves, mode, options);
         }});",
    );
    let mut parts = Pairs::of(7);
    db.apply_parts(&mut parts).await.unwrap();
    assert_eq!(text("asked.join(';')"), "a+b,readwrite,strict");
    assert_eq!(parts.asked, [0, 1, 2, 3, 4, 5, 6, 7]);
    assert_eq!(counts(&db).await, (7, 7));
    let mut one = Pairs::of(1);
    db.apply_parts(&mut one).await.unwrap();
    assert_eq!(counts(&db).await, (7, 7));
}

#[wasm_bindgen_test]
async fn a_part_that_fails_takes_those_of_before_with_it() {
    let db = Db::open("test-parts-full", 1, &["a", "b"]).await.unwrap();
    let full = patch(
        "const proto = IDBObjectStore.prototype, old = proto.put;
         shadow(proto, 'put', {value(value, key) {
             if (key === '04') throw new DOMException('no room', 'QuotaExceededError');
             return old.call(this, value, key);
         }});",
    );
    let mut parts = Pairs::of(7);
    assert_eq!(db.apply_parts(&mut parts).await, Err(DbError::Full));
    assert_eq!(parts.asked, [0, 1, 2, 3, 4], "nobody goes on");
    drop(full);
    assert_eq!(counts(&db).await, (0, 0));
}

#[wasm_bindgen_test]
async fn parts_of_a_transaction_that_was_broken_off_are_written_anew() {
    let db = Db::open("test-parts-lost", 1, &["a", "b"]).await.unwrap();
    let _patch = patch(
        "window.puts = 0;
         const proto = IDBObjectStore.prototype, old = proto.put;
         shadow(proto, 'put', {value(...rest) {
             const request = old.apply(this, rest);
             if (++window.puts === 8) this.transaction.abort();
             return request;
         }});",
    );
    let mut parts = Pairs::of(5);
    assert_eq!(db.apply_parts(&mut parts).await, Ok(()));
    assert_eq!(parts.asked, [0, 1, 2, 3, 0, 1, 2, 3, 4, 5]);
    assert_eq!(counts(&db).await, (5, 5));
}

/// More records than are got in one go: texts of one and of more bytes a letter, and something that is no text.
async fn walked(name: &str) -> (Db, Vec<(String, String)>) {
    let db = Db::open(name, 1, &["a", "b"]).await.unwrap();
    let said = |n: usize| match n % 3 {
        0 => format!("{n} {}", "né ".repeat(n)),
        1 => format!("{n} {}", "plain ".repeat(400 - n)),
        _ => String::new(),
    };
    let rows: Vec<(String, String)> = (0..300).map(|n| (format!("{n:03}"), said(n))).collect();
    let writes = rows.iter().map(|(key, text)| put("a", key, text));
    db.apply(writes.collect()).await.unwrap();
    (db, rows)
}

async fn walk(db: &Db, shelf: &str) -> Result<Vec<(String, String)>, DbError> {
    let mut given = Vec::new();
    db.walk(shelf, &mut |key, text| given.push((key, text.to_owned())))
        .await?;
    Ok(given)
}

#[wasm_bindgen_test]
async fn a_walk_gives_all_records_once_in_order_and_as_they_were_at_one_time() {
    let (db, rows) = walked("test-walk").await;
    let _spy = patch(
        "window.asked = 0;
         const proto = IDBDatabase.prototype, old = proto.transaction;
         shadow(proto, 'transaction', {value(...given) { window.asked += 1; return old.apply(this, given); }});",
    );
    assert_eq!(walk(&db, "a").await.unwrap(), rows);
    assert_eq!(number("asked"), 1.0);
    assert_eq!(walk(&db, "b").await.unwrap(), []);
}

#[wasm_bindgen_test]
async fn what_is_read_before_a_walk_is_as_it_was_at_the_same_time() {
    let (db, rows) = walked("test-walk-after").await;
    db.apply(vec![put("b", "key", "beside")]).await.unwrap();
    let _spy = patch(
        "window.asked = 0;
         const proto = IDBDatabase.prototype, old = proto.transaction;
         shadow(proto, 'transaction', {value(...given) { window.asked += 1; return old.apply(this, given); }});",
    );
    let beside = vec![("key".to_owned(), "beside".to_owned())];
    for (before, shelf, first, walked) in [("b", "a", &beside, &rows), ("a", "b", &rows, &beside)] {
        let given = RefCell::new((Vec::new(), Vec::new()));
        db.walk_after(
            &[before],
            &mut |answers| {
                assert!(given.borrow().1.is_empty(), "first");
                given.borrow_mut().0 = answers.iter().flat_map(Answer::rows).collect();
            },
            shelf,
            &mut |key, text| given.borrow_mut().1.push((key, text.to_owned())),
        )
        .await
        .unwrap();
        assert_eq!(given.into_inner(), (first.clone(), walked.clone()));
    }
    assert_eq!(number("asked"), 2.0);
}

#[wasm_bindgen_test]
async fn a_walk_that_was_broken_off_goes_on_where_it_was() {
    let (db, rows) = walked("test-walk-lost").await;
    for broken in 1..=4 {
        let _patch = patch(&format!(
            "window.gets = 0;
             const proto = IDBObjectStore.prototype, old = proto.getAll;
             shadow(proto, 'getAll', {{value(...rest) {{
                 const request = old.apply(this, rest);
                 if (++window.gets === {broken}) this.transaction.abort();
                 return request;
             }}}});"
        ));
        assert_eq!(walk(&db, "a").await.unwrap(), rows, "at get {broken}");
    }
}

#[wasm_bindgen_test]
async fn a_walk_on_a_shelf_that_is_not_there_is_an_error() {
    let (db, _) = walked("test-walk-shelf").await;
    assert!(matches!(
        walk(&db, "attic").await,
        Err(DbError::Other { .. })
    ));
}
