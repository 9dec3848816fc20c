//! Reading from one shelf: a record, all, the last few, how many.

use super::error::Fault;
use super::transaction::Transaction;
use crate::device::events::listen;
use js_sys::{Array, JSON};
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{IdbCursorDirection, IdbCursorWithValue, IdbDatabase, IdbObjectStore, IdbRequest};

fn begin(db: &IdbDatabase, shelf: &str) -> Result<(Transaction, IdbObjectStore), Fault> {
    let transaction = Transaction::read(db, shelf)?;
    let store = transaction
        .raw()
        .object_store(shelf)
        .map_err(|error| transaction.give_up(&error))?;
    Ok((transaction, store))
}

fn result(request: &IdbRequest) -> Result<JsValue, Fault> {
    request.result().map_err(|error| Fault::of_use(&error))
}

/// A key or record as text. This store writes nothing else; what is something else all the same is
/// given in the browser's own words for it, so that the others of its shelf can be read.
fn text(value: &JsValue) -> String {
    value.as_string().unwrap_or_else(|| {
        let shown = JSON::stringify(value).ok();
        shown.map_or_else(|| format!("{value:?}"), String::from)
    })
}

pub(super) async fn get(db: &IdbDatabase, shelf: &str, key: &str) -> Result<Option<String>, Fault> {
    let (transaction, store) = begin(db, shelf)?;
    let request = store
        .get(&key.into())
        .map_err(|error| transaction.give_up(&error))?;
    transaction.finish().await?;
    let found = result(&request)?;
    if found.is_undefined() {
        Ok(None)
    } else {
        Ok(Some(text(&found)))
    }
}

pub(super) async fn all(db: &IdbDatabase, shelf: &str) -> Result<Vec<(String, String)>, Fault> {
    let (transaction, store) = begin(db, shelf)?;
    let keys = store
        .get_all_keys()
        .map_err(|error| transaction.give_up(&error))?;
    let records = store
        .get_all()
        .map_err(|error| transaction.give_up(&error))?;
    transaction.finish().await?;
    let list = |request| result(request).map(|list| Array::from(&list));
    let (keys, records) = (list(&keys)?, list(&records)?);
    let pairs = keys.iter().zip(records.iter());
    Ok(pairs
        .map(|(key, record)| (text(&key), text(&record)))
        .collect())
}

pub(super) async fn count(db: &IdbDatabase, shelf: &str) -> Result<usize, Fault> {
    let (transaction, store) = begin(db, shelf)?;
    let request = store.count().map_err(|error| transaction.give_up(&error))?;
    transaction.finish().await?;
    // A count is a whole number that fits; anything else is not a count.
    Ok(result(&request)?.as_f64().map_or(0, |count| count as usize))
}

pub(super) async fn last(
    db: &IdbDatabase,
    shelf: &str,
    n: usize,
) -> Result<Vec<(String, String)>, Fault> {
    if n == 0 {
        return Ok(Vec::new());
    }
    let (transaction, store) = begin(db, shelf)?;
    let request = store
        .open_cursor_with_range_and_direction(&JsValue::NULL, IdbCursorDirection::Prev)
        .map_err(|error| transaction.give_up(&error))?;
    let found = Rc::new(RefCell::new(Vec::new()));
    let (rows, asked) = (Rc::clone(&found), request.clone());
    let _walk = listen(&request, "success", move |_| {
        let Ok(Ok(cursor)) = asked.result().map(JsCast::dyn_into::<IdbCursorWithValue>) else {
            return;
        };
        if let (Ok(key), Ok(value)) = (cursor.key(), cursor.value()) {
            rows.borrow_mut().push((key, value));
        }
        if rows.borrow().len() < n {
            // It refuses only when the transaction is over, which `finish` tells.
            let _ = cursor.continue_();
        }
    });
    transaction.finish().await?;
    let found = found.borrow();
    let pairs = found.iter();
    Ok(pairs.map(|(key, value)| (text(key), text(value))).collect())
}
