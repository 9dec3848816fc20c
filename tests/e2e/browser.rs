//! A headless Chromium with a profile of its own, and its driver; both end with the test.

use fantoccini::wd::{Capabilities, WebDriverCompatibleCommand};
use fantoccini::{Client, ClientBuilder};
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::{Value, json};
use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};

/// A driver process and the profile that its browsers use.
pub struct Browser {
    driver: Child,
    port: u16,
    profile: PathBuf,
}

impl Browser {
    /// Starts a driver; the profile is empty.
    pub fn start(name: &str) -> Browser {
        let profile =
            std::env::temp_dir().join(format!("stanchion-e2e-{}-{name}", std::process::id()));
        let _ = std::fs::remove_dir_all(&profile);
        std::fs::create_dir_all(&profile).expect("a profile folder can be made");
        let (driver, port) = start_driver();
        Browser {
            driver,
            port,
            profile,
        }
    }

    /// Opens a phone-sized window, 390 × 844.
    pub async fn open(&self) -> Client {
        let binary =
            std::env::var("STANCHION_CHROMIUM").expect("STANCHION_CHROMIUM names the browser");
        let flags = [
            "--headless=new",
            "--no-sandbox",
            "--disable-gpu",
            "--disable-quic",
            "--no-first-run",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync",
            "--disable-dev-shm-usage",
            "--hide-scrollbars",
            "--autoplay-policy=user-gesture-required",
            "--window-size=390,844",
        ];
        let mut args: Vec<String> = flags.iter().map(ToString::to_string).collect();
        args.push(format!("--user-data-dir={}", self.profile.display()));
        let mut capabilities = Capabilities::new();
        let options = json!({
            "binary": binary,
            "args": args,
            "mobileEmulation": { "deviceMetrics": { "width": 390, "height": 844, "pixelRatio": 2.0, "touch": true } },
        });
        capabilities.insert("goog:chromeOptions".to_owned(), options);
        let client = ClientBuilder::new(HttpConnector::new())
            .capabilities(capabilities)
            .connect(&format!("http://localhost:{}", self.port))
            .await
            .expect("the browser opens");
        // Nobody is there to answer the dialog that asks where a file goes: exports become downloads.
        let without = json!({ "source": "delete window.showSaveFilePicker" });
        devtools(&client, "Page.addScriptToEvaluateOnNewDocument", without)
            .await
            .expect("the browser takes the command");
        client
    }

    /// A folder of this test's own.
    pub fn folder(&self) -> &Path {
        &self.profile
    }

    /// Kills the browser's processes outright, as a phone does; the profile stays.
    ///
    /// They are told from all others by the profile folder of this test in their command lines.
    pub fn kill(&self) {
        let ours = format!("--user-data-dir={}", self.profile.display());
        let main = processes()
            .into_iter()
            .filter(|(pid, line)| *pid != self.driver.id() && line.contains(&ours))
            .map(|(pid, _)| pid.to_string());
        let done = Command::new("kill")
            .arg("-9")
            .args(main)
            .stderr(Stdio::null())
            .status();
        done.expect("kill runs");
        // What the killed browser left locked is free again.
        for lock in ["SingletonLock", "SingletonCookie", "SingletonSocket"] {
            let _ = std::fs::remove_file(self.profile.join(lock));
        }
    }
}

impl Drop for Browser {
    fn drop(&mut self) {
        // A test that failed left its browser open.
        self.kill();
        let _ = self.driver.kill();
        let _ = self.driver.wait();
        let _ = std::fs::remove_dir_all(&self.profile);
    }
}

/// Running processes with their command lines.
fn processes() -> Vec<(u32, String)> {
    let all = std::fs::read_dir("/proc").expect("the system lists its processes");
    all.filter_map(Result::ok)
        .filter_map(|entry| {
            let pid = entry.file_name().to_str()?.parse().ok()?;
            let line = std::fs::read(entry.path().join("cmdline")).ok()?;
            Some((pid, String::from_utf8_lossy(&line).into_owned()))
        })
        .collect()
}

/// Starts a driver on a port of its choice. It takes the same number for both families of addresses, and gives up where
/// another program has one of them: then it is started again.
fn start_driver() -> (Child, u16) {
    const TRIES: usize = 20;
    let path =
        std::env::var("STANCHION_CHROMEDRIVER").expect("STANCHION_CHROMEDRIVER names the driver");
    for _ in 0..TRIES {
        let mut driver = Command::new(&path)
            .arg("--port=0")
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("the driver starts");
        if let Some(port) = port_of(&mut driver) {
            return (driver, port);
        }
        let _ = driver.kill();
        driver.wait().expect("the driver ends");
    }
    panic!("{path} found no free port in {TRIES} tries");
}

/// Reads the port that the driver chose from what it prints; none when it ended without one.
fn port_of(driver: &mut Child) -> Option<u16> {
    let out = driver.stdout.take().expect("the driver's output is piped");
    let mut lines = BufReader::new(out).lines();
    let port = lines.by_ref().map_while(Result::ok).find_map(|line| {
        // The first line repeats the port that was asked for, 0; a later one names the port it got.
        let port = line
            .split("on port ")
            .nth(1)?
            .trim_end_matches('.')
            .parse()
            .ok();
        port.filter(|port| *port != 0)
    });
    // Keeps reading, or the driver stalls on a full pipe.
    std::thread::spawn(move || lines.for_each(drop));
    port
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
