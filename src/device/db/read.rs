//! Reading from one shelf: a record, some, all, the first or the last of a span of keys, how many.

use super::error::Fault;
use super::several::Answer;
use super::transaction::Transaction;
use crate::device::events::{Listener, listen};
use crate::device::js;
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

pub(super) fn result(request: &IdbRequest) -> Result<JsValue, Fault> {
    request.result().map_err(|error| Fault::of_use(&error))
}

/// A key or record as text. This store writes nothing else; what is something else all the same is
/// given in the browser's own words for it, so that the others of its shelf can be read.
pub(super) fn text(value: &JsValue) -> String {
    value.as_string().unwrap_or_else(|| shown(value))
}

/// The same of records, which are long.
pub(super) fn long(texts: &js::Texts, value: &JsValue) -> String {
    texts.text(value).unwrap_or_else(|| shown(value))
}

fn shown(value: &JsValue) -> String {
    let shown = JSON::stringify(value).ok();
    shown.map_or_else(|| format!("{value:?}"), String::from)
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

/// How many records are got in one go where all are looked at.
const AT_ONCE: u32 = 128;

/// Takes a key and its record.
pub type Take<'a> = dyn FnMut(String, &str) + 'a;

/// Takes all of some shelves.
pub type First<'a> = dyn FnMut(Vec<Answer>) + 'a;

/// A walk through all records of a shelf.
pub(super) struct Walk<'a> {
    /// Gets all of some other shelves before the first record, once.
    pub first: RefCell<Option<&'a mut First<'a>>>,
    /// Behind which key it goes on.
    pub behind: RefCell<JsValue>,
    /// Gets each record, with its key.
    pub take: RefCell<&'a mut Take<'a>>,
}

/// Walks on to the end, by rising key, in one transaction and some records at a time: while they are looked at, the browser
/// gets the next. All of the shelves `beside` is read in the same transaction.
pub(super) async fn walk(
    db: &IdbDatabase,
    beside: &[&str],
    shelf: &str,
    walk: &Walk<'_>,
) -> Result<(), Fault> {
    let shelves: Vec<&str> = beside.iter().copied().chain([shelf]).collect();
    let transaction = Transaction::read_all(db, &shelves)?;
    let store_of = |shelf: &str| transaction.raw().object_store(shelf);
    let all_of = |shelf: &&str| Asked::of(&store_of(shelf)?, &JsValue::UNDEFINED, None);
    // On another connection they are there already.
    let beside = beside.iter().filter(|_| walk.first.borrow().is_some());
    let asked: Result<Vec<Asked>, JsValue> = beside.map(all_of).collect();
    let asked_beside = asked.map_err(|error| transaction.give_up(&error))?;
    let store = store_of(shelf).map_err(|error| transaction.give_up(&error))?;
    // What is asked for first is answered first: they are there when a record is.
    let give_first = || {
        let texts: Result<Vec<Texts>, Fault> = asked_beside.iter().map(Asked::texts).collect();
        let texts = texts?;
        if let Some(first) = walk.first.take() {
            first(texts.into_iter().map(Answer::there).collect());
        }
        Ok::<(), Fault>(())
    };
    let ask = |behind: &JsValue| {
        let span = match behind.is_undefined() {
            true => JsValue::UNDEFINED,
            false => IdbKeyRange::lower_bound_with_open(behind, true)?.into(),
        };
        Asked::of(&store, &span, Some(AT_ONCE))
    };
    let texts = js::Texts::new();
    let mut behind = walk.behind.borrow().clone();
    let mut found: Option<Texts> = None;
    loop {
        let asked = ask(&behind).map_err(|error| transaction.give_up(&error))?;
        let _answer = transaction.answers(&asked.records);
        if let Some(found) = found {
            give_first()?;
            found.each(&texts, &mut **walk.take.borrow_mut());
            walk.behind.replace(behind.clone());
        }
        transaction.ended(0).await?;
        let next = asked.texts()?;
        let last = next.keys.length().checked_sub(1);
        let Some(last) = last.map(|last| next.keys.get(last)) else {
            break;
        };
        behind = last;
        found = Some(next);
    }
    give_first()?;
    transaction.finish().await
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

/// Requests for keys and for the records under them.
pub(super) struct Asked {
    keys: IdbRequest,
    records: IdbRequest,
}

/// What is asked for as soon as the browser has told where it begins.
pub(super) type Found = Rc<RefCell<Option<Asked>>>;

/// Keys and records, by rising key, where the browser has them.
pub(super) struct Texts {
    keys: Array,
    records: Array,
}

impl Asked {
    /// Asks for the keys and records of a span.
    pub(super) fn of(
        store: &IdbObjectStore,
        span: &JsValue,
        most: Option<u32>,
    ) -> Result<Self, JsValue> {
        Ok(match most {
            Some(most) => Self {
                keys: store.get_all_keys_with_key_and_limit(span, most)?,
                records: store.get_all_with_key_and_limit(span, most)?,
            },
            None => Self {
                keys: store.get_all_keys_with_key(span)?,
                records: store.get_all_with_key(span)?,
            },
        })
    }

    pub(super) fn texts(&self) -> Result<Texts, Fault> {
        let list = |request| result(request).map(|list| Array::from(&list));
        Ok(Texts {
            keys: list(&self.keys)?,
            records: list(&self.records)?,
        })
    }
}

impl Texts {
    pub(super) fn len(&self) -> usize {
        // A length fits.
        self.keys.length() as usize
    }

    /// Gives each record with its key, by rising key.
    fn each(&self, texts: &js::Texts, take: &mut dyn FnMut(String, &str)) {
        for (key, record) in self.keys.iter().zip(self.records.iter()) {
            let key = text(&key);
            if texts
                .with(&record, |text| take(key.clone(), text))
                .is_none()
            {
                take(key, &shown(&record));
            }
        }
    }

    pub(super) fn pairs(&self) -> Vec<(String, String)> {
        let keys = self.keys.iter().map(|key| text(&key));
        keys.zip(self.records()).collect()
    }

    fn records(&self) -> Vec<String> {
        let texts = js::Texts::new();
        let records = self.records.iter();
        records.map(|record| long(&texts, &record)).collect()
    }
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
    let asked = Asked::of(&store, &span, (most < u32::MAX).then_some(most));
    let asked = asked.map_err(|error| transaction.give_up(&error))?;
    transaction.finish().await?;
    Ok(asked.texts()?.pairs())
}

/// The last records of a span, at most so many, by rising key.
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
    let (found, _walk) =
        ask_last(&store, &whole, most).map_err(|error| transaction.give_up(&error))?;
    transaction.finish().await?;
    let found = found.borrow_mut().take();
    found.map_or_else(|| Ok(Vec::new()), |asked| Ok(asked.texts()?.pairs()))
}

