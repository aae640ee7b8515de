//! What was taken for granted, and what the order leaves out.

use super::{Ordered, heading};
use crate::{
    criteria::Record,
    order::Hardener,
    report::{
        hands,
        page::{Page, left},
        said::counted,
        without_fixings,
    },
    units::{Length, Ratio, both},
};

/// The criteria that the order uses.
pub(super) fn records(ordered: Ordered<'_>) -> Vec<&Record> {
    let used = |record: &&Record| {
        let sheet = record.id.contains("sheet-");
        let balsa = record.id.starts_with("order-balsa");
        let epoxy = ordered.order.resins.mix.kind == Hardener::Hardener;
        match record.group.as_str() {
            "order" if record.id == "order-hardener-share" => epoxy,
            "order" if record.id == "order-catalyst-share" => {
                !epoxy || ordered.order.coats.iter().any(|coat| coat.catalyst.is_some())
            }
            // Of the sheets those that are laid.
            "order" => !sheet || balsa == ordered.top.core.family.is_balsa(),
            "slings" | "lifting" => true,
            _ => false,
        }
    };
    ordered.top.criteria.records().into_iter().filter(used).collect()
}

pub(super) fn assumptions(page: &mut Page, ordered: Ordered<'_>) {
    heading(page, "Taken for granted (change it in `[order]`, or by its name in `[criteria]`)");
    for record in records(ordered) {
        let how = if record.changed_by_user {
            format!("of the file, instead of {}", record.built_in)
        } else {
            record.mark.words().to_owned()
        };
        page.paragraph(
            &format!("  {} ", left(&record.id, 24)),
            &format!("{}: {} [{how}]", record.as_written, record.title),
        );
    }
}

pub(super) fn cautions(ordered: Ordered<'_>) -> Vec<String> {
    let (top, order) = (ordered.top, ordered.order);
    let mut cautions: Vec<String> = hands(top).into_iter().collect();
    if let Ok(plan) = &order.core
        && !plan.sold_so_thick
    {
        cautions.push(format!(
            "The table does not know this core as sold {} thick: ask before you order, or glue it up from thinner sheets, each \
             bond with its own resin, which is not counted.",
            both(top.core.thickness, ordered.system())
        ));
    }
    if top.crown > Length::default() {
        cautions.push(format!(
            "A crown of {} adds {:.1} % to what is bought of fabrics, resin and coats; sheets of core, weights, heights and lengths are \
             those of the plan. Sheets that are scored so that they bend take up more resin than plain ones: that is not counted.",
            both(top.crown, ordered.system()),
            (top.along_crown() - Ratio::from(1.0)).get::<uom::si::ratio::percent>()
        ));
    }
    cautions.push(
        "Not in the list: consumables (peel ply, bag, flow medium, hoses, mould wax, solvents), fillets, sealant, wiring, the frame \
         and gear itself. Board as thick as the core is not looked for among what is sold: glue thinner ones up where it is not."
            .to_owned(),
    );
    for line in order.conduits.iter().filter(|line| line.name.is_none()) {
        cautions.push(format!(
            "Of the conduits {} {} wide {} a plain bore, into which nothing is laid: it is in no list.",
            counted(line.runs, "run"),
            both(line.diameter, ordered.system()),
            if line.runs == 1 { "is" } else { "are each" }
        ));
    }
    let open = without_fixings(top);
    if !open.is_empty() {
        cautions.push(format!(
            "The file does not say how these are fixed, so none of their fixings is in the list: {}.",
            open.join(", ")
        ));
    }
    if order.fabrics.iter().any(|line| line.slanted > 0) {
        cautions.push(
            "A ply at 45 degrees is counted as cut on the slant from a roll. Many stitched fabrics are sold with their fibres at 45 \
             degrees and are then laid along or across: the shorter length beside it holds for these."
                .to_owned(),
        );
    }
    cautions.push(
        "Weigh the finished top: a resin content that differs by a tenth from the table moves the bare weight by some per cent. \
         Nobody goes below a lifted top. Lift it by a hand's breadth first and look; hold it by lines from the side; not in wind: it \
         is a sail."
            .to_owned(),
    );
    cautions
}
