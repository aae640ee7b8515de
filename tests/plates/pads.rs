//! Tops on pads: lines that cross against a bed all over a pad, and beams by hand.

use skinspan::{
    analysis::{Analysis, DIVISIONS, HeldDown, MountOn, PlateForces},
    check::{CHECKS, run},
    finite_element::{Degree, Fields, Load},
    geometry::{Axis, Foot},
    top::{BedLine, Pad, Support, Top},
};

use crate::{
    kit::{Grid, bed, m, numbers, orthotropic, pa, point},
    walls::{thin_in, wall},
};

/// Two lines turn with the top between them, the whole bed bends it a little more: of the sag in the middle.
const TWO_LINES: f64 = 5e-3;

fn pad(at: [f64; 2], foot: Foot) -> Support {
    Support::pad("pad".to_owned(), Pad { at: point(at[0], at[1]), foot }, None).unwrap()
}

#[test]
fn a_pad_beds_the_top_on_two_lines_of_its_area() {
    let lines = |foot: Foot| pad([0.5, 0.4], foot).bed_lines();
    let check = |lines: &[BedLine], length: f64, width: f64| {
        assert_eq!(lines.len(), 2);
        // Together as wide as the pad, and as stiff about its long axis: 2 (w/2) e² = w³/12.
        let turning: f64 =
            lines.iter().map(|line| line.seat.value * line.along.distance(point(0.5, 0.4)).value.powi(2)).sum();
        assert!((turning / (width.powi(3) / 12.0) - 1.0).abs() < 1e-12, "{lines:?}");
        for line in lines {
            assert!((line.along.length().value - length).abs() < 1e-12, "{line:?}");
            assert!((line.seat.value - width / 2.0).abs() < 1e-12, "{line:?}");
        }
    };
    let across = Foot::Rectangle { length: m(0.04), width: m(0.1) };
    check(&lines(across), 0.1, 0.04);
    assert_eq!(lines(across)[0].along.main_axis(), Axis::Y, "along the longer side");
    check(&lines(Foot::Rectangle { length: m(0.1), width: m(0.04) }), 0.1, 0.04);
    // √(π/4) · 80 mm.
    check(&lines(Foot::Disc { diameter: m(0.08) }), 0.070_898_154_036_220_6, 0.070_898_154_036_220_6);
    let support = pad([0.5, 0.4], across);
    assert_eq!([support.seat_along(Axis::X), support.seat_along(Axis::Y)], [m(0.04), m(0.1)]);
    assert_eq!(support.seat, m(0.04));
    assert!((support.distance(point(0.5, 0.47)) - m(0.02f64.hypot(0.04 / 12f64.sqrt()))).abs() < m(1e-12));
}

/// The reference plate on four elastic pads (`tests/reference/plates/a5_pads.toml`), each as its lines.
#[test]
fn two_lines_hold_as_a_bed_all_over_the_pad() {
    let off = 0.04 / 3f64.sqrt();
    let places = [0.0, 0.05, 0.2, 0.24 - off, 0.24, 0.24 + off, 0.28, 0.4];
    let mirrored = |size: f64, widest: usize| {
        let mut all: Vec<f64> = places.iter().flat_map(|&x| [x, size - x]).collect();
        let steps = u32::try_from(widest).unwrap();
        all.extend((1..steps).map(|k| 0.4 + (size - 0.8) * f64::from(k) / f64::from(steps)));
        all.sort_by(f64::total_cmp);
        all
    };
    let grid = Grid::new(&mirrored(2.4, 8), &mirrored(1.6, 4));
    let d = [[4500.0, 1350.0, 0.0], [1350.0, 4500.0, 0.0], [0.0, 0.0, 1575.0]];
    let mut beds = Vec::new();
    for x in [0.24, 2.16] {
        for y in [0.24, 1.36] {
            for line in pad([x, y], Foot::Rectangle { length: m(0.08), width: m(0.08) }).bed_lines() {
                let ends = line.along.ends().map(|end| [end.x.value, end.y.value]);
                let near = |at: f64, list: &[f64]| list.iter().copied().find(|x| (x - at).abs() < 1e-9).unwrap();
                let [from, to] = ends.map(|[x, y]| [near(x, grid.xs()), near(y, grid.ys())]);
                let corners = match line.along.main_axis() {
                    Axis::X => grid.along_x(from[1], [from[0], to[0]]),
                    Axis::Y => grid.along_y(from[0], [from[1], to[1]]),
                };
                beds.push(bed(corners, 2e8 * line.seat.value));
            }
        }
    }
    let plate = grid.with(Degree::Four, Fields::Bending, &|_| orthotropic(d, [1.2e6; 2]), &[], &beds);
    let solution = plate.solve(&[Load::none(&plate).pressed(&plate, &|_| pa(1000.0))]).remove(0);
    let sag = |x: f64, y: f64| numbers(&grid.state(&plate, &solution, point(x, y), point(x, y)))[0];
    for (found, reference) in
        [(sag(1.2, 0.8), 0.035_254_66), (sag(1.2, 0.0), 0.037_049_8), (sag(0.0, 0.8), -0.007_436_1)]
    {
        assert!((found - reference).abs() < TWO_LINES * 0.035_254_66, "{found} {reference}");
    }
    // On each pad a quarter of 1000 Pa on 2.4 m by 1.6 m.
    let borne: f64 = (0..2).flat_map(|bed| plate.pushes(bed, &solution)).map(|push| push.force.value).sum();
    assert!((borne - 960.0).abs() < 0.1, "{borne}");
}

const ALONG: &str = "[[\"1000 mm\", \"0 mm\"], [\"1000 mm\", \"500 mm\"]]";

