//! Wind on a top that stands free: velocity pressure, net coefficients, zones.
//!
//! The coefficients come from building wind tunnels (a canopy near the ground, gusty wind). On a boat they stand in for
//! a measurement that nobody has published. Sign: positive presses the top down, negative lifts it.

use uom::si::{ratio::ratio, velocity::meter_per_second};

use crate::units::{Area, Force, Length, MassDensity, Pressure, Ratio, Velocity};

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

/// Gust speed from a sustained wind.
///
/// ```text
///   V_gust = G_s V
/// ```
///
/// | symbol  | meaning                                        | argument    |
/// |---------|------------------------------------------------|-------------|
/// | *V*     | sustained wind, mean of one minute             | `sustained` |
/// | *`G_s`* | gust over mean of one minute, about 1.2 to 1.3 | `gust`      |
///
/// # Validity
///
/// Over open water. Storm classes are given as sustained winds, building codes as gusts: do not multiply twice.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): definition of the ratio; its value is a criterion.
///
/// # Examples
///
/// ```
/// use skinspan::load::wind::gust_speed;
/// use uom::si::{f64::{Ratio, Velocity}, ratio::ratio, velocity::meter_per_second};
/// let gust = gust_speed(Velocity::new::<meter_per_second>(40.0), Ratio::new::<ratio>(1.25));
/// assert_eq!(gust, Velocity::new::<meter_per_second>(50.0));
/// ```
#[must_use]
pub fn gust_speed(sustained: Velocity, gust: Ratio) -> Velocity {
    sustained * gust
}

/// Ground roughness around the boat, by the power law of the mean wind.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Exposure {
    /// Height above which the ground is not felt, *`z_g`*.
    pub gradient_height: Length,
    /// Exponent of the power law, *α*: the gust speed grows as *z* to the power 1/*α*.
    pub exponent: Ratio,
    /// Height below which the coefficient stays constant, 15 ft.
    pub floor: Length,
}

/// Velocity pressure at a height over that of open country at 10 m.
///
/// ```text
///   K_z = 2.01 (z / z_g)^(2/α)
/// ```
///
/// | symbol  | meaning                                      | argument          |
/// |---------|----------------------------------------------|-------------------|
/// | *z*     | height of the top, not taken below the floor | `height`          |
/// | *`z_g`* | gradient height                              | `gradient_height` |
/// | *α*     | exponent of the power law                    | `exponent`        |
///
/// # Validity
///
/// Below the gradient height. For wind speeds of building maps and of weather services, which hold at 10 m; not for a
/// speed measured at the top or for the air stream of a running boat.
///
/// # Source
///
/// [`ASCE_7`](crate::source::ASCE_7), 7-16 Table 26.10-1 note 1 (read in programs that quote it; 7-22 has other constants).
///
/// # Examples
///
/// ```
/// use skinspan::load::wind::{Exposure, exposure_coefficient};
/// use uom::si::{f64::{Length, Ratio}, length::meter, ratio::ratio};
/// let feet = |x: f64| Length::new::<meter>(0.3048 * x);
/// let water = Exposure { gradient_height: feet(700.0), exponent: Ratio::new::<ratio>(11.5), floor: feet(15.0) };
/// // 2.01 × (15/700)^(0.1739) = 2.01 × 0.5125, also for a top 8 ft above the water
/// let k = exposure_coefficient(feet(8.0), water).get::<ratio>();
/// assert!((k - 1.03).abs() < 0.005);
/// ```
#[must_use]
pub fn exposure_coefficient(height: Length, exposure: Exposure) -> Ratio {
    let relative = height.max(exposure.floor) / exposure.gradient_height;
    Ratio::new::<ratio>(2.01 * relative.get::<ratio>().powf(2.0 / exposure.exponent.get::<ratio>()))
}

/// Part of a roof that one coefficient holds for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Zone {
    /// Farther than the zone width from every edge.
    Interior,
    /// Within the zone width of one edge.
    Edge,
    /// Within the zone width of two edges.
    Corner,
}

