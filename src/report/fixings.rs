//! The fixings of each mount: what they carry, where they stand, how they are set.

use uom::si::ratio::ratio;

use super::{
    Report,
    page::{Page, left},
    prying::pried,
    text, words,
};
use crate::{
    advice::{Fitting, PullTest},
    analysis::{Analysis, Mount, MountForces, MountOn},
    check::CHECKS,
    top::{Fixing, Hold, Laid, Scope},
    units::{Force, Length, Mass, Ratio, System, both, both_at_most, show},
};

/// The fixings, mount by mount.
pub(super) fn fixings(page: &mut Page, report: &Report<'_>, analysis: &Analysis<'_>) {
    if analysis.mounts.is_empty() {
        return;
    }
    page.heading("Fixings (loads as they act, without factors)");
    for (number, fitting) in report.fittings.iter().enumerate() {
        if number > 0 {
            page.blank();
        }
        one(page, report, analysis, fitting);
    }
    if report.savings.is_empty() {
        return;
    }
    page.blank();
    page.paragraph("  ", could_be_smaller(analysis));
    for saving in &report.savings {
        let lighter = if saving.added < Mass::default() {
            format!(", {} lighter", show(saving.added.abs(), report.top.report))
        } else {
            String::new()
        };
        page.paragraph(
            "    ",
            &format!(
                "{}{lighter}; then {} governs, {} used",
                text::change(&saving.change, report.top),
                CHECKS[saving.governs].title(),
                words::percent(saving.utilisation.get::<ratio>())
            ),
        );
    }
}

/// Savings are tried by the hand method; on a patch there is but one.
pub(super) fn could_be_smaller(analysis: &Analysis<'_>) -> &'static str {
    if analysis.top.scope == Scope::Patch {
        "Could be smaller, one at a time, with all holding that holds"
    } else {
        "Could be smaller by the hand method alone, one at a time; no offer counts until it has been checked"
    }
}

fn one(page: &mut Page, report: &Report<'_>, analysis: &Analysis<'_>, fitting: &Fitting) {
    let mount = &analysis.mounts[fitting.mount];
    page.paragraph("  ", &format!("{}: {}", words::held(report.top, mount.on), held_by(mount, report.top.report)));
    for (name, text) in lines(report, analysis, fitting) {
        page.paragraph(&format!("    {} ", left(name, 9)), &text);
    }
}

/// What the fixings of a mount carry, where they stand and how they are set, each with a word for it.
pub(super) fn lines(report: &Report<'_>, analysis: &Analysis<'_>, fitting: &Fitting) -> Vec<(&'static str, String)> {
    let system = report.top.report;
    let mount = &analysis.mounts[fitting.mount];
    let mut lines = Vec::new();
    if let Some(worst) = &fitting.governs {
        let first = CHECKS[worst.check].title();
        lines.push(("first", format!("{first}, {} used; {}", words::used(worst), words::case(analysis, worst))));
    }
    lines.extend(carried(analysis, fitting.mount, system));
    lines.push(("stands", stands(report, mount, system)));
    for drill in &fitting.drills {
        let depth = drill.depth.map_or_else(String::new, |depth| format!(", {} deep", both(depth, system)));
        lines.push(("drill", format!("{}{depth}: {}", both(drill.diameter, system), drill.what)));
    }
    lines.push(("torque", torque(mount, fitting, system)));
    lines.push(("grip", grip(fitting, system)));
    if let Some(test) = &fitting.test {
        lines.push(("prove", prove(analysis, test, system)));
    }
    lines.push(("seal", sealing(&mount.fastened.fixing).to_owned()));
    if let Some(metals) = metals(report, mount) {
        lines.push(("metals", metals));
    }
    lines.push((
        "look",
        "at the first season's end and then each year: tightness, cracks in the paint, rust or white bloom, weeping water \
         (common practice, no source)"
            .to_owned(),
    ));
    lines
}

/// What holds a mount, in one line.
pub(super) fn held_by(mount: &Mount<'_>, system: System) -> String {
    let fixing = &mount.fastened.fixing;
    let (name, size) = (format!("{} × {}", mount.places.len(), fixing.name), size(fixing));
    let parts = [name, fixing.words().to_owned(), size, laid(&mount.fastened.laid, system)];
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ")
}

fn size(fixing: &Fixing) -> String {
    let bolt = fixing.bolt().map(|bolt| format!("{}, {}", bolt.thread.name, words::within(&bolt.grade.name)));
    match &fixing.hold {
        Hold::Screw { screw, grade, .. } => format!("{}, {}", words::within(&screw.name), words::within(&grade.name)),
        Hold::BlindRivet { rivet } => words::within(&rivet.name),
        _ => bolt.unwrap_or_default(),
    }
}

fn laid(laid: &Laid, system: System) -> String {
    use crate::geometry::Pattern;
    match laid {
        Laid::Pattern { pattern: Pattern::Circle { diameter, .. }, .. } => {
            format!("on a circle of {}", both(*diameter, system))
        }
        Laid::Pattern { pattern: Pattern::Row { pitch, .. }, .. } => {
            format!("in a row, {} apart", both(*pitch, system))
        }
        Laid::Pattern { pattern: Pattern::Grid { along_x, along_y, pitch_x, pitch_y }, .. } => {
            format!("{along_x} by {along_y}, {} and {} apart", show(*pitch_x, system), show(*pitch_y, system))
        }
        Laid::Along { spacing, end } => {
            format!("at most {} apart, the first {} from the end", both(*spacing, system), show(*end, system))
        }
        Laid::Points(_) => "each in its own place".to_owned(),
    }
}

/// The case with the largest of a quantity, and that.
pub(super) fn largest<'f, Q: Copy + PartialOrd + Default>(
    forces: impl Iterator<Item = &'f MountForces>,
    of: impl Fn(&MountForces) -> Q,
) -> Option<(Q, usize)> {
    let mut found: Option<(Q, usize)> = None;
    for own in forces {
        let value = of(own);
        if value > found.map_or_else(Q::default, |(largest, _)| largest) {
            found = Some((value, own.case));
        }
    }
    found
}

