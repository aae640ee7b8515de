//! What the frame must take: supports that bear alike stand in one row, with the larger of their numbers.

use super::super::{
    AlongPipe, FrameLoad, Largest, PostLoad, Report, frame_loads,
    page::{Page, left, right},
};
use crate::{
    analysis::Analysis,
    check::Method,
    top::Scope,
    units::{Dimensioned, Force, ForcePerWidth, Torque, show, show_as},
};

/// Numbers that differ by less than this share of the larger are alike: meshes make that much of the two sides of one top.
const ALIKE: f64 = 0.05;

pub(super) fn frame(page: &mut Page, report: &Report<'_>, analysis: &Analysis<'_>) {
    if report.top.scope == Scope::Patch {
        return;
    }
    page.heading("What the frame and its fixings must take (loads as they act, without factors)");
    if let Some(incomplete) = incomplete(analysis) {
        page.paragraph("  ", incomplete);
    }
    let loads = frame_loads(report);
    let shown = Shown::of(report, analysis, &loads);
    for group in grouped(&loads) {
        shown.group(page, &group);
    }
    page.paragraph(&format!("  {} ", left("all of it", 18)), &pushed_sideways(report, analysis));
    if analysis.fields().next().is_some() {
        page.paragraph(
            "  ",
            "By hand a person's load stays on one narrow strip, which makes the most of it; as a plate it spreads along the \
             pipe, and gathers at ends of pipes and over posts: the larger counts. Moments and posts are of the plate method, \
             without the weight of the pipes themselves; the rows of fixings take the pull of each method, check by check.",
        );
    }
}

/// That there is more than these numbers say.
pub(in crate::report) fn incomplete(analysis: &Analysis<'_>) -> Option<&'static str> {
    let some_are_open = !analysis.open_cases.is_empty();
    some_are_open
        .then_some("NOT ALL OF IT: load cases that could not be looked at may ask for far more than these numbers.")
}

/// What pushes the frame sideways.
pub(in crate::report) fn pushed_sideways(report: &Report<'_>, analysis: &Analysis<'_>) -> String {
    let system = report.top.report;
    let Some(push) = analysis.sideways() else {
        return if analysis.open_cases.is_empty() {
            "nothing pushes it sideways".to_owned()
        } else {
            "nothing is known of what pushes it sideways".to_owned()
        };
    };
    let wind = if push.wind > Force::default() {
        format!(", {} of it wind on the edge of the top and on gear", show(push.wind, system))
    } else {
        String::new()
    };
    format!(
        "sideways {} ({}){wind}, from any side, {} above the lower face of the top; without wind on the frame itself, and not checked",
        show(push.force, system),
        analysis.cases[push.case].id,
        show(push.height, system)
    )
}

/// Supports that bear alike, the one that bears most first, and the largest of each of their numbers.
struct Group {
    supports: Vec<usize>,
    largest: FrameLoad,
}

/// Supports in the order of the file, each with those that bear as the first of them.
fn grouped(loads: &[FrameLoad]) -> Vec<Group> {
    let mut groups: Vec<(&FrameLoad, Group)> = Vec::new();
    for load in loads {
        let group = groups.iter_mut().find(|(first, _)| alike(first, load));
        let Some((_, group)) = group else {
            groups.push((load, Group { supports: vec![load.pipe], largest: load.clone() }));
            continue;
        };
        if load.push().0.value > group.largest.push().0.value {
            group.supports.insert(0, load.pipe);
        } else {
            group.supports.push(load.pipe);
        }
        take_larger(&mut group.largest, load);
    }
    groups.into_iter().map(|(_, group)| group).collect()
}

fn near<Q: Dimensioned>(one: Largest<Q>, other: Largest<Q>) -> bool {
    let (one, other) = (one.value.si(), other.value.si());
    (one - other).abs() <= ALIKE * one.abs().max(other.abs())
}

/// Whether two supports bear alike, number by number.
fn alike(one: &FrameLoad, other: &FrameLoad) -> bool {
    let along = |one: Option<AlongPipe>, other: Option<AlongPipe>| match (one, other) {
        (Some(one), Some(other)) => near(one.push, other.push) && near(one.pull, other.pull),
        (one, other) => one.is_none() && other.is_none(),
    };
    let moments = match (one.moment, other.moment) {
        (Some(one), Some(other)) => near(one, other),
        (one, other) => one.is_none() && other.is_none(),
    };
    let at = |one: &PostLoad, other: &PostLoad| (one.along - other.along).abs() <= one.along.max(other.along) * 1e-3;
    let clamps = match (one.clamp, other.clamp) {
        (Some(one), Some(other)) => near(one, other),
        (one, other) => one.is_none() && other.is_none(),
    };
    let borne = |one: &[PostLoad], other: &[PostLoad]| {
        one.len() == other.len() && one.iter().zip(other).all(|(one, other)| at(one, other) && posts_alike(one, other))
    };
    let posts = borne(&one.posts, &other.posts) && borne(&one.joints, &other.joints);
    one.known()
        && other.known()
        && along(one.hand, other.hand)
        && along(one.plate, other.plate)
        && moments
        && clamps
        && posts
}

fn posts_alike(one: &PostLoad, other: &PostLoad) -> bool {
    near(one.push, other.push) && near(one.pull, other.pull)
}

fn larger<Q: Copy + PartialOrd>(known: &mut Largest<Q>, other: Largest<Q>) {
    if other.value > known.value {
        *known = other;
    }
}

fn take_larger(known: &mut FrameLoad, other: &FrameLoad) {
    for (known, other) in [(&mut known.hand, other.hand), (&mut known.plate, other.plate)] {
        if let (Some(known), Some(other)) = (known, other) {
            larger(&mut known.push, other.push);
            larger(&mut known.pull, other.pull);
        }
    }
    if let (Some(known), Some(other)) = (&mut known.moment, other.moment) {
        larger(known, other);
    }
    if let (Some(known), Some(other)) = (&mut known.clamp, other.clamp) {
        larger(known, other);
    }
    for (known, other) in [(&mut known.posts, &other.posts), (&mut known.joints, &other.joints)] {
        for (known, other) in known.iter_mut().zip(other) {
            larger(&mut known.push, other.push);
            larger(&mut known.pull, other.pull);
        }
    }
}

/// How the loads are shown: each quantity in one unit, that of the largest of all.
struct Shown<'a> {
    report: &'a Report<'a>,
    analysis: &'a Analysis<'a>,
    along: ForcePerWidth,
    moment: Torque,
    post: Force,
}