/// A strip of 2 m by 0.5 m on walls at its ends and something in the middle.
fn strip(storm: &str, middle: &str) -> Top {
    let ends: String =
        [0.0, 2000.0].iter().map(|&x| wall(&format!("end {x}"), [[x, 0.0], [x, 500.0]], "hinged")).collect();
    let nuts = "[[fixing]]\nname = \"nuts\"\nhold = \"blind-insert\"\ninsert = \"m8-stainless\"\ngrade = \"a4-70\"\n\
                lubrication = \"lubricated-stainless\"\n";
    thin_in(storm, ["2000 mm", "500 mm"], &format!("{ends}{middle}{nuts}"))
}

fn forces(analysis: &Analysis<'_>, case: &str) -> PlateForces {
    analysis.fields().find(|forces| analysis.cases[forces.case].id == case).unwrap().clone()
}

fn sag(forces: &PlateForces) -> f64 {
    forces.between.iter().map(|sag| sag.sag.value.abs()).fold(0.0, f64::max)
}

const PAD: &str = "[[pad]]\nname = \"middle\"\nat = [\"1000 mm\", \"250 mm\"]\n\
                   size = { length = \"10 mm\", width = \"500 mm\" }\n\
                   fixings = { fixing = \"nuts\", points = [[\"0 mm\", \"-200 mm\"], [\"0 mm\", \"0 mm\"], \
                   [\"0 mm\", \"200 mm\"]], clamped = \"3 mm\" }\n";

/// Wall and pad differ by how they hold the top against turning over 10 mm.
const AS_A_WALL: f64 = 3e-2;

#[test]
fn a_long_narrow_pad_is_a_short_wall() {
    let wall = format!(
        "[[wall]]\nname = \"middle\"\nseat = \"10 mm\"\nalong = {ALONG}\n\
         fixings = {{ fixing = \"nuts\", spacing = \"200 mm\", end = \"50 mm\", clamped = \"3 mm\" }}\n"
    );
    let tops = [strip("20 m/s", &wall), strip("20 m/s", PAD)];
    let [wall, pad] = tops.each_ref().map(|top| Analysis::new(top, DIVISIONS).unwrap().with_plate_method());
    let method = pad.whole.as_ref().unwrap().as_ref().unwrap();
    assert_eq!(method.holds[2], HeldDown::AllAlong);
    let [on_wall, on_pad] = [&wall, &pad].map(|analysis| forces(analysis, "own-weight"));
    let alike = |one: f64, other: f64| (one / other - 1.0).abs() < AS_A_WALL;
    assert!(alike(sag(&on_wall), sag(&on_pad)), "{} {}", sag(&on_wall), sag(&on_pad));
    let push = |forces: &PlateForces| forces.pipes[2].push.value;
    assert!(alike(push(&on_wall), push(&on_pad)), "{} {}", push(&on_wall), push(&on_pad));
    // Under a storm it hangs on its fixings; what the panel weighs is on the walls.
    let storm = pad.cases.iter().find(|case| case.id.contains("storm")).unwrap().id;
    let pulls = |analysis: &Analysis<'_>| {
        let own = forces(analysis, storm).pipes[2].fixings.clone();
        assert_eq!(own.len(), 3);
        own.iter().map(|pull| pull.value).sum::<f64>()
    };
    // A pad is taken as held all along, so that its ends press while its middle pulls; off a wall the top lifts.
    assert!(pulls(&wall) > 0.0 && pulls(&wall) < pulls(&pad) * (1.0 + AS_A_WALL), "{} {}", pulls(&wall), pulls(&pad));
}

#[test]
fn the_hand_method_counts_on_no_pad() {
    let top = strip("20 m/s", PAD);
    let without = strip("20 m/s", "");
    let [with, bare] = [&top, &without].map(|top| Analysis::new(top, DIVISIONS).unwrap());
    assert_eq!(format!("{:?}", with.strips), format!("{:?}", bare.strips));
    assert!((0..with.cases.len()).all(|case| with.line_load(2, case).is_none()));
    assert!((0..with.cases.len()).any(|case| with.line_load(0, case).is_some()));
    // By hand the pull of its fixings is open; the plate method knows it.
    let reasons: Vec<&str> = with.open_mounts.iter().map(|open| open.reason.as_str()).collect();
    assert_eq!(
        reasons,
        ["the hand method does not count on pads, and there is no plate solution: its pull is not known"]
    );
    let whole = with.with_plate_method();
    assert!(whole.open_mounts.is_empty(), "{:?}", whole.open_mounts);
    let mount = whole.mounts.iter().position(|mount| mount.on == MountOn::Support(2)).unwrap();
    assert!(whole.mount_forces.iter().any(|forces| forces.mount == mount && forces.on_plate));
    assert!(whole.mount_forces.iter().all(|forces| forces.mount != mount || forces.on_plate));
    let bends = |outcome: &skinspan::check::Outcome| CHECKS[outcome.check].id() == "pipe-bending";
    assert!(!run(&whole).iter().any(bends), "nothing here is a pipe");
    // Nothing but pads.
    let seat = |[x, y]: [u32; 2]| format!("[[pad]]\nat = [\"{x} mm\", \"{y} mm\"]\nsize = \"60 mm\"\n");
    let pads = [[100, 100], [1900, 100], [100, 400], [1900, 400]].map(seat).concat();
    let reason = Analysis::new(&thin_in("none", ["2000 mm", "500 mm"], &pads), DIVISIONS).unwrap_err();
    assert!(reason.contains("the top stands on pads alone, which the hand method does not count"), "{reason}");
}