/// The largest pull by the hand method and by the plate method, where both looked.
fn by_both<'f>(forces: impl Iterator<Item = &'f MountForces>) -> Option<(Force, Force)> {
    let (mut hand, mut plate) = (None, None);
    for own in forces {
        let known: &mut Option<Force> = if own.on_plate { &mut plate } else { &mut hand };
        *known = Some(known.unwrap_or_default().max(most(&own.pulls)));
    }
    hand.zip(plate)
}

pub(super) fn most(forces: &[Force]) -> Force {
    forces.iter().copied().fold(Force::default(), Force::max)
}

fn carried(analysis: &Analysis<'_>, mount: usize, system: System) -> Vec<(&'static str, String)> {
    let own = || analysis.mount_forces.iter().filter(|forces| forces.mount == mount);
    let case = |case: usize| analysis.cases[case].id;
    let mut lines = Vec::new();
    let mut each = Vec::new();
    if let Some((pull, at)) = largest(own(), |forces| most(&forces.pulls)) {
        let beside = by_both(own()).map_or_else(String::new, |(hand, plate)| {
            format!(", {} by hand and {} as a plate", show(hand, system), show(plate, system))
        });
        each.push(format!("pull {} ({}{beside})", show(pull, system), case(at)));
    }
    if let Some((shear, at)) = largest(own(), |forces| most(&forces.shears)) {
        each.push(format!("shear {} ({})", show(shear, system), case(at)));
    }
    if let Some((pressure, at)) = largest(own(), |forces| forces.pressure) {
        each.push(format!("the foot presses {} ({})", show(pressure, system), case(at)));
    }
    let (held, still) = (&analysis.mounts[mount], each.is_empty());
    lines.push(("each", if still { "nothing pulls or shears it".to_owned() } else { each.join(", ") }));
    if !still && !held.fastened.stiff {
        lines.push(("prying", pried(analysis.top, held, system)));
    }
    if let Some(raised) = own().map(|forces| forces.raised).find(|raised| *raised > Ratio::from(1.0)) {
        lines.push((
            "sides",
            format!(
                "what acts sideways is tried from 16 sides, raised by r_16 = 1/cos(180°/16) = {:.3} on each so that what lies \
                 between two of them is covered: pull and shear of each have it in them",
                raised.get::<ratio>()
            ),
        ));
    }
    if let Some((moment, at)) = largest(own(), |forces| forces.whole.moment) {
        lines.push(("footing", format!("overturned by {} ({})", show(moment, system), case(at))));
    }
    lines
}

