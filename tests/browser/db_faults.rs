//! The store of record when the browser does what browsers do.

use crate::db::put;
use crate::help::{Patch, number, patch, run, until};
use stanchion::device::db::{Db, DbError};
use wasm_bindgen_test::wasm_bindgen_test;

/// Makes every time limit short: 300 ms is ample for a local answer.
fn impatient() -> Patch {
    patch(
        "const old = window.setTimeout;
         shadow(window, 'setTimeout', {value: (f, ms) => old.call(window, f, Math.min(ms, 300))});",
    )
}

/// Closes the connection under the next `times` transactions, as a phone does in the background.
fn closing(times: u32) -> Patch {
    patch(&format!(
        "window.used = new Set();
         let left = {times};
         const proto = IDBDatabase.prototype, old = proto.transaction;
         shadow(proto, 'transaction', {{value(...rest) {{
             window.used.add(this);
             if (left-- > 0) this.close();
             return old.apply(this, rest);
         }}}});"
    ))
}

#[wasm_bindgen_test]
async fn a_lost_connection_is_opened_again_and_the_write_repeated() {
    let db = Db::open("test-lost", 1, &["events"]).await.unwrap();
    let closing = closing(1);
    assert_eq!(db.apply(vec![put("events", "a", "1")]).await, Ok(()));
    assert_eq!(number("used.size"), 2.0);
    assert_eq!(db.get("events", "a").await.unwrap().as_deref(), Some("1"));
    drop(closing);
}

#[wasm_bindgen_test]
async fn a_connection_lost_twice_is_an_error() {
    let db = Db::open("test-lost-twice", 1, &["events"]).await.unwrap();
    let closing = closing(2);
    let error = db.apply(vec![put("events", "a", "1")]).await.unwrap_err();
    assert!(
        matches!(&error, DbError::Other { what } if what.starts_with("InvalidStateError")),
        "{error:?}"
    );
    assert_eq!(number("used.size"), 2.0);
    drop(closing);
    assert_eq!(
        db.apply(vec![put("events", "a", "1")]).await,
        Ok(()),
        "the next try works"
    );
}

#[wasm_bindgen_test]
async fn a_transaction_broken_off_is_repeated() {
    let db = Db::open("test-broken", 1, &["events"]).await.unwrap();
    let _patch = patch(
        "window.puts = 0;
         const proto = IDBObjectStore.prototype, old = proto.put;
         shadow(proto, 'put', {value(...rest) {
             const request = old.apply(this, rest);
             if (window.puts++ === 0) this.transaction.abort();
             return request;
         }});",
    );
    assert_eq!(db.apply(vec![put("events", "a", "1")]).await, Ok(()));
    assert_eq!(number("puts"), 2.0);
    assert_eq!(db.count("events").await, Ok(1));
}

#[wasm_bindgen_test]
async fn a_full_disk_is_told_and_nothing_of_the_write_is_kept() {
    let db = Db::open("test-full", 1, &["events"]).await.unwrap();
    let writes = || vec![put("events", "a", "1"), put("events", "b", "2")];
    let thrown = patch(
        "const proto = IDBObjectStore.prototype, old = proto.put;
         shadow(proto, 'put', {value(value, key) {
             if (key === 'b') throw new DOMException('no room', 'QuotaExceededError');
             return old.call(this, value, key);
         }});",
    );
    assert_eq!(db.apply(writes()).await, Err(DbError::Full));
    drop(thrown);
    assert_eq!(db.count("events").await, Ok(0));
    let at_the_end = patch(
        "const proto = IDBObjectStore.prototype, old = proto.put;
         shadow(proto, 'put', {value(...rest) {
             const request = old.apply(this, rest), transaction = this.transaction;
             Object.defineProperty(transaction, 'error', {configurable: true,
                 value: new DOMException('no room', 'QuotaExceededError')});
             request.onsuccess = () => transaction.abort();
             return request;
         }});",
    );
    assert_eq!(db.apply(writes()).await, Err(DbError::Full));
    drop(at_the_end);
    assert_eq!(db.count("events").await, Ok(0));
}

