//! Wiping what the browser keeps for us beside the rows of the store: settings, cached files, the worker, the database.

use super::{js, prefs, received};
use js_sys::Array;
use wasm_bindgen::JsValue;

/// Forgets settings, the files of the app and its worker, and asks the browser to delete the databases of those names once
/// nobody holds them. What other pages of the host keep stays.
pub async fn everything(databases: &[&str]) {
    prefs::forget_all();
    if let Some(container) = js::navigator("serviceWorker")
        && let Ok(registration) = js::call_async(&container, "getRegistration", &[]).await
        && js::can(&registration, "unregister")
    {
        // A worker that stays serves the app as before; it holds nothing of the person's.
        let _ = js::call_async(&registration, "unregister", &[]).await;
    }
    forget_caches().await;
    databases_of(databases);
}

/// Asks the browser to delete the databases of those names once nobody holds them.
pub fn databases_of(databases: &[&str]) {
    if let Some(factory) = js::global("indexedDB") {
        for &database in databases {
            // Where it is held, it goes with the page.
            let _ = js::call(&factory, "deleteDatabase", &[database.into()]);
        }
    }
}

/// The caches that the worker of this directory made (`assets/sw.js`).
async fn forget_caches() {
    let Some(caches) = js::global("caches") else {
        return;
    };
    let path = web_sys::window().and_then(|window| window.location().pathname().ok());
    let path = path.unwrap_or_default();
    let scope = path.rsplit_once('/').map_or("/", |(before, _)| before);
    let prefix = format!("stanchion-{scope}/ ").replace("// ", "/ ");
    let names = js::call_async(&caches, "keys", &[]).await;
    for name in names.map_or_else(|_| Array::new(), |names| Array::from(&names)) {
        if name
            .as_string()
            .is_some_and(|name| name.starts_with(&prefix) || name == received::CACHE)
        {
            let _ = js::call_async(&caches, "delete", &[name]).await;
        }
    }
}

/// Loads the page again, as at the first start.
pub fn start_over() {
    let Some(window) = web_sys::window() else {
        return;
    };
    let location = window.location();
    let path = location.pathname().unwrap_or_default();
    if let Ok(history) = window.history() {
        // Refused only when flooded: then the page opens where it was.
        let _ = history.replace_state_with_url(&JsValue::NULL, "", Some(&path));
    }
    let _ = location.reload();
}