/// Where the fixings stand: the tightest of each distance.
fn stands(report: &Report<'_>, mount: &Mount<'_>, system: System) -> String {
    let top = report.top;
    let mut parts = Vec::new();
    let mut named: Vec<usize> = Vec::new();
    let inside: Vec<_> =
        mount.places.iter().filter_map(|place| place.backing.filter(|backing| backing.holds(top))).collect();
    for backing in &inside {
        if !named.contains(&backing.backing) {
            named.push(backing.backing);
        }
    }
    for index in named {
        let backing = &top.backings[index];
        let own = inside.iter().filter(|inside| inside.backing == index);
        let side = own.clone().map(|inside| backing.width / 2.0 - inside.across).fold(backing.width, Length::min);
        let end = own.map(|inside| inside.half_length - inside.along).fold(backing.along.length(), Length::min);
        parts.push(format!(
            "in {} ({}), {} from its side, {} from its end",
            backing.name,
            words::within(&backing.board.name),
            show(side, system),
            show(end, system)
        ));
    }
    let outside = mount.places.len() - inside.len();
    if outside > 0 {
        parts.push(format!("{outside} of {} in no backing", mount.places.len()));
    }
    let least = |all: Vec<Length>| all.into_iter().min_by(|a, b| a.value.total_cmp(&b.value));
    if let Some(spacing) = least(mount.places.iter().filter_map(|place| place.neighbour).collect()) {
        parts.push(format!("{} apart", show(spacing, system)));
    }
    let conduit = mount.places.iter().filter_map(|place| place.conduit).min_by(|a, b| a.1.value.total_cmp(&b.1.value));
    if let Some((index, distance)) = conduit {
        parts.push(format!("{} from the middle of conduit {}", show(distance, system), top.conduits[index].name));
    }
    parts.join("; ")
}

fn torque(mount: &Mount<'_>, fitting: &Fitting, system: System) -> String {
    let Some(most) = &fitting.torque else {
        return match mount.fastened.fixing.hold {
            Hold::Screw { .. } => {
                "by hand, until the head bears and no farther: overdriven screws lose most of their hold".to_owned()
            }
            Hold::BlindRivet { .. } => "none: the rivet sets itself".to_owned(),
            _ => "not known: its hold is not".to_owned(),
        };
    };
    format!(
        "at most {}, beyond which {}; it makes {} to {} in the bolt ({})",
        both_at_most(most.torque, system),
        most.gives.words(),
        show(most.preload.least, system),
        show(most.preload.greatest, system),
        mount.fastened.fixing.bolt().map_or_else(String::new, |bolt| words::within(&bolt.lubrication.name)),
    )
}

fn grip(fitting: &Fitting, system: System) -> String {
    let foot =
        if fitting.foot_counted { "" } else { " and the foot, whose thickness the file does not say (`clamped`)" };
    let grip = if fitting.grip > Length::default() { both(fitting.grip, system) } else { "the foot".to_owned() };
    let foot = if fitting.grip > Length::default() { foot } else { "" };
    fitting.shortest.map_or_else(
        || format!("{grip}{foot}"),
        |shortest| format!("{grip}{foot}; shortest under the head {}", both(shortest, system)),
    )
}

