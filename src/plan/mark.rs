//! Fixings one by one: where and with what each is drilled.

use super::{Item, Shape};
use crate::{
    advice::{Drill, drills},
    analysis::{Mount, MountOn},
    geometry::Point,
    section::Skin,
    top::{Hold, Top},
    units::Length,
};

/// One fixing in its place, and how it is drilled.
#[derive(Clone, Debug, PartialEq)]
pub struct FixingMark {
    /// Its number on the plan, from one.
    pub number: usize,
    /// What it holds.
    pub on: MountOn,
    /// The name of that.
    pub held: String,
    /// The name of its kind in the design file.
    pub fixing: String,
    /// How it holds, in words.
    pub hold: &'static str,
    /// Its size: of its thread, screw or rivet.
    pub size: String,
    /// Its middle.
    pub at: Point,
    /// The skin that it goes in by.
    pub near: Skin,
    /// Holes, in the order of the work; none where nothing is drilled.
    pub drills: Vec<Drill>,
    /// The thread that is cut into the hole, where one is.
    pub tap: Option<String>,
    /// The conduit that it comes too near to, as the band beside it is drawn.
    pub in_band: Option<InBand>,
}

/// How near a hole comes to a conduit.
#[derive(Clone, Debug, PartialEq)]
pub struct InBand {
    /// The name of the conduit.
    pub conduit: String,
    /// What stays between hole and conduit in plan; below zero where the drill meets it.
    pub wall: Length,
    /// What has to stay there for this hole.
    pub needed: Length,
}

impl FixingMark {
    /// Diameter of its widest hole; none where nothing is drilled.
    #[must_use]
    pub fn widest(&self) -> Option<Length> {
        self.drills.iter().map(|drill| drill.diameter).reduce(Length::max)
    }

    /// How deep its deepest hole ends, from the face of the near skin; none where it goes through or nothing is drilled.
    #[must_use]
    pub fn stop(&self) -> Option<Length> {
        self.drills.iter().filter_map(|drill| drill.depth).reduce(Length::max)
    }
}

pub(super) fn marks(top: &Top, mounts: &[Mount<'_>]) -> Vec<FixingMark> {
    let mut marks = Vec::new();
    for mount in mounts {
        let fixing = &mount.fastened.fixing;
        for place in &mount.places {
            // What it is drilled through is that of its own place, not of all that hold the same.
            let alone = Mount { places: vec![*place], ..mount.clone() };
            marks.push(FixingMark {
                number: marks.len() + 1,
                on: mount.on,
                held: match mount.on {
                    MountOn::Gear(index) => top.gear[index].name.clone(),
                    MountOn::Support(index) => top.supports[index].name.clone(),
                },
                fixing: fixing.name.clone(),
                hold: fixing.words(),
                size: fixing.hold.size().to_owned(),
                at: place.at,
                near: mount.near,
                drills: drills(top, &alone),
                tap: match &fixing.hold {
                    Hold::TappedScrew { bolt, .. } => Some(bolt.thread.name.clone()),
                    _ => None,
                },
                in_band: None,
            });
        }
    }
    marks
}

/// Each with a cross at its middle and a circle for every drill.
pub(super) fn items(marks: &[FixingMark]) -> Vec<Item> {
    let item = |mark: &FixingMark| {
        let mut shapes = vec![Shape::Cross { at: mark.at }];
        let mut sizes: Vec<Length> = Vec::with_capacity(mark.drills.len());
        for drill in &mark.drills {
            if !sizes.contains(&drill.diameter) {
                sizes.push(drill.diameter);
            }
        }
        shapes.extend(sizes.into_iter().map(|diameter| Shape::Circle { centre: mark.at, diameter }));
        Item { name: format!("{}, {}", mark.number, mark.held), shapes }
    };
    marks.iter().map(item).collect()
}
