//! `skinspan template`.

use std::path::{Path, PathBuf};

use super::{
    DesignFile, Finished, Status,
    files::{beside, not_written, read, same_file, write_whole},
    load, pretty,
};
use crate::{
    input::{drawing_named_in, read_design},
    report::{DXF_VERSION, Face, Paper, Template},
    units::System,
};

/// In which form a file is written.
#[derive(Clone, Copy)]
enum Form {
    Svg,
    Dxf,
    Tiles,
    Table,
    Json,
}

impl Form {
    /// Drawings first: these are made where nothing is asked for.
    const ALL: [(Self, &'static str); 5] =
        [(Self::Svg, "svg"), (Self::Dxf, "dxf"), (Self::Tiles, "html"), (Self::Table, "csv"), (Self::Json, "json")];

    fn of(path: &Path) -> Result<Self, String> {
        let end = path.extension().and_then(|end| end.to_str()).unwrap_or_default().to_lowercase();
        Self::ALL.into_iter().find(|(_, word)| *word == end).map(|(form, _)| form).ok_or_else(|| {
            format!(
                "error: {} says no form that a template is written in\nhelp: let its name end in `.svg` (one sheet), `.dxf` \
                 (for a cutter), `.html` (pages for a printer), `.csv` or `.json` (the holes as a list)\n",
                path.display()
            )
        })
    }
}

pub(super) fn template(
    design: &DesignFile,
    face: Face,
    (paper, holes_only): (Option<Paper>, bool),
    outputs: &[PathBuf],
    width: usize,
) -> Result<Finished, String> {
    let DesignFile { file, tables, .. } = design;
    let outputs: Vec<PathBuf> = if outputs.is_empty() { beside_here(file) } else { outputs.to_vec() };
    let forms = outputs.iter().map(|path| Form::of(path)).collect::<Result<Vec<_>, _>>()?;
    if let Some((twice, _)) = outputs.iter().enumerate().find(|(index, path)| outputs[..*index].contains(path)) {
        return Err(format!("error: {} is to be written twice\nhelp: name it once\n", outputs[twice].display()));
    }
    if !forms.iter().any(|form| matches!(form, Form::Tiles)) && (paper.is_some() || holes_only) {
        let option = if holes_only { "--holes-only" } else { "--tiles" };
        return Err(format!(
            "error: `{option}` is of the pages for a printer, and none of the files to write is one\nhelp: add `-o {}`, or leave it \
             out\n",
            outputs[0].with_extension("html").display()
        ));
    }
    let (top, _) = load(design, None, |text, table, units| read_design(text, table, units))?;
    let drawing = drawing_of(file);
    let sources = || drawing.iter().chain(tables).chain([file]).map(PathBuf::as_path);
    if let Some(output) = outputs.iter().find(|output| sources().any(|source| same_file(source, output))) {
        return Err(format!(
            "error: the template would replace {}, which it is drawn from\nhelp: choose another name\n",
            output.display()
        ));
    }
    let paper = paper.unwrap_or(match top.report {
        System::Us => Paper::Letter,
        System::Si => Paper::A4,
    });
    let template = Template::new(&top, face);
    if holes_only && template.tile_count(paper, true) == 0 {
        return Err("error: there are no holes to print: the file gives no fixings\nhelp: leave `--holes-only` out\n"
            .to_owned());
    }
    let mut written = Vec::with_capacity(outputs.len());
    for (output, form) in outputs.iter().zip(forms) {
        let (text, what) = made(&template, form, (paper, holes_only));
        write_whole(output, &text).map_err(|error| not_written(output, &error))?;
        written.push((output.display().to_string(), what));
    }
    let status = if template.clear_of_conduits() { Status::Holds } else { Status::DoesNotHold };
    let warning = template.not_for_building().map(str::to_owned);
    Ok(Finished::with(template.to_text(&written, width), status).warned(warning))
}

/// The drawing that a design takes its outline from.
fn drawing_of(file: &Path) -> Option<PathBuf> {
    let (name, _) = drawing_named_in(&read(file).ok()?).ok()??;
    Some(beside(file, &name))
}

/// What a file holds, and that in words.
fn made(template: &Template<'_>, form: Form, (paper, holes_only): (Paper, bool)) -> (String, String) {
    match form {
        Form::Svg => {
            (template.to_svg(), "1:1, all layers on one sheet with scale bars, key, holes and cautions".to_owned())
        }
        Form::Dxf => (
            template.to_dxf(),
            format!("1:1, millimetres, DXF {DXF_VERSION}, a layer for each kind of line, the datum at 0, 0"),
        ),
        Form::Table => (template.to_csv(), "the holes as a table, a line for each drill".to_owned()),
        Form::Json => (pretty(&template.to_json()), "the holes for programs".to_owned()),
        Form::Tiles => (template.to_tiles(paper, holes_only), tiles(template, (paper, holes_only))),
    }
}

fn tiles(template: &Template<'_>, (paper, holes_only): (Paper, bool)) -> String {
    let (all, with_holes) = (template.tile_count(paper, false), template.tile_count(paper, true));
    let pages = |count: usize| format!("{count} page{} {}", if count == 1 { "" } else { "s" }, paper.words());
    let behind = "behind a page or two that say how they go together";
    if holes_only {
        format!("1:1, {}, those with holes alone, {behind}", pages(with_holes))
    } else if with_holes > 0 && with_holes < all {
        format!("1:1, {}, {behind}; the holes alone take {with_holes}, with `--holes-only`", pages(all))
    } else {
        format!("1:1, {}, {behind}", pages(all))
    }
}

/// One drawing of each form, named after the design, in the folder where one is.
fn beside_here(file: &Path) -> Vec<PathBuf> {
    let stem = file.file_stem().unwrap_or_default().to_string_lossy();
    Form::ALL[..3].iter().map(|(_, end)| PathBuf::from(format!("{stem}-template.{end}"))).collect()
}
