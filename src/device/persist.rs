//! Asking the browser not to clear our data when space gets short.

use super::js;
use wasm_bindgen_futures::spawn_local;

/// Whether the browser has promised to keep our data until the person removes it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Keeping {
    /// It has.
    Promised,
    /// It has not: with little space left, or after long disuse, it may clear everything.
    AsLongAsThereIsRoom,
    /// It can't be asked.
    Unknown,
}

/// Tells what was promised so far, without asking for anything.
pub fn known(on_answer: impl FnOnce(Keeping) + 'static) {
    spawn_local(async move {
        on_answer(match asked("persisted").await {
            // Not promised yet, or never: whoever asks gets to know.
            Some(false) => Keeping::AsLongAsThereIsRoom,
            Some(true) => Keeping::Promised,
            None => Keeping::Unknown,
        });
    });
}

/// Asks, and tells the answer when there is one. It may take for ever: one browser asks the
/// person, who may not answer. So nothing waits for it.
pub fn ask(on_answer: impl FnOnce(Keeping) + 'static) {
    spawn_local(async move {
        // Asking again after a yes could bring up a question for nothing.
        let answer = match asked("persisted").await {
            Some(true) => Some(true),
            _ => asked("persist").await,
        };
        on_answer(match answer {
            Some(true) => Keeping::Promised,
            Some(false) => Keeping::AsLongAsThereIsRoom,
            None => Keeping::Unknown,
        });
    });
}

/// The answer of the storage to a question; none where it can't be asked.
async fn asked(question: &str) -> Option<bool> {
    let storage = js::navigator("storage")?;
    let answer = js::call_async(&storage, question, &[]).await.ok()?;
    Some(answer.is_truthy())
}

/// Bytes that this host uses on the device, by the browser's own estimate.
pub async fn used() -> Option<u64> {
    let storage = js::navigator("storage")?;
    let estimate = js::call_async(&storage, "estimate", &[]).await.ok()?;
    // Whole bytes, far below 2^53.
    Some(js::get(&estimate, "usage")?.as_f64()? as u64)
}