/// Asks for the last records of a span, at most `most`, which is not 0.
///
/// A cursor over the keys goes to where they begin, in one step; then all of them are asked for at once.
pub(super) fn ask_last(
    store: &IdbObjectStore,
    whole: &JsValue,
    most: u32,
) -> Result<(Found, Listener), JsValue> {
    let request =
        store.open_key_cursor_with_range_and_direction(whole, IdbCursorDirection::Prev)?;
    let found = Found::default();
    let (asked, cursor_of, at_end) = (Rc::clone(&found), request.clone(), Cell::new(most == 1));
    let (store, whole) = (store.clone(), whole.clone());
    let walk = listen(&request, "success", move |_| {
        let cursor = cursor_of.result().map(JsCast::dyn_into::<IdbCursor>);
        let range = match cursor {
            Ok(Ok(cursor)) if !at_end.replace(true) => {
                // It refuses only when the transaction is over, which `finish` tells.
                let _ = cursor.advance(most - 1);
                return;
            }
            Ok(Ok(cursor)) => cursor.key().ok().and_then(|key| key.as_string()),
            // There are fewer: all of them.
            _ => None,
        };
        // From there to the end of the span.
        let range = match range {
            Some(key) => from_key(&key, &whole),
            None => Some(whole.clone()),
        };
        if let Some(range) = range {
            *asked.borrow_mut() = Asked::of(&store, &range, None).ok();
        }
    });
    Ok((found, walk))
}

/// The end of a span, or of a whole shelf, from a key on.
fn from_key(key: &str, whole: &JsValue) -> Option<JsValue> {
    let range = match whole.dyn_ref::<IdbKeyRange>() {
        Some(whole) => {
            let upper = whole.upper().ok()?;
            IdbKeyRange::bound_with_lower_open_and_upper_open(&key.into(), &upper, false, true)
        }
        None => IdbKeyRange::lower_bound(&key.into()),
    };
    range.ok().map(JsValue::from)
}

pub(super) async fn count(db: &IdbDatabase, shelf: &str) -> Result<usize, Fault> {
    let (transaction, store) = begin(db, shelf)?;
    let request = store.count().map_err(|error| transaction.give_up(&error))?;
    transaction.finish().await?;
    counted(&request)
}

pub(super) fn counted(request: &IdbRequest) -> Result<usize, Fault> {
    // A count is a whole number that fits; anything else is not a count.
    Ok(result(request)?.as_f64().map_or(0, |count| count as usize))
}
