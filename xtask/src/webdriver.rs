//! The little of W3C WebDriver that measuring needs: one session, spoken over plain HTTP.

use std::fs;
use std::io::{BufRead, BufReader, Write};
use std::net::{Ipv4Addr, TcpStream};
use std::path::PathBuf;
use std::process::{Child, Stdio};
use std::time::{Duration, Instant};

use serde_json::{Value, json};

use crate::places;
use crate::run::tool;
use crate::say::{Failure, OrNext, Outcome};
use crate::setup::{Browser, FLAGS};

/// How long the driver may take to start, and any one command to answer.
const PATIENCE: Duration = Duration::from_secs(60);

const NEXT: &str =
    "check that Chromium and chromedriver have the same version, then run the command again";

/// A browser under control, with a profile of its own. Dropping it ends browser and driver.
pub struct Session {
    driver: Child,
    port: u16,
    id: String,
    profile: PathBuf,
}

impl Session {
    /// Starts the driver and a browser with an empty profile.
    pub fn start(browser: &Browser) -> Outcome<Self> {
        let profile = places::target(&format!("measure-profile-{}", std::process::id()));
        fs::create_dir_all(&profile).or_next(
            "making a browser profile",
            "check that target/ can be written",
        )?;
        let mut driver = tool(&browser.driver)
            .arg("--port=0")
            .stdin(Stdio::null())
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .or_next("chromedriver does not start", NEXT)?;
        let port = port_of(&mut driver);
        // From here on, dropping the session ends the driver, whatever fails.
        let mut session = Self {
            driver,
            port: 0,
            id: String::new(),
            profile,
        };
        session.port = port?;
        let mut arguments: Vec<String> = FLAGS.iter().map(|flag| (*flag).to_owned()).collect();
        arguments.push(format!("--user-data-dir={}", session.profile.display()));
        let made = session.call(
            "POST",
            "/session",
            &json!({ "capabilities": { "alwaysMatch": {
                "goog:chromeOptions": { "binary": browser.chromium, "args": arguments }
            } } }),
        )?;
        session.id = made["sessionId"].as_str().unwrap_or_default().to_owned();
        session.command("timeouts", &json!({ "script": PATIENCE.as_millis() }))?;
        Ok(session)
    }

    /// Goes to an address and waits for the page's load event.
    pub fn open(&self, address: &str) -> Outcome<()> {
        self.command("url", &json!({ "url": address })).map(drop)
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
        fs::remove_dir_all(&self.profile).ok();
    }
}

/// The port that the driver says it has chosen.
fn port_of(driver: &mut Child) -> Outcome<u16> {
    let failed = || Failure::new("chromedriver ended without saying its port", NEXT);
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
    let (_, rest) = line.split_once("started successfully on port ")?;
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
