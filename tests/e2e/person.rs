//! A person with a phone: opens the app, taps, reads. Waits for what shall appear, never for a time.

use super::browser::{Browser, devtools};
use super::engine::Engine;
use super::server::Server;
use fantoccini::elements::Element;
use fantoccini::{Client, Locator};
use serde_json::{Value, json};
use std::time::{Duration, Instant};

/// Longest wait for anything to appear; a slow machine needs a part of it, a broken app all of it.
const PATIENCE: Duration = Duration::from_secs(20);

/// How long something is tapped that is there and does not take it: it is just being redrawn, or still under a notice.
const TRY_AGAIN: Duration = Duration::from_secs(5);

/// A person with a phone.
pub struct Person {
    pub client: Client,
}

impl Person {
    /// Opens the app.
    pub async fn open(browser: &Browser, server: &Server) -> Person {
        let client = browser.open().await;
        client.goto(&server.url()).await.expect("the app is served");
        Person { client }
    }

    /// Opens it for the first time, goes through the welcome, and stands before the choice of a sheet.
    pub async fn arrive(browser: &Browser, server: &Server) -> Person {
        let person = Person::open(browser, server).await;
        person.tap("welcome-open").await;
        person.see("choose").await;
        person.all_is_saved().await;
        person
    }

    /// Waits until all that was done is on disk: what is not there yet does not outlive a reload.
    pub async fn all_is_saved(&self) {
        let saved = "return document.querySelector('[data-unsaved]') === null";
        self.until(saved, "everything is on disk").await;
    }

    /// The element of that part, once it is there.
    pub async fn see(&self, part: &str) -> Element {
        self.find(&format!("[data-part=\"{part}\"]")).await
    }

    /// The element of that selector, once it is there.
    pub async fn find(&self, css: &str) -> Element {
        match self
            .client
            .wait()
            .at_most(PATIENCE)
            .for_element(Locator::Css(css))
            .await
        {
            Ok(element) => element,
            Err(error) => {
                let source = self.client.find(Locator::Css("body")).await;
                let text = match source {
                    Ok(body) => body.text().await.unwrap_or_default(),
                    Err(error) => error.to_string(),
                };
                panic!("{css} did not appear: {error}; on screen: {text}")
            }
        }
    }

    /// True when the part is there now.
    pub async fn has(&self, part: &str) -> bool {
        let css = format!("[data-part=\"{part}\"]");
        self.client.find(Locator::Css(&css)).await.is_ok()
    }

    /// Waits until the part is gone.
    pub async fn gone(&self, part: &str) {
        let script = format!("return document.querySelector('[data-part=\"{part}\"]') === null");
        self.until(&script, &format!("{part} is gone")).await;
    }

    /// Taps a part.
    pub async fn tap(&self, part: &str) {
        self.tap_css(&format!("[data-part=\"{part}\"]")).await;
    }

    /// Taps what a selector finds. What is redrawn in the same moment is looked for again.
    pub async fn tap_css(&self, css: &str) {
        let since = Instant::now();
        loop {
            let element = self.find(css).await;
            match element.click().await {
                Ok(()) => return,
                Err(error) => {
                    assert!(
                        since.elapsed() < TRY_AGAIN,
                        "{css} could not be tapped: {error:?}"
                    );
                    self.scroll_to(css).await;
                }
            }
        }
    }

    /// Scrolls as a person does to what lies under the bar at the bottom; WebKit's driver does not.
    async fn scroll_to(&self, css: &str) {
        if Engine::here() == Engine::Webkit {
            let css = json!(css);
            let script = format!(
                "document.querySelector({css})?.scrollIntoView({{ block: 'center', behavior: 'instant' }})"
            );
            self.run(&script).await;
        }
    }

    /// The text of a part.
    pub async fn read(&self, part: &str) -> String {
        let script =
            format!("return document.querySelector('[data-part=\"{part}\"]')?.innerText ?? ''");
        self.see(part).await;
        self.run(&script)
            .await
            .as_str()
            .unwrap_or_default()
            .split_whitespace()
            .collect::<Vec<_>>()
            .join(" ")
    }

    /// Waits until the text of a part holds `words`.
    pub async fn reads(&self, part: &str, words: &str) {
        let script = format!(
            "return (document.querySelector('[data-part=\"{part}\"]')?.innerText ?? '').replace(/\\s+/g, ' ').includes({})",
            json!(words)
        );
        self.until(&script, &format!("{part} says “{words}”")).await;
    }

