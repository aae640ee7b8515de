//! Fixings of a footing: balance, turning, mirrors, scaling, more fixings.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use proptest::prelude::*;
use skinspan::{
    closed_form::fixing_group::{FixingGroup, FootingAction, FootingForces, GroupError},
    geometry::{Foot, Pattern, Point},
    units::{Force, FoundationModulus, Length, Pressure, Ratio, Stiffness, Torque},
};
use uom::si::{
    angle::{degree, radian},
    force::newton,
    length::meter,
    pressure::pascal,
    ratio::ratio,
    torque::newton_meter,
};

/// What the balance may miss.
const BALANCED: f64 = 1e-12;
/// The balance is held to 10⁻¹²; forces follow it with the condition of the springs, up to 10⁴ here.
const FORCES: f64 = 1e-8;
/// Twenty thousand strips, of which a hundredth may be pressed, with a kink in one.
const STRIPS: f64 = 1e-5;

fn m(x: f64) -> Length {
    Length::new::<meter>(x)
}

fn point(x: f64, y: f64) -> Point {
    Point { x: m(x), y: m(y) }
}

/// Newton and newton metres: pull, two sides, two moments, twist.
fn action([p, v_x, v_y, m_x, m_y, t]: [f64; 6]) -> FootingAction {
    let (n, nm) = (Force::new::<newton>, Torque::new::<newton_meter>);
    FootingAction { pull: n(p), side: [n(v_x), n(v_y)], moment: [nm(m_x), nm(m_y)], twist: nm(t) }
}

fn stiffness(k: f64) -> Stiffness {
    Force::new::<newton>(k) / m(1.0)
}

fn modulus(k: f64) -> FoundationModulus {
    Pressure::new::<pascal>(k) / m(1.0)
}

fn turned(point: Point, angle: f64) -> Point {
    let (sin, cos) = angle.sin_cos();
    Point { x: point.x * cos - point.y * sin, y: point.x * sin + point.y * cos }
}

/// A random footing and what acts on it. Places are shares of the foot's half sides.
#[derive(Clone, Debug)]
struct Plan {
    disc: bool,
    sides: [f64; 2],
    at: Vec<[f64; 2]>,
    stiffness: f64,
    /// Logarithm of the stiffness of the bed over that of the fixings.
    contrast: f64,
    load: [f64; 6],
}

impl Plan {
    fn foot(&self) -> Foot {
        let [a, b] = self.sides;
        if self.disc { Foot::Disc { diameter: m(a) } } else { Foot::Rectangle { length: m(a), width: m(b) } }
    }

    fn points(&self) -> Vec<Point> {
        // A square in a disc reaches its rim at 1/√2.
        let (share, [a, b]) = if self.disc { (0.35, [self.sides[0]; 2]) } else { (0.5, self.sides) };
        self.at.iter().map(|[x, y]| point(share * a * x, share * b * y)).collect()
    }

    fn bed(&self) -> f64 {
        let [a, b] = self.sides;
        #[allow(clippy::cast_precision_loss, reason = "a dozen")]
        let fixings = self.at.len() as f64 * self.stiffness;
        fixings * 10_f64.powf(self.contrast) / (a * b)
    }

    fn group(&self) -> FixingGroup {
        self.group_of(self.points(), self.foot())
    }

    fn group_of(&self, at: Vec<Point>, foot: Foot) -> FixingGroup {
        FixingGroup::new(at, foot, stiffness(self.stiffness), modulus(self.bed())).unwrap()
    }

    fn action(&self) -> FootingAction {
        action(self.load)
    }

    /// What forces are measured against.
    fn size(&self) -> f64 {
        let [p, v_x, v_y, m_x, m_y, t] = self.load.map(f64::abs);
        p + v_x + v_y + (m_x + m_y + t) / self.sides[0].min(self.sides[1])
    }
}

