//! A static host for the built app, under a sub-path as on any web host; it can be stopped and asked what it served.

use std::io::{BufRead, BufReader, Write};
use std::net::{SocketAddr, TcpListener, TcpStream};
use std::path::PathBuf;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Arc, Mutex};
use std::thread::JoinHandle;

/// The sub-path that the app is served under.
const BELOW: &str = "/boathouse/";

/// The folder of the built app.
pub fn dist() -> PathBuf {
    std::env::var("STANCHION_DIST")
        .expect("STANCHION_DIST names the built app")
        .into()
}

/// A running host.
pub struct Server {
    address: SocketAddr,
    root: Arc<Mutex<PathBuf>>,
    stopping: Arc<AtomicBool>,
    thread: Option<JoinHandle<()>>,
}

impl Server {
    /// Serves the built app on a free port.
    pub fn start() -> Server {
        Server::start_at("127.0.0.1:0".parse().expect("an address"))
    }

    /// Serves at an address, so that a stopped host can come back.
    pub fn start_at(address: SocketAddr) -> Server {
        let root = dist();
        let listener = TcpListener::bind(address).expect("a port is free");
        let address = listener.local_addr().expect("a bound port has an address");
        let stopping = Arc::new(AtomicBool::new(false));
        let stop = Arc::clone(&stopping);
        let root = Arc::new(Mutex::new(root));
        let served = Arc::clone(&root);
        let thread = std::thread::spawn(move || {
            for stream in listener.incoming().map_while(Result::ok) {
                if stop.load(Ordering::SeqCst) {
                    return;
                }
                let root = Arc::clone(&served);
                std::thread::spawn(move || answer(stream, &root));
            }
        });
        Server {
            address,
            root,
            stopping,
            thread: Some(thread),
        }
    }

    /// Serves another folder from now on, as a host does when a new build is copied to it.
    pub fn serve(&self, root: PathBuf) {
        *self.root.lock().expect("nobody panics holding it") = root;
    }

    /// Serves nothing any more. A stopped host may still answer on a connection that a browser opened ahead of its needs; this
    /// one has nothing to answer with.
    pub fn serve_nothing(&self) {
        self.serve(PathBuf::from("nothing is here"));
    }

    /// An address of the same origin where the app is not.
    pub fn beside(&self) -> String {
        format!("{}none", self.url())
    }

    /// Where the app is.
    pub fn url(&self) -> String {
        format!("http://localhost:{}{BELOW}", self.address.port())
    }

    /// Goes away; the port is free again afterwards.
    pub fn stop(&mut self) {
        if let Some(thread) = self.thread.take() {
            self.stopping.store(true, Ordering::SeqCst);
            // Wakes the listener, which then sees that it shall stop.
            let _ = TcpStream::connect(self.address);
            thread.join().expect("the host ends well");
        }
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        self.stop();
    }
}

fn answer(mut stream: TcpStream, root: &Mutex<PathBuf>) {
    let mut line = String::new();
    let mut reader = BufReader::new(stream.try_clone().expect("a socket can be cloned"));
    if reader.read_line(&mut line).is_err() {
        return;
    }
    loop {
        let mut header = String::new();
        match reader.read_line(&mut header) {
            Ok(n) if n > 2 => {}
            _ => break,
        }
    }
    // Now, not when it connected: browsers open connections ahead of their needs.
    let root = root.lock().expect("nobody panics holding it").clone();
    let path = line
        .split(' ')
        .nth(1)
        .unwrap_or("/")
        .split(['?', '#'])
        .next()
        .unwrap_or("/");
    let file = match path.strip_prefix(BELOW) {
        Some("") => Some("index.html"),
        Some(name) if !name.contains("..") => Some(name),
        _ => None,
    };
    let body = file.and_then(|name| std::fs::read(root.join(name)).ok());
    let kind = match file.and_then(|name| name.rsplit('.').next()) {
        Some("html") => "text/html; charset=utf-8",
        Some("js") => "text/javascript",
        Some("css") => "text/css",
        Some("wasm") => "application/wasm",
        Some("webmanifest") => "application/manifest+json",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        Some("json") => "application/json",
        Some("txt") => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    };
    let (status, kind, body) = match body {
        Some(body) => ("200 OK", kind, body),
        None => ("404 Not Found", "text/plain", b"not here".to_vec()),
    };
    let head = format!(
        "HTTP/1.1 {status}\r\nContent-Type: {kind}\r\nContent-Length: {}\r\nCache-Control: no-cache\r\nConnection: close\r\n\r\n",
        body.len()
    );
    let _ = stream
        .write_all(head.as_bytes())
        .and_then(|()| stream.write_all(&body));
}
