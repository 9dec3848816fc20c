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
        let path = std::env::var("STANCHION_CHROMEDRIVER")
            .expect("STANCHION_CHROMEDRIVER names the driver");
        let mut driver = Command::new(path)
            .arg("--port=0")
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("the driver starts");
        let port = port_of(&mut driver);
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
        ClientBuilder::new(HttpConnector::new())
            .capabilities(capabilities)
            .connect(&format!("http://localhost:{}", self.port))
            .await
            .expect("the browser opens")
    }

    /// A folder of this test's own.
    pub fn folder(&self) -> &Path {
        &self.profile
    }

    /// Kills the browser's processes outright, as a phone does; the profile stays.
    pub async fn kill(&self, client: &Client) {
        let pid = devtools(client, "SystemInfo.getProcessInfo", json!({}))
            .await
            .ok()
            .and_then(|info| {
                let processes = info["processInfo"].as_array()?.clone();
                processes
                    .iter()
                    .find(|process| process["type"] == "browser")?["id"]
                    .as_u64()
            })
            .expect("the browser names its process");
        let done = Command::new("kill")
            .args(["-9", &pid.to_string()])
            .status()
            .expect("kill runs");
        assert!(done.success(), "the browser was killed");
        // What the killed browser left locked is free again.
        for lock in ["SingletonLock", "SingletonCookie", "SingletonSocket"] {
            let _ = std::fs::remove_file(self.profile.join(lock));
        }
    }
}

impl Drop for Browser {
    fn drop(&mut self) {
        let _ = self.driver.kill();
        let _ = self.driver.wait();
        let _ = std::fs::remove_dir_all(&self.profile);
    }
}

/// Reads the port that the driver chose from what it prints.
fn port_of(driver: &mut Child) -> u16 {
    let out = driver.stdout.take().expect("the driver's output is piped");
    let mut lines = BufReader::new(out).lines();
    let port = lines
        .by_ref()
        .map_while(Result::ok)
        .find_map(|line| {
            line.split("on port ")
                .nth(1)?
                .trim_end_matches('.')
                .parse()
                .ok()
        })
        .expect("the driver says its port");
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
