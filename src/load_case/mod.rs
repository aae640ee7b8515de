//! Load cases: sets of simultaneous actions, made from the service of the top.

mod maker;

use uom::si::ratio::ratio;

use self::maker::Maker;
use crate::{
    criteria::Criteria,
    section::Temperatures,
    service::{Service, Slam, Sun, Walking},
    units::{Force, Length, Pressure, Ratio, ThermodynamicTemperature},
};

/// Most forces that a design file gives for one piece of gear.
pub const MOST_GIVEN: usize = 8;

/// How long a load case lasts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Duration {
    /// Seconds: a landing, a gust.
    Instant,
    /// Minutes to hours: people, wind.
    Short,
    /// Days to weeks: snow, standing water, a day in the sun.
    Long,
    /// The life of the top.
    Permanent,
}

/// What makes a case come again and again.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Repeats {
    /// Landing after landing.
    Landings,
    /// The boat rolls, at anchor or under way.
    Rolls,
}

/// State of the material while a case acts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct State {
    /// Whether the sun has heated the top.
    pub hot: bool,
    /// How long the case lasts.
    pub duration: Duration,
}

/// Net wind pressure, down positive, by zone.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct ZonePressure {
    /// Away from the edges.
    pub interior: Pressure,
    /// Along an edge.
    pub edge: Pressure,
    /// Where two edges meet.
    pub corner: Pressure,
}

/// Somebody on the top, anywhere.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct People {
    /// How many, side by side along the pipes.
    pub count: usize,
    /// Force of each, with the factor for stepping.
    pub each: Force,
    /// Weight of each, standing still: what sag is judged by.
    pub at_rest: Force,
}

/// What holds the top while a case acts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Held {
    /// The pipes and their fixings.
    OnFrame,
    /// Two short edges, as it is carried.
    AtItsEnds,
}

/// One set of simultaneous actions.
#[derive(Clone, Debug, PartialEq)]
pub struct LoadCase {
    /// Name on the command line and in machine output.
    pub id: &'static str,
    /// Name for people.
    pub title: String,
    /// State of the material.
    pub state: State,
    /// Own weight and gear times this; down positive.
    pub gravity: Ratio,
    /// Weight of gear times this: gear may swing harder than the top.
    pub gear_gravity: Ratio,
    /// Push on gear sideways, over its weight.
    pub gear_sideways: Ratio,
    /// Whether gear is on the top.
    pub with_gear: bool,
    /// Wind on the top.
    pub wind: ZonePressure,
    /// Width of the edge zone of the wind.
    pub zone: Length,
    /// Velocity pressure on gear.
    pub gear_wind: Pressure,
    /// Even pressure, down positive.
    pub pressure: Pressure,
    /// People on the top.
    pub people: Option<People>,
    /// A hand at a free edge, down positive.
    pub hand: Option<Force>,
    /// A person who holds on to gear, one at a time, from any side.
    pub grab: Option<Force>,
    /// Which of the forces that the design file gives for each piece of gear acts, by its place in the list.
    pub given: Option<usize>,
    /// Whether a line or a branch catches what is limber.
    pub snagged: bool,
    /// Push in the plane of the top, over own weight.
    pub in_plane: Ratio,
    /// Temperatures of the skins above the one at which the top was built.
    pub temperatures: Option<Temperatures>,
    /// What makes it come again and again; none where it comes a few times in the life of a top.
    pub repeats: Option<Repeats>,
    /// What holds the top.
    pub held: Held,
    /// A bound of a formula that the case lies outside of; it may not pass on such a ground.
    pub doubt: Option<String>,
}

impl LoadCase {
    /// A case of weight at rest alone, on the frame.
    #[must_use]
    pub fn at_rest(id: &'static str, title: impl Into<String>, state: State) -> Self {
        Self {
            id,
            title: title.into(),
            state,
            gravity: times(1.0),
            gear_gravity: times(1.0),
            gear_sideways: NONE,
            with_gear: true,
            wind: ZonePressure::default(),
            zone: Length::default(),
            gear_wind: Pressure::default(),
            pressure: Pressure::default(),
            people: None,
            hand: None,
            grab: None,
            given: None,
            snagged: false,
            in_plane: NONE,
            temperatures: None,
            repeats: None,
            held: Held::OnFrame,
            doubt: None,
        }
    }

    /// Whether somebody may stand, or take hold, anywhere.
    #[must_use]
    pub fn moves(&self) -> bool {
        self.people.is_some() || self.hand.is_some()
    }

