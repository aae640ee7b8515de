//! `skinspan sheet`.

use std::path::{Path, PathBuf};

use super::{DesignFile, Finished, Status, load, not_written, write_whole};
use crate::{
    input::read_design,
    report::{Answer, Report, to_sheet},
};

pub(super) fn sheet(design: &DesignFile, output: Option<&Path>) -> Result<Finished, String> {
    let output = output.map_or_else(|| in_this_folder(&design.file), Path::to_owned);
    let (top, table) = load(design, Some(&output), |text, table, units| read_design(text, table, units))?;
    let report = Report::new(&top, &table);
    write_whole(&output, &to_sheet(&report)).map_err(|error| not_written(&output, &error))?;
    let status = if report.answer() == Answer::Holds { Status::Holds } else { Status::DoesNotHold };
    Ok(Finished::with(format!("{}\n", said(&report, &output)), status))
}

/// `top.html` for `designs/top.toml`.
fn in_this_folder(file: &Path) -> PathBuf {
    Path::new(file.file_name().unwrap_or(file.as_os_str())).with_extension("html")
}

fn said(report: &Report<'_>, output: &Path) -> String {
    let answer = match report.answer() {
        Answer::Holds => "holds",
        Answer::DoesNotHold => "does not hold",
        Answer::Open => "not shown to hold",
    };
    format!("wrote {}: {answer}; open it in a browser, and print it from there", output.display())
}
