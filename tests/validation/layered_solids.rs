//! The skins' own bending beside what presses on them, against layered solids solved by another program with other
//! elements (tests/reference/solids): bricks and plane strain, stresses as means over 2 mm.
//!
//! There the outer fibre less the mean over the skin is the skin's own bending; the share of the panel's curvature far from
//! any edge is taken off: E′ t/2 (M/D + p/S).

use std::{fs, path::PathBuf};

use serde::Deserialize;
use skinspan::{
    strength::{DiscLoad, PressedPanel, SkinBending, plate_modulus, skin_moment_beside_strip},
    units::{Force, ForcePerWidth, Length, MomentPerWidth, Pressure, Ratio, per_width},
};
use uom::si::{
    force::newton,
    length::{meter, millimeter},
    pressure::megapascal,
};

/// 180 N/m of shear on the inner side, 300 N/m on the seat, 1 kPa all over.
const PUSH: f64 = 300.0;
const SHEAR: f64 = 180.0;
const SHEAR_AT_STRIP: f64 = 149.0;
const UNIFORM: f64 = 1000.0;

#[derive(Deserialize)]
struct Solid {
    result: Vec<Entry>,
}

#[derive(Deserialize)]
struct Entry {
    name: String,
    value: f64,
}

impl Solid {
    fn of(name: &str) -> Self {
        let path = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/reference/solids").join(name);
        toml::from_str(&fs::read_to_string(path).expect("a file of the reference")).expect("its results")
    }

    fn value(&self, name: &str) -> f64 {
        self.result.iter().find(|entry| entry.name == name).unwrap_or_else(|| panic!("no {name}")).value
    }

    /// Bending of a skin by itself, Pa: outer fibre less mean, less the share of the panel's curvature.
    fn own(&self, skin: &str, place: &str, pressure: f64) -> f64 {
        let [mean, outer] =
            ["membrane", "outer fibre"].map(|what| self.value(&format!("{skin} skin, {what}, {place}")));
        let panel = panel();
        let sign = if skin == "top" { -1.0 } else { 1.0 };
        let shear_share = plate().value * 0.001 * pressure / panel.panel.shear.value * sign;
        outer - mean - mean * (2.0 / 40.0) - shear_share
    }
}

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

fn mpa(value: f64) -> Pressure {
    Pressure::new::<megapascal>(value)
}

fn line(value: f64) -> ForcePerWidth {
    per_width(Force::new::<newton>(value) / Length::new::<meter>(1.0))
}

fn plate() -> Pressure {
    plate_modulus(mpa(15_000.0), Ratio::from(0.3))
}

/// Skins 2 mm, core 38 mm, as in tests/reference/README.md.
fn panel() -> PressedPanel {
    let panel = SkinBending::of_equal_skins(plate(), mpa(35.0), mm(2.0), mm(38.0));
    let skin = panel.skins / 2.0;
    PressedPanel { panel, pressed: skin, far: skin, poisson: Ratio::from(0.3), core: mpa(90.0) / mm(38.0) }
}

/// At the surface of 2 mm.
fn stress(moment: MomentPerWidth) -> f64 {
    6.0 * moment.value / 4e-6
}

fn place(off: f64, of: &str) -> String {
    format!("{off} mm from the {of}'s edge")
}

/// A seat that presses evenly: beyond its edge the pressed skin bends as the sum of both ways says, all the way out.
#[test]
fn skin_beyond_a_seat_that_presses_evenly() {
    /// Of the largest; the core is deep, and its own stiffness along the panel is left out.
    const TOLERANCE: f64 = 0.06;
    let (solid, panel) = (Solid::of("b1_even_plane.toml"), panel());
    let (seat, pressure) = (0.038, PUSH / 0.038);
    let wave = panel.dent_length().value;
    let beta = |x: f64| (-x / wave).exp() * (x / wave).sin();
    let along = |x: f64| (-x / panel.panel.decay_length().value).exp();
    let share = panel.panel.core_share().value;
    let together = pressure * share * share * panel.pressed.value / panel.panel.shear.value;
    let most = stress(panel.over_even_seat(line(PUSH), mm(38.0)).pressed());
    for off in [1.0_f64, 3.0, 5.0, 10.0, 20.0] {
        let x = off / 1e3;
        let dent = pressure / 2.0 * wave * wave / 4.0 * (beta(x) - beta(x + seat));
        let moment = dent - together / 2.0 * (along(x) - along(x + seat));
        let own = solid.own("bottom", &place(off, "seat"), UNIFORM);
        assert!((6.0 * moment / 4e-6 - own).abs() < TOLERANCE * most, "{off} mm: {} and {own}", 6.0 * moment / 4e-6);
    }
}

/// Over the seat itself nothing was read in the solid. What bends there is more than what bends beyond it.
#[test]
fn largest_moments_of_a_seat_bound_both_skins_beyond_it() {
    let (solid, panel) = (Solid::of("b1_even_plane.toml"), panel());
    let local = panel.over_even_seat(line(PUSH), mm(38.0));
    let seen = |skin: &str| {
        let all = [1.0, 3.0, 5.0, 10.0, 20.0].map(|off| solid.own(skin, &place(off, "seat"), UNIFORM).abs());
        all.into_iter().fold(0.0, f64::max)
    };
    let pressed = seen("bottom") / stress(local.dent);
    assert!((0.85..1.0).contains(&pressed), "{pressed}");
    let far = seen("top") / stress(local.together[1]);
    assert!((0.3..1.0).contains(&far), "{far}");
}