    /// Whether the same moves about as in another case, in the same state of the top: of the two, one solution does for both.
    ///
    /// # Examples
    /// A hand that pushes up beside one that hangs on; nothing moves where nobody is.
    /// ```
    /// use skinspan::{
    ///     load_case::{Duration, LoadCase, State},
    ///     units::Force,
    /// };
    /// use uom::si::force::newton;
    /// let still = LoadCase::at_rest("still", "at rest", State { hot: true, duration: Duration::Short });
    /// let hand = |force| LoadCase { hand: Some(Force::new::<newton>(force)), ..still.clone() };
    /// assert!(hand(600.0).moves_as(&hand(-300.0)));
    /// assert!(!hand(600.0).moves_as(&still) && !still.moves_as(&still));
    /// let cold = LoadCase { state: State { hot: false, ..still.state }, ..hand(600.0) };
    /// assert!(!cold.moves_as(&hand(600.0)));
    /// ```
    #[must_use]
    pub fn moves_as(&self, other: &Self) -> bool {
        let alike = self.people == other.people && self.hand.is_some() == other.hand.is_some();
        self.moves() && alike && self.state == other.state
    }

    /// Whether it does more to gear than its own weight at rest, which acts for longer in a case of its own.
    #[must_use]
    pub fn works_on_gear(&self) -> bool {
        let (one, none) = (times(1.0), Pressure::default());
        let moved = self.gear_gravity != one || self.gear_sideways != NONE || self.gear_wind != none;
        self.with_gear
            && self.hand.is_none()
            && (moved
                || self.grab.is_some()
                || self.given.is_some()
                || self.snagged
                || self.state.duration == Duration::Permanent)
    }
}

/// A case that the design file rules out, with the key that does so.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RuledOut {
    /// What is not looked at.
    pub title: &'static str,
    /// The line of the file.
    pub because: &'static str,
}

const NONE: Ratio = Ratio { dimension: std::marker::PhantomData, units: std::marker::PhantomData, value: 0.0 };

fn times(factor: f64) -> Ratio {
    Ratio::new::<ratio>(factor)
}

/// What gear asks for beyond the service.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub struct OnGear {
    /// Somebody may hold on to some of it.
    pub grabbed: bool,
    /// How many forces the design file gives for one piece of it at most; each acts alone.
    pub given: usize,
    /// Some of it is limber.
    pub limber: bool,
}

/// The load cases that a service and the gear ask for, and what the service rules out.
///
/// `least_size` is the smaller side of the top: it sets the width of the wind's edge zone.
#[must_use]
pub fn load_cases(
    service: &Service,
    criteria: &Criteria,
    least_size: Length,
    gear: OnGear,
) -> (Vec<LoadCase>, Vec<RuledOut>) {
    let mut maker = Maker { service, criteria, least_size, cases: Vec::with_capacity(20) };
    maker.standing();
    maker.people();
    maker.running();
    maker.wind(
        "trailer",
        service.trailer.map(|speed| speed + criteria.trailer_gust.value),
        criteria.trailer_down.value,
    );
    maker.wind("storm", service.storm, times(1.0));
    maker.rolling();
    maker.gear(gear);
    maker.laid_up();
    (maker.cases, ruled_out(service))
}

/// Surface temperatures of a top in the sun.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HotTop {
    /// Outer skin.
    pub outer: ThermodynamicTemperature,
    /// Inner skin.
    pub inner: ThermodynamicTemperature,
    /// Core at the bond line of the outer skin.
    pub core: ThermodynamicTemperature,
}

/// The temperatures that a finish in the sun brings; none under cover.
#[must_use]
pub fn hot_top(sun: Sun, criteria: &Criteria) -> Option<HotTop> {
    match sun {
        Sun::None => None,
        Sun::Light => Some(HotTop {
            outer: criteria.sun_light_outer.value,
            inner: criteria.sun_light_inner.value,
            core: criteria.sun_light_core.value,
        }),
        Sun::Dark => Some(HotTop {
            outer: criteria.sun_dark_outer.value,
            inner: criteria.sun_dark_inner.value,
            core: criteria.sun_dark_core.value,
        }),
    }
}

fn ruled_out(service: &Service) -> Vec<RuledOut> {
    [
        (service.speed.is_none(), "wind while running", "speed = \"none\""),
        (service.storm.is_none(), "storm wind", "storm = \"none\""),
        (service.trailer.is_none(), "wind and road on a trailer", "trailer = \"none\""),
        (service.slam == Slam::None, "landing in waves", "slam = \"none\""),
        (service.people == 0, "people on the top", "people = 0"),
        (service.walking == Walking::NoWalk, "rule pressure for walking", "walking = \"no-walk\""),
        (service.sun == Sun::None, "heat of the sun", "sun = \"none\""),
        (service.snow.is_none(), "snow", "no `snow`"),
        (service.ponding.is_none(), "standing water", "no `ponding`"),
    ]
    .into_iter()
    .filter_map(|(ruled_out, title, because)| ruled_out.then_some(RuledOut { title, because }))
    .collect()
}
