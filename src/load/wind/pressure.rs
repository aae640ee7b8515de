//! From a speed of the air to a pressure and a force.

use crate::units::{Area, Force, MassDensity, Pressure, Ratio, Velocity};

/// Pressure of a wind brought to rest.
///
/// ```text
///   q = ½ ρ V²
/// ```
///
/// | symbol | meaning                              | argument  |
/// |--------|--------------------------------------|-----------|
/// | *ρ*    | density of air, 1.225 kg/m³ at 15 °C | `density` |
/// | *V*    | speed of the air over the top        | `speed`   |
///
/// # Validity
///
/// Speeds far below that of sound. The speed is the one that lasts long enough to load the whole top, a gust of about
/// three seconds; a sustained wind has first to be multiplied by a gust allowance.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): Bernoulli's equation. In psf and mph the factor is 0.00256
/// ([`ASCE_7`](crate::source::ASCE_7), eq. for velocity pressure; read).
///
/// # Examples
///
/// ```
/// use skinspan::load::wind::velocity_pressure;
/// use uom::si::{f64::{MassDensity, Velocity}, mass_density::kilogram_per_cubic_meter, pressure::pascal,
///     velocity::meter_per_second};
/// let rho = MassDensity::new::<kilogram_per_cubic_meter>(1.225);
/// let q = velocity_pressure(Velocity::new::<meter_per_second>(40.0), rho);
/// assert!((q.get::<pascal>() - 980.0).abs() < 1e-9); // ½ × 1.225 × 1600
/// ```
#[must_use]
pub fn velocity_pressure(speed: Velocity, density: MassDensity) -> Pressure {
    0.5 * density * speed * speed
}

/// Speed of the air over the top of a boat that runs into the wind.
///
/// ```text
///   V = V_boat + V_wind
/// ```
///
/// | symbol     | meaning                                    | argument   |
/// |------------|--------------------------------------------|------------|
/// | *`V_boat`* | speed of the boat, or of trailer and truck | `boat`     |
/// | *`V_wind`* | wind from ahead, or the gust allowance     | `headwind` |
///
/// # Validity
///
/// Head to wind, the worst direction. Speed-up over a windscreen is not in it.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): addition of velocities.
///
/// # Examples
///
/// ```
/// use skinspan::load::wind::relative_wind;
/// use uom::si::{f64::Velocity, velocity::meter_per_second};
/// let speed = |v| Velocity::new::<meter_per_second>(v);
/// assert_eq!(relative_wind(speed(20.0), speed(12.0)), speed(32.0));
/// ```
#[must_use]
pub fn relative_wind(boat: Velocity, headwind: Velocity) -> Velocity {
    boat + headwind
}

/// Net pressure on a zone.
///
/// ```text
///   p = q G C_N
/// ```
///
/// | symbol  | meaning                                                 | argument            |
/// |---------|---------------------------------------------------------|---------------------|
/// | *q*     | velocity pressure                                       | `velocity_pressure` |
/// | *G*     | gust-effect factor, 0.85 for a rigid body in a 3 s gust | `gust_factor`       |
/// | *`C_N`* | net coefficient, positive down                          | `coefficient`       |
///
/// # Validity
///
/// Stiff tops, first frequency above 1 Hz.
///
/// # Source
///
/// [`ASCE_7`](crate::source::ASCE_7), 7-16 §30.7, open buildings (quoted by programs).
///
/// # Examples
///
/// ```
/// use skinspan::load::wind::net_pressure;
/// use uom::si::{f64::{Pressure, Ratio}, pressure::pascal, ratio::ratio};
/// let r = |x| Ratio::new::<ratio>(x);
/// let p = net_pressure(Pressure::new::<pascal>(1000.0), r(0.85), r(-1.1));
/// assert!((p.get::<pascal>() + 935.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn net_pressure(velocity_pressure: Pressure, gust_factor: Ratio, coefficient: Ratio) -> Pressure {
    velocity_pressure * gust_factor * coefficient
}

/// Force of the wind on a piece of gear.
///
/// ```text
///   F = q C_D A
/// ```
///
/// | symbol  | meaning                          | argument            |
/// |---------|----------------------------------|---------------------|
/// | *q*     | velocity pressure                | `velocity_pressure` |
/// | *`C_D`* | drag coefficient on the area *A* | `drag`              |
/// | *A*     | area seen by the wind            | `area`              |
///
/// # Validity
///
/// Any direction of the wind; the force acts at the middle of the area. Lift is not in it.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): definition of the drag coefficient.
///
/// # Examples
///
/// ```
/// use skinspan::load::wind::gear_drag;
/// use uom::si::{area::square_meter, f64::{Area, Pressure, Ratio}, force::newton, pressure::pascal, ratio::ratio};
/// let f = gear_drag(Pressure::new::<pascal>(600.0), Ratio::new::<ratio>(1.2), Area::new::<square_meter>(0.05));
/// assert!((f.get::<newton>() - 36.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn gear_drag(velocity_pressure: Pressure, drag: Ratio, area: Area) -> Force {
    velocity_pressure * drag * area
}