fn plan(contrast: f64) -> impl Strategy<Value = Plan> {
    plan_of(1, -contrast..contrast)
}

fn plan_of(least: usize, contrast: std::ops::Range<f64>) -> impl Strategy<Value = Plan> {
    let place = [-0.98..0.98_f64, -0.98..0.98_f64];
    (
        any::<bool>(),
        [0.05..0.4_f64, 0.05..0.4_f64],
        prop::collection::vec(place, least..13),
        1e6..5e7_f64,
        contrast,
        [-3e3..3e3_f64, -2e3..2e3_f64, -2e3..2e3_f64, -200.0..200.0_f64, -200.0..200.0_f64, -50.0..50.0_f64],
    )
        .prop_map(|(disc, sides, at, stiffness, contrast, load)| Plan {
            disc,
            sides,
            at,
            stiffness,
            contrast,
            load,
        })
}

fn same(a: f64, b: f64, size: f64) -> bool {
    (a - b).abs() <= FORCES * size
}

fn pulls(forces: &FootingForces) -> Vec<f64> {
    forces.pulls.iter().map(Force::get::<newton>).collect()
}

/// Force and moments of the bed below a foot that lies as found, in strips along *y*, each exact.
fn bed_action(plan: &Plan, forces: &FootingForces) -> [f64; 3] {
    const STRIP: u32 = 20_000;
    let turn = forces.turn.map(|angle| angle.get::<radian>());
    let half = 0.5 * plan.sides[0];
    let mut sum = [0.0; 3];
    for i in 0..STRIP {
        // Evenly in the angle, so that the strips are fine where the disc ends.
        let angle = std::f64::consts::PI * (f64::from(i) + 0.5) / f64::from(STRIP);
        let (sin, cos) = angle.sin_cos();
        let width = half * sin * std::f64::consts::PI / f64::from(STRIP);
        let x = -half * cos;
        let end = if plan.disc { half * sin } else { 0.5 * plan.sides[1] };
        let w = |y: f64| forces.lift.get::<meter>() + turn[0] * y - turn[1] * x;
        let (mut low, mut high) = (-end, end);
        let crossing = -w(0.0) / turn[0];
        if w(low) > 0.0 {
            low = crossing.min(high);
        }
        if w(high) > 0.0 {
            high = crossing.max(low);
        }
        // Simpson is exact for the product of two linear functions.
        let (middle, length) = (0.5 * (low + high), high - low);
        let push = |y: f64| plan.bed() * (-w(y)).max(0.0) * width * length / 6.0;
        for (y, share) in [(low, push(low)), (middle, 4.0 * push(middle)), (high, push(high))] {
            sum[0] -= share;
            sum[1] -= share * y;
            sum[2] += share * x;
        }
    }
    sum
}