    /// Waits until a part that is heard and not seen holds exactly `words`.
    pub async fn reads_hidden(&self, part: &str, words: &str) {
        let script = format!(
            "return document.querySelector('[data-part=\"{part}\"]')?.textContent === {}",
            json!(words)
        );
        self.until(&script, &format!("{part} says “{words}” unasked"))
            .await;
    }

    /// Waits until the text of a part does not hold `words`, or the part is gone.
    pub async fn gone_words(&self, part: &str, words: &str) {
        let script = format!(
            "return !(document.querySelector('[data-part=\"{part}\"]')?.innerText ?? '').includes({})",
            json!(words)
        );
        self.until(&script, &format!("{part} does not say “{words}”"))
            .await;
    }

    /// Waits until a script gives true.
    pub async fn until(&self, script: &str, what: &str) {
        let since = Instant::now();
        loop {
            if self.run(script).await == json!(true) {
                return;
            }
            if since.elapsed() > PATIENCE {
                let text = self.run("return document.body.innerText").await;
                panic!("waited in vain until {what}; on screen: {text}");
            }
            tokio::task::yield_now().await;
        }
    }

    /// Runs a script in the page.
    pub async fn run(&self, script: &str) -> Value {
        self.client
            .execute(script, vec![])
            .await
            .expect("the script runs")
    }

    /// How many elements a selector finds.
    pub async fn count(&self, css: &str) -> u64 {
        let script = "return document.querySelectorAll(arguments[0]).length";
        let found = self.client.execute(script, vec![css.into()]).await;
        found.expect("the script runs").as_u64().expect("a count")
    }

    /// Runs a script in the page that calls `done` with its value.
    pub async fn run_later(&self, script: &str) -> Value {
        let script = format!("const done = arguments[arguments.length - 1]; {script}");
        self.client
            .execute_async(&script, vec![])
            .await
            .expect("the script runs")
    }

    /// Types into a field, in place of what was there.
    pub async fn type_into(&self, part: &str, text: &str) {
        let since = Instant::now();
        let field = loop {
            let field = self.see(part).await;
            match field.clear().await {
                Ok(()) => break field,
                Err(error) => {
                    assert!(
                        since.elapsed() < TRY_AGAIN,
                        "{part} could not be cleared: {error:?}"
                    );
                    self.scroll_to(&format!("[data-part=\"{part}\"]")).await;
                }
            }
        };
        if text.chars().all(|letter| letter <= '\u{ffff}') {
            field.send_keys(text).await.expect("the field takes keys");
        } else {
            // Older drivers have no key for what lies beyond 16 bits: a phone's keyboard inserts it as text.
            self.run(&format!(
                "const field = document.querySelector('[data-part=\"{part}\"]');
                 field.focus();
                 document.execCommand('insertText', false, {});",
                json!(text)
            ))
            .await;
        }
        // Leaving the field is what a thumb on the next thing does.
        self.run("document.activeElement.blur()").await;
    }

    /// Reloads the page and waits until the app is there again.
    pub async fn reload(&self) {
        if Engine::here() == Engine::Firefox {
            self.reload_by_script().await;
        } else {
            self.client.refresh().await.expect("the page reloads");
        }
        self.see("place").await;
    }

    /// Reloads as a person does. The driver's own way passes the service worker by in Firefox, like a reload with Shift.
    async fn reload_by_script(&self) {
        self.run("window.older = true; location.reload()").await;
        let since = Instant::now();
        // Between two pages there is none to ask.
        let anew = "return window.older === undefined && document.readyState === 'complete'";
        while !matches!(
            self.client.execute(anew, vec![]).await,
            Ok(Value::Bool(true))
        ) {
            assert!(since.elapsed() < PATIENCE, "the page does not reload");
            tokio::task::yield_now().await;
        }
    }

    /// Sends a command of the browser's own protocol.
    pub async fn devtools(&self, command: &str, params: Value) -> Value {
        devtools(&self.client, command, params)
            .await
            .expect("the browser takes the command")
    }

    /// Runs a script before anything else in each page that this window opens from now on; gives what takes it off again.
    pub async fn before_the_app(&self, script: &str) -> Value {
        let script = json!({ "source": script });
        self.devtools("Page.addScriptToEvaluateOnNewDocument", script)
            .await
    }

    /// Closes the browser.
    pub async fn close(self) {
        self.client.close().await.expect("the browser closes");
    }
}
