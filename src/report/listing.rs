//! The material table as a list.

use serde_json::Value;

use super::{
    explain::row_json,
    page::{Page, Tone, left},
};
use crate::{
    material::{Kind, MaterialTable, RowView},
    units::{System, show},
};

/// Rows of a kind, or of all kinds, whose id, name or family holds a text.
fn chosen<'a>(table: &'a MaterialTable, kind: Option<Kind>, text: &str) -> Vec<RowView<'a>> {
    let text = text.to_lowercase();
    let holds = |row: &RowView<'_>| {
        [row.id(), row.name(), row.family()].iter().any(|field| field.to_lowercase().contains(&text))
    };
    let mut rows: Vec<_> =
        table.rows().filter(|row| kind.is_none_or(|kind| row.kind() == kind)).filter(holds).collect();
    rows.sort_by_key(|row| (row.kind(), row.id()));
    rows
}

/// The list for people; none where nothing is chosen.
#[must_use]
pub fn list(table: &MaterialTable, kind: Option<Kind>, text: &str, system: System, width: usize) -> Option<String> {
    let rows = chosen(table, kind, text);
    let mut page = Page::new(width.clamp(60, 120));
    let mut now = None;
    for row in &rows {
        if now != Some(row.kind()) {
            if now.is_some() {
                page.blank();
            }
            now = Some(row.kind());
            page.line(&Tone::Strong.paint(row.kind().word()));
        }
        let range = row.density_range().map_or_else(String::new, |(low, high)| {
            if low == high { show(low, system) } else { format!("{} to {}", show(low, system), show(high, system)) }
        });
        page.paragraph(
            &format!("  {} ", left(row.id(), 22)),
            &[row.name().to_owned(), range, row.summary(system)]
                .into_iter()
                .filter(|part| !part.is_empty())
                .collect::<Vec<_>>()
                .join("; "),
        );
    }
    page.blank();
    page.paragraph("", "skinspan explain ID shows one row with the source of each value.");
    (!rows.is_empty()).then(|| page.done())
}

/// The list for machines, each row with all that is known of it; none where nothing is chosen.
#[must_use]
pub fn list_json(table: &MaterialTable, kind: Option<Kind>, text: &str) -> Option<Value> {
    let rows = chosen(table, kind, text);
    let list: Vec<Value> = rows.iter().map(|row| row_json(*row, &row.properties().collect::<Vec<_>>())).collect();
    (!list.is_empty()).then_some(Value::Array(list))
}
