//! What wind, motion and hands bring on gear and its footing. The drag of a body is [`gear_drag`], its inertia
//! [`inertia_force`].

use std::f64::consts::PI;

use uom::si::{angle::radian, torque::newton_meter};

use super::{
    weight::{gravity, inertia_force},
    wind::gear_drag,
};
use crate::units::{Acceleration, Angle, Force, Length, Mass, Pressure, Ratio, Time, Torque};

/// What a whip brings on its foot: a force at half its length, and what that is about the foot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WhipLoad {
    /// Across the whip.
    pub force: Force,
    /// About its foot.
    pub moment: Torque,
}

/// An even load along a whip.
fn even(force: Force, length: Length) -> WhipLoad {
    WhipLoad { force, moment: Torque::new::<newton_meter>((force * length / 2.0).value) }
}

/// A rod that stands up from its foot: a whip antenna, a pole.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Whip {
    /// From its foot to its tip.
    pub length: Length,
    /// Mean diameter.
    pub diameter: Length,
    /// Its mass.
    pub mass: Mass,
}

impl Whip {
    /// Wind across the whip.
    ///
    /// ```text
    ///   F = q C_D d l        M = F l/2
    /// ```
    ///
    /// | symbol   | meaning                                  | argument or field    |
    /// |----------|------------------------------------------|----------------------|
    /// | *q*      | velocity pressure                        | `pressure`           |
    /// | *`C_D`*  | drag coefficient of a long cylinder, 1.2 | `drag`               |
    /// | *l*, *d* | length, mean diameter                    | `length`, `diameter` |
    ///
    /// # Validity
    ///
    /// A straight whip square to the wind. One that bends away bears less. A taper brings the middle of the area below
    /// half the length: on the safe side. Shedding of vortices is not in it.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): [`gear_drag`] on the area *d l*, at half the length.
    ///
    /// # Examples
    ///
    /// 2.44 m of 22 mm in 600 Pa (70 mph), *`C_D`* 1.2: 38.65 N, 47.15 N·m.
    ///
    /// ```
    /// use skinspan::{load::gear::Whip, units::{Length, Mass, Pressure, Ratio}};
    /// use uom::si::{force::newton, length::meter, mass::kilogram, pressure::pascal, torque::newton_meter};
    /// let m = Length::new::<meter>;
    /// let whip = Whip { length: m(2.44), diameter: m(0.022), mass: Mass::new::<kilogram>(1.0) };
    /// let load = whip.wind(Pressure::new::<pascal>(600.0), Ratio::from(1.2));
    /// assert!((load.force.get::<newton>() - 38.65).abs() < 0.01);
    /// assert!((load.moment.get::<newton_meter>() - 47.15).abs() < 0.01);
    /// ```
    #[must_use]
    pub fn wind(&self, pressure: Pressure, drag: Ratio) -> WhipLoad {
        even(gear_drag(pressure, drag, self.diameter * self.length), self.length)
    }

    /// Inertia across the whip when its foot is shaken.
    ///
    /// ```text
    ///   F = r n m g        M = F l/2
    /// ```
    ///
    /// | symbol   | meaning                                            | argument or field |
    /// |----------|----------------------------------------------------|-------------------|
    /// | *n*      | acceleration of the foot across it, over gravity   | `multiple`        |
    /// | *r*      | what its swinging makes of that: 1 for a stiff rod | `resonance`       |
    /// | *m*, *l* | mass, length                                       | `mass`, `length`  |
    ///
    /// # Validity
    ///
    /// Even mass along the length. A jolt that comes at once and stays makes *r* = 2 of an undamped spring; a rhythm near
    /// the whip's own makes more.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): Newton's second law; *r* is a criterion.
    ///
    /// # Examples
    ///
    /// 1 kg, 2 m, 1.5 g, *r* = 2: 29.42 N and the same number in N·m.
    ///
    /// ```
    /// use skinspan::{load::gear::Whip, units::{Length, Mass, Ratio}};
    /// use uom::si::{force::newton, length::meter, mass::kilogram, torque::newton_meter};
    /// let m = Length::new::<meter>;
    /// let whip = Whip { length: m(2.0), diameter: m(0.022), mass: Mass::new::<kilogram>(1.0) };
    /// let load = whip.inertia(Ratio::from(1.5), Ratio::from(2.0));
    /// assert!((load.force.get::<newton>() - 29.42).abs() < 0.001);
    /// assert!((load.moment.get::<newton_meter>() - 29.42).abs() < 0.001);
    /// ```
    #[must_use]
    pub fn inertia(&self, multiple: Ratio, resonance: Ratio) -> WhipLoad {
        even(inertia_force(self.mass, multiple) * resonance, self.length)
    }
}

