//! Lateral load of a screw or bolt that bears in the backing alone.

use crate::units::{Force, Length, Pressure, Ratio, Torque};

/// A dowel: screw, bolt or pin, driven into the backing from one side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Dowel {
    /// Diameter that bears.
    pub diameter: Length,
    /// Depth in the backing.
    pub depth: Length,
    /// Bearing strength of the backing under the dowel, `f_h`.
    pub embedding: Pressure,
    /// Plastic moment of the dowel, [`plastic_moment`].
    pub plastic_moment: Torque,
}

/// How the plate or foot holds the head of the dowel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PlateGrip {
    /// The head turns freely: plate no thicker than half the diameter.
    Thin,
    /// The head is held from turning: plate at least as thick as the diameter, hole without play.
    Thick,
}

/// What a code adds where a hinge forms in a long dowel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HingeRule {
    /// Factor on the load of a long dowel with hinges: 1 by equilibrium, 1.15 in EN 1995-1-1.
    pub factor: Ratio,
    /// Pull that the inclined dowel takes up: a quarter of its withdrawal load in EN 1995-1-1; zero to leave it out.
    pub rope: Force,
    /// Most that the pull may add, as a share of the rest: 1 for screws, 0.25 for bolts in EN 1995-1-1.
    pub rope_limit: Ratio,
}

/// The way in which the dowel gives way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DowelMode {
    /// Pushed sideways at its whole depth, straight: only a thick plate can hold it so.
    Pushed,
    /// Turned as a straight pin about a point in its depth.
    Turned,
    /// Turned in the depth, bent at the plate.
    TurnedAndBent,
    /// Bent in the backing; its tip stays.
    Bent,
    /// Bent in the backing and at the plate.
    BentTwice,
}

/// Lateral load of a dowel and its mode.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DowelBearing {
    /// The load.
    pub force: Force,
    /// The mode.
    pub mode: DowelMode,
}

/// Plastic moment of a round dowel.
///
/// ```text
///   M_y = f_y d³/6
/// ```
///
/// | symbol | meaning                                              | argument   |
/// |--------|------------------------------------------------------|------------|
/// | `f_y`  | yield stress of the dowel                            | `yielding` |
/// | *d*    | diameter that bends: the core of the thread, if it lies there | `diameter` |
///
/// # Validity
///
/// Full section plastic; hardened screws that snap do not reach it.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): plastic modulus of a circle.
///
/// # Examples
///
/// 450 MPa, 4.8 mm: 450 × 110.6/6 = 8294 N·mm.
///
/// ```
/// use skinspan::{fastening::plastic_moment, units::{Length, Pressure}};
/// use uom::si::{length::millimeter, pressure::megapascal};
/// let m = plastic_moment(Pressure::new::<megapascal>(450.0), Length::new::<millimeter>(4.8));
/// assert!((m.value - 8.2944).abs() < 1e-4); // N·m
/// ```
#[must_use]
pub fn plastic_moment(yielding: Pressure, diameter: Length) -> Torque {
    (yielding * diameter * diameter * diameter / 6.0).into()
}

/// Lateral load of a dowel in a backing under a plate that lies on it, and the mode.
///
/// ```text
///   thin:   min { (√2 − 1) f_h t d                       turned
///               { k √(2 M_y f_h d) + R                   bent
///   thick:  min { f_h t d                                pushed
///               { f_h t d [√(2 + 4 M_y/(f_h d t²)) − 1] + R   turned and bent
///               { 2 k √(M_y f_h d) + R                   bent twice
///   R ≤ limit × the rest of its line
/// ```
///
/// | symbol | meaning                                                | field or argument       |
/// |--------|--------------------------------------------------------|-------------------------|
/// | `f_h`  | bearing strength of the backing under the dowel        | `dowel.embedding`       |
/// | *t*    | depth in the backing                                   | `dowel.depth`           |
/// | *d*    | diameter                                               | `dowel.diameter`        |
/// | `M_y`  | plastic moment of the dowel                            | `dowel.plastic_moment`  |
/// | *k*, *R* | factor and pull of a code                            | `rule`                  |
///
/// # Validity
///
/// Backing and dowel rigid and plastic; the skin between plate and backing is left out, safe side. Between thin and
/// thick a caller may interpolate. The full diameter bears; far from edges.
///
/// # Source
///
/// [`EN_1995_1_1`](crate::source::EN_1995_1_1), 8.2.3, steel to timber (from memory), with its rounded 0.4 as √2 − 1;
/// [`DERIVED`](crate::source::DERIVED): the least load of all mechanisms.
///
/// # Examples
///
/// *d* = 5 mm, *t* = 20 mm, `f_h` = 10 MPa, `M_y` = 8000 N·mm, thin plate: turned 414.2 N, bent √(2 × 8000 × 50) =
/// 894.4 N.
///
/// ```
/// use skinspan::fastening::{Dowel, DowelMode, HingeRule, PlateGrip, backing_bearing};
/// use skinspan::units::{Force, Length, Pressure, Ratio, Torque};
/// use uom::si::{force::newton, length::millimeter, pressure::megapascal, torque::newton_meter};
/// let mm = Length::new::<millimeter>;
/// let dowel = Dowel {
///     diameter: mm(5.0),
///     depth: mm(20.0),
///     embedding: Pressure::new::<megapascal>(10.0),
///     plastic_moment: Torque::new::<newton_meter>(8.0),
/// };
/// let rule = HingeRule { factor: Ratio::from(1.0), rope: Force::new::<newton>(0.0), rope_limit: Ratio::from(0.0) };
/// let turned = backing_bearing(&dowel, PlateGrip::Thin, rule);
/// assert!((turned.force.get::<newton>() - 414.2).abs() < 0.1 && turned.mode == DowelMode::Turned);
/// let bent = backing_bearing(&Dowel { depth: mm(60.0), ..dowel }, PlateGrip::Thin, rule);
/// assert!((bent.force.get::<newton>() - 894.4).abs() < 0.1 && bent.mode == DowelMode::Bent);
/// ```
#[must_use]
pub fn backing_bearing(dowel: &Dowel, grip: PlateGrip, rule: HingeRule) -> DowelBearing {
    let pushed: Force = dowel.embedding * (dowel.depth * dowel.diameter);
    let hinge: Force = (dowel.plastic_moment * dowel.embedding * dowel.diameter).sqrt();
    let roped = |force: Force| force + rule.rope.min(rule.rope_limit * force);
    let bearing = |force, mode| DowelBearing { force, mode };
    let least = |first: DowelBearing, second: DowelBearing| if second.force < first.force { second } else { first };
    match grip {
        PlateGrip::Thin => least(
            bearing((2f64.sqrt() - 1.0) * pushed, DowelMode::Turned),
            bearing(roped(rule.factor * (2f64.sqrt() * hinge)), DowelMode::Bent),
        ),
        PlateGrip::Thick => {
            let slack = (2.0 + 4.0 * (hinge / pushed).value.powi(2)).sqrt() - 1.0;
            let turned = bearing(roped(slack * pushed), DowelMode::TurnedAndBent);
            let bent = bearing(roped(rule.factor * (2.0 * hinge)), DowelMode::BentTwice);
            least(bearing(pushed, DowelMode::Pushed), least(turned, bent))
        }
    }
}
