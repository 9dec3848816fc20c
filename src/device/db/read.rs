//! Reading from one shelf: a record, some, all, the first or the last of a span of keys, how many.

use super::error::Fault;
use super::transaction::Transaction;
use crate::device::events::listen;
use js_sys::{Array, JSON};
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{
    IdbCursor, IdbCursorDirection, IdbDatabase, IdbKeyRange, IdbObjectStore, IdbRequest,
};

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

/// The records with those keys that there are, in one transaction.
pub(super) async fn some(
    db: &IdbDatabase,
    shelf: &str,
    keys: &[String],
) -> Result<Vec<(String, String)>, Fault> {
    let (transaction, store) = begin(db, shelf)?;
    let asked = keys.iter().map(|key| store.get(&key.into()));
    let asked: Result<Vec<IdbRequest>, JsValue> = asked.collect();
    let asked = asked.map_err(|error| transaction.give_up(&error))?;
    transaction.finish().await?;
    let mut found = Vec::new();
    for (key, request) in keys.iter().zip(&asked) {
        let record = result(request)?;
        if !record.is_undefined() {
            found.push((key.clone(), text(&record)));
        }
    }
    Ok(found)
}

pub(super) async fn all(db: &IdbDatabase, shelf: &str) -> Result<Vec<(String, String)>, Fault> {
    let (transaction, store) = begin(db, shelf)?;
    let asked = ask(&store, &JsValue::UNDEFINED, None);
    let asked = asked.map_err(|error| transaction.give_up(&error))?;
    transaction.finish().await?;
    pairs(&asked)
}

/// The keys of a shelf, rising.
pub(super) async fn keys(db: &IdbDatabase, shelf: &str) -> Result<Vec<String>, Fault> {
    let (transaction, store) = begin(db, shelf)?;
    let keys = store.get_all_keys();
    let keys = keys.map_err(|error| transaction.give_up(&error))?;
    transaction.finish().await?;
    Ok(Array::from(&result(&keys)?)
        .iter()
        .map(|key| text(&key))
        .collect())
}

/// Asks for the keys and records of a span.
fn ask(store: &IdbObjectStore, span: &JsValue, most: Option<u32>) -> Result<Asked, JsValue> {
    Ok(match most {
        Some(most) => [
            store.get_all_keys_with_key_and_limit(span, most)?,
            store.get_all_with_key_and_limit(span, most)?,
        ],
        None => [
            store.get_all_keys_with_key(span)?,
            store.get_all_with_key(span)?,
        ],
    })
}

/// Requests for keys and for the records under them.
type Asked = [IdbRequest; 2];

fn pairs([keys, records]: &Asked) -> Result<Vec<(String, String)>, Fault> {
    let list = |request| result(request).map(|list| Array::from(&list));
    let (keys, records) = (list(keys)?, list(records)?);
    let pairs = keys.iter().zip(records.iter());
    Ok(pairs
        .map(|(key, record)| (text(&key), text(&record)))
        .collect())
}

/// The keys from `from` on and before `to`; none where that is no span.
fn span(from: &str, to: &str) -> Option<JsValue> {
    let range =
        IdbKeyRange::bound_with_lower_open_and_upper_open(&from.into(), &to.into(), false, true);
    range.ok().map(JsValue::from)
}

/// The first records of a span, at most so many.
pub(super) async fn first(
    db: &IdbDatabase,
    shelf: &str,
    (from, to): (&str, &str),
    most: u32,
) -> Result<Vec<(String, String)>, Fault> {
    let Some(span) = span(from, to).filter(|_| most > 0) else {
        return Ok(Vec::new());
    };
    let (transaction, store) = begin(db, shelf)?;
    let asked = ask(&store, &span, (most < u32::MAX).then_some(most));
    let asked = asked.map_err(|error| transaction.give_up(&error))?;
    transaction.finish().await?;
    pairs(&asked)
}

/// The last records of a span, at most so many, by rising key.
///
/// A cursor over the keys goes to where they begin, in one step; then all of them are asked for at once.
pub(super) async fn last(
    db: &IdbDatabase,
    shelf: &str,
    (from, to): (&str, &str),
    most: u32,
) -> Result<Vec<(String, String)>, Fault> {
    let Some(whole) = span(from, to).filter(|_| most > 0) else {
        return Ok(Vec::new());
    };
    let (transaction, store) = begin(db, shelf)?;
    let request = store
        .open_key_cursor_with_range_and_direction(&whole, IdbCursorDirection::Prev)
        .map_err(|error| transaction.give_up(&error))?;
    let found: Rc<RefCell<Option<Asked>>> = Rc::default();
    let (asked, cursor_of, at_end) = (Rc::clone(&found), request.clone(), Cell::new(most == 1));
    let to = to.to_owned();
    let _walk = listen(&request, "success", move |_| {
        let cursor = cursor_of.result().map(JsCast::dyn_into::<IdbCursor>);
        let range = match cursor {
            Ok(Ok(cursor)) if !at_end.replace(true) => {
                // It refuses only when the transaction is over, which `finish` tells.
                let _ = cursor.advance(most - 1);
                return;
            }
            Ok(Ok(cursor)) => cursor
                .key()
                .ok()
                .and_then(|key| key.as_string())
                .and_then(|key| span(&key, &to)),
            // There are fewer: all of them.
            _ => Some(whole.clone()),
        };
        if let Some(range) = range {
            *asked.borrow_mut() = ask(&store, &range, None).ok();
        }
    });
    transaction.finish().await?;
    let found = found.borrow_mut().take();
    found.as_ref().map_or_else(|| Ok(Vec::new()), pairs)
}

pub(super) async fn count(db: &IdbDatabase, shelf: &str) -> Result<usize, Fault> {
    let (transaction, store) = begin(db, shelf)?;
    let request = store.count().map_err(|error| transaction.give_up(&error))?;
    transaction.finish().await?;
    // A count is a whole number that fits; anything else is not a count.
    Ok(result(&request)?.as_f64().map_or(0, |count| count as usize))
}
