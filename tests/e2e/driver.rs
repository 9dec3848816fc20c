//! A driver's process: started on a free port, and killed with all that descends from it.

use std::io::{BufRead, BufReader};
use std::net::{Ipv4Addr, TcpListener, TcpStream};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

/// How long a driver may take to listen; a loaded machine needs a part of it.
const PATIENCE: Duration = Duration::from_secs(20);

/// A running driver. Dropping it ends it and its browser.
pub struct Driver {
    process: Child,
    port: u16,
}

impl Driver {
    /// Starts a driver by a command and the port that it was given; without one it chooses by itself and prints it.
    ///
    /// One that finds its port taken gives up: then it is started again, by a new command.
    pub fn start(command: impl Fn() -> (Command, Option<u16>)) -> Driver {
        const TRIES: usize = 20;
        for _ in 0..TRIES {
            let (mut command, given) = command();
            let mut process = command
                .stdout(Stdio::piped())
                .stderr(Stdio::null())
                .spawn()
                .expect("the driver starts");
            let port = match given {
                Some(port) => listens(&mut process, port).then_some(port),
                None => chosen_port(&mut process),
            };
            if let Some(port) = port {
                return Driver { process, port };
            }
            let _ = process.kill();
            process.wait().expect("the driver ends");
        }
        panic!("the driver found no free port in {TRIES} tries");
    }

    /// A port that nothing listens on.
    pub fn free_port() -> u16 {
        TcpListener::bind((Ipv4Addr::LOCALHOST, 0))
            .and_then(|listener| listener.local_addr())
            .expect("a port is free")
            .port()
    }

    /// Where it listens.
    pub fn address(&self) -> String {
        format!("http://localhost:{}", self.port)
    }
}

impl Drop for Driver {
    fn drop(&mut self) {
        kill_below(self.process.id());
        let _ = self.process.kill();
        let _ = self.process.wait();
    }
}

/// Waits until a driver takes connections; false when it ended instead.
fn listens(process: &mut Child, port: u16) -> bool {
    // Nobody reads what it prints: an end that is gone is better than a pipe that fills.
    drop(process.stdout.take());
    let since = Instant::now();
    while since.elapsed() < PATIENCE {
        if !matches!(process.try_wait(), Ok(None)) {
            return false;
        }
        if TcpStream::connect((Ipv4Addr::LOCALHOST, port)).is_ok() {
            return true;
        }
        std::thread::yield_now();
    }
    false
}

/// Reads the port that a driver chose from what it prints; none when it ended without one.
fn chosen_port(process: &mut Child) -> Option<u16> {
    let out = process.stdout.take().expect("the driver's output is piped");
    let mut lines = BufReader::new(out).lines();
    let port = lines
        .by_ref()
        .map_while(Result::ok)
        .find_map(|line| port_in(&line));
    // Keeps reading, or the driver stalls on a full pipe.
    std::thread::spawn(move || lines.for_each(drop));
    port
}

/// The port in a line of a driver: “… on port 40123.” or “Listening on 127.0.0.1:40123”. A first line may repeat the
/// port that was asked for, 0.
fn port_in(line: &str) -> Option<u16> {
    let (_, port) = line
        .split_once("on port ")
        .or_else(|| line.split_once("Listening on ")?.1.rsplit_once(':'))?;
    let port = port.trim_end().trim_end_matches('.').parse().ok()?;
    (port != 0).then_some(port)
}

/// A process as the system lists it.
struct Process {
    id: u32,
    parent: u32,
    /// False for one that has ended and waits for its parent to notice.
    lives: bool,
}

/// Kills all that descends from a process outright, as a phone does, and waits until it is gone.
fn kill_below(root: u32) {
    let since = Instant::now();
    let mut victims = Vec::new();
    loop {
        let all = processes();
        // What was started meanwhile, too.
        victims.extend(below(root, &all));
        let live: Vec<String> = all
            .iter()
            .filter(|process| process.lives && victims.contains(&process.id))
            .map(|process| process.id.to_string())
            .collect();
        if live.is_empty() {
            return;
        }
        assert!(since.elapsed() < PATIENCE, "the browser lives on");
        // One that ends by itself meanwhile makes it fail; whether all are gone is looked at above.
        let _ = Command::new("kill")
            .arg("-9")
            .args(live)
            .stderr(Stdio::null())
            .status()
            .expect("kill runs");
    }
}

/// The ids of all that descend from `root`.
fn below(root: u32, all: &[Process]) -> Vec<u32> {
    let mut found = vec![root];
    let mut at = 0;
    while let Some(&parent) = found.get(at) {
        let children = all.iter().filter(|process| process.parent == parent);
        found.extend(children.map(|process| process.id));
        at += 1;
    }
    found.split_off(1)
}

fn processes() -> Vec<Process> {
    let all = std::fs::read_dir("/proc").expect("the system lists its processes");
    let ids = all.filter_map(|entry| entry.ok()?.file_name().to_str()?.parse().ok());
    // One that ends while they are read has no file any more.
    ids.filter_map(|id| {
        process(
            id,
            &std::fs::read_to_string(format!("/proc/{id}/stat")).ok()?,
        )
    })
    .collect()
}

/// A process from its line in /proc: `id (name) state parent …`; the name may hold anything.
fn process(id: u32, line: &str) -> Option<Process> {
    let (_, rest) = line.rsplit_once(") ")?;
    let mut words = rest.split(' ');
    let lives = !matches!(words.next()?, "Z" | "X");
    let parent = words.next()?.parse().ok()?;
    Some(Process { id, parent, lives })
}