impl Zone {
    /// Zone of a point.
    ///
    /// ```text
    ///   interior   a ≤ e₁        edge   e₁ < a ≤ e₂        corner   e₂ < a
    /// ```
    ///
    /// | symbol | meaning                                          | argument        |
    /// |--------|--------------------------------------------------|-----------------|
    /// | *e₁*   | distance to the nearest edge                     | `to_edge`       |
    /// | *e₂*   | distance to the nearest edge that runs across it | `to_cross_edge` |
    /// | *a*    | width of the zones, see [`zone_width`]           | `width`         |
    ///
    /// # Validity
    ///
    /// A roof near a rectangle. On a rounded corner `to_cross_edge` is measured to the edges of the enclosing rectangle.
    ///
    /// # Source
    ///
    /// [`ASCE_7`](crate::source::ASCE_7), figure of free roofs for components and cladding (from memory).
    ///
    /// # Examples
    ///
    /// ```
    /// use skinspan::load::wind::Zone;
    /// use uom::si::{f64::Length, length::meter};
    /// let m = |x| Length::new::<meter>(x);
    /// assert_eq!(Zone::of(m(0.1), m(1.2), m(0.3)), Zone::Edge);
    /// assert_eq!(Zone::of(m(0.1), m(0.2), m(0.3)), Zone::Corner);
    /// ```
    #[must_use]
    pub fn of(to_edge: Length, to_cross_edge: Length, width: Length) -> Self {
        match (to_edge < width, to_cross_edge < width) {
            (true, true) => Self::Corner,
            (false, false) => Self::Interior,
            _ => Self::Edge,
        }
    }
}

/// What stands below the top and holds the air up.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Underside {
    /// Air passes freely: things below the top block at most half of the opening.
    Open,
    /// Windscreen, curtains or boxes fill more than half of the opening.
    Blocked,
}

/// Largest net coefficients of a zone, over and under side together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NetPair {
    /// Pressing down, positive.
    pub down: Ratio,
    /// Lifting, negative.
    pub up: Ratio,
}

/// Net coefficients of the three zones.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ZoneCoefficients {
    /// Interior.
    pub interior: NetPair,
    /// Edges.
    pub edge: NetPair,
    /// Corners.
    pub corner: NetPair,
}

/// Net coefficients of a flat free roof.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FreeRoof {
    /// With a clear opening below.
    pub open: ZoneCoefficients,
    /// With a blocked opening below.
    pub blocked: ZoneCoefficients,
}

impl FreeRoof {
    /// Coefficients of one zone.
    ///
    /// ```text
    ///   (C_N down, C_N up) = table[underside][zone]
    /// ```
    ///
    /// | symbol  | meaning          | argument            |
    /// |---------|------------------|---------------------|
    /// | *`C_N`* | net coefficients | `zone`, `underside` |
    ///
    /// # Validity
    ///
    /// Level tops. At 7.5° of slope the coefficients are larger by about a third, in a blocked corner by 40 %; a top that
    /// runs nose up, or one with much crown, lies between. No values for curved tops are known to us.
    ///
    /// # Source
    ///
    /// [`BNBC_2020`](crate::source::BNBC_2020), Part 6 Fig. 6.2.19(a) (read), which reprints the figure of
    /// [`ASCE_7`](crate::source::ASCE_7) (7-16 Fig. 30.7-1); the values are criteria.
    ///
    /// # Examples
    ///
    /// ```
    /// use skinspan::load::wind::{FreeRoof, NetPair, Underside, Zone, ZoneCoefficients};
    /// use uom::si::{f64::Ratio, ratio::ratio};
    /// let pair = |down, up| NetPair { down: Ratio::new::<ratio>(down), up: Ratio::new::<ratio>(up) };
    /// let open = ZoneCoefficients { interior: pair(1.2, -1.1), edge: pair(1.8, -1.7), corner: pair(2.4, -3.3) };
    /// let roof = FreeRoof { open, blocked: open };
    /// assert_eq!(roof.at(Zone::Edge, Underside::Open), pair(1.8, -1.7));
    /// ```
    #[must_use]
    pub fn at(&self, zone: Zone, underside: Underside) -> NetPair {
        let zones = match underside {
            Underside::Open => self.open,
            Underside::Blocked => self.blocked,
        };
        match zone {
            Zone::Interior => zones.interior,
            Zone::Edge => zones.edge,
            Zone::Corner => zones.corner,
        }
    }
}

