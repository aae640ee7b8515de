//! Command line of skinspan: parse, call, print, exit code.

mod cli;

use std::{
    io::{self, Write},
    process::ExitCode,
};

use clap::Parser;
use skinspan::command::run;

/// Width of a page where there is no terminal to ask.
const PAGE: usize = 80;

fn main() -> ExitCode {
    let request = cli::Cli::parse().into_request();
    let width = terminal_size::terminal_size().map_or(PAGE, |(terminal_size::Width(width), _)| usize::from(width));
    let finished = run(&request, width);
    let printed =
        print(&mut anstream::stderr(), &finished.stderr).and(print(&mut anstream::stdout(), &finished.stdout));
    match printed {
        Err(error) if error.kind() != io::ErrorKind::BrokenPipe => ExitCode::from(2),
        // A reader that has seen enough is no failure.
        _ => ExitCode::from(finished.status.code()),
    }
}

fn print(stream: &mut impl Write, text: &str) -> io::Result<()> {
    stream.write_all(text.as_bytes())?;
    stream.flush()
}
