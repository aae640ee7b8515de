//! Files that are read and written, and what is said where that cannot be done.

use std::{
    fmt::Write as _,
    fs,
    io::{self, Write as _},
    ops::Range,
    path::{Path, PathBuf},
};

use crate::input::{FileProblems, NamedText, Problem};

/// Why a file could not be read.
pub(super) struct Unreadable {
    cause: String,
    help: Option<&'static str>,
    missing: bool,
    folder: bool,
}

impl Unreadable {
    /// The message; `design` is the file that `skinspan new` could write.
    pub(super) fn message(&self, design: Option<&Path>) -> String {
        let help = match (self.help, design) {
            (_, Some(folder)) if self.folder => designs_in(folder),
            (Some(help), _) => format!("help: {help}\n"),
            (None, Some(design)) if self.missing => {
                format!("help: `skinspan new {}` writes a file to start from\n", design.display())
            }
            _ => String::new(),
        };
        format!("error: {}\n{help}", self.cause)
    }
}

/// Design files are what is meant where a folder was named: those that lie in it.
fn designs_in(folder: &Path) -> String {
    const SHOWN: usize = 4;
    let is_toml = |path: &PathBuf| path.extension().is_some_and(|end| end == "toml") && path.is_file();
    let entries = fs::read_dir(folder).into_iter().flatten().flatten().map(|entry| entry.path());
    let mut found: Vec<PathBuf> = entries.filter(is_toml).collect();
    found.sort();
    if found.is_empty() {
        return "help: a design file is meant, and none lies in that folder\n".to_owned();
    }
    let names: Vec<String> = found.iter().take(SHOWN).map(|path| path.display().to_string()).collect();
    let more = if found.len() > SHOWN { ", …" } else { "" };
    format!("help: a folder is no design file; in it lie {}{more}\n", names.join(", "))
}

/// A file that a design file names is looked for from where the design file stands.
pub(super) fn beside(design: &Path, name: &str) -> PathBuf {
    design.parent().map_or_else(|| PathBuf::from(name), |folder| folder.join(name))
}

/// That a file which a design file names could not be read, at the place of its name.
pub(super) fn not_beside(design: &NamedText, range: Range<usize>, unreadable: Unreadable, what: &str) -> String {
    let problem = Problem::at(range, unreadable.cause)
        .help(format!("a {what} is looked for beside the design file that names it"));
    rendered(&[FileProblems { file: design.name.clone(), text: design.text.clone(), problems: vec![problem] }])
}

/// A drawing has notes and names in whatever alphabet it was made; what counts are its numbers.
pub(super) fn read_drawing(path: &Path) -> Result<NamedText, Unreadable> {
    let bytes = read_bytes(path)?;
    Ok(NamedText { name: path.display().to_string(), text: String::from_utf8_lossy(&bytes).into_owned() })
}

fn read_bytes(path: &Path) -> Result<Vec<u8>, Unreadable> {
    fs::read(path).map_err(|error| unreadable(path, &error))
}

fn unreadable(path: &Path, error: &io::Error) -> Unreadable {
    let missing = error.kind() == io::ErrorKind::NotFound;
    // Other programs take this for what is piped in.
    if missing && path == Path::new("-") {
        return Unreadable {
            cause: "cannot read -: a design file is read by its name, since it names other files beside it".to_owned(),
            help: Some("write what is piped in to a file first, or give /dev/stdin where the system has it"),
            missing: false,
            folder: false,
        };
    }
    Unreadable {
        cause: format!("cannot read {}: {}", path.display(), reason(error)),
        help: (error.kind() == io::ErrorKind::IsADirectory).then_some("name a file that lies in it"),
        missing,
        folder: error.kind() == io::ErrorKind::IsADirectory,
    }
}

pub(super) fn read(path: &Path) -> Result<NamedText, Unreadable> {
    let name = path.display().to_string();
    let bytes = read_bytes(path)?;
    String::from_utf8(bytes).map(|text| NamedText { name: name.clone(), text }).map_err(|error| {
        let fault = error.utf8_error().valid_up_to();
        let line = error.as_bytes()[..fault].split(|byte| *byte == b'\n').count();
        Unreadable {
            cause: format!("{name} is not a text file: line {line} (byte {}) is not UTF-8", fault + 1),
            help: Some("save it as UTF-8 text"),
            missing: false,
            folder: false,
        }
    })
}