proptest! {
    #[test]
    fn forces_across_the_skin_balance(plan in plan(2.0)) {
        let forces = plan.group().pulls(&plan.action()).unwrap();
        prop_assert!(forces.residual.get::<ratio>() <= BALANCED);
        let mut sum = bed_action(&plan, &forces);
        for (place, pull) in plan.points().iter().zip(pulls(&forces)) {
            prop_assert!(pull >= 0.0);
            sum[0] += pull;
            sum[1] += pull * place.y.get::<meter>();
            sum[2] -= pull * place.x.get::<meter>();
        }
        let side = plan.sides[0].max(plan.sides[1]);
        for (found, (given, arm)) in
            sum.iter().zip([(plan.load[0], 1.0), (plan.load[3], side), (plan.load[4], side)])
        {
            // The strips' error is a share of what presses, which may be more than the action.
            let pressing = forces.pressure.get::<pascal>() * forces.contact.value;
            prop_assert!((found - given).abs() <= STRIPS * (plan.size() + pressing) * arm, "{found} {given}");
        }
    }

    #[test]
    fn balance_is_found_far_apart(plan in plan_of(1, -3.0..6.0)) {
        let forces = plan.group().pulls(&plan.action()).unwrap();
        prop_assert!(forces.residual.get::<ratio>() <= BALANCED);
    }

    #[test]
    fn forces_in_the_plane_balance(plan in plan_of(2, -1.0..1.0)) {
        let shears = plan.group().shears(&plan.action()).unwrap();
        let mut sum = [0.0; 3];
        for (place, force) in plan.points().iter().zip(&shears) {
            let ([f_x, f_y], x, y) = (force.map(|f| f.get::<newton>()), place.x.get::<meter>(), place.y.get::<meter>());
            sum = [sum[0] + f_x, sum[1] + f_y, sum[2] + x * f_y - y * f_x];
        }
        let largest = shears.iter().flatten().fold(plan.size(), |most, force| most.max(force.get::<newton>().abs()));
        for (found, given) in sum.iter().zip([plan.load[1], plan.load[2], plan.load[5]]) {
            prop_assert!((found - given).abs() <= BALANCED * largest, "{found} {given}");
        }
    }

    #[test]
    fn disc_turns_with_its_action(mut plan in plan(2.0), angle in -3.0..3.0_f64) {
        plan.disc = true;
        let turn = |[x, y]: [f64; 2]| [x * angle.cos() - y * angle.sin(), x * angle.sin() + y * angle.cos()];
        let [p, v_x, v_y, m_x, m_y, t] = plan.load;
        let ([v_x, v_y], [m_x, m_y]) = (turn([v_x, v_y]), turn([m_x, m_y]));
        let after = action([p, v_x, v_y, m_x, m_y, t]);
        let group = plan.group();
        let other = plan.group_of(plan.points().into_iter().map(|at| turned(at, angle)).collect(), plan.foot());
        check_equal(&plan, &group.pulls(&plan.action()).unwrap(), &other.pulls(&after).unwrap())?;
        if plan.at.len() > 1 {
            for (one, two) in group.shears(&plan.action()).unwrap().iter().zip(other.shears(&after).unwrap()) {
                let one = turn(one.map(|f| f.get::<newton>()));
                let size = plan.size() + one[0].hypot(one[1]);
                prop_assert!(same(one[0], two[0].get::<newton>(), size) && same(one[1], two[1].get::<newton>(), size));
            }
        }
    }

    #[test]
    fn rectangle_turns_by_a_quarter(mut plan in plan(2.0)) {
        plan.disc = false;
        let [p, v_x, v_y, m_x, m_y, t] = plan.load;
        let after = action([p, -v_y, v_x, -m_y, m_x, t]);
        let [a, b] = plan.sides;
        let points = plan.points().iter().map(|at| Point { x: -at.y, y: at.x }).collect();
        let other = plan.group_of(points, Foot::Rectangle { length: m(b), width: m(a) });
        check_equal(&plan, &plan.group().pulls(&plan.action()).unwrap(), &other.pulls(&after).unwrap())?;
    }

    #[test]
    fn forces_grow_with_the_action(plan in plan(2.0), share in 0.01..100.0_f64) {
        let (group, share) = (plan.group(), Ratio::new::<ratio>(share));
        let mut one = group.pulls(&plan.action()).unwrap();
        let other = group.pulls(&plan.action().scaled(share)).unwrap();
        prop_assert!(same(one.contact.value, other.contact.value, plan.sides[0] * plan.sides[1]));
        one.pulls.iter_mut().for_each(|pull| *pull *= share.get::<ratio>());
        one.pressure *= share.get::<ratio>();
        plan_scaled(&plan, share.get::<ratio>(), &one, &other)?;
    }

    /// Both stiffnesses times one factor change nothing but the lift.
    #[test]
    fn only_the_quotient_of_the_stiffnesses_counts(plan in plan(2.0), factor in 0.1..10.0_f64) {
        let stiffer = Plan { stiffness: plan.stiffness * factor, ..plan.clone() };
        check_equal(&plan, &plan.group().pulls(&plan.action()).unwrap(), &stiffer.group().pulls(&plan.action()).unwrap())?;
    }

    /// The lift times the pull and the turns times the moments are twice the energy, which a further spring lowers.
    #[test]
    fn further_fixing_makes_the_footing_stiffer(plan in plan(2.0), x in -0.98..0.98_f64, y in -0.98..0.98_f64) {
        let work = |plan: &Plan, bed: f64| {
            let group = FixingGroup::new(plan.points(), plan.foot(), stiffness(plan.stiffness), modulus(bed)).unwrap();
            let forces = group.pulls(&plan.action()).unwrap();
            let [t_x, t_y] = forces.turn.map(|angle| angle.get::<radian>());
            plan.load[0] * forces.lift.get::<meter>() + plan.load[3] * t_x + plan.load[4] * t_y
        };
        let mut more = plan.clone();
        more.at.push([x, y]);
        let (before, after) = (work(&plan, plan.bed()), work(&more, plan.bed()));
        prop_assert!(after <= before * (1.0 + FORCES), "{before} {after}");
    }

    /// In a group with two planes of symmetry, under a moment in one of them, further fixings that keep the symmetry and
    /// stand no farther out than the farthest relieve that one. Farther out they take more than it bore: the rule does
    /// not hold for any further fixing.
    #[test]
    fn further_fixings_inside_relieve_the_farthest(mut plan in plan(2.0), share in 0.0..1.0_f64, y in 0.0..0.98_f64) {
        let quarters = |[x, y]: [f64; 2]| [[x, y], [-x, y], [x, -y], [-x, -y]];
        let farthest = plan.at.iter().map(|[x, _]| x.abs()).fold(0.0, f64::max);
        plan.at = plan.at.iter().copied().flat_map(quarters).collect();
        plan.load = [0.0, 0.0, 0.0, 0.0, 100.0, 0.0];
        let (stiffness, bed) = (stiffness(plan.stiffness), modulus(plan.bed()));
        let greatest = |plan: &Plan| {
            let group = FixingGroup::new(plan.points(), plan.foot(), stiffness, bed).unwrap();
            group.pulls(&plan.action()).unwrap().greatest().get::<newton>()
        };
        let before = greatest(&plan);
        plan.at.extend(quarters([share * farthest, y]));
        prop_assert!(greatest(&plan) <= before * (1.0 + FORCES));
    }

    #[test]
    fn patterns_stand_about_the_origin(count in 2_u32..20, pitch in 0.01..0.2_f64, angle in -180.0..180.0_f64) {
        let direction = uom::si::f64::Angle::new::<degree>(angle);
        for pattern in [
            Pattern::Circle { count, diameter: m(pitch), first: direction },
            Pattern::Row { count, pitch: m(pitch), direction },
            Pattern::Grid { along_x: count, along_y: 3, pitch_x: m(pitch), pitch_y: m(0.5 * pitch) },
        ] {
            let points = pattern.points();
            let sum = |along: fn(&Point) -> Length| points.iter().map(along).sum::<Length>().get::<meter>();
            prop_assert!(sum(|p| p.x).abs() < 1e-12 && sum(|p| p.y).abs() < 1e-12);
        }
    }
}