impl<'a> Shown<'a> {
    fn of(report: &'a Report<'a>, analysis: &'a Analysis<'a>, loads: &[FrameLoad]) -> Self {
        let mut shown = Self {
            report,
            analysis,
            along: ForcePerWidth::default(),
            moment: Torque::default(),
            post: Force::default(),
        };
        for load in loads {
            for along in [load.hand, load.plate].into_iter().flatten() {
                shown.along = shown.along.max(along.push.value).max(along.pull.value);
            }
            shown.moment = load.moment.map_or(shown.moment, |moment| shown.moment.max(moment.value));
            for post in load.posts.iter().chain(&load.joints) {
                shown.post = shown.post.max(post.push.value).max(post.pull.value);
            }
        }
        shown
    }

    fn with<Q: Dimensioned>(&self, largest: Largest<Q>, like: Q, also: &str) -> String {
        largest.case.map_or_else(
            || format!("nothing{also}"),
            |case| {
                let shown = show_as(largest.value, like, self.report.top.report);
                format!("{shown} ({}){also}", self.analysis.cases[case].id)
            },
        )
    }

    fn along(
        &self,
        load: &FrameLoad,
        (largest, by): (Largest<ForcePerWidth>, Method),
        of: fn(&AlongPipe) -> Largest<ForcePerWidth>,
    ) -> String {
        let other = match by {
            Method::Hand => &load.plate,
            Method::Plate => &load.hand,
        };
        let other = other.as_ref().filter(|_| largest.case.is_some()).map_or_else(String::new, |other| {
            let methods = if by == Method::Hand { ["hand", "plate"] } else { ["plate", "hand"] };
            let value = show_as(of(other).value, self.along, self.report.top.report);
            format!(" by {}, by {} {value}", methods[0], methods[1])
        });
        self.with(largest, self.along, &other)
    }

