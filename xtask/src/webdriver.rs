//! The little of W3C WebDriver that measuring and killing need: one session, spoken over plain HTTP.

use std::fs;
use std::io::{BufRead, BufReader, Write};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::atomic::{AtomicU32, Ordering};
use std::time::{Duration, Instant};

use serde_json::{Value, json};

use crate::places;
use crate::run::tool;
use crate::say::{Failure, OrNext, Outcome};
use crate::setup::{Browser, FLAGS, Firefox};

/// How long the driver may take to start, and any one command to answer.
const PATIENCE: Duration = Duration::from_secs(120);

const NEXT: &str =
    "check that the browser and its driver have matching versions, then run the command again";

/// A driver and how it is told to open its browser.
pub struct Engine {
    /// The driver, ready to be started: it prints the port that it takes.
    pub driver: Command,
    /// What is asked of the browser.
    pub capabilities: Value,
}

impl Engine {
    /// Chromium, headless, with this profile folder.
    pub fn chromium(browser: &Browser, profile: &Path) -> Self {
        let mut driver = tool(&browser.driver);
        driver.arg("--port=0");
        let mut arguments: Vec<String> = FLAGS.iter().map(|flag| (*flag).to_owned()).collect();
        arguments.push(format!("--user-data-dir={}", profile.display()));
        Self {
            driver,
            capabilities: json!({
                "goog:chromeOptions": { "binary": browser.chromium, "args": arguments }
            }),
        }
    }
}

impl Engine {
    /// Firefox, headless, with this profile folder, which is its home too.
    pub fn firefox(firefox: &Firefox, profile: &Path) -> Outcome<Self> {
        let mut driver = tool(&firefox.driver);
        driver
            .args(["--port", "0", "--websocket-port"])
            .arg(free_port()?.to_string())
            .env("HOME", profile);
        Ok(Self {
            driver,
            capabilities: json!({ "moz:firefoxOptions": {
                "binary": firefox.firefox,
                "args": ["-headless", "-profile", profile],
                // A browser that was killed often starts all the same, and does not bring its windows back.
                "prefs": {
                    "toolkit.startup.max_resumed_crashes": -1,
                    "browser.sessionstore.resume_from_crash": false,
                    "app.update.disabledForTesting": true,
                },
            } }),
        })
    }
}

/// A port that nothing listens on.
fn free_port() -> Outcome<u16> {
    TcpListener::bind((Ipv4Addr::LOCALHOST, 0))
        .and_then(|listener| listener.local_addr())
        .map(|address| address.port())
        .or_next("looking for a free port", "run the command again")
}

/// A browser under control. Dropping it ends browser and driver.
pub struct Session {
    driver: Child,
    port: u16,
    id: String,
    /// The profile folder, where it goes with the session.
    profile: Option<PathBuf>,
}

impl Session {
    /// Starts the driver and Chromium with an empty profile, which is gone afterwards.
    pub fn start(browser: &Browser) -> Outcome<Self> {
        static STARTED: AtomicU32 = AtomicU32::new(0);
        let number = STARTED.fetch_add(1, Ordering::Relaxed);
        let name = format!("measure-profile-{}-{number}", std::process::id());
        let profile = places::target(&name);
        fs::create_dir_all(&profile).or_next(
            "making a browser profile",
            "check that target/ can be written",
        )?;
        Self::launch(Engine::chromium(browser, &profile), Some(profile))
    }

    /// Starts the driver and its browser with a profile that stays.
    pub fn stay(engine: Engine) -> Outcome<Self> {
        Self::launch(engine, None)
    }

    fn launch(engine: Engine, profile: Option<PathBuf>) -> Outcome<Self> {
        let Engine {
            mut driver,
            capabilities,
        } = engine;
        let mut driver = driver
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .or_next("the browser's driver does not start", NEXT)?;
        let port = port_of(&mut driver);
        // From here on, dropping the session ends the driver, whatever fails.
        let mut session = Self {
            driver,
            port: 0,
            id: String::new(),
            profile,
        };
        session.port = port?;
        let made = session.call(
            "POST",
            "/session",
            &json!({ "capabilities": { "alwaysMatch": capabilities } }),
        )?;
        session.id = made["sessionId"].as_str().unwrap_or_default().to_owned();
        session.command("timeouts", &json!({ "script": PATIENCE.as_millis() }))?;
        Ok(session)
    }

    /// The driver's process; the browser is among its descendants.
    pub fn driver_id(&self) -> u32 {
        self.driver.id()
    }

    /// Says that the browser is no more, so that nothing is asked of it at the end.
    pub fn forget_browser(&mut self) {
        self.id.clear();
    }

    /// Goes to an address and waits for the page's load event.
    pub fn open(&self, address: &str) -> Outcome<()> {
        self.command("url", &json!({ "url": address })).map(drop)
    }

    /// Opens another tab and gives its handle; the one that is shown stays.
    pub fn new_tab(&self) -> Outcome<String> {
        let made = self.command("window/new", &json!({ "type": "tab" }))?;
        Ok(made["handle"].as_str().unwrap_or_default().to_owned())
    }

    /// Shows a tab and hides the others; what is asked afterwards is asked of it.
    pub fn show(&self, tab: &str) -> Outcome<()> {
        self.command("window", &json!({ "handle": tab }))?;
        self.devtools("Page.bringToFront", &json!({})).map(drop)
    }