#[wasm_bindgen_test]
async fn an_unknown_shelf_is_an_error_and_nothing_is_kept() {
    let db = Db::open("test-shelf", 1, &["events"]).await.unwrap();
    let error = db
        .apply(vec![put("events", "a", "1"), put("attic", "a", "1")])
        .await
        .unwrap_err();
    assert!(
        matches!(&error, DbError::Other { what } if what.contains("NotFoundError")),
        "{error:?}"
    );
    assert_eq!(db.count("events").await, Ok(0));
}

#[wasm_bindgen_test]
async fn a_browser_without_a_store_is_told_apart() {
    for refusal in [
        "get() { return undefined }",
        "get() { throw new DOMException('', 'SecurityError') }",
    ] {
        let _patch = patch(&format!("shadow(window, 'indexedDB', {{{refusal}}});"));
        assert_eq!(
            Db::open("test-none", 1, &[]).await.err(),
            Some(DbError::Unavailable)
        );
    }
    let _patch = patch(
        "shadow(IDBFactory.prototype, 'open', {value() {
             throw new DOMException('', 'SecurityError') }});",
    );
    assert_eq!(
        Db::open("test-none", 1, &[]).await.err(),
        Some(DbError::Unavailable)
    );
}

#[wasm_bindgen_test]
async fn an_open_that_never_answers_ends() {
    let _impatient = impatient();
    let _hanging = patch("shadow(IDBFactory.prototype, 'open', {value: () => new EventTarget()});");
    assert_eq!(
        Db::open("test-hang", 1, &[]).await.err(),
        Some(DbError::TimedOut)
    );
}

#[wasm_bindgen_test]
async fn a_transaction_that_never_ends_is_tried_again_and_then_told() {
    let db = Db::open("test-stuck", 1, &["events"]).await.unwrap();
    let _impatient = impatient();
    // A transaction stays open for as long as requests are made in it.
    let stuck = patch(
        "window.stuck = 0;
         const proto = IDBObjectStore.prototype, old = proto.put;
         shadow(proto, 'put', {value(...rest) {
             window.stuck++;
             const spin = () => { this.get('none').onsuccess = spin };
             spin();
             return old.apply(this, rest);
         }});",
    );
    assert_eq!(
        db.apply(vec![put("events", "a", "1")]).await,
        Err(DbError::TimedOut)
    );
    assert_eq!(number("stuck"), 2.0);
    drop(stuck);
    assert_eq!(
        db.count("events").await,
        Ok(0),
        "what was told as not saved is not there"
    );
}