    fn group(&self, page: &mut Page, Group { supports, largest: load }: &Group) {
        let supports: Vec<_> = supports.iter().map(|&support| &self.report.top.supports[support]).collect();
        let names: Vec<&str> = supports.iter().map(|support| support.name.as_str()).collect();
        let lead = if let [name] = names.as_slice() {
            format!("  {} ", left(name, 18))
        } else {
            let word = supports
                .iter()
                .map(|support| support.word())
                .reduce(|one, other| if one == other { one } else { "support" });
            let word = word.unwrap_or("support");
            page.paragraph(
                "  ",
                &format!("{} {word}s alike, the larger of their numbers: {}", names.len(), names.join(", ")),
            );
            " ".repeat(21)
        };
        if !load.known() {
            let word = supports.first().map_or("support", |support| support.word());
            page.paragraph(&lead, &format!("not known: the hand method does not count on this {word}"));
            return;
        }
        let (push, pull) =
            (self.along(load, load.push(), |along| along.push), self.along(load, load.pull(), |along| along.pull));
        page.paragraph(&lead, &format!("push {push}; pull at fixings {pull}"));
        if let Some(moment) = load.moment {
            page.paragraph(&right("bends by ", 21), &self.with(moment, self.moment, ""));
        }
        if let Some(clamp) = load.clamp {
            let words = self.with(clamp, clamp.value, "");
            page.paragraph(&right("its joint ", 21), &format!("must take {words} about its line; not evaluated"));
        }
        self.borne(page, ("post", &load.posts), names.len());
        self.borne(page, ("joint", &load.joints), names.len());
    }

    /// What posts of a pipe bear, or of so many pipes that bear alike; what it hands to other pipes at joints.
    fn borne(&self, page: &mut Page, (what, all): (&str, &[PostLoad]), pipes: usize) {
        let mut groups: Vec<Vec<&PostLoad>> = Vec::new();
        for post in all {
            match groups.iter_mut().find(|group| posts_alike(group[0], post)) {
                Some(group) => group.push(post),
                None => groups.push(vec![post]),
            }
        }
        for group in groups {
            let places: Vec<String> = group.iter().map(|post| show(post.along, self.report.top.report)).collect();
            let (mut push, mut pull) = (group[0].push, group[0].pull);
            for post in &group {
                larger(&mut push, post.push);
                larger(&mut pull, post.pull);
            }
            let alike = match group.len() * pipes {
                1 => String::new(),
                many => format!("{many} {what}s alike, "),
            };
            let open = if what == "joint" { "; whether the weld bears it is not evaluated" } else { "" };
            let words = format!(
                "{}: {alike}push {}, pull {}{open}",
                places.join(", "),
                self.with(push, self.post, ""),
                self.with(pull, self.post, "")
            );
            let lead = if group.len() == 1 { format!("{what} at ") } else { format!("{what}s at ") };
            page.paragraph(&right(&lead, 21), &words);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{FrameLoad, Largest, grouped};
    use crate::report::AlongPipe;
    use crate::units::{ForcePerWidth, parse};

    fn load(pipe: usize, push: &str) -> FrameLoad {
        let push = parse::<ForcePerWidth>(push).unwrap_or_else(|error| panic!("{error}"));
        let along = AlongPipe { push: Largest { value: push, case: Some(pipe) }, ..AlongPipe::default() };
        FrameLoad {
            pipe,
            hand: Some(along),
            plate: None,
            moment: None,
            clamp: None,
            posts: Vec::new(),
            joints: Vec::new(),
        }
    }

    #[test]
    fn what_bears_alike_is_one_group_with_the_larger_number_and_its_case() {
        let loads = [load(0, "10 N/mm"), load(1, "20 N/mm"), load(2, "10.4 N/mm"), load(3, "9.7 N/mm")];
        let groups = grouped(&loads);
        let supports: Vec<&[usize]> = groups.iter().map(|group| group.supports.as_slice()).collect();
        assert_eq!(supports, [&[2, 0, 3][..], &[1][..]]);
        let (push, _) = groups[0].largest.push();
        assert_eq!(push, loads[2].push().0);
        // A sixteenth apart is apart.
        assert_eq!(grouped(&[load(0, "10 N/mm"), load(1, "9.4 N/mm")]).len(), 2);
        // Of nothing that is known nothing is alike.
        let unknown = |pipe| FrameLoad {
            pipe,
            hand: None,
            plate: None,
            moment: None,
            clamp: None,
            posts: Vec::new(),
            joints: Vec::new(),
        };
        assert_eq!(grouped(&[unknown(0), unknown(1)]).len(), 2);
    }
}