fn check_equal(plan: &Plan, one: &FootingForces, other: &FootingForces) -> Result<(), TestCaseError> {
    plan_scaled(plan, 1.0, one, other)
}

fn plan_scaled(plan: &Plan, share: f64, one: &FootingForces, other: &FootingForces) -> Result<(), TestCaseError> {
    let size = plan.size() * share;
    for (a, b) in pulls(one).into_iter().zip(pulls(other)) {
        prop_assert!(same(a, b, size), "{a} {b}");
    }
    let (a, b) = (one.pressure.get::<pascal>(), other.pressure.get::<pascal>());
    prop_assert!(same(a, b, a + size / (plan.sides[0] * plan.sides[1])), "{a} {b}");
    Ok(())
}

#[test]
fn what_is_no_footing_is_refused() {
    let foot = Foot::Disc { diameter: m(0.1) };
    let of = |at: Vec<Point>, k: f64, bed: f64| FixingGroup::new(at, foot, stiffness(k), modulus(bed)).err();
    assert_eq!(of(vec![], 1.0, 1.0), Some(GroupError::Empty));
    assert_eq!(of(vec![point(0.0, 0.0)], 1.0, 0.0), Some(GroupError::NotPositive { what: "bed" }));
    assert_eq!(
        of(vec![point(0.0, 0.0)], f64::NAN, 1.0),
        Some(GroupError::NotPositive { what: "stiffness of a fixing" })
    );
    assert_eq!(of(vec![point(0.0, 0.0), point(0.04, 0.03)], 1.0, 1.0), Some(GroupError::Outside { index: 1 }));
    assert_eq!(of(vec![point(f64::NAN, 0.0)], 1.0, 1.0), Some(GroupError::Outside { index: 0 }));
    assert_eq!(of(vec![point(0.01, 0.0), point(0.01, 0.0)], 1.0, 1.0), Some(GroupError::SamePlace { pair: [0, 1] }));
    let alone = FixingGroup::new(vec![point(0.01, 0.0)], foot, stiffness(1e7), modulus(1e9)).unwrap();
    assert_eq!(alone.shears(&action([0.0, 0.0, 0.0, 0.0, 0.0, 1.0])), Err(GroupError::Twist));
    // A force through the origin passes the fixing 10 mm off: a twist too.
    assert_eq!(alone.shears(&action([0.0, 0.0, 1.0, 0.0, 0.0, 0.0])), Err(GroupError::Twist));
    assert!(alone.shears(&action([0.0, 5.0, 0.0, 0.0, 0.0, 0.0])).is_ok());
    let nothing = action([f64::NAN, 0.0, 0.0, 0.0, 0.0, 0.0]);
    assert_eq!(alone.shears(&nothing), Err(GroupError::Action));
    assert_eq!(alone.pulls(&nothing), Err(GroupError::Action));
}