/// Width of the edge and corner zones.
///
/// ```text
///   a = max(f B, a_min)
/// ```
///
/// | symbol    | meaning                        | argument   |
/// |-----------|--------------------------------|------------|
/// | *B*       | least width of the top in plan | `least`    |
/// | *f*       | fraction of it, 0.1            | `fraction` |
/// | *`a_min`* | least width of a zone          | `minimum`  |
///
/// # Validity
///
/// The 3 ft that the building code sets as minimum would make a small top all corner; a smaller minimum is a decision
/// of this program and stands among the criteria.
///
/// # Source
///
/// [`BNBC_2020`](crate::source::BNBC_2020), Part 6 Fig. 6.2.19(a) note 6 (read): 10 % of the least horizontal dimension,
/// not below 4 % of it or 0.9 m.
///
/// # Examples
///
/// ```
/// use skinspan::load::wind::zone_width;
/// use uom::si::{f64::{Length, Ratio}, length::meter, ratio::ratio};
/// let m = |x| Length::new::<meter>(x);
/// let tenth = Ratio::new::<ratio>(0.1);
/// assert_eq!(zone_width(m(2.5), tenth, m(0.3)), m(0.3));
/// assert_eq!(zone_width(m(4.0), tenth, m(0.3)), m(0.4));
/// ```
#[must_use]
pub fn zone_width(least: Length, fraction: Ratio, minimum: Length) -> Length {
    (least * fraction).max(minimum)
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
/// [`ASCE_7`](crate::source::ASCE_7), 7-16 §30.7, open buildings (read in programs that quote it).
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

/// Class of a hurricane by its sustained wind at 10 m, mean of one minute.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Storm {
    /// Below 39 mph.
    Below,
    /// 39 to 73 mph.
    Tropical,
    /// Hurricane category, 1 to 5.
    Hurricane(u8),
}

impl Storm {
    /// Class that a sustained wind belongs to.
    ///
    /// ```text
    ///   lower bounds, mph: tropical 39, hurricane 74, 96, 111, 130, 157
    /// ```
    ///
    /// | symbol | meaning                            | argument    |
    /// |--------|------------------------------------|-------------|
    /// | *V*    | sustained wind at 10 m, one minute | `sustained` |
    ///
    /// # Validity
    ///
    /// The class names the wind to a reader; no load is derived from it. The scale is set in whole miles an hour, so a
    /// speed between two classes is rounded to whole ones first.
    ///
    /// # Source
    ///
    /// [`SAFFIR_SIMPSON`](crate::source::SAFFIR_SIMPSON), table of categories (read).
    ///
    /// # Examples
    ///
    /// ```
    /// use skinspan::load::wind::Storm;
    /// use uom::si::{f64::Velocity, velocity::meter_per_second};
    /// let mph = |v: f64| Velocity::new::<meter_per_second>(0.44704 * v);
    /// assert_eq!(Storm::of(mph(100.0)), Storm::Hurricane(2));
    /// ```
    #[must_use]
    pub fn of(sustained: Velocity) -> Self {
        let mph = (sustained.get::<meter_per_second>() / 0.44704).round();
        match mph {
            v if v >= 157.0 => Self::Hurricane(5),
            v if v >= 130.0 => Self::Hurricane(4),
            v if v >= 111.0 => Self::Hurricane(3),
            v if v >= 96.0 => Self::Hurricane(2),
            v if v >= 74.0 => Self::Hurricane(1),
            v if v >= 39.0 => Self::Tropical,
            _ => Self::Below,
        }
    }
}
