//! One open connection: getting it in bounded time, and knowing when it is gone.

use super::error::{DbError, Fault};
use crate::device::events::{Listener, listen};
use crate::device::js;
use crate::device::oneshot::{OneShot, within};
use js_sys::Promise;
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{IdbDatabase, IdbFactory, IdbOpenDbRequest};

/// Long enough for a slow phone that has just started, short enough to go on without a store:
/// one engine is known for opens that never answer.
const OPEN_LIMIT_MS: u32 = 5_000;

/// An open connection; closed when dropped. Transactions under way still finish then.
pub(super) struct Connection {
    db: IdbDatabase,
    gone: Rc<Cell<bool>>,
    _listeners: [Listener; 2],
}

impl Connection {
    fn new(db: IdbDatabase) -> Self {
        let gone = Rc::new(Cell::new(false));
        let closed = Rc::clone(&gone);
        let on_close = listen(&db, "close", move |_| closed.set(true));
        let (superseded, own) = (Rc::clone(&gone), db.clone());
        // Another tab wants a newer version: make way, or it waits for ever.
        let on_version = listen(&db, "versionchange", move |_| {
            superseded.set(true);
            own.close();
        });
        Self {
            db,
            gone,
            _listeners: [on_close, on_version],
        }
    }

    pub(super) fn db(&self) -> &IdbDatabase {
        &self.db
    }

    /// Whether the browser or another tab has ended it.
    pub(super) fn is_gone(&self) -> bool {
        self.gone.get()
    }
}

impl Drop for Connection {
    fn drop(&mut self) {
        self.db.close();
    }
}

enum Answer {
    Opened,
    Failed,
}

/// Opens the database, creating the shelves that are missing when its version rises. Without a
/// version it is opened as it is. Without shelves one that is not there is not made: it was erased
/// meanwhile, and an empty one in its place would pass for ever for one in which all is in order.
pub(super) async fn open(
    name: &str,
    version: Option<u32>,
    shelves: &[String],
) -> Result<Connection, Fault> {
    if version.is_none()
        && let Some(found) = by_the_page(name).await?
    {
        return found.ok_or(Fault::Final(DbError::Absent));
    }
    let unavailable = || Fault::Final(DbError::Unavailable);
    let factory: IdbFactory = js::global("indexedDB")
        .ok_or_else(unavailable)?
        .dyn_into()
        .map_err(|_| unavailable())?;
    let request = match version {
        Some(version) => factory.open_with_u32(name, version),
        None => factory.open(name),
    }
    .map_err(|error| Fault::of_opening(&error))?;

    let blocked = Rc::new(Cell::new(false));
    let absent = Rc::new(Cell::new(false));
    let answer = OneShot::new();
    let _listeners = {
        let (saw, good, bad) = (Rc::clone(&blocked), answer.clone(), answer.clone());
        let (upgraded, wanted) = (request.clone(), shelves.to_vec());
        let missed = Rc::clone(&absent);
        [
            listen(&request, "blocked", move |_| saw.set(true)),
            listen(&request, "success", move |_| good.give(Answer::Opened)),
            listen(&request, "error", move |event| {
                event.prevent_default();
                bad.give(Answer::Failed);
            }),
            listen(&request, "upgradeneeded", move |_| {
                if wanted.is_empty() {
                    missed.set(true);
                    take_back(&upgraded);
                } else {
                    create_missing(&upgraded, &wanted);
                }
            }),
        ]
    };
    match within(OPEN_LIMIT_MS, answer.wait()).await {
        Some(Answer::Opened) => {
            let db = request
                .result()
                .map_err(|error| Fault::of_opening(&error))?;
            let db: IdbDatabase = db.dyn_into().map_err(|other| Fault::of_opening(&other))?;
            Ok(Connection::new(db))
        }
        Some(Answer::Failed) if absent.get() => Err(Fault::Final(DbError::Absent)),
        Some(Answer::Failed) => {
            let error = request
                .error()
                .ok()
                .flatten()
                .map_or(JsValue::NULL, JsValue::from);
            Err(Fault::of_opening(&error))
        }
        None => {
            close_if_it_still_opens(&request);
            Err(if blocked.get() {
                Fault::Final(DbError::Blocked)
            } else {
                Fault::Connection(DbError::TimedOut)
            })
        }
    }
}

/// Where `assets/boot.js` leaves a promise of the store that it opened while the app was loaded.
const OPENED: &str = "stanchionStore";

/// What the page itself opened under this name as it is, given once: the connection, or that there is no such store. Where it
/// opened nothing, or could not, the app tries itself.
async fn by_the_page(name: &str) -> Result<Option<Option<Connection>>, Fault> {
    let promise = js::global(OPENED).and_then(|given| given.dyn_into::<Promise>().ok());
    let Some(promise) = promise else {
        return Ok(None);
    };
    let named = js::get(&promise, "store").and_then(|name| name.as_string());
    if named.as_deref() != Some(name) {
        return Ok(None);
    }
    // A refusal would leave it for whoever asks next, and a connection has one owner.
    let _ = js::set(&js_sys::global(), OPENED, &JsValue::UNDEFINED);
    let given = within(OPEN_LIMIT_MS, JsFuture::from(promise)).await;
    // One that is opened after all makes way when it is asked to.
    let Some(given) = given else {
        return Err(Fault::Connection(DbError::TimedOut));
    };
    Ok(match given {
        Ok(nothing) if nothing.is_null() => Some(None),
        Ok(db) => db.dyn_into().ok().map(|db| Some(Connection::new(db))),
        Err(_) => None,
    })
}

fn create_missing(request: &IdbOpenDbRequest, shelves: &[String]) {
    let Some(db) = request
        .result()
        .ok()
        .and_then(|db| db.dyn_into::<IdbDatabase>().ok())
    else {
        return;
    };
    let present = db.object_store_names();
    for shelf in shelves.iter().filter(|shelf| !present.contains(shelf)) {
        if db.create_object_store(shelf).is_err() {
            return take_back(request);
        }
    }
}

/// Breaks a change of the layout off: it fails as a whole, and the request tells of it.
fn take_back(request: &IdbOpenDbRequest) {
    if let Some(transaction) = request.transaction() {
        // It refuses only when it is over, and then there is nothing to take back.
        let _ = transaction.abort();
    }
}

/// An open that was given up must not come through later and block other tabs.
fn close_if_it_still_opens(request: &IdbOpenDbRequest) {
    let late = request.clone();
    let close = Closure::once_into_js(move || {
        if let Some(db) = late
            .result()
            .ok()
            .and_then(|db| db.dyn_into::<IdbDatabase>().ok())
        {
            db.close();
        }
    });
    request.set_onsuccess(Some(close.unchecked_ref()));
}