/// No action, no force; a foot that hangs on one fixing, or on two in a line.
#[test]
fn footing_that_could_dangle_is_held() {
    let foot = Foot::Rectangle { length: m(0.1), width: m(0.1) };
    let of = |at: Vec<Point>| FixingGroup::new(at, foot, stiffness(1e7), modulus(8e9)).unwrap();
    let one = of(vec![point(0.0, 0.0)]);
    assert_eq!(pulls(&one.pulls(&action([0.0; 6])).unwrap()), [0.0]);
    let hung = one.pulls(&action([1000.0, 0.0, 0.0, 0.0, 0.0, 0.0])).unwrap();
    assert!((hung.pulls[0].get::<newton>() - 1000.0).abs() < 1e-9 && hung.contact.value == 0.0);
    // A least moment tips it until an edge touches, 50 mm off: 1000 N + M/0.05 m, a little more for the width pressed.
    for moment in [1e-6, 1e-3, 1.0] {
        let tipped = one.pulls(&action([1000.0, 0.0, 0.0, moment, 0.0, 0.0])).unwrap();
        let more = tipped.pulls[0].get::<newton>() - 1000.0;
        assert!(more >= moment / 0.05 * (1.0 - 1e-6) - 1e-9 && more < 1.05 * moment / 0.05 + 1e-9, "{moment}: {more}");
    }
    let line = of(vec![point(-0.03, 0.0), point(0.03, 0.0)]);
    let hung = line.pulls(&action([1000.0, 0.0, 0.0, 0.0, -12.0, 0.0])).unwrap();
    assert!((hung.pulls[1].get::<newton>() - 700.0).abs() < 1e-9);
}
