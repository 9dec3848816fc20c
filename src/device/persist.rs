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

/// Asks, and tells the answer when there is one. It may take for ever: one browser asks the
/// person, who may not answer. So nothing waits for it.
pub fn ask(on_answer: impl FnOnce(Keeping) + 'static) {
    spawn_local(async move {
        let Some(storage) = js::navigator("storage") else {
            return on_answer(Keeping::Unknown);
        };
        // Asking again after a yes could bring up a question for nothing.
        let already = js::call_async(&storage, "persisted", &[]).await;
        let answer = match already {
            Ok(yes) if yes.is_truthy() => Ok(yes),
            _ => js::call_async(&storage, "persist", &[]).await,
        };
        on_answer(match answer {
            Ok(yes) if yes.is_truthy() => Keeping::Promised,
            Ok(_) => Keeping::AsLongAsThereIsRoom,
            Err(_) => Keeping::Unknown,
        });
    });
}
