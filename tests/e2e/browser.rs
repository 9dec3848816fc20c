//! A browser without a window to be seen, with a profile of its own, and its driver; both end with the test.

use super::driver::Driver;
use super::engine::{DOWNLOADS, Engine};
use fantoccini::wd::WebDriverCompatibleCommand;
use fantoccini::{Client, ClientBuilder};
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Value, json};
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

/// A driver process and the profile that its browsers use.
pub struct Browser {
    engine: Engine,
    /// None after a kill, until the next browser is opened.
    driver: Mutex<Option<Driver>>,
    profile: PathBuf,
}

impl Browser {
    /// The profile is empty.
    pub fn start(name: &str) -> Browser {
        let profile =
            std::env::temp_dir().join(format!("stanchion-e2e-{}-{name}", std::process::id()));
        let _ = std::fs::remove_dir_all(&profile);
        std::fs::create_dir_all(&profile).expect("a profile folder can be made");
        Browser {
            engine: Engine::here(),
            driver: Mutex::new(None),
            profile,
        }
    }

    /// Opens a phone-sized window, 390 × 844; or, in an engine without one so narrow, the narrowest of its own.
    pub async fn open(&self) -> Client {
        let address = {
            let mut driver = self.driver.lock().unwrap_or_else(PoisonError::into_inner);
            driver
                .get_or_insert_with(|| self.engine.driver(&self.profile))
                .address()
        };
        let client = ClientBuilder::new(HttpConnector::new())
            .capabilities(self.engine.capabilities(&self.profile))
            .connect(&address)
            .await
            .expect("the browser opens");
        if self.engine == Engine::Chromium {
            // Nobody is there to answer the dialog that asks where a file goes: exports become downloads.
            let without = json!({ "source": "delete window.showSaveFilePicker" });
            devtools(&client, "Page.addScriptToEvaluateOnNewDocument", without)
                .await
                .expect("the browser takes the command");
        } else {
            let narrow = client.set_window_size(500, 930).await;
            narrow.expect("the window takes a size");
        }
        client
    }

    /// A folder of this test's own.
    pub fn folder(&self) -> &Path {
        &self.profile
    }

    /// The folder that its downloads go to.
    pub fn downloads(&self) -> PathBuf {
        self.profile.join(DOWNLOADS)
    }

    /// Kills the browser's processes outright, as a phone does, and its driver; the profile stays.
    pub fn kill(&self) {
        let mut driver = self.driver.lock().unwrap_or_else(PoisonError::into_inner);
        drop(driver.take());
        // What the killed browser left locked is free again.
        for lock in [
            "SingletonLock",
            "SingletonCookie",
            "SingletonSocket",
            "profile/.parentlock",
            "profile/lock",
        ] {
            let _ = std::fs::remove_file(self.profile.join(lock));
        }
    }
}

impl Drop for Browser {
    fn drop(&mut self) {
        // A test that failed left its browser open.
        self.kill();
        let _ = std::fs::remove_dir_all(&self.profile);
    }
}

/// A command of the browser's own protocol, sent through its driver.
#[derive(Debug)]
struct DevTools {
    command: String,
    params: Value,
}

impl WebDriverCompatibleCommand for DevTools {
    fn endpoint(
        &self,
        base: &url::Url,
        session: Option<&str>,
    ) -> Result<url::Url, url::ParseError> {
        base.join(&format!(
            "session/{}/goog/cdp/execute",
            session.unwrap_or_default()
        ))
    }

    fn method_and_body(&self, _: &url::Url) -> (http::Method, Option<String>) {
        let body = json!({ "cmd": self.command, "params": self.params });
        (http::Method::POST, Some(body.to_string()))
    }
}

/// Sends a command of the browser's own protocol.
pub async fn devtools(
    client: &Client,
    command: &str,
    params: Value,
) -> Result<Value, fantoccini::error::CmdError> {
    client
        .issue_cmd(DevTools {
            command: command.to_owned(),
            params,
        })
        .await
}
