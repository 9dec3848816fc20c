//! The project's only tool: set-up, serve, host, test, dist, measure, shots, simulate, ledger, torture.

mod advisories;
mod axe;
mod build;
mod engines;
mod finish;
mod freshness;
mod glue;
mod heard;
mod http;
mod idle;
mod in_app;
mod ledger;
mod licences;
mod lighthouse;
mod link;
mod lock;
mod many_years;
mod measure;
mod notices;
mod places;
mod precache;
mod run;
mod same_bytes;
mod say;
#[cfg(test)]
mod scratch;
mod serve;
mod setup;
mod simulate;
mod split;
mod styles;
mod tap_cost;
mod taps_to_block;
mod test;
mod torture;
mod webdriver;

use std::process::ExitCode;
use std::time::Instant;

use engines::Engines;
use say::{Failure, Outcome, span};

const HELP: &str = "\
cargo xtask <command>

  serve [--port N]   set up, build and serve the app at localhost
  test [--all-engines]
                     set up and run every check and test: all of it in Chromium, and what a person does in
                     Firefox and WebKit where they are installed; --all-engines installs them
  dist               set up and build the app, optimised, into dist/
  measure [cues|ten-years|hundred-years]
                     build, then write sizes and times to target/measure.json; `cues` only prints
                     how exact the cues are; `ten-years` and `hundred-years` add what so many years cost in
                     the build that is there
  shots              build, and take the pictures of every screen in docs/screens.md
  simulate           run the progression rules and the estimate on invented lifters, and write
                     target/simulate.json and docs/simulation.svg
  ledger [--years N] write the ledger of an invented lifter over N years (10) to target/ledger-N.json
  torture [--runs N] [--browser chromium|firefox] [--seed N] [--dir D] [--local-storage-only]
                     kill the browser N times (200) at random moments of a session, look each time for
                     all that was said to be saved, and add the figures to target/measure.json
  host [--dir D] [--port N] [--under PATH]
                     serve a finished build as it stands (dist/ at / by default; port 0 picks one)
  help               show this

Trunk calls `xtask finish` by itself at the end of a build.
The first run on a machine builds its tools (about six minutes on two cores); later runs start at once.";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let begun = Instant::now();
    match dispatch(&arguments) {
        Ok(timed) => {
            if timed {
                println!("\nAll done in {}.", span(begun.elapsed()));
            }
            ExitCode::SUCCESS
        }
        Err(failure) => {
            eprintln!("\n{failure}");
            ExitCode::FAILURE
        }
    }
}

/// Runs a command; true if the time that it took is worth a line.
fn dispatch(arguments: &[String]) -> Outcome<bool> {
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match words.as_slice() {
        ["serve", options @ ..] => {
            let options = serve::Options::parse(options)?;
            build::dist(&setup::Tools::prepare()?)?;
            serve::run(&options).map(|()| false)
        }
        ["host", options @ ..] => serve::run(&serve::Options::parse(options)?).map(|()| false),
        ["test"] => test::run(Engines::Installed).map(|()| true),
        ["test", "--all-engines"] => test::run(Engines::All).map(|()| true),
        ["dist"] => build::dist(&setup::Tools::prepare()?).map(|()| true),
        ["measure"] => measure::run().map(|()| true),
        ["measure", "ten-years"] => measure::ten_years().map(|()| true),
        ["measure", "hundred-years"] => measure::hundred_years().map(|()| true),
        ["measure", "cues"] => measure::cues().map(|()| true),
        ["ledger", options @ ..] => ledger::run(options).map(|()| true),
        ["shots"] => test::shots().map(|()| true),
        ["simulate"] => simulate::run().map(|()| true),
        ["torture", options @ ..] => {
            torture::run(&torture::Options::parse(options)?).map(|()| true)
        }
        ["finish"] => finish::run().map(|()| false),
        ["help" | "--help" | "-h"] | [] => {
            println!("{HELP}");
            Ok(false)
        }
        [unknown, ..] => Err(Failure::new(
            format!("`{unknown}` is no command, or has words after it that it does not take"),
            "run `cargo xtask help` for the commands and their options",
        )),
    }
}