fn prove(analysis: &Analysis<'_>, test: &PullTest, system: System) -> String {
    let fittings = analysis.top.criteria.fitting_factor.value;
    format!(
        "pull {:.0} out of scrap of the same build, cold and dry: {} has to reach {} = {} with prying × {:.2} on a hold known by own tests × {:.2} for fittings / {:.2} for heat, \
         water and time ({}); write that characteristic value, not the mean, as `measured` into a table of your own, with mean, scatter and count",
        test.samples.get::<ratio>(),
        below_mean(test),
        both(test.characteristic, system),
        show(test.pull, system),
        (test.factor / fittings).get::<ratio>(),
        fittings.get::<ratio>(),
        test.left.get::<ratio>(),
        analysis.cases[test.case].id
    )
}

/// How the characteristic value comes from the readings.
fn below_mean(test: &PullTest) -> String {
    test.below_mean.map_or_else(
        || "their characteristic value, for which three are the least (`pull-test-samples`),".to_owned(),
        |factor| {
            format!(
                "their characteristic value, mean − {:.2} × standard deviation (EN 1990 table D1, from memory),",
                factor.get::<ratio>()
            )
        },
    )
}

/// What proves each mount whose hold only a test settles, by its name.
pub(super) fn proofs<'r>(report: &'r Report<'_>, analysis: &'r Analysis<'_>) -> Vec<(&'r str, String)> {
    let test = |fitting: &'r Fitting| {
        let words = prove(analysis, fitting.test.as_ref()?, report.top.report);
        Some((words::held(report.top, analysis.mounts[fitting.mount].on), words))
    };
    report.fittings.iter().filter_map(test).collect()
}

/// How water is kept out.
const fn sealing(fixing: &Fixing) -> &'static str {
    match fixing.hold {
        Hold::ThroughBolt { .. } => {
            "bed foot and washer in sealant, countersink the mouth of the hole a little to keep a ring of it \
             (common practice, no source)"
        }
        Hold::BondedStud { .. } => "none is drilled; round the base off with a fillet of the glue",
        _ => {
            "coat the drilled hole with resin and let it cure, then bed thread and foot in sealant; wood must never see an \
             open hole (common practice, no source)"
        }
    }
}

/// What the metals that touch do to each other.
fn metals(report: &Report<'_>, mount: &Mount<'_>) -> Option<String> {
    let fixing = &mount.fastened.fixing;
    let fastener = match &fixing.hold {
        Hold::Screw { grade, .. } => grade.family.as_str(),
        Hold::BlindRivet { rivet } => rivet.family.as_str(),
        _ => fixing.bolt()?.grade.family.as_str(),
    };
    let mut parts: Vec<&str> = Vec::new();
    if let MountOn::Support(pipe) = mount.on
        && let Some(alloy) = report.top.supports[pipe].pipe().and_then(|pipe| pipe.alloy.as_ref())
    {
        parts.push(&alloy.family);
    }
    match &fixing.hold {
        Hold::ThroughBolt { sleeve: Some(sleeve), .. } => parts.push(&sleeve.alloy.family),
        Hold::BlindInsert { insert, .. } => parts.push(&insert.family),
        _ => {}
    }
    if report.top.skin(mount.near).layers().iter().any(|layer| layer.carbon) {
        parts.push("carbon");
    }
    let boards = mount.places.iter().filter_map(|place| place.backing.filter(|backing| backing.holds(report.top)));
    parts.extend(boards.map(|backing| report.top.backings[backing.backing].board.family.as_str()));
    parts.sort_unstable();
    parts.dedup();
    let couples = parts.into_iter().filter_map(|part| report.table.couple(fastener, part));
    let words: Vec<String> = couples
        .map(|couple| {
            format!("{}: {}; {}", words::within(&couple.name), couple.severity, words::within(&couple.remedy))
        })
        .collect();
    (!words.is_empty()).then(|| words.join(" "))
}
