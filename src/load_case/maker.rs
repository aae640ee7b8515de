//! Makes the load cases of a service, one by one.

use std::num::NonZeroU32;

use uom::si::ratio::ratio;

use super::{Duration, Held, LoadCase, MOST_GIVEN, OnGear, People, Repeats, State, ZonePressure, hot_top, times};
use crate::{
    criteria::Criteria,
    load::{
        gear::roll_acceleration,
        people::person_force,
        ponding::layer_pressure,
        slam,
        temperature::difference,
        weight::gravity,
        wind::{self, Zone},
    },
    section::Temperatures,
    service::{Service, Slam, Sun, Walking},
    units::{Length, Ratio, ThermodynamicTemperature, Velocity},
};

/// Names of the cases of given forces.
const GIVEN: [&str; MOST_GIVEN] =
    ["given-1", "given-2", "given-3", "given-4", "given-5", "given-6", "given-7", "given-8"];

/// Makes the load cases of a service.
pub(super) struct Maker<'a> {
    pub(super) service: &'a Service,
    pub(super) criteria: &'a Criteria,
    pub(super) least_size: Length,
    pub(super) cases: Vec<LoadCase>,
}

impl Maker<'_> {
    fn hot(&self) -> bool {
        self.service.sun != Sun::None
    }

    fn case(&self, id: &'static str, title: impl Into<String>, hot: bool, duration: Duration) -> LoadCase {
        let state = State { hot: hot && self.hot(), duration };
        LoadCase { zone: self.zone(), ..LoadCase::at_rest(id, title, state) }
    }

    fn zone(&self) -> Length {
        wind::zone_width(self.least_size, self.criteria.wind_zone_fraction.value, self.criteria.wind_zone_minimum.value)
    }

    /// Own weight, and the sun on it.
    pub(super) fn standing(&mut self) {
        let own = self.case("own-weight", "own weight and gear, for good", true, Duration::Permanent);
        self.cases.push(own);
        if let Some(hot) = hot_top(self.service.sun, self.criteria) {
            let mut sun = self.case("sun", "sun on the top, with its own weight", true, Duration::Long);
            let rise = |surface: ThermodynamicTemperature| difference(surface, self.criteria.sun_flat.value);
            sun.temperatures = Some(Temperatures { outer: rise(hot.outer), inner: rise(hot.inner) });
            self.cases.push(sun);
        }
    }

    pub(super) fn people(&mut self) {
        let (service, criteria) = (self.service, self.criteria);
        if service.people > 0 {
            let mut case = self.case(
                "people",
                if service.people == 1 {
                    "one person anywhere".to_owned()
                } else {
                    format!("{} people side by side anywhere", service.people)
                },
                true,
                Duration::Short,
            );
            case.people = Some(People {
                count: service.people,
                each: person_force(service.person, criteria.step_factor.value),
                at_rest: person_force(service.person, times(1.0)),
            });
            self.cases.push(case);
        }
        let walking = match service.walking {
            Walking::NoWalk => None,
            Walking::WalkOn => Some(("rule pressure of a top that is walked on", criteria.walk_on_pressure.value)),
            Walking::Coachroof => Some(("rule pressure of a coachroof", criteria.coachroof_pressure.value)),
        };
        if let Some((title, pressure)) = walking {
            let mut case = self.case("walking", title, true, Duration::Short);
            case.pressure = pressure;
            self.cases.push(case);
        }
        for (id, title, sign) in [
            ("hand-down", "a person hanging on to the edge", 1.0),
            ("hand-up", "a person pushing up at the edge", -1.0),
        ] {
            let mut case = self.case(id, title, true, Duration::Short);
            case.hand = Some(service.hand_load * sign);
            case.gravity = if sign > 0.0 { times(1.0) } else { criteria.weight_against_uplift.value };
            case.gear_gravity = case.gravity;
            self.cases.push(case);
        }
    }

    /// Running at speed: wind both ways, with a landing and its rebound.
    pub(super) fn running(&mut self) {
        let (service, criteria) = (self.service, self.criteria);
        let speed = service.speed.map(|speed| wind::relative_wind(speed, service.headwind));
        let (landing, doubt) = slam_multiple(&service.slam, criteria);
        if speed.is_none() && landing.is_none() {
            return;
        }
        let with_landing = landing.is_some();
        for down in [true, false] {
            let (id, title) = match (down, with_landing) {
                (true, true) => ("landing", "landing hard at speed, wind down"),
                (true, false) => ("running-down", "running at speed, wind down"),
                (false, true) => ("rebound", "rebound at speed, wind up"),
                (false, false) => ("running-up", "running at speed, wind up"),
            };
            let mut case = self.case(id, title, true, if with_landing { Duration::Instant } else { Duration::Short });
            if let Some(speed) = speed {
                self.blow(&mut case, speed, down);
            }
            case.gravity = match (down, landing) {
                (true, Some(landing)) => landing + times(1.0),
                (true, None) => times(1.0),
                (false, Some(_)) => -criteria.slam_rebound.value,
                (false, None) => criteria.weight_against_uplift.value,
            };
            case.gear_gravity = case.gravity;
            if with_landing {
                case.gear_gravity = case.gravity * criteria.gear_amplification.value;
                case.gear_sideways = criteria.gear_sideways.value.max(criteria.gear_fore_aft.value);
                case.in_plane = criteria.landing_in_plane.value;
                case.repeats = Some(Repeats::Landings);
            }
            case.doubt = if down { doubt.clone() } else { None };
            self.cases.push(case);
        }
    }

    /// A wind from outside, both ways, with own weight where it adds and part of it where it helps.
    pub(super) fn wind(&mut self, name: &'static str, speed: Option<Velocity>, gravity: Ratio) {
        let Some(speed) = speed else { return };
        for down in [true, false] {
            let (id, title) = match (name, down) {
                ("trailer", true) => ("trailer-down", "on the trailer, wind down and a pothole"),
                ("trailer", false) => ("trailer-up", "on the trailer, wind up"),
                (_, true) => ("storm-down", "gust of a storm, wind down"),
                (_, false) => ("storm-up", "gust of a storm, wind up"),
            };
            let mut case = self.case(id, title, name == "trailer", Duration::Short);
            self.blow(&mut case, speed, down);
            case.gravity = if down { gravity } else { self.criteria.weight_against_uplift.value };
            case.gear_gravity = case.gravity;
            if name == "trailer" {
                case.in_plane = self.criteria.trailer_forward.value;
                case.gear_sideways = self.criteria.trailer_forward.value;
            }
            self.cases.push(case);
        }
    }

    fn blow(&self, case: &mut LoadCase, speed: Velocity, down: bool) {
        let q = wind::velocity_pressure(speed, self.criteria.air_density.value);
        let roof = self.criteria.free_roof();
        let net = |zone| {
            let pair = roof.at(zone, self.service.underside);
            let coefficient = if down { pair.down } else { pair.up };
            wind::net_pressure(q, self.criteria.gust_factor.value, coefficient)
        };
        case.wind = ZonePressure { interior: net(Zone::Interior), edge: net(Zone::Edge), corner: net(Zone::Corner) };
        case.gear_wind = q;
    }

    /// Top and gear thrown to one side.
    pub(super) fn rolling(&mut self) {
        let criteria = self.criteria;
        let sideways =
            roll_acceleration(criteria.roll_angle.value, criteria.roll_period.value, criteria.roll_height.value);
        let Some(sideways) = sideways else { return };
        let mut case = self.case("rolling", "rolling in a beam sea", true, Duration::Short);
        case.gear_sideways = sideways;
        case.in_plane = sideways;
        case.repeats = Some(Repeats::Rolls);
        self.cases.push(case);
    }

    /// What is done to gear by hand, or by its use.
    pub(super) fn gear(&mut self, gear: OnGear) {
        if gear.limber {
            let mut snag = self.case("snag", "a line or a branch catches a whip", true, Duration::Short);
            snag.snagged = true;
            snag.gear_gravity = self.criteria.weight_against_uplift.value;
            self.cases.push(snag);
        }
        if gear.grabbed {
            let mut grab = self.case("grab", "a person holding on to gear", true, Duration::Short);
            grab.gear_gravity = self.criteria.weight_against_uplift.value;
            grab.grab = Some(self.service.hand_load);
            self.cases.push(grab);
        }
        for (number, id) in GIVEN.iter().copied().enumerate().take(gear.given) {
            let title = format!("force {} that the file gives for gear", number + 1);
            let mut given = self.case(id, title, true, Duration::Short);
            given.given = Some(number);
            self.cases.push(given);
        }
    }

    /// Water, snow, and being carried.
    pub(super) fn laid_up(&mut self) {
        if let Some(depth) = self.service.ponding {
            let mut case = self.case("ponding", "water standing on the top", false, Duration::Long);
            case.pressure = layer_pressure(self.criteria.water_density.value, depth);
            self.cases.push(case);
        }
        if let Some(snow) = self.service.snow {
            let mut case = self.case("snow", "snow while laid up", false, Duration::Long);
            case.pressure = snow;
            self.cases.push(case);
        }
        let mut lifting = self.case("lifting", "carrying the bare top by its ends", false, Duration::Short);
        lifting.gravity = self.criteria.lift_factor.value;
        lifting.with_gear = false;
        lifting.held = Held::AtItsEnds;
        self.cases.push(lifting);
    }
}

