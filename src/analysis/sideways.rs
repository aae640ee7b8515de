//! What pushes the whole frame sideways.

use super::{Analysis, gear_action::GearAction};
use crate::{
    load::{weight::gravity, wind::gear_drag},
    load_case::{Held, LoadCase},
    top::Top,
    units::{Area, Force, Length, Torque},
};

/// A push on the frame as a whole.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sideways {
    /// All of it.
    pub force: Force,
    /// What of it is wind on the edge of the top and on gear.
    pub wind: Force,
    /// Where it acts, above the lower face of the inner skin.
    pub height: Length,
    /// The case, as its place in the list.
    pub case: usize,
}

impl Analysis<'_> {
    /// What pushes the whole frame sideways at the most: the top by its inertia in its plane and by wind on its edge, gear by
    /// what acts at its footings, and hands at the edge. None where nothing does.
    ///
    /// ```text
    /// F = g m a + q C_D A + H + Σ F_i,  z = (g m a z_m + q C_D A h/2 + H t/2 + Σ (F_i t + M_i))/F,  A = h L,  h = t + c
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | *m*, `z_m`, *a* | mass of the bare top, height of its centre, its acceleration sideways in the case over gravity |
    /// | *q*, `C_D` | velocity pressure of the wind in the case; drag coefficient of the edge, `edge-drag` |
    /// | *t*, *c*, *L* | thickness of the top, its crown, its longer side |
    /// | *H* | what a hand at the edge pulls with: as hard sideways as down or up |
    /// | `F_i`, `M_i` | force sideways and overturning moment at the footing of each piece of gear, by wind, motion, hands and what the file gives |
    ///
    /// # Validity
    ///
    /// From any side; all of it at once, with the edge as long as the longer side and as high as a crown makes it look, which is
    /// safe. Of what takes hold of gear one piece at a time the largest counts. Wind on the frame itself, and on what hangs from
    /// it, is not in it: the file does not say how high that stands.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): statics, and the definition of the drag coefficient.
    ///
    /// # Examples
    ///
    /// ```
    /// use skinspan::{analysis::{Analysis, DIVISIONS}, input::{NamedText, read_design, read_tables}};
    /// # let text = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/examples/rail-row.toml")).unwrap();
    /// # let text = NamedText { name: String::new(), text };
    /// let top = read_design(&text, &read_tables(&[]).unwrap(), None).unwrap();
    /// let analysis = Analysis::new(&top, DIVISIONS).unwrap();
    /// // No gear, no trailer, no landing: it rolls on its mooring, with no wind.
    /// let push = analysis.sideways().expect("it rolls");
    /// let case = &analysis.cases[push.case];
    /// assert_eq!((case.id, push.wind.value), ("rolling", 0.0));
    /// let bare = top.weight().bare.value;
    /// assert!((push.force.value / (bare * 9.80665 * case.in_plane.value) - 1.0).abs() < 1e-12);
    /// assert!(((push.height / top.weight().bare_height).value - 1.0).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn sideways(&self) -> Option<Sideways> {
        let cases = self.cases.iter().enumerate().filter(|(_, case)| case.held == Held::OnFrame);
        let each = cases.map(|(number, case)| Sideways::of(self.top, number, case));
        // Of two that push as hard the higher one tips more.
        let is_worse = |a: &Sideways, b: &Sideways| a.force > b.force || a.force == b.force && a.height > b.height;
        let worst = each.reduce(|a, b| if is_worse(&b, &a) { b } else { a });
        worst.filter(|push| push.force > Force::default())
    }
}

impl Sideways {
    /// What pushes a top in a case.
    pub(super) fn of(top: &Top, number: usize, case: &LoadCase) -> Self {
        let weight = top.weight();
        let thickness = top.thickness();
        let inertia: Force = weight.bare * gravity() * case.in_plane;
        let high: Length = thickness + top.crown;
        let edge: Area = high * top.outline.length().max(top.outline.width());
        let on_edge = gear_drag(case.gear_wind, top.criteria.edge_drag.value, edge);
        let (gear, of_wind) = (on_gear(top, case), blown(top, case));
        let hand = case.hand.map(Force::abs).unwrap_or_default();
        let gear_moment: Torque = (gear.side * thickness).into();
        let moment: Torque = (inertia * weight.bare_height + on_edge * (high / 2.0) + hand * (thickness / 2.0)).into();
        let force = inertia + on_edge + hand + gear.side;
        let height =
            if force > Force::default() { (moment + gear_moment + gear.moment) / force } else { Length::default() };
        Self { force, wind: on_edge + of_wind, height, case: number }
    }
}

/// What acts at all footings together; of what takes hold of one piece alone, the worst.
fn on_gear(top: &Top, case: &LoadCase) -> GearAction {
    let alone = LoadCase { grab: None, snagged: false, ..case.clone() };
    let (mut sum, mut held) = (GearAction::default(), GearAction::default());
    for gear in &top.gear {
        let (own, touched) = (GearAction::of(top, gear, &alone), GearAction::of(top, gear, case));
        sum.side += own.side;
        sum.moment += own.moment;
        let more = GearAction { side: touched.side - own.side, moment: touched.moment - own.moment, ..held };
        if more.side > held.side {
            held = more;
        }
    }
    GearAction { side: sum.side + held.side, moment: sum.moment + held.moment, ..sum }
}

/// What of that is wind.
fn blown(top: &Top, case: &LoadCase) -> Force {
    let with_gear = top.gear.iter().filter(|_| case.with_gear);
    with_gear.map(|gear| gear_drag(case.gear_wind, gear.drag, gear.wind_area)).sum()
}
