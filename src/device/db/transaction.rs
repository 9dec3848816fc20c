//! One transaction from its first request to its end. Only the end (`complete`) is believed:
//! a request that succeeded may still be undone.

use super::error::{DbError, Fault};
use crate::device::events::{Listener, listen};
use crate::device::js;
use crate::device::oneshot::{OneShot, within};
use crate::words::t;
use js_sys::{Array, Object};
use wasm_bindgen::prelude::wasm_bindgen;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{IdbDatabase, IdbRequest, IdbTransaction};

/// A request may hang after the phone slept; a read takes a fraction of this.
const LIMIT_MS: u32 = 10_000;

/// What each write may take more, so that an import of very many years is not broken off.
const LIMIT_MS_EACH: u32 = 4;

#[wasm_bindgen]
extern "C" {
    /// `IDBDatabase` with the options of `transaction`, which web-sys holds back as unstable.
    type WithOptions;
    #[wasm_bindgen(method, catch)]
    fn transaction(
        this: &WithOptions,
        shelves: &Array,
        mode: &str,
        options: &Object,
    ) -> Result<IdbTransaction, JsValue>;
}

enum End {
    Complete,
    Aborted,
    /// It goes on: what was asked for is there.
    Answered,
}

/// A transaction that is being filled; `finish` waits for its end.
pub(super) struct Transaction {
    raw: IdbTransaction,
    end: OneShot<End>,
    _listeners: [Listener; 2],
}

impl Transaction {
    /// Begins a transaction that only reads.
    pub(super) fn read(db: &IdbDatabase, shelf: &str) -> Result<Self, Fault> {
        Self::read_all(db, &[shelf])
    }

    /// The same of several shelves.
    pub(super) fn read_all(db: &IdbDatabase, shelves: &[&str]) -> Result<Self, Fault> {
        Self::begin(db, shelves, "readonly", &[])
    }

    /// Begins a transaction whose end is reported only after the bytes were handed to the disk.
    pub(super) fn write(db: &IdbDatabase, shelves: &[&str]) -> Result<Self, Fault> {
        Self::begin(db, shelves, "readwrite", &[("durability", "strict".into())])
    }

    fn begin(
        db: &IdbDatabase,
        shelves: &[&str],
        mode: &str,
        options: &[(&str, JsValue)],
    ) -> Result<Self, Fault> {
        let shelves: Array = shelves
            .iter()
            .map(|shelf| JsValue::from_str(shelf))
            .collect();
        let raw = db
            .unchecked_ref::<WithOptions>()
            .transaction(&shelves, mode, js::object(options).unchecked_ref())
            .map_err(|error| Fault::of_use(&error))?;
        let end = OneShot::new();
        let (good, bad) = (end.clone(), end.clone());
        let listeners = [
            listen(&raw, "complete", move |_| good.give(End::Complete)),
            // A failed request aborts its transaction: `abort` tells of both.
            listen(&raw, "abort", move |_| bad.give(End::Aborted)),
        ];
        Ok(Self {
            raw,
            end,
            _listeners: listeners,
        })
    }

    /// The transaction itself, to make requests with.
    pub(super) fn raw(&self) -> &IdbTransaction {
        &self.raw
    }

    /// Takes back everything asked for so far and passes the reason on.
    pub(super) fn give_up(&self, error: &JsValue) -> Fault {
        // It refuses only if it has ended already, and then there is nothing to take back.
        let _ = self.raw.abort();
        Fault::of_use(error)
    }

    /// Has [`Self::ended`] tell when this request is answered, while the listener lives.
    pub(super) fn answers(&self, request: &IdbRequest) -> Listener {
        let end = self.end.clone();
        listen(request, "success", move |_| end.give(End::Answered))
    }

    /// Waits until all of it is done, or none of it.
    pub(super) async fn finish(self) -> Result<(), Fault> {
        self.ended(0).await
    }

    /// The same after so many writes. Where [`Self::answers`] listens to a request, it waits until that is answered: what is
    /// asked for before anything else is waited for belongs to this transaction.
    pub(super) async fn ended(&self, writes: usize) -> Result<(), Fault> {
        let more = u32::try_from(writes).unwrap_or(u32::MAX);
        let limit_ms = LIMIT_MS.saturating_add(more.saturating_mul(LIMIT_MS_EACH));
        match within(limit_ms, self.end.wait()).await {
            Some(End::Complete | End::Answered) => Ok(()),
            Some(End::Aborted) => Err(self.raw.error().map_or_else(
                || {
                    Fault::Connection(DbError::Other {
                        what: t("the write was broken off").into(),
                    })
                },
                |error| Fault::of_use(&error),
            )),
            None => {
                let _ = self.raw.abort();
                Err(Fault::Connection(DbError::TimedOut))
            }
        }
    }
}
