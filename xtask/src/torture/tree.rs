//! The processes below one of our own: found by their parents, killed outright, and waited for.

use std::fs;
use std::process::Stdio;
use std::thread;
use std::time::{Duration, Instant};

use crate::run::tool;
use crate::say::{Failure, OrNext, Outcome};

/// A killed process is gone within milliseconds; a loaded machine may take longer to say so.
const PATIENCE: Duration = Duration::from_secs(20);

const NEXT: &str = "kills need Linux with /proc and the program `kill`";

/// A running process.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Process {
    id: u32,
    parent: u32,
    /// False for one that has ended and waits for its parent to notice.
    lives: bool,
}

/// Kills every process below `root`, which itself goes on, and waits until they are gone.
pub fn kill_below(root: u32) -> Outcome<()> {
    let victims = below(root, &processes()?);
    let mut command = tool("kill");
    command
        .arg("-KILL")
        .args(victims.iter().map(u32::to_string));
    // One that ends by itself meanwhile makes it fail; whether all are gone is looked at below.
    command
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .status()
        .or_next("`kill` could not be started", NEXT)?;
    let begun = Instant::now();
    loop {
        let all = processes()?;
        let left = all
            .iter()
            .filter(|process| process.lives && victims.contains(&process.id))
            .count();
        if left == 0 && !victims.is_empty() {
            return Ok(());
        }
        if begun.elapsed() > PATIENCE {
            return Err(Failure::new(
                format!(
                    "of {} processes of the browser {left} live on",
                    victims.len()
                ),
                NEXT,
            ));
        }
        thread::yield_now();
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

fn processes() -> Outcome<Vec<Process>> {
    let all = fs::read_dir("/proc").or_next("listing the processes", NEXT)?;
    let ids = all.filter_map(|entry| entry.ok()?.file_name().to_str()?.parse().ok());
    // One that ends while they are read has no file any more.
    Ok(ids
        .filter_map(|id| read(id, &fs::read_to_string(format!("/proc/{id}/stat")).ok()?))
        .collect())
}

/// A process from its line in /proc: `id (name) state parent …`; the name may hold anything.
fn read(id: u32, line: &str) -> Option<Process> {
    let (_, rest) = line.rsplit_once(") ")?;
    let mut words = rest.split(' ');
    let lives = !matches!(words.next()?, "Z" | "X");
    let parent = words.next()?.parse().ok()?;
    Some(Process { id, parent, lives })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_process_is_read_whatever_its_name() {
        let line = "812 (a (b) c) S 77 812 812 0 -1 4194560";
        let process = read(812, line).unwrap();
        assert_eq!((process.parent, process.lives), (77, true));
        assert!(!read(9, "9 (x) Z 1 9").unwrap().lives);
        assert_eq!(read(9, "nothing"), None);
    }

    #[test]
    fn only_descendants_are_found() {
        let process = |id, parent| Process {
            id,
            parent,
            lives: true,
        };
        let all = [(2, 1), (3, 2), (4, 1), (5, 3), (6, 4)].map(|(id, parent)| process(id, parent));
        assert_eq!(below(2, &all), [3, 5]);
        assert!(below(6, &all).is_empty());
    }

    #[test]
    #[cfg(target_os = "linux")]
    fn what_is_below_is_killed_and_nothing_else() {
        let mut shell = tool("sh")
            .args(["-c", "sleep 600 & sleep 600"])
            .spawn()
            .unwrap();
        let mut other = tool("sleep").arg("600").spawn().unwrap();
        while below(shell.id(), &processes().unwrap()).len() < 2 {
            thread::yield_now();
        }
        kill_below(shell.id()).unwrap();
        assert_eq!(other.try_wait().unwrap(), None);
        other.kill().unwrap();
        other.wait().unwrap();
        shell.wait().unwrap();
    }
}