/// A fault of the file system in words.
fn reason(error: &io::Error) -> String {
    match error.kind() {
        io::ErrorKind::NotFound => "there is no such file or folder".to_owned(),
        io::ErrorKind::IsADirectory => "it is a folder".to_owned(),
        io::ErrorKind::NotADirectory => "a file stands where its path has a folder".to_owned(),
        io::ErrorKind::PermissionDenied => "this user has no permission for it".to_owned(),
        _ => error.to_string(),
    }
}

pub(super) fn not_written(path: &Path, error: &io::Error) -> String {
    let help = match error.kind() {
        io::ErrorKind::NotFound | io::ErrorKind::NotADirectory => "help: make the folder first, or name another\n",
        io::ErrorKind::IsADirectory => "help: name a file that lies in it\n",
        io::ErrorKind::PermissionDenied | io::ErrorKind::ReadOnlyFilesystem => {
            "help: name a file in a folder that you may write in\n"
        }
        _ => "",
    };
    format!("error: cannot write {}: {}\n{help}", path.display(), reason(error))
}

/// Whether two paths lead to one file that is there.
pub(super) fn same_file(one: &Path, other: &Path) -> bool {
    matches!((fs::canonicalize(one), fs::canonicalize(other)), (Ok(one), Ok(other)) if one == other)
}

pub(super) fn rendered(files: &[FileProblems]) -> String {
    let mut text: String = files.iter().map(|file| file.render(true)).collect();
    let count: usize = files.iter().map(|file| file.problems.len()).sum();
    let _ = writeln!(text, "{count} problem{}; nothing was checked", if count == 1 { "" } else { "s" });
    text
}

/// Writes a file so that it is there whole or not at all: beside its place first, then moved into it. What is no plain
/// file, a pipe or a device, is written to as it stands.
pub(super) fn write_whole(path: &Path, text: &str) -> io::Result<()> {
    let Place { path, old, part } = &Place::of(path)?;
    let Some(part) = part else {
        return fs::OpenOptions::new().write(true).open(path)?.write_all(text.as_bytes());
    };
    let written = fs::File::create(part).and_then(|mut file| {
        file.write_all(text.as_bytes())?;
        if let Some(old) = old {
            file.set_permissions(old.permissions())?;
        }
        file.sync_all()
    });
    written.and_then(|()| fs::rename(part, path)).inspect_err(|_| {
        // What is left of a failed attempt helps nobody; that it cannot be removed either changes nothing.
        let _ = fs::remove_file(part);
    })
}

/// Whether a file can be written: what [`write_whole`] would write first can be made.
pub(super) fn can_be_written(path: &Path) -> io::Result<()> {
    let Place { old, part, .. } = Place::of(path)?;
    match part {
        Some(part) => fs::File::create(&part).and_then(|_| fs::remove_file(&part)),
        None if old.is_some_and(|old| old.is_dir()) => Err(io::ErrorKind::IsADirectory.into()),
        None => Ok(()),
    }
}

/// Where a file goes.
struct Place {
    /// Behind a link the file itself is replaced, not the link.
    path: PathBuf,
    /// What stands there.
    old: Option<fs::Metadata>,
    /// What is written first and then moved there; none where that is no plain file.
    part: Option<PathBuf>,
}

impl Place {
    fn of(path: &Path) -> io::Result<Self> {
        let path = fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
        let old = fs::metadata(&path).ok();
        if old.as_ref().is_some_and(|old| !old.is_file()) {
            return Ok(Self { path, old, part: None });
        }
        let name =
            path.file_name().ok_or_else(|| io::Error::new(io::ErrorKind::InvalidInput, "that is not a file name"))?;
        let mut beside = name.to_owned();
        beside.push(format!(".{}.part", std::process::id()));
        let part = Some(path.with_file_name(beside));
        Ok(Self { path, old, part })
    }
}
