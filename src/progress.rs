//! How a search comes on, on stderr: on a terminal one line that is rewritten in place, elsewhere a line at the start and one
//! at the end. The first Ctrl-C stops the search, the second ends the program.

use std::{
    fmt::Write as _,
    io::{self, IsTerminal as _, Write as _},
    sync::{
        Arc, Mutex, PoisonError,
        atomic::{AtomicBool, Ordering},
    },
    time::{Duration, Instant},
};

use skinspan::choice::Watch;

/// The line is not rewritten sooner.
const APART: Duration = Duration::from_millis(200);

/// Before this much time has passed nobody can say how long the rest takes.
const TOO_SOON: Duration = Duration::from_secs(2);

/// What comes sooner after a Ctrl-C is the same one, which who started the program has passed on.
const TWICE: Duration = Duration::from_millis(300);

/// What a shell gives back of a program that Ctrl-C ended.
const INTERRUPTED: i32 = 130;

/// Tells on stderr how a search comes on.
pub(crate) struct Progress {
    terminal: bool,
    stop: Arc<AtomicBool>,
    told: Mutex<Told>,
}

/// What has been said so far.
#[derive(Default)]
struct Told {
    begun: Option<Instant>,
    last: Option<Instant>,
    /// Letters of the line that stands there.
    letters: usize,
    /// Of how many how many have been looked at, and how many are shown.
    counts: (usize, usize, usize),
}

impl Progress {
    pub(crate) fn new() -> Self {
        Self { terminal: io::stderr().is_terminal(), stop: Arc::default(), told: Mutex::default() }
    }

    /// From here on the first Ctrl-C stops the search.
    pub(crate) fn catch_interrupts(&self) {
        let stop = Arc::clone(&self.stop);
        let mut first: Option<Instant> = None;
        // Where no handler can be set Ctrl-C ends the program at once, as ever.
        let _ = ctrlc::set_handler(move || {
            stop.store(true, Ordering::Relaxed);
            if first.get_or_insert_with(Instant::now).elapsed() > TWICE {
                say("\n");
                std::process::exit(INTERRUPTED);
            }
        });
    }

    /// Takes the line away, or says that all is done.
    pub(crate) fn end(&self) {
        let told = self.told();
        let Some(begun) = told.begun else { return };
        if self.terminal {
            say(&format!("\r{}\r", " ".repeat(told.letters)));
        } else {
            let (looked_at, of, shown) = told.counts;
            say(&format!("looked at {looked_at} of {of} in {}; {shown} shown\n", spent(begun.elapsed())));
        }
    }

    fn told(&self) -> std::sync::MutexGuard<'_, Told> {
        self.told.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Watch for Progress {
    fn at(&self, looked_at: usize, of: usize, shown: usize) {
        let mut told = self.told();
        told.counts = (looked_at, of, shown);
        let now = Instant::now();
        if told.begun.is_none() {
            told.begun = Some(now);
            if !self.terminal {
                say(&format!("looking at {of}\n"));
            }
        }
        let soon = told.last.is_some_and(|last| now - last < APART);
        if !self.terminal || (soon && looked_at < of) {
            return;
        }
        told.last = Some(now);
        let took = told.begun.map_or(Duration::ZERO, |begun| now - begun);
        let width = terminal_size::terminal_size_of(io::stderr())
            .map_or(usize::MAX, |(terminal_size::Width(width), _)| usize::from(width));
        // A line that fills its terminal would go on below it.
        let text: String =
            line((looked_at, of, shown), took, self.stops()).chars().take(width.saturating_sub(1)).collect();
        let letters = text.chars().count();
        say(&format!("\r{text}{}", " ".repeat(told.letters.saturating_sub(letters))));
        told.letters = letters;
    }

    fn stops(&self) -> bool {
        self.stop.load(Ordering::Relaxed)
    }
}

/// Where nothing can be said there is nobody to hear it.
fn say(text: &str) {
    let mut stderr = io::stderr();
    let _ = stderr.write_all(text.as_bytes()).and_then(|()| stderr.flush());
}

fn line((looked_at, of, shown): (usize, usize, usize), took: Duration, stops: bool) -> String {
    let mut line = format!("{looked_at} of {of} looked at, {shown} shown");
    if stops {
        line.push_str("; stopping, Ctrl-C again ends at once");
    } else if looked_at == of {
        line.push_str("; steps and tables are left");
    } else if took >= TOO_SOON && looked_at > 0 {
        let each = took / u32::try_from(looked_at).unwrap_or(u32::MAX);
        let left = each * u32::try_from(of - looked_at).unwrap_or(u32::MAX);
        let rate = 1.0 / each.as_secs_f64().max(1e-9);
        let _ = write!(line, "; {rate:.0} a second, about {} left", spent(left));
    }
    line
}

/// A time in words, in whole seconds.
fn spent(time: Duration) -> String {
    match (time.as_secs() / 60, time.as_secs() % 60) {
        (0, seconds) => format!("{seconds} s"),
        (minutes, seconds) if minutes < 60 => format!("{minutes} min {seconds} s"),
        (minutes, _) => format!("{} h {} min", minutes / 60, minutes % 60),
    }
}

#[cfg(test)]
mod tests {
    use std::time::Duration;

    use super::{line, spent};

    #[test]
    fn what_is_left_is_what_is_left_at_the_same_rate() {
        let of = |took, stops| line((1000, 4000, 2), Duration::from_secs(took), stops);
        assert_eq!(of(1, false), "1000 of 4000 looked at, 2 shown");
        assert_eq!(of(50, false), "1000 of 4000 looked at, 2 shown; 20 a second, about 2 min 30 s left");
        assert!(of(50, true).contains("stopping"));
        assert!(line((0, 4000, 0), Duration::from_secs(9), false).ends_with("0 shown"));
        assert!(line((7, 7, 1), Duration::from_secs(9), false).ends_with("steps and tables are left"));
    }

    #[test]
    fn times_are_said_in_the_unit_that_counts() {
        let said = [59, 60, 3599, 3660].map(|seconds| spent(Duration::from_secs(seconds)));
        assert_eq!(said, ["59 s", "1 min 0 s", "59 min 59 s", "1 h 1 min"]);
    }
}