/// The peak that the top is designed for; the criterion is held at one or more.
fn one_in(criteria: &Criteria) -> NonZeroU32 {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to the range of the type")]
    let peaks = criteria.slam_one_in.value.get::<ratio>().round().clamp(1.0, 1e9) as u32;
    NonZeroU32::new(peaks).unwrap_or(NonZeroU32::MIN)
}

/// Acceleration of a landing over gravity, and what speaks against the formula.
fn slam_multiple(slam: &Slam, criteria: &Criteria) -> (Option<Ratio>, Option<String>) {
    match slam {
        Slam::None => (None, None),
        Slam::Given(acceleration) => (Some(*acceleration / gravity()), None),
        Slam::Boat(in_waves) => {
            let mean = slam::mean_acceleration(&in_waves.boat, &in_waves.sea);
            let bow = in_waves.boat.length * criteria.slam_bow_ahead.value;
            let here = slam::at_station(mean.at_cg, mean.at_bow, in_waves.ahead, bow);
            let peak = slam::peak_mean(here, one_in(criteria));
            let doubt = (!mean.outside.is_empty()).then(|| {
                let bounds = mean.outside.iter().map(|bound| {
                    format!(
                        "{} is {:.2}, tested from {:.2} to {:.2}",
                        bound.quantity, bound.value.value, bound.low.value, bound.high.value
                    )
                });
                format!("the landing formula is used outside its tests: {}", bounds.collect::<Vec<_>>().join("; "))
            });
            (Some(peak), doubt)
        }
    }
}