    /// Runs a function body in the page and returns its value.
    pub fn ask(&self, script: &str) -> Outcome<Value> {
        self.command("execute/sync", &json!({ "script": script, "args": [] }))
    }

    /// Runs a function body in the page that calls its last argument with its value.
    pub fn ask_later(&self, script: &str) -> Outcome<Value> {
        self.command("execute/async", &json!({ "script": script, "args": [] }))
    }

    /// Sends a command of the browser's own protocol.
    pub fn devtools(&self, command: &str, params: &Value) -> Outcome<Value> {
        self.command(
            "goog/cdp/execute",
            &json!({ "cmd": command, "params": params }),
        )
    }

    fn command(&self, name: &str, body: &Value) -> Outcome<Value> {
        self.call("POST", &format!("/session/{}/{name}", self.id), body)
    }

    fn call(&self, method: &str, path: &str, body: &Value) -> Outcome<Value> {
        let (status, answer) = exchange(self.port, method, path, &body.to_string())
            .or_next(format!("{method} {path}"), NEXT)?;
        let answer: Value = serde_json::from_str(&answer)
            .or_next(format!("reading the answer to {method} {path}"), NEXT)?;
        if status == 200 {
            Ok(answer["value"].clone())
        } else {
            Err(Failure::new(
                format!("the browser refused {path}: {}", answer["value"]["message"]),
                NEXT,
            ))
        }
    }
}

impl Drop for Session {
    fn drop(&mut self) {
        if !self.id.is_empty() {
            // Ends the browser; the driver would leave it running.
            self.call("DELETE", &format!("/session/{}", self.id), &Value::Null)
                .ok();
        }
        self.driver.kill().ok();
        self.driver.wait().ok();
        if let Some(profile) = &self.profile {
            fs::remove_dir_all(profile).ok();
        }
    }
}

/// The port that the driver says it has chosen.
fn port_of(driver: &mut Child) -> Outcome<u16> {
    let failed = || Failure::new("the driver ended without saying its port", NEXT);
    let output = driver.stdout.take().ok_or_else(failed)?;
    let begun = Instant::now();
    let mut lines = BufReader::new(output).lines();
    let port = loop {
        let line = lines.next().and_then(Result::ok).ok_or_else(failed)?;
        if let Some(port) = port_in(&line) {
            break port;
        }
        if begun.elapsed() > PATIENCE {
            return Err(failed());
        }
    };
    // The driver must not block on a full pipe later.
    std::thread::spawn(move || lines.for_each(drop));
    Ok(port)
}

fn port_in(line: &str) -> Option<u16> {
    let (_, rest) = line
        .split_once("started successfully on port ")
        .or_else(|| line.split_once("Listening on 127.0.0.1:"))?;
    rest.trim_end_matches('.').parse().ok()
}

/// One HTTP request and its answer's status and body.
fn exchange(port: u16, method: &str, path: &str, body: &str) -> std::io::Result<(u16, String)> {
    let mut stream = TcpStream::connect((Ipv4Addr::LOCALHOST, port))?;
    stream.set_read_timeout(Some(PATIENCE))?;
    let body = if method == "POST" { body } else { "" };
    write!(
        stream,
        "{method} {path} HTTP/1.1\r\nHost: localhost:{port}\r\nContent-Type: application/json\r\n\
         Content-Length: {}\r\nConnection: close\r\n\r\n{body}",
        body.len()
    )?;
    answer(BufReader::new(stream))
}

/// Reads an answer whose length is given by its header.
fn answer(mut reader: impl BufRead) -> std::io::Result<(u16, String)> {
    let bad = |what| std::io::Error::new(std::io::ErrorKind::InvalidData, what);
    let mut line = String::new();
    reader.read_line(&mut line)?;
    let status = line
        .split_whitespace()
        .nth(1)
        .and_then(|code| code.parse().ok())
        .ok_or_else(|| bad("the answer has no status"))?;
    let mut length = None;
    loop {
        line.clear();
        reader.read_line(&mut line)?;
        match line.trim_end().split_once(':') {
            Some((name, value)) if name.eq_ignore_ascii_case("content-length") => {
                length = value.trim().parse().ok();
            }
            Some(_) => {}
            None => break,
        }
    }
    let mut body = vec![0; length.ok_or_else(|| bad("the answer has no length"))?];
    reader.read_exact(&mut body)?;
    String::from_utf8(body)
        .map(|text| (status, text))
        .map_err(|_| bad("the answer is not text"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_drivers_port_is_read_from_its_own_words() {
        assert_eq!(
            port_in("ChromeDriver was started successfully on port 40123."),
            Some(40123)
        );
        let gecko = "1764082800000\tgeckodriver\tINFO\tListening on 127.0.0.1:4444";
        assert_eq!(port_in(gecko), Some(4444));
        assert_eq!(port_in("Starting ChromeDriver 156 on port 0"), None);
    }

    #[test]
    fn an_answer_is_read_to_its_length_and_no_further() {
        let text = "HTTP/1.1 404 Not Found\r\ncontent-length:2\r\nX: y\r\n\r\n{}rest";
        assert_eq!(answer(text.as_bytes()).unwrap(), (404, "{}".to_owned()));
    }

    #[test]
    fn an_answer_without_length_or_cut_short_is_an_error() {
        assert!(answer("HTTP/1.1 200 OK\r\n\r\n{}".as_bytes()).is_err());
        assert!(answer("HTTP/1.1 200 OK\r\nContent-Length: 9\r\n\r\n{}".as_bytes()).is_err());
    }
}