#[wasm_bindgen_test]
async fn an_older_tab_that_does_not_make_way_is_named() {
    run("window.older = null;
         indexedDB.open('test-blocked', 1).onsuccess = event => {
             window.older = event.target.result };");
    until("the older tab has opened", || {
        number("window.older !== null") == 1.0
    })
    .await;
    let impatient = impatient();
    let open = async || Db::open("test-blocked", 2, &["events"]).await;
    assert_eq!(open().await.err(), Some(DbError::Blocked));
    drop(impatient);
    run("older.close()");
    // The open that was given up comes through now; it must not stand in the way in its turn.
    let db = Db::open("test-blocked", 3, &["events"]).await.unwrap();
    assert_eq!(db.count("events").await, Ok(0));
}

#[wasm_bindgen_test]
fn every_error_says_what_to_do() {
    let errors = [
        DbError::Unavailable,
        DbError::Full,
        DbError::Blocked,
        DbError::Newer,
        DbError::Absent,
        DbError::TimedOut,
        DbError::Other {
            what: "SomeError: some text".into(),
        },
    ];
    let texts: std::collections::BTreeSet<_> = errors.iter().map(ToString::to_string).collect();
    assert_eq!(texts.len(), errors.len());
    for text in &texts {
        assert!(
            text.matches(". ").count() >= 1 && text.ends_with('.'),
            "{text}"
        );
    }
    assert!(errors[6].to_string().contains("SomeError: some text"));
}

#[wasm_bindgen_test]
async fn an_open_that_fails_or_hangs_once_is_tried_again() {
    let _impatient = impatient();
    for first in [
        "new EventTarget()",
        "failing('UnknownError')",
        "failing('AbortError')",
        "failing('InvalidStateError')",
        "(() => { throw new DOMException('Connection to Indexed Database server lost', 'UnknownError') })()",
    ] {
        let patch = patch(&format!(
            "window.opened = 0;
             const failing = name => {{
                 const request = new EventTarget();
                 request.error = new DOMException('', name);
                 setTimeout(() => request.dispatchEvent(new Event('error')));
                 return request }};
             const proto = IDBFactory.prototype, old = proto.open;
             shadow(proto, 'open', {{value(...rest) {{
                 if (window.opened++ === 0) return {first};
                 return old.apply(this, rest);
             }}}});"
        ));
        let db = Db::open("test-open-again", 1, &["events"]).await.unwrap();
        assert_eq!(number("opened"), 2.0, "{first}");
        drop(patch);
        assert_eq!(db.count("events").await, Ok(0));
    }
}

#[wasm_bindgen_test]
async fn a_lost_server_and_a_closing_database_are_met_with_a_fresh_connection() {
    for (name, words) in [
        (
            "UnknownError",
            "Connection to Indexed Database server lost. Refresh the page to try again",
        ),
        (
            "InvalidStateError",
            "Failed to execute 'transaction' on 'IDBDatabase': The database connection is closing.",
        ),
        (
            "AbortError",
            "The transaction was aborted, so the request cannot be fulfilled.",
        ),
        ("TransactionInactiveError", ""),
    ] {
        let db = Db::open("test-server-lost", 1, &["events"]).await.unwrap();
        let thrown = patch(&format!(
            "let left = 1;
             const proto = IDBDatabase.prototype, old = proto.transaction;
             shadow(proto, 'transaction', {{value(...rest) {{
                 if (left-- > 0) throw new DOMException(`{words}`, '{name}');
                 return old.apply(this, rest);
             }}}});"
        ));
        assert_eq!(db.apply(vec![put("events", name, "1")]).await, Ok(()));
        drop(thrown);
        // The same at the end of the transaction, where phones tell it too.
        let ended = patch(&format!(
            "let left = 1;
             const proto = IDBObjectStore.prototype, old = proto.put;
             shadow(proto, 'put', {{value(...rest) {{
                 const request = old.apply(this, rest), transaction = this.transaction;
                 if (left-- > 0) {{
                     Object.defineProperty(transaction, 'error', {{configurable: true,
                         value: new DOMException(`{words}`, '{name}')}});
                     request.onsuccess = () => transaction.abort();
                 }}
                 return request;
             }}}});"
        ));
        assert_eq!(db.apply(vec![put("events", name, "2")]).await, Ok(()));
        drop(ended);
        assert_eq!(db.get("events", name).await.unwrap().as_deref(), Some("2"));
    }
}

#[wasm_bindgen_test]
async fn a_write_that_was_done_and_never_told_is_done_once() {
    let db = Db::open("test-untold", 1, &["events"]).await.unwrap();
    let _impatient = impatient();
    let deaf = patch(
        "let left = 1;
         const proto = EventTarget.prototype, old = proto.addEventListener;
         shadow(proto, 'addEventListener', {value(kind, ...rest) {
             if (kind === 'complete' && left-- > 0) return;
             return old.call(this, kind, ...rest);
         }});",
    );
    assert_eq!(
        db.apply(vec![put("events", "a", "1"), put("events", "b", "2")])
            .await,
        Ok(())
    );
    drop(deaf);
    assert_eq!(db.count("events").await, Ok(2));
}

#[wasm_bindgen_test]
async fn a_transaction_that_hangs_once_is_tried_again() {
    let db = Db::open("test-stuck-once", 1, &["events"]).await.unwrap();
    let _impatient = impatient();
    let _stuck = patch(
        "window.stuck = 0;
         const proto = IDBObjectStore.prototype, old = proto.put;
         shadow(proto, 'put', {value(...rest) {
             if (window.stuck++ === 0) {
                 const spin = () => { this.get('none').onsuccess = spin };
                 spin();
             }
             return old.apply(this, rest);
         }});",
    );
    assert_eq!(db.apply(vec![put("events", "a", "1")]).await, Ok(()));
    assert_eq!(number("stuck"), 2.0);
}