/// Acceleration across the boat at the end of a roll, over gravity.
///
/// ```text
///   n = sin θ₀ + θ₀ (2π/T)² z / g
/// ```
///
/// | symbol | meaning                                         | argument |
/// |--------|-------------------------------------------------|----------|
/// | *θ₀*   | roll to one side                                | `angle`  |
/// | *T*    | time from one side to the other and back        | `period` |
/// | *z*    | height above the axis that the boat rolls about | `height` |
///
/// # Validity
///
/// Even rolling, θ₀ sin(2π*t*/*T*), across the deck as it leans; weight and swing are greatest together, at the end of the
/// roll, to the same side above the axis. Sway and yaw are not in it.
///
/// # Errors
///
/// Gives `None` where the period is not above zero.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): harmonic motion.
///
/// # Examples
///
/// 25° in 4 s, 1 m up: 0.42262 + 0.43633 × 2.4674/9.80665 = 0.53240.
///
/// ```
/// use skinspan::{load::gear::roll_acceleration, units::{Angle, Length, Time}};
/// use uom::si::{angle::degree, length::meter, ratio::ratio, time::second};
/// let (angle, height) = (Angle::new::<degree>(25.0), Length::new::<meter>(1.0));
/// let n = roll_acceleration(angle, Time::new::<second>(4.0), height).map(|n| n.get::<ratio>());
/// assert!(n.is_some_and(|n| (n - 0.53240).abs() < 1e-5));
/// assert_eq!(roll_acceleration(angle, Time::new::<second>(0.0), height), None);
/// ```
#[must_use]
pub fn roll_acceleration(angle: Angle, period: Time, height: Length) -> Option<Ratio> {
    (period > Time::default()).then(|| {
        let swing: Acceleration = height * angle.get::<radian>() * (2.0 * PI / period) * (2.0 * PI / period);
        Ratio::from(angle.get::<radian>().sin()) + swing / gravity()
    })
}

/// The greatest moment about its footing of a force on gear that may point anywhere: a hand that grabs.
///
/// ```text
///   M = F √(h² + r²)
/// ```
///
/// | symbol | meaning                                                  | argument  |
/// |--------|----------------------------------------------------------|-----------|
/// | *F*    | the force                                                | `force`   |
/// | *h*    | height of the place it grabs above the skin              | `height`  |
/// | *r*    | how far out that place is from the middle of the footing | `outward` |
///
/// # Validity
///
/// A rigid body between the hand and the footing.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): a force square to its arm.
///
/// # Examples
///
/// 1500 N at 0.4 m up and 0.3 m out: 1500 × 0.5 = 750 N·m.
///
/// ```
/// use skinspan::{load::gear::grab_moment, units::{Force, Length}};
/// use uom::si::{force::newton, length::meter, torque::newton_meter};
/// let m = Length::new::<meter>;
/// let moment = grab_moment(Force::new::<newton>(1500.0), m(0.4), m(0.3));
/// assert!((moment.get::<newton_meter>() - 750.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn grab_moment(force: Force, height: Length, outward: Length) -> Torque {
    Torque::new::<newton_meter>((force * height.hypot(outward)).value)
}

/// Peaks in three directions that do not come at once: each in turn in full, with a share of the two others.
///
/// ```text
///   (a, s b, s c)    (s a, b, s c)    (s a, s b, c)
/// ```
///
/// | symbol        | meaning                                 | argument |
/// |---------------|-----------------------------------------|----------|
/// | *a*, *b*, *c* | the peaks, over gravity                 | `peaks`  |
/// | *s*           | share of a peak that comes with another | `share`  |
///
/// # Validity
///
/// Signs are the caller's: each peak may come either way.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): a rule, not a law. With *s* = 0.4 it is the rule of earthquake codes for three
/// directions (from memory), which stays near the root of the sum of squares; *s* is a criterion.
///
/// # Examples
///
/// ```
/// use skinspan::{load::gear::in_turn, units::Ratio};
/// use uom::si::ratio::ratio;
/// let [first, ..] = in_turn([1.5, 1.5, 4.0].map(|n| Ratio::new::<ratio>(n)), Ratio::new::<ratio>(0.5));
/// assert_eq!(first.map(|n| n.get::<ratio>()), [1.5, 0.75, 2.0]);
/// ```
#[must_use]
pub fn in_turn(peaks: [Ratio; 3], share: Ratio) -> [[Ratio; 3]; 3] {
    [0, 1, 2].map(|leading| [0, 1, 2].map(|i| if i == leading { peaks[i] } else { peaks[i] * share }))
}
