//! Tops that heat bows, free and held, against beams by hand.
#![allow(clippy::unwrap_used)] // a test may panic

use uom::si::{length::meter, ratio::ratio, temperature_interval::kelvin};

use super::*;
use crate::{
    finite_element::{Degree, Fields, Held, Model, ShellStiffness, Solution, State},
    geometry::{Axis, Contour, Point},
    input::{NamedText, read_design, read_tables},
    section::Width,
    top::{Outline, Top},
    units::{Length, Ratio, TemperatureInterval},
};

/// Some thousand unknowns, of stiffnesses far apart.
const ROUNDING: f64 = 1e-7;
/// A strip a tenth as wide as its span is not quite a beam: a line below it keeps it from curling across.
const NOT_QUITE_A_BEAM: f64 = 0.01;

const LONG: f64 = 2.0;
const WIDE: f64 = 0.1;
const SEAT: f64 = 0.02;
const CORE: f64 = 0.02;

/// Skins of one material, of which the outer is the thicker: they move the neutral plane and couple nothing.
const ALIKE: [&str; 2] = [r#""mat 300 g/m2", "mat 300 g/m2", "mat 300 g/m2""#, r#""mat 300 g/m2", "mat 300 g/m2""#];
/// Skins whose bending and stretching do not fall apart.
const COUPLED: [&str; 2] = [r#""mat 300 g/m2", "mat 300 g/m2""#, r#""biaxial 600 g/m2 @ 45 deg""#];

/// Skins that draw the neutral plane far off the middle of the core, and a board far less.
const FAR_FROM_ALIKE: [&str; 2] =
    [r#""mat 300 g/m2", "mat 300 g/m2", "mat 300 g/m2", "mat 300 g/m2", "mat 300 g/m2""#, r#""mat 300 g/m2""#];

/// A strip 2 m long on lines across it, hinged or clamped.
fn strip([outer, inner]: [&str; 2], lines: &[f64], edge: &str, more: &str) -> Top {
    let wall = |x: &f64| {
        format!(
            "[[wall]]\nname = \"at {x}\"\nseat = \"20 mm\"\nedge = \"{edge}\"\nalong = [[\"{x} m\", \"0 m\"], [\"{x} m\", \"0.1 m\"]]\n"
        )
    };
    let text = format!(
        "[top]\noutline = {{ length = \"2 m\", width = \"0.5 m\" }}\nprocess = \"hand\"\nresin = \"polyester\"\nouter = [{outer}]\n\
         core = {{ material = \"pvc-foam\", density = \"80 kg/m3\", thickness = \"20 mm\" }}\ninner = [{inner}]\n{}{more}\
         [service]\nspeed = \"none\"\nstorm = \"none\"\ntrailer = \"none\"\nslam = \"none\"\npeople = 0\nhand_load = \"0 N\"\n\
         walking = \"no-walk\"\nunderside = \"open\"\nsun = \"none\"\n",
        lines.iter().map(wall).collect::<String>()
    );
    let file = NamedText { name: "strip.toml".to_owned(), text };
    let read = read_design(&file, &read_tables(&[]).unwrap(), None);
    let mut top = read.unwrap_or_else(|all| panic!("{}", all[0].render(false)));
    // Narrower than a design file may say.
    let m = Length::new::<meter>;
    let narrow = Contour::rectangle(m(LONG), m(WIDE), [m(0.0); 4]).unwrap();
    top.outline = Outline::new(&narrow, Vec::new()).unwrap();
    top
}

fn rise() -> Temperatures {
    let k = TemperatureInterval::new::<kelvin>;
    Temperatures { outer: k(45.0), inner: k(8.0) }
}

fn point(x: f64, y: f64) -> Point {
    Point { x: Length::new::<meter>(x), y: Length::new::<meter>(y) }
}

/// A top in heat and nothing else.
struct Hot {
    net: Net,
    sections: Sections,
    plate: Plate,
    solution: Solution,
}

impl Hot {
    fn new(top: &Top, degree: Degree) -> Self {
        let (one, sections) = (Ratio::new::<ratio>(1.0), Sections::new(top, &Axis::BOTH).unwrap());
        let net = Net::new(top, &sections, one).unwrap();
        let plate = net.plate(top, &sections, (degree, one), None).unwrap();
        let solution = plate.solve(&[heat(&net, &plate, &sections, &rise())]).remove(0);
        Self { net, sections, plate, solution }
    }

    fn state(&self, x: f64, y: f64) -> State {
        let at = point(x, y);
        let triangle = self.net.mesh.holding(at).unwrap();
        self.plate.states(triangle, &[self.plate.share(triangle, at)], &self.solution)[0]
    }

    /// Push of a line, or pull where it is below none, over the width.
    fn reaction(&self, line: usize) -> f64 {
        let beds = (0..self.net.stretches.len()).filter(|&bed| self.net.stretches[bed].pipe == line);
        let pushes = beds.flat_map(|bed| self.plate.pushes(bed, &self.solution));
        pushes.map(|push| push.force.value).sum::<f64>() / WIDE
    }

    /// Curvature of a free strip, and its rigidity as a beam of which nothing holds the sides.
    fn beam(&self) -> (f64, f64) {
        let section = &self.sections.field.section;
        let curvature = section.thermal_free(&rise()).curvature.x.value;
        (curvature, section.bending(Axis::X, Width::Narrow).rigidity.value)
    }
}

#[test]
fn a_free_top_bows_to_a_sphere_and_bears_nothing() {
    for (skins, fields) in [(ALIKE, Fields::Bending), (COUPLED, Fields::BendingAndStretching)] {
        let top = strip(skins, &[0.0, 2.0], "hinged", "");
        let sections = Sections::new(&top, &Axis::BOTH).unwrap();
        let net = Net::new(&top, &sections, Ratio::new::<ratio>(1.0)).unwrap();
        let section = &sections.field.section;
        let shear = Axis::BOTH.map(|axis| sections.field.shear_stiffness(axis, Ratio::new::<ratio>(1.0)));
        let whole = ShellStiffness::new(section.stiffness(), shear, Default::default());
        assert_eq!(Fields::of(&[whole], top.thickness()), fields);
        let shell = if fields == Fields::Bending { whole.membrane_free() } else { whole };
        // Three corners hold it against dropping and tipping, and against nothing else.
        let corner = |x: f64, y: f64| {
            let far = |k: &usize| net.mesh.nodes()[*k].distance(point(x, y)).value;
            (0..net.mesh.nodes().len()).min_by(|a, b| far(a).total_cmp(&far(b))).unwrap()
        };
        let down = Held { deflection: true, ..Held::default() };
        let held = [(0.0, 0.0), (LONG, 0.0), (0.0, WIDE)].map(|(x, y)| (vec![corner(x, y)], down));
        let model = Model {
            corners: net.mesh.nodes(),
            triangles: net.mesh.triangles(),
            degree: Degree::Two,
            fields,
            shells: &|_| shell,
            held: &held,
            beds: &[],
        };
        let plate = Plate::new(&model).unwrap();
        let solution = plate.solve(&[heat(&net, &plate, &sections, &rise())]).remove(0);
        let free = section.thermal_free(&rise()).curvature;
        assert!(free.x.value < -0.01, "bulges to the hot side");
        let bow = |x: f64, y: f64| {
            0.5 * (free.x.value * x * (LONG - x) + free.y.value * y * (WIDE - y) - free.xy.value * x * y)
        };
        let (n, m) = (1e6 * ROUNDING, section.thermal_flat(&rise()).moment.x.value.abs() * ROUNDING);
        for triangle in 0..plate.triangles() {
            let share = [0.3, 0.4];
            let state = plate.states(triangle, &[share], &solution)[0];
            let place = plate.place(triangle, share);
            let exact = bow(place.x.value, place.y.value);
            assert!((state.deflection.value - exact).abs() < ROUNDING * 0.01, "{} {exact}", state.deflection.value);
            let (force, moment) = (state.resultants.force, state.resultants.moment);
            assert!([force.x, force.y, force.xy].iter().all(|own| own.value.abs() < n), "{force:?}");
            assert!([moment.x, moment.y, moment.xy].iter().all(|own| own.value.abs() < m), "{moment:?}");
            assert!(state.shear_size().value < m / CORE, "{:?}", state.shear);
        }
    }
}

#[test]
fn on_two_lines_a_strip_bows_freely() {
    for skins in [ALIKE, COUPLED] {
        let hot = Hot::new(&strip(skins, &[0.0, 2.0], "hinged", ""), Degree::Four);
        let (curvature, rigidity) = hot.beam();
        let exact = curvature * LONG * LONG / 8.0;
        let bow = hot.state(LONG / 2.0, WIDE / 2.0).deflection.value;
        assert!((bow / exact - 1.0).abs() < NOT_QUITE_A_BEAM, "{bow} {exact}");
        let state = hot.state(LONG / 4.0, WIDE / 2.0);
        assert!(state.resultants.moment.x.value.abs() < NOT_QUITE_A_BEAM * -rigidity * curvature);
        assert!([0, 1].iter().all(|&line| hot.reaction(line).abs() < NOT_QUITE_A_BEAM * -rigidity * curvature / LONG));
    }
}

/// Of two spans `L`, held down in the middle: what lifts it there would lift it by `κ L²/2`, and it gives way by
/// `R (L³/6EI + L/2S + 3/2k)`, the last for the beds below the middle and the ends.
#[test]
fn a_third_line_pulls_the_bow_down() {
    for skins in [ALIKE, COUPLED] {
        let top = strip(skins, &[0.0, 1.0, 2.0], "hinged", "");
        let hot = Hot::new(&top, Degree::Four);
        let (curvature, rigidity) = hot.beam();
        let span = LONG / 2.0;
        let shear = hot.sections.field.shear_stiffness(Axis::X, Ratio::new::<ratio>(1.0)).value;
        let bed = top.core.material.compressive_modulus.value.value * (SEAT + CORE / 2.0) / (CORE / 2.0);
        let gives = span.powi(3) / (6.0 * rigidity) + span / (2.0 * shear) + 1.5 / bed;
        let exact = -curvature * span * span / 2.0 / gives;
        // Stiff in shear and on hard beds it is 3 EI κ/L.
        assert!(exact < -3.0 * rigidity * curvature / span);
        let [left, middle, right] = [0, 1, 2].map(|line| hot.reaction(line));
        assert!((-middle / exact - 1.0).abs() < NOT_QUITE_A_BEAM, "{middle} {exact}");
        assert!((left + middle + right).abs() < ROUNDING * exact, "heat weighs nothing");
        assert!((left / exact - 0.5).abs() < NOT_QUITE_A_BEAM && (right / exact - 0.5).abs() < NOT_QUITE_A_BEAM);
        // Half way along a span half of the moment over the middle, which presses the hot skin.
        let moment = hot.state(span / 2.0, WIDE / 2.0).resultants.moment.x.value;
        assert!((moment / (exact * span / 4.0) - 1.0).abs() < NOT_QUITE_A_BEAM, "{moment} {}", exact * span / 4.0);
    }
}

#[test]
fn between_clamped_ends_it_stays_flat_and_bears_the_whole_moment() {
    let hot = Hot::new(&strip(ALIKE, &[0.0, 2.0], "clamped", ""), Degree::Four);
    let (curvature, rigidity) = hot.beam();
    let state = hot.state(LONG / 2.0, WIDE / 2.0);
    let moment = state.resultants.moment.x.value / (-rigidity * curvature);
    assert!((moment - 1.0).abs() < NOT_QUITE_A_BEAM, "{moment}");
    assert!(state.deflection.value.abs() < -NOT_QUITE_A_BEAM * curvature * LONG * LONG / 8.0);
}

/// A backing over half of the length bows otherwise than the field: `w = κ L²/8 + (κ_b − κ) (L c/4 − c²/8)`.
#[test]
fn a_backing_bows_by_its_own_heat() {
    let plywood = "[[backing]]\nname = \"block\"\nmaterial = \"plywood-okoume\"\nwidth = \"100 mm\"\n\
                   along = [[\"0.5 m\", \"0.05 m\"], [\"1.5 m\", \"0.05 m\"]]\n";
    let hot = Hot::new(&strip(ALIKE, &[0.0, 2.0], "hinged", plywood), Degree::Four);
    let (field, _) = hot.beam();
    let backing = hot.sections.backings[0].section.thermal_free(&rise()).curvature.x.value;
    let c = LONG / 2.0;
    let exact = field * LONG * LONG / 8.0 + (backing - field) * (LONG * c / 4.0 - c * c / 8.0);
    let bow = hot.state(LONG / 2.0, WIDE / 2.0).deflection.value;
    assert!((backing / field - 1.0).abs() > 0.2, "{backing} {field}");
    assert!((bow / exact - 1.0).abs() < NOT_QUITE_A_BEAM, "{bow} {exact}");
}

#[test]
fn a_higher_degree_comes_nearer() {
    let top = strip(COUPLED, &[0.0, 1.0, 2.0], "hinged", "");
    let [two, three, four] =
        [Degree::Two, Degree::Three, Degree::Four].map(|degree| Hot::new(&top, degree).reaction(1));
    assert!((three / four - 1.0).abs() < 0.5 * (two / four - 1.0).abs(), "{two} {three} {four}");
    assert!((three / four - 1.0).abs() < 1e-4, "{two} {three} {four}");
}

/// A board along the middle of the width is a beam beside the field: both bend and grow as one, and none of the forces
/// between them shows outside: `Σ b A* e + Σ b B* k = Σ b N*`, `Σ b B* e + Σ b D* k = Σ b M*`, each of its strip where nothing holds
/// its sides.
#[test]
fn a_board_along_a_strip_is_a_bar_of_two_materials() {
    use nalgebra::{Matrix2, Vector2};
    let board = "[[backing]]\nname = \"bar\"\nmaterial = \"plywood-okoume\"\nwidth = \"40 mm\"\n\
                 along = [[\"0 m\", \"0.05 m\"], [\"2 m\", \"0.05 m\"]]\n";
    let top = strip(FAR_FROM_ALIKE, &[0.0, 2.0], "hinged", board);
    let hot = Hot::new(&top, Degree::Four);
    assert_eq!(hot.plate.fields(), Fields::BendingAndStretching);
    let narrow = |region: &crate::analysis::sections::RegionSection| {
        let (section, newton) =
            (&region.section, crate::units::per_width(crate::units::Force::new::<uom::si::force::newton>(1.0)));
        let pull = crate::units::per_width(
            crate::units::Force::new::<uom::si::force::newton>(1.0) / Length::new::<meter>(1.0),
        );
        let pulled = section
            .deformation(&Resultants { force: Forces { x: pull, ..Forces::default() }, moment: Moments::default() });
        let bent = section
            .deformation(&Resultants { force: Forces::default(), moment: Moments { x: newton, ..Moments::default() } });
        let stiffness =
            Matrix2::new(pulled.strain.x.value, bent.strain.x.value, pulled.curvature.x.value, bent.curvature.x.value)
                .try_inverse()
                .unwrap();
        let free = section.thermal_free(&rise());
        (stiffness, stiffness * Vector2::new(free.strain.x.value, free.curvature.x.value))
    };
    let ((field, of_field), (bar, of_bar)) = (narrow(&hot.sections.field), narrow(&hot.sections.backings[0]));
    let both = (field * 0.06 + bar * 0.04).try_inverse().unwrap() * (of_field * 0.06 + of_bar * 0.04);
    // Each bent by what would keep it flat while it grows as it likes.
    let alone =
        |stiffness: &Matrix2<f64>, load: &Vector2<f64>| load[1] - stiffness[(0, 1)] / stiffness[(0, 0)] * load[0];
    let rigidity = field * 0.06 + bar * 0.04;
    let bending = rigidity[(1, 1)] - rigidity[(0, 1)] * rigidity[(0, 1)] / rigidity[(0, 0)];
    let apart = (alone(&field, &of_field) * 0.06 + alone(&bar, &of_bar) * 0.04) / bending;
    let bow = hot.state(LONG / 2.0, 0.05).deflection.value / (LONG * LONG / 8.0);
    assert!((bow / both[1] - 1.0).abs() < 0.02, "{bow} {} {apart}", both[1]);
    assert!((apart / both[1] - 1.0).abs() > 0.1, "{apart} {}", both[1]);
    // The field is held back, or drawn out, by the difference of its growth from that of both.
    let along = hot.state(LONG / 2.0, 0.01).resultants.force.x.value;
    let exact = (field * both - of_field)[0];
    assert!((along / exact - 1.0).abs() < 0.05, "{along} {exact}");
}

/// A shallow cylinder on diaphragms in the sun, by its double series, from the equations of `shallow_cylinder_closed_form` with
/// the moment that heat makes in place of inertia:
/// `w_mn (D g²/(1 + D g/S) + E t (α² c)²/g²) = g M_mn/(1 + D g/S)`, `M_mn = 16 M_T/(π² m n)`, `m` and `n` odd.
#[test]
fn a_crowned_top_on_diaphragms_bows_by_its_series() {
    use std::f64::consts::PI;
    let skins = [ALIKE[1], ALIKE[1]];
    let (a, b) = (2.0, 1.2);
    let m = Length::new::<meter>;
    for crown in [0.0, 0.02, 0.08] {
        let mut top = strip(skins, &[0.0, 2.0], "hinged", "");
        top.outline = Outline::new(&Contour::rectangle(m(a), m(b), [m(0.0); 4]).unwrap(), Vec::new()).unwrap();
        top.crown = m(crown);
        let (one, sections) = (Ratio::new::<ratio>(1.0), Sections::new(&top, &Axis::BOTH).unwrap());
        let net = Net::new(&top, &sections, one).unwrap();
        let shell = super::super::shells::shell(&top, &sections.field, one);
        let rim = |here: &dyn Fn(&Point) -> bool, along: &dyn Fn(&Point) -> f64| {
            let nodes = net.mesh.nodes();
            let mut on: Vec<usize> = (0..nodes.len()).filter(|&k| here(&nodes[k])).collect();
            on.sort_by(|&p, &q| along(&nodes[p]).total_cmp(&along(&nodes[q])));
            on
        };
        let near = |value: Length, at: f64| (value.value - at).abs() < 1e-9;
        let x_way = |at: f64| rim(&|place| near(place.y, at), &|place| place.x.value);
        let y_way = |at: f64| rim(&|place| near(place.x, at), &|place| place.y.value);
        let on_x = Held { deflection: true, rotations: [true, false], displacements: [true, false] };
        let on_y = Held { deflection: true, rotations: [false, true], displacements: [false, true] };
        let held = [(x_way(0.0), on_x), (x_way(b), on_x), (y_way(0.0), on_y), (y_way(a), on_y)];
        let model = Model {
            corners: net.mesh.nodes(),
            triangles: net.mesh.triangles(),
            degree: Degree::Four,
            fields: Fields::BendingAndStretching,
            shells: &|_| shell,
            held: &held,
            beds: &[],
        };
        let plate = Plate::new(&model).unwrap();
        let solution = plate.solve(&[heat(&net, &plate, &sections, &rise())]).remove(0);
        let at = point(a / 2.0, b / 2.0);
        let triangle = net.mesh.holding(at).unwrap();
        let state = plate.states(triangle, &[plate.share(triangle, at)], &solution)[0];

        let section = &sections.field.section;
        let stiffness = section.stiffness();
        let (d, nu) = (stiffness.d[(0, 0)], stiffness.d[(0, 1)] / stiffness.d[(0, 0)]);
        let et = stiffness.a[(0, 0)] - stiffness.a[(0, 1)].powi(2) / stiffness.a[(0, 0)];
        let shear = sections.field.shear_stiffness(Axis::X, one).value;
        let c = 8.0 * crown / (b * b);
        // What keeps it flat presses the hot skin: our moments of heat are its opposite.
        let heated = -section.thermal_flat(&rise()).moment.x.value;
        let (mut w, mut mx) = (0.0, -heated);
        for i in (1..400_u32).step_by(2) {
            for j in (1..400_u32).step_by(2) {
                // Of sin(iπ/2) sin(jπ/2), in the middle.
                let sign = if (i + j) % 4 == 2 { 1.0 } else { -1.0 };
                let (i, j) = (f64::from(i), f64::from(j));
                let (alpha, beta) = (i * PI / a, j * PI / b);
                let g = alpha * alpha + beta * beta;
                let moment = 16.0 * heated / (PI * PI * i * j);
                let soft = 1.0 + d * g / shear;
                let amplitude = g * moment / soft / (d * g * g / soft + et * (alpha * alpha * c / g).powi(2));
                w += sign * amplitude;
                // Rotations ψ,x and ψ,y with ψ = −(S w + M_T)/(S + D g), M = D k − M_T.
                let psi = -(shear * amplitude + moment) / (shear + d * g);
                mx += sign * -d * (alpha * alpha + nu * beta * beta) * psi;
            }
        }
        let (deflection, bent) = (state.deflection.value, state.resultants.moment.x.value);
        assert!((deflection / w - 1.0).abs() < 1e-3, "{crown}: {deflection} {w}");
        assert!((bent - mx).abs() < 5e-3 * heated.abs(), "{crown}: {bent} {mx} {heated}");
    }
}
