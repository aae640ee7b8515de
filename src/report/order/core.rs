//! How the core is cut from sheets and laid.

use uom::si::ratio::ratio;

use super::{Ordered, heading, words};
use crate::{
    geometry::Axis,
    order::{CorePiece, NoPlan},
    report::{
        page::{Page, left, right},
        said::counted,
        words as shared,
    },
    units::{Length, show},
};

pub(super) fn core(page: &mut Page, ordered: Ordered<'_>) {
    heading(page, "Core, cut from sheets");
    let system = ordered.system();
    let plan = match &ordered.order.core {
        Ok(plan) => plan,
        Err(none) => {
            page.paragraph("  ", &format!("NOT PLANNED: {}.", reason(none, ordered)));
            return;
        }
    };
    let along = match plan.along {
        Axis::X => "along the top",
        Axis::Y => "across the top",
    };
    page.paragraph(
        "  ",
        &format!(
            "{} of {}, their length {along}; {} of core in {}, {} of the sheets is offcut. Sizes are those of the rectangle round \
             a piece; x and y are its corner on the top, then its corner on the sheet. {} ways to lay them were tried.",
            counted(plan.sheets, "sheet"),
            words::sheet(plan.sheet, system),
            words::area(plan.area, system),
            counted(plan.pieces.len(), "piece"),
            shared::percent(plan.offcut.get::<ratio>()),
            plan.tried
        ),
    );
    let columns: [usize; 7] = if page.width() < 69 { [7, 7, 8, 8, 6, 9, 8] } else { [9, 9, 9, 9, 7, 10, 9] };
    let row = |cells: [&str; 8]| {
        let [number, cells @ ..] = cells;
        let cells = cells.iter().zip(columns).map(|(cell, wide)| right(cell, wide));
        format!("  {}{}", left(number, 5), cells.collect::<String>())
    };
    let unit = shared_unit(ordered);
    page.line(&row(["piece", "x", "y", "length", "width", "sheet", "along it", "across"]));
    page.line(&row(["", unit, unit, unit, unit, "", unit, unit]));
    for (number, piece) in plan.pieces.iter().enumerate() {
        let cells = [piece.at.x, piece.at.y, piece.length, piece.width, piece.from.at[0], piece.from.at[1]]
            .map(|length| bare(length, ordered));
        let sheet = piece.from.sheet.to_string();
        let [x, y, length, width, at_x, at_y] = &cells;
        page.line(&row([&(number + 1).to_string(), x, y, length, width, &sheet, at_x, at_y]));
        let narrow = piece.length.min(piece.width) < ordered.top.criteria.order_least_piece.value;
        if let Some(note) = note(piece, narrow) {
            page.paragraph("        ", &note);
        }
    }
    seams(page, ordered);
}

/// What else is to be known of a piece.
fn note(piece: &CorePiece, narrow: bool) -> Option<String> {
    let turned = piece.from.turned.then(|| "turned by a quarter on its sheet".to_owned());
    let narrow = narrow.then(|| "narrow".to_owned());
    let cut = (!piece.cut_out.is_empty()).then(|| format!("cut round {}", piece.cut_out.join(", ")));
    let all: Vec<String> = narrow.into_iter().chain(turned).chain(cut).collect();
    (!all.is_empty()).then(|| all.join("; "))
}

pub(super) fn reason(none: &NoPlan, ordered: Ordered<'_>) -> String {
    let at = match none {
        NoPlan::Parts { at: Some(at) } => format!(" (at {})", shared::point(*at, ordered.system())),
        _ => String::new(),
    };
    format!("{none}{at}")
}

fn seams(page: &mut Page, ordered: Ordered<'_>) {
    let Ok(plan) = &ordered.order.core else { return };
    let system = ordered.system();
    let all: Length = plan.seams.iter().map(|seam| seam.length).sum();
    if plan.seams.is_empty() {
        page.paragraph("  ", "No seam runs through core.");
        return;
    }
    page.paragraph("  ", &format!("{} through core, {} in all:", counted(plan.seams.len(), "seam"), show(all, system)));
    for seam in &plan.seams {
        let breaks = words::breaks(seam, ordered)
            .unwrap_or_else(|| "clear of mid-span, conduits and ends of backing".to_owned());
        page.paragraph(
            "    ",
            &format!("from {} to {}: {breaks}", shared::point(seam.from, system), shared::point(seam.to, system)),
        );
    }
    let runs_along = |seam: &crate::order::Seam| seam.breaks.iter().any(|(_, length)| seam.runs_along(*length));
    if plan.seams.iter().any(runs_along) {
        page.paragraph(
            "  ",
            "Where a seam is not clear none of the ways that were tried does better with as few sheets: glue it with care, \
             fill it all through, and stagger it against the edges of fabrics.",
        );
    }
}

const fn shared_unit(ordered: Ordered<'_>) -> &'static str {
    match ordered.system() {
        crate::units::System::Us => "in",
        crate::units::System::Si => "mm",
    }
}

fn bare(length: Length, ordered: Ordered<'_>) -> String {
    let decimals = match ordered.system() {
        crate::units::System::Us => 2,
        crate::units::System::Si => 0,
    };
    crate::units::show_in(length, shared_unit(ordered), decimals).split(' ').next().unwrap_or_default().to_owned()
}
