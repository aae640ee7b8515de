//! Command line of skinspan: parse, call, print, exit code.

mod cli;
mod progress;

use std::{
    io::{self, Write},
    process::ExitCode,
};

use skinspan::command::{PAGE, Request, run};

use progress::Progress;

/// Matrices come and go by the hundred: an allocator that keeps their pages saves the system from clearing them anew each time.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

fn main() -> ExitCode {
    let request = match cli::request() {
        Ok(request) => request,
        Err(refused) => {
            let _ = print(&mut anstream::stderr(), &refused);
            return ExitCode::from(2);
        }
    };
    // Only the terminal that the report goes to counts: what goes to a pipe is the same wherever it is asked for.
    let width = terminal_size::terminal_size_of(io::stdout())
        .map_or(PAGE, |(terminal_size::Width(width), _)| usize::from(width));
    let progress = Progress::new();
    if matches!(request, Request::Choose { .. }) {
        progress.catch_interrupts();
    }
    let finished = run(&request, width, &progress);
    progress.end();
    // Where the message itself cannot be written there is nobody left to tell.
    let _ = print(&mut anstream::stderr(), &finished.stderr);
    match print(&mut anstream::stdout(), &finished.stdout) {
        Err(error) if error.kind() != io::ErrorKind::BrokenPipe => {
            let _ = print(&mut anstream::stderr(), &format!("error: cannot write the report: {error}\n"));
            ExitCode::from(2)
        }
        // A reader that has seen enough is no failure.
        _ => ExitCode::from(finished.status.code()),
    }
}

fn print(stream: &mut impl Write, text: &str) -> io::Result<()> {
    stream.write_all(text.as_bytes())?;
    stream.flush()
}
