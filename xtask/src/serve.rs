//! A small static host for localhost: serves a finished build as any static host would.

use std::fs;
use std::io::{self, BufRead, BufReader, Write};
use std::net::{Ipv4Addr, SocketAddr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::thread;
use std::time::Duration;

use crate::http::{self, Ask};
use crate::places;
use crate::say::{Failure, OrNext, Outcome};

/// The port of `serve` when none is named; if it is taken, the next free one of a few.
const PORT: u16 = 8040;
const TRIES: u16 = 20;

/// A request line or header longer than this is not answered.
const LONGEST_HEAD: u64 = 64 * 1024;

/// A connection that sends nothing for this long is closed.
const PATIENCE: Duration = Duration::from_secs(10);

/// What is served where.
#[derive(Debug, PartialEq)]
pub struct Options {
    dir: PathBuf,
    port: Option<u16>,
    base: String,
}

impl Options {
    /// A folder, on any free port.
    pub fn of(dir: PathBuf) -> Self {
        Self {
            dir,
            port: Some(0),
            base: "/".into(),
        }
    }

    /// Reads `--dir D`, `--port N` and `--under PATH`.
    pub fn parse(words: &[&str]) -> Outcome<Self> {
        let mut options = Self {
            dir: places::dist(),
            port: None,
            base: "/".into(),
        };
        for pair in words.chunks(2) {
            match *pair {
                ["--dir", dir] => options.dir = dir.into(),
                ["--port", port] => {
                    options.port = Some(port.parse().or_next(
                        format!("`--port {port}`"),
                        "give a number from 1 to 65535, or 0 for any free port",
                    )?);
                }
                ["--under", path] => {
                    let path = path.trim_matches('/');
                    options.base = if path.is_empty() {
                        "/".into()
                    } else {
                        format!("/{path}/")
                    };
                }
                _ => {
                    return Err(Failure::new(
                        format!("`{}` is not understood here", pair.join(" ")),
                        "use --port N, --dir D or --under PATH; `cargo xtask help` shows them",
                    ));
                }
            }
        }
        Ok(options)
    }
}

/// A host that is listening.
pub struct Host {
    listener: TcpListener,
    folder: Arc<Folder>,
}

struct Folder {
    dir: PathBuf,
    base: String,
}

impl Host {
    /// Begins to listen on this machine only.
    pub fn open(options: &Options) -> Outcome<Self> {
        if !options.dir.join("index.html").is_file() {
            return Err(Failure::new(
                format!("{} holds no index.html", options.dir.display()),
                "run `cargo xtask dist` to build the app",
            ));
        }
        Ok(Self {
            listener: listen(options.port)?,
            folder: Arc::new(Folder {
                dir: options.dir.clone(),
                base: options.base.clone(),
            }),
        })
    }

    /// The address to open. It says localhost, where browsers allow service workers without https.
    pub fn address(&self) -> Outcome<String> {
        let port = self
            .listener
            .local_addr()
            .or_next("asking for the port", "run the command again")?
            .port();
        Ok(format!("http://localhost:{port}{}", self.folder.base))
    }

    /// Answers until the process ends.
    pub fn answer(self) {
        for stream in self.listener.incoming().flatten() {
            let folder = Arc::clone(&self.folder);
            // A browser that went away is no news.
            thread::spawn(move || reply(stream, &folder).ok());
        }
    }
}

/// Serves until the person stops it.
pub fn run(options: &Options) -> Outcome<()> {
    let host = Host::open(options)?;
    println!("\nStanchion is at {}", host.address()?);
    println!("Stop it with Ctrl-C.");
    io::stdout().flush().ok();
    host.answer();
    Ok(())
}

fn listen(port: Option<u16>) -> Outcome<TcpListener> {
    let bind = |port| TcpListener::bind(SocketAddr::from((Ipv4Addr::LOCALHOST, port)));
    match port {
        Some(port) => bind(port).or_next(
            format!("port {port} cannot be used"),
            "stop what uses it, or name another one with --port",
        ),
        None => (PORT..PORT + TRIES)
            .find_map(|port| bind(port).ok())
            .ok_or_else(|| {
                Failure::new(
                    format!("no port from {PORT} to {} is free", PORT + TRIES - 1),
                    "name a free one with --port",
                )
            }),
    }
}

fn reply(stream: TcpStream, folder: &Folder) -> io::Result<()> {
    stream.set_read_timeout(Some(PATIENCE))?;
    let (line, takes_brotli) = head(&stream)?;
    let mut coding = "";
    let (status, kind, bytes, body) = match http::ask(&line, &folder.base) {
        Ask::File { path, body } => {
            let packed = takes_brotli.then(|| file(&folder.dir, &format!("{path}.br")));
            let packed = packed.flatten();
            if packed.is_some() {
                coding = "Content-Encoding: br\r\n";
            }
            match packed.or_else(|| file(&folder.dir, &path)) {
                Some(bytes) => ("200 OK", http::content_type(&path), bytes, body),
                None => failed("404 Not Found", body),
            }
        }
        Ask::NotFound => failed("404 Not Found", true),
        Ask::NotAllowed => failed("405 Method Not Allowed", true),
        Ask::Malformed => failed("400 Bad Request", true),
    };
    let mut stream = &stream;
    write!(
        stream,
        "HTTP/1.1 {status}\r\nContent-Type: {kind}\r\n{coding}Content-Length: {}\r\n\
         Cache-Control: no-cache\r\nX-Content-Type-Options: nosniff\r\nConnection: close\r\n\r\n",
        bytes.len()
    )?;
    if body {
        stream.write_all(&bytes)?;
    }
    stream.flush()
}

fn failed(status: &'static str, body: bool) -> (&'static str, &'static str, Vec<u8>, bool) {
    let text = format!("{status}\n").into_bytes();
    (status, http::content_type("a.txt"), text, body)
}

fn file(dir: &Path, path: &str) -> Option<Vec<u8>> {
    fs::read(dir.join(path)).ok()
}

/// Reads a request's head; gives its first line, and whether it takes Brotli (RFC 7932): a file `x.br` beside `x` is
/// then sent in its place, as many static hosts do.
fn head(stream: &TcpStream) -> io::Result<(String, bool)> {
    let mut reader = BufReader::new(io::Read::take(stream, LONGEST_HEAD));
    let mut first = String::new();
    reader.read_line(&mut first)?;
    let mut takes_brotli = false;
    let mut line = String::new();
    while reader.read_line(&mut line)? > 0 && !line.trim_end().is_empty() {
        let field = line.to_ascii_lowercase();
        if let Some(codings) = field.strip_prefix("accept-encoding:") {
            takes_brotli = codings.split(',').any(|coding| coding.trim() == "br");
        }
        line.clear();
    }
    Ok((first, takes_brotli))
}

#[cfg(test)]
mod tests {
    use std::io::Read;

    use super::*;
    use crate::scratch::Scratch;

    fn get(address: &str, path: &str) -> String {
        get_with(address, path, "")
    }

    fn get_with(address: &str, path: &str, field: &str) -> String {
        let port: u16 = address
            .trim_start_matches("http://localhost:")
            .split('/')
            .next()
            .and_then(|port| port.parse().ok())
            .unwrap();
        let mut stream = TcpStream::connect((Ipv4Addr::LOCALHOST, port)).unwrap();
        write!(
            stream,
            "GET {path} HTTP/1.1\r\nHost: localhost\r\n{field}\r\n"
        )
        .unwrap();
        let mut answer = String::new();
        stream.read_to_string(&mut answer).unwrap();
        answer
    }

    #[test]
    fn a_build_is_served_under_its_path_with_types_and_without_long_caching() {
        let build = Scratch::new("served");
        build.write("index.html", b"the page");
        build.write("app.wasm", b"bytes");
        let host = Host::open(&Options {
            dir: build.path().into(),
            port: Some(0),
            base: "/some/sub/".into(),
        })
        .unwrap();
        let address = host.address().unwrap();
        assert!(address.ends_with("/some/sub/"));
        thread::spawn(move || host.answer());

        let page = get(&address, "/some/sub/");
        assert!(page.starts_with("HTTP/1.1 200 OK\r\n"), "{page}");
        assert!(page.contains("Cache-Control: no-cache\r\n"));
        assert!(page.ends_with("\r\n\r\nthe page"));
        assert!(get(&address, "/some/sub/app.wasm").contains("Content-Type: application/wasm\r\n"));
        assert!(get(&address, "/app.wasm").starts_with("HTTP/1.1 404"));
        assert!(get(&address, "/some/sub/none.js").starts_with("HTTP/1.1 404"));
    }

    #[test]
    fn a_packed_file_is_sent_to_those_who_take_it() {
        let build = Scratch::new("packed");
        build.write("index.html", b"the page");
        build.write("a.js", b"plain");
        build.write("a.js.br", b"packed");
        let host = Host::open(&Options {
            dir: build.path().into(),
            port: Some(0),
            base: "/".into(),
        })
        .unwrap();
        let address = host.address().unwrap();
        thread::spawn(move || host.answer());
        let takes = "Accept-Encoding: gzip, br\r\n";
        let packed = get_with(&address, "/a.js", takes);
        assert!(packed.contains("Content-Encoding: br\r\n"), "{packed}");
        assert!(packed.contains("text/javascript") && packed.ends_with("packed"));
        assert!(get(&address, "/a.js").ends_with("plain"));
        assert!(get_with(&address, "/", takes).ends_with("the page"));
    }

    #[test]
    fn options_are_read_and_strange_ones_refused() {
        let options = Options::parse(&["--port", "0", "--under", "some/sub"]).unwrap();
        assert_eq!(
            (options.port, options.base.as_str()),
            (Some(0), "/some/sub/")
        );
        assert!(Options::parse(&["--port", "70000"]).is_err());
        assert!(Options::parse(&["--port"]).is_err());
        assert!(Options::parse(&["--loud", "1"]).is_err());
    }

    #[test]
    fn a_folder_without_a_page_is_not_served() {
        let empty = Scratch::new("empty");
        let options = Options::parse(&["--dir", &empty.path().to_string_lossy()]).unwrap();
        assert!(Host::open(&options).is_err());
    }
}