/// A rigid flat seat: a bound from half a skin's thickness off the edge on, neither far above.
#[test]
fn skin_beside_a_rigid_flat_seat() {
    for (name, shear, pressure) in [
        ("b1_tied_plane.toml", SHEAR, UNIFORM),
        ("b1_lying_plane.toml", SHEAR, UNIFORM),
        ("b1_tied.toml", 174.82, UNIFORM),
        ("b2_tied.toml", 1616.6, 0.0),
    ] {
        let solid = Solid::of(name);
        for off in [1.0_f64, 3.0, 5.0] {
            let own = -solid.own("bottom", &place(off, "seat"), pressure);
            let ratio = stress(panel().beside_hard_edge(line(shear), mm(off)).pressed()) / own;
            assert!((1.05..1.6).contains(&ratio), "{name}, {off} mm: {ratio}");
        }
    }
}

/// A pad of 0.5 N/mm² per mm is no hard edge: what bends beside it is a fifth of that, and no more than a seat that presses
/// evenly has.
#[test]
fn a_soft_pad_presses_evenly() {
    let (solid, panel) = (Solid::of("b2_pad.toml"), panel());
    let push = 1427.8; // all of it comes from the panel's inner side
    let own = [1.0, 3.0, 5.0, 10.0, 20.0].map(|off| solid.own("bottom", &place(off, "seat"), 0.0).abs());
    let seen = own.into_iter().fold(0.0, f64::max);
    let even = panel.over_even_seat(line(push), mm(38.0));
    assert!((0.8..1.0).contains(&(seen / stress(even.dent))), "{}", seen / stress(even.dent));
    assert!(seen < 0.25 * stress(panel.beside_hard_edge(line(push), mm(1.0)).pressed()));
    assert!((solid.value("share of the seat that presses") - 1.0).abs() < 1e-9);
}

/// Beside a solid strip both skins bend by less than the closed form says half a skin's thickness off the edge: from
/// this comes the share in the criteria.
#[test]
fn skins_beside_a_strip() {
    let panel = panel();
    let strip = panel.panel.shear * (400.0 / 35.0);
    for name in ["b3_even_plane.toml", "b3_tied_plane.toml"] {
        let solid = Solid::of(name);
        let closed = skin_moment_beside_strip(line(SHEAR_AT_STRIP), &panel.panel, strip, panel.pressed, mm(1.0));
        let top = solid.own("top", &place(1.0, "strip"), UNIFORM) / stress(closed);
        let bottom = -solid.own("bottom", &place(1.0, "strip"), UNIFORM) / stress(closed);
        assert!((0.68..0.75).contains(&top), "{name}: {top}");
        assert!((0.60..0.70).contains(&bottom), "{name}: {bottom}");
    }
}

/// Under a patch 100 mm square, in its middle, a disc of the same area: there the dent is flat and both skins bend
/// together.
#[test]
fn skins_under_the_middle_of_a_patch() {
    /// The patch is a square on a panel that bends more one way; the top skin also feels the core yield.
    const TOLERANCE: f64 = 0.12;
    let radius = Length::new::<meter>(0.1 / std::f64::consts::PI.sqrt());
    let local = panel().under_even_disc(DiscLoad { force: Force::new::<newton>(1000.0), radius });
    let closed = stress(local.together[0]);
    let solid = Solid::of("b2_tied.toml");
    for (skin, sign) in [("top", -1.0), ("bottom", 1.0)] {
        let own = solid.own(skin, "midspan", 0.0) * sign;
        assert!((own / closed - 1.0).abs() < TOLERANCE, "{skin}: {}", own / closed);
    }
}

/// Exact: a seat without width is a line, and one side of it the edge of a held panel with half the push.
#[test]
fn a_seat_of_no_width_is_a_line() {
    let panel = panel();
    let local = panel.over_even_seat(line(PUSH), mm(0.0));
    let edge = panel.beside_hard_edge(line(PUSH / 2.0), mm(0.0));
    approx::assert_relative_eq!(local.together[0].value, edge.together[0].value, max_relative = 1e-12);
    approx::assert_relative_eq!(local.dent.value, 2.0 * edge.dent.value, max_relative = 1e-12);
    // A knife edge on half the core: P/(8 λ) with half the push.
    approx::assert_relative_eq!(local.dent.value, PUSH / 2.0 * panel.dent_length().value / 4.0, max_relative = 1e-12);
}

/// Exact: unequal skins share what bends them together by their rigidities, and what bends them apart is the same in both.
#[test]
fn unequal_skins() {
    let equal = panel();
    let thick = PressedPanel { far: equal.far * 3.0, ..equal };
    let local = thick.over_even_seat(line(PUSH), mm(20.0));
    approx::assert_relative_eq!(local.together[1].value, 3.0 * local.together[0].value, max_relative = 1e-12);
    // D_r = 3/4 D against D/2, share 3/4 against 1/2: a line gives (3/2)^(5/4).
    let ratio = thick.over_even_seat(line(PUSH), mm(0.0)).dent / equal.over_even_seat(line(PUSH), mm(0.0)).dent;
    approx::assert_relative_eq!(ratio.value, 1.5_f64.powf(1.25), max_relative = 1e-12);
}
