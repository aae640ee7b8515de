//! What is bought, against numbers worked out by hand.

use proptest::prelude::*;
use uom::si::{areal_mass_density::kilogram_per_square_meter, ratio::ratio, volume::liter};

use skinspan::{
    order::{Filling, FillingUse, Order},
    report::{order_to_csv, order_to_json, order_to_text},
    units::{System, show},
};

use crate::kit::{EDGE, Made, count, kg, m, m2, mm, near};

const RULES: &str = "[order]\nroll_width = \"700 mm\"\nlap = \"50 mm\"\nedge_lap = \"30 mm\"\nfabric_waste = \"10 %\"\n\
                     resin_waste = \"20 %\"\nputty_waste = \"25 %\"\ncatalyst = \"2 %\"\nspares = \"10 %\"\n";

#[test]
fn fabrics_of_a_rectangle() {
    let (_, order) = Made { rest: RULES, ..Made::default() }.order();
    let [mat, biaxial] = &order.fabrics[..] else { panic!("{:?}", order.fabrics) };
    // 1.06 m across the roll: (1.06 − 0.05)/(0.70 − 0.05) = 1.55, two breadths of 2.06 m. Across: 2.06 m is 3.09, four of
    // 1.06 m: 4.24 m is more than 4.12 m, so that the mat runs along too.
    assert_eq!((mat.plies, mat.breadths, biaxial.plies, biaxial.breadths), (1, 2, 2, 4));
    near(m(mat.length), 2.0 * 2.06 * 1.1);
    near(m(biaxial.length), 4.0 * 2.06 * 1.1);
    near(m2(biaxial.area), 4.0 * 2.06 * 1.1 * 0.7);
    near(kg(biaxial.mass), 4.0 * 2.06 * 1.1 * 0.7 * 0.6);
    near(kg(mat.mass), 2.0 * 2.06 * 1.1 * 0.7 * 0.3);
    // 2 m² and 6 m of rim, laid 30 mm over it, with rounded corners.
    let net = 2.0 + 6.0 * 0.03 + std::f64::consts::PI * 0.0009;
    near(m2(mat.net), net);
    near(m2(biaxial.net), 2.0 * net);
    near(kg(biaxial.in_top), 2.0 * 2.0 * 0.6);
    assert_eq!((mat.slanted, mat.along, biaxial.slanted), (0, None, 0));
}

#[test]
fn a_mat_runs_where_it_takes_less() {
    // 2.06 m by 1.06 m off a roll of 1.1 m: along one breadth of 2.06 m; with the size turned, the same across.
    let rules = "[order]\nroll_width = \"1100 mm\"\nlap = \"50 mm\"\nedge_lap = \"30 mm\"\nfabric_waste = \"0\"\n";
    let outer = "[\"mat 300 g/m2, fibre 30 %\"]";
    let (_, along) = Made { rest: rules, outer, ..Made::default() }.order();
    near(m(along.fabrics[0].length), 2.06);
    let walls = "{ length = \"2000 mm\", width = \"2900 mm\" }";
    let (_, across) = Made { outline: walls, rest: rules, outer, ..Made::default() }.order();
    // Along: (2.96 − 0.05)/1.05 = 2.77, three of 2.06 m. Across: (2.06 − 0.05)/1.05 = 1.91, two of 2.96 m.
    near(m(across.fabrics[0].length), 2.0 * 2.96);
}

#[test]
fn a_ply_at_45_degrees_is_cut_on_the_slant() {
    let outer = "[\"biaxial 600 g/m2 @ 45 deg, fibre 50 %\"]";
    let rules = "[order]\nroll_width = \"1000 mm\"\nlap = \"0 mm\"\nedge_lap = \"0 mm\"\nfabric_waste = \"0\"\n";
    let outline = "{ length = \"2000 mm\", width = \"1000 mm\" }";
    let (_, order) = Made { outline, outer, rest: rules, ..Made::default() }.order();
    let line = &order.fabrics[0];
    // Across the roll the rectangle measures (2 + 1)/√2 = 2.121 m: three breadths. The first reaches up to v = 1 from the corner at
    // v = −√2: the cut runs from the corner (2, 0) 1.414 m along both sides, but the top is only 1 m wide.
    let root = 2f64.sqrt();
    let length = |low: f64, high: f64| {
        // u = (x + y)/√2, v = (y − x)/√2: the corners and where the band cuts the sides.
        let mut places: Vec<f64> = Vec::new();
        for (x, y) in [(0.0f64, 0.0), (2.0, 0.0), (2.0, 1.0), (0.0, 1.0)] {
            let v = (y - x) / root;
            if v >= low - 1e-12 && v <= high + 1e-12 {
                places.push((x + y) / root);
            }
        }
        for v in [low, high] {
            for y in [0.0, 1.0] {
                let x = y - v * root;
                if (0.0..=2.0).contains(&x) {
                    places.push((x + y) / root);
                }
            }
            for x in [0.0, 2.0] {
                let y = x + v * root;
                if (0.0..=1.0).contains(&y) {
                    places.push((x + y) / root);
                }
            }
        }
        places.iter().copied().fold(f64::MIN, f64::max) - places.iter().copied().fold(f64::MAX, f64::min)
    };
    let slanted: f64 = (0..3).map(|k| length(-root + f64::from(k), -root + f64::from(k) + 1.0)).sum();
    // The inner skin is of the same fabric, straight: one breadth of 2 m.
    assert_eq!((line.plies, line.slanted, line.breadths), (2, 1, 4));
    near(m(line.length), slanted + 2.0);
    near(m(line.along.expect("one is slanted")), 4.0);
}

#[test]
fn resin_coats_and_putty_of_a_rectangle() {
    let (top, order) = Made { rest: RULES, ..Made::default() }.order();
    // Fibre 30 %: 300 g take 700 g of resin per m². Fibre 50 %: 600 g take 600 g.
    let over = (2.0 + 6.0 * 0.03 + std::f64::consts::PI * 0.0009) / 2.0 * 1.2;
    let uptake = top.core.material.resin_uptake.value.value * 2.0 * 2.0;
    let layers: Vec<(f64, f64)> = order.resins.lines.iter().map(|line| (kg(line.in_top), kg(line.bought))).collect();
    let expected = [(1.4, 1.4 * over), (1.2, 1.2 * over), (uptake, uptake * 1.2), (1.2, 1.2 * over)];
    for ((in_top, bought), (in_top_by_hand, bought_by_hand)) in layers.into_iter().zip(expected) {
        near(in_top, in_top_by_hand);
        near(bought, bought_by_hand);
    }
    // Of each layer, and of each face of the core, on 2 m².
    let each: Vec<f64> =
        order.resins.lines.iter().map(|line| line.per_area.get::<kilogram_per_square_meter>()).collect();
    for (each, by_hand) in each.into_iter().zip([0.7, 0.6, uptake / 4.0, 0.6]) {
        near(each, by_hand);
    }
    near(kg(order.resins.mix.resin), 3.8 * over + uptake * 1.2);
    near(kg(order.resins.mix.hardener), 0.02 * (3.8 * over + uptake * 1.2));
    let gelcoat = &order.coats[0];
    near(kg(gelcoat.bought), 1.2 * 1.2);
    near(kg(gelcoat.catalyst.expect("a gelcoat is catalysed")), 0.02 * 1.44);
    // 40 mm deep in 2 m by 1 m, 25.4 mm thick: four corners less than 6 m of rim.
    let putty = order.putty.expect("an edge");
    let border = 2.0 - 1.92 * 0.92;
    near(m2(putty.border), border);
    near(putty.volume.get::<liter>(), border * 25.4 * 1.25);
    near(kg(putty.in_top), 0.04 * 6.0 * 0.0254 * density_of_putty(&top));
    near(kg(putty.mass), border * 0.0254 * 1.25 * density_of_putty(&top));
}

fn density_of_putty(top: &skinspan::top::Top) -> f64 {
    top.edge.as_ref().expect("an edge").fill.density.typical.value.value
}

#[test]
fn putty_fills_round_a_hole_as_well() {
    let hole = "[[hole]]\nname = \"hatch\"\ncircle = { at = [\"1 m\", \"500 mm\"], diameter = \"300 mm\" }\n";
    let rest = format!("{RULES}{hole}");
    let (top, order) = Made { rest: &rest, ..Made::default() }.order();
    let putty = order.putty.as_ref().expect("an edge");
    let around = std::f64::consts::PI * (0.19f64 * 0.19 - 0.15 * 0.15);
    near(m2(putty.border), 2.0 - 1.92 * 0.92 + around);
    let text = order_to_text(&order, &top, 100).split_whitespace().collect::<Vec<_>>().join(" ");
    let said = format!(
        "40.0 mm deep along {} of rim, {} in plan",
        show(putty.rim, System::Si),
        show(putty.border, System::Si)
    );
    assert!(text.contains(&said), "{said}: {text}");
    // What makes its mass of its volume.
    let density = show(top.edge.as_ref().expect("an edge").fill.density.typical.value, System::Si);
    assert!(text.contains(&format!("in plan; {density}")), "{density}: {text}");
}

#[test]
fn tubes_have_a_mass_that_can_be_redone() {
    let conduit = |name: &str, y: u32| {
        format!(
            "[[conduit]]\nname = \"{name}\"\nmaterial = \"pvc-1-2-sch40\"\nalong = [[\"200 mm\", \"{y} mm\"], [\"1700 mm\", \"{y} mm\"]]\n"
        )
    };
    let (top, order) =
        Made { rest: &format!("{}{}", conduit("one", 300), conduit("two", 800)), ..Made::default() }.order();
    let [line] = &order.conduits[..] else { panic!("{:?}", order.conduits) };
    let (wall, density) = line.tube.expect("a tube");
    let by_hand = density.value * std::f64::consts::PI * (0.84 * 0.0254 - wall.value) * wall.value * 3.0;
    near(kg(line.mass.expect("a tube")), by_hand);
    assert!((0.5..1.5).contains(&by_hand), "{by_hand} kg");
    let text = order_to_text(&order, &top, 100).split_whitespace().collect::<Vec<_>>().join(" ");
    let said = format!(
        "2 runs, {} across, {} wall, {}",
        show(line.diameter, System::Si),
        show(wall, System::Si),
        show(density, System::Si)
    );
    assert!(text.contains(&said), "{said}: {text}");
    let json = order_to_json(&order, &top);
    let row = json["buy"].as_array().expect("a list").iter().find(|row| row["kind"] == "conduit").expect("a tube");
    assert!(row["mass"]["value"].as_f64().is_some(), "{row}");
}

#[test]
fn epoxy_is_bought_in_two_parts_of_one_mixture() {
    let mut made = Made { rest: "[order]\nhardener = \"25 %\"\n", ..Made::default() }.text();
    made.text = made.text.replace("vinylester", "epoxy");
    let table = skinspan::input::read_tables(&[]).expect("the table");
    let top = skinspan::input::read_design(&made, &table, None).expect("a top of epoxy");
    let resins = skinspan::order::order(&top).resins;
    near(kg(resins.mix.resin + resins.mix.hardener), kg(resins.bought()));
    near((resins.mix.hardener / resins.mix.resin).get::<ratio>(), 0.25);
}

#[test]
fn boards_conduits_and_fixings() {
    let rest = "[[backing]]\nname = \"strip\"\nmaterial = \"plywood-fir\"\nwidth = \"100 mm\"\n\
                along = [[\"300 mm\", \"200 mm\"], [\"1200 mm\", \"200 mm\"], [\"1200 mm\", \"600 mm\"]]\n\
                [[conduit]]\nname = \"wires\"\ndiameter = \"15 mm\"\nalong = [[\"200 mm\", \"800 mm\"], [\"1700 mm\", \"800 mm\"]]\n\
                [[fixing]]\nname = \"bolts\"\nhold = \"through-bolt\"\nthread = \"m8\"\ngrade = \"a4-70\"\n\
                lubrication = \"lubricated-stainless\"\nwasher = { outside = \"40 mm\", thickness = \"4 mm\" }\n\
                [[gear]]\nname = \"light\"\nmass = \"2 kg\"\ncg_height = \"100 mm\"\nat = [\"700 mm\", \"200 mm\"]\n\
                footing = \"80 mm\"\nbody = \"dome\"\nwind_area = \"0.02 m2\"\n\
                fixings = { fixing = \"bolts\", circle = 4, diameter = \"60 mm\", clamped = \"6 mm\" }\n\
                [order]\nspares = \"30 %\"\nboard_waste = \"25 %\"\n";
    let (top, order) = Made { rest, ..Made::default() }.order();
    let piece = &order.backings[0];
    assert_eq!((piece.straight, order.boards[0].pieces), (2, 1));
    near(mm(piece.length), 1300.0);
    near(m2(order.boards[0].net), 0.13);
    near(m2(order.boards[0].area), 0.13 * 1.25);
    near(kg(order.boards[0].mass), kg(piece.mass) * 1.25);
    // Nothing is laid into a plain bore, so that it is on no list of what is bought.
    assert_eq!((order.conduits[0].name.as_deref(), order.conduits[0].runs, order.conduits[0].mass), (None, 1, None));
    near(m(order.conduits[0].length), 1.5);
    let csv = order_to_csv(&order, &top);
    assert!(!csv.lines().any(|line| line.starts_with("buy,conduit")), "{csv}");
    let text = order_to_text(&order, &top, 100);
    assert!(text.contains("a plain bore, into which nothing is laid"), "{text}");
    let bolts = &order.fixings[0];
    // 30 % of four is 1.2: two spares.
    assert_eq!((bolts.set, bolts.bought, bolts.foot_counted), (4, 6, true));
    let length = top.thickness().value + 0.006 + 0.004;
    assert!(mm(bolts.shortest.expect("a bolt has a length")) > length * 1000.0);
}

fn filling(order: &Order, used: FillingUse) -> &Filling {
    order.fillings.iter().find(|own| own.used == used).unwrap_or_else(|| panic!("{:?}", order.fillings))
}

#[test]
fn joints_grooves_bores_potting_and_studs_are_measured() {
    let rest = "[[backing]]\nname = \"strip\"\nmaterial = \"plywood-fir\"\nwidth = \"100 mm\"\n\
                along = [[\"300 mm\", \"200 mm\"], [\"1200 mm\", \"200 mm\"]]\n\
                [[conduit]]\nname = \"wires\"\nmaterial = \"pvc-1-2-sch40\"\nalong = [[\"200 mm\", \"800 mm\"], [\"1700 mm\", \"800 mm\"]]\n\
                [[fixing]]\nname = \"bolts\"\nhold = \"through-bolt\"\nthread = \"m8\"\ngrade = \"a4-70\"\n\
                lubrication = \"lubricated-stainless\"\nwasher = { outside = \"40 mm\", thickness = \"4 mm\" }\n\
                [[gear]]\nname = \"light\"\nmass = \"2 kg\"\ncg_height = \"100 mm\"\nat = [\"700 mm\", \"500 mm\"]\n\
                footing = \"80 mm\"\nbody = \"dome\"\nwind_area = \"0.02 m2\"\n\
                fixings = { fixing = \"bolts\", circle = 4, diameter = \"60 mm\", clamped = \"6 mm\" }\n\
                [order]\nputty_waste = \"50 %\"\nglue_line = \"2 mm\"\nsheet = [\"3000 mm\", \"2000 mm\"]\n";
    let (top, order) = Made { rest, ..Made::default() }.order();
    assert!(order.core.as_ref().expect("a plan").seams.is_empty(), "one sheet, no seam");
    // Round a strip of 900 by 100 mm, 25.4 mm deep, 2 mm wide; half of it is lost.
    near(filling(&order, FillingUse::Joints).volume.get::<liter>(), 2.0 * 1000.0 * 25.4 * 2.0 * 1.5 / 1e6);
    let tube = 0.84f64 * 25.4;
    let groove = (1.0 - std::f64::consts::FRAC_PI_4) * tube * tube * 1500.0;
    near(filling(&order, FillingUse::Grooves).volume.get::<liter>(), groove * 1.5 / 1e6);
    // Four bores in core, of three diameters, through the core and the skin away from the foot.
    let bores = filling(&order, FillingUse::Bores);
    let deep = 25.4 + mm(top.inner.laminate().thickness());
    near(bores.volume.get::<liter>(), 4.0 * std::f64::consts::FRAC_PI_4 * 24.0 * 24.0 * deep * 1.5 / 1e6);
    assert_eq!((bores.places, bores.mass), (Some(4), None));
    let fill = &top.edge.as_ref().expect("an edge").fill;
    let grooves = filling(&order, FillingUse::Grooves);
    near(kg(grooves.mass.expect("a density")), fill.density.typical.value.value * grooves.volume.value);
}

/// Sizes of round inserts and bases of studs are those of the table.
const DISC: f64 = std::f64::consts::FRAC_PI_4;
const HOLD: &str = "grade = \"a4-70\"\nlubrication = \"lubricated-stainless\"\n";

/// Gear on four fixings of a kind, on a circle of 60 mm.
fn held(name: &str, at: [u32; 2], fixing: &str) -> String {
    format!(
        "[[gear]]\nname = \"{name}\"\nmass = \"2 kg\"\ncg_height = \"100 mm\"\nat = [\"{} mm\", \"{} mm\"]\nfooting = \"80 mm\"\n\
         body = \"dome\"\nwind_area = \"0.02 m2\"\n\
         fixings = {{ fixing = \"{fixing}\", circle = 4, diameter = \"60 mm\", clamped = \"6 mm\" }}\n",
        at[0], at[1]
    )
}

fn bolts(more: &str) -> String {
    format!(
        "[[fixing]]\nname = \"bolts\"\nhold = \"through-bolt\"\nthread = \"m8\"\n{HOLD}\
         washer = {{ outside = \"40 mm\", thickness = \"4 mm\" }}\n{more}"
    )
}

const STRIP: &str = "[[backing]]\nname = \"strip\"\nmaterial = \"plywood-fir\"\nwidth = \"100 mm\"\n\
                     along = [[\"300 mm\", \"200 mm\"], [\"1200 mm\", \"200 mm\"]]\n";

#[test]
fn potting_and_glue_of_two_mounts_are_one_line_each() {
    let rest = format!(
        "[[fixing]]\nname = \"plugs\"\nhold = \"potted-insert\"\ninsert = \"m6-potted\"\npotting = \"potting-epoxy\"\n\
         depth = \"20 mm\"\n{HOLD}[[fixing]]\nname = \"studs\"\nhold = \"bonded-stud\"\nstud = \"m6-stud\"\n\
         adhesive = \"epoxy-paste\"\n{HOLD}{}{}{}{}[order]\nputty_waste = \"50 %\"\nglue_line = \"2 mm\"\n",
        held("one", [500, 500], "plugs"),
        held("two", [900, 500], "plugs"),
        held("three", [1300, 500], "studs"),
        held("four", [1600, 500], "studs"),
    );
    let (top, order) = Made { rest: &rest, ..Made::default() }.order();
    // Bores of 17 mm, 20 mm deep, half of it lost; the compound weighs 680 kg/m³.
    let potting = filling(&order, FillingUse::Potting);
    near(potting.volume.get::<liter>(), 8.0 * DISC * 17.0 * 17.0 * 20.0 * 1.5 / 1e6);
    near(kg(potting.mass.expect("a density")), 680.0 * potting.volume.value);
    assert_eq!(potting.places, Some(8));
    // Bases of 38 mm on 2 mm of glue.
    let studs = filling(&order, FillingUse::Studs);
    near(studs.volume.get::<liter>(), 8.0 * DISC * 38.0 * 38.0 * 2.0 * 1.5 / 1e6);
    assert_eq!((studs.places, studs.mass), (Some(8), None));
    assert!(top.conduits.is_empty() && order.fillings.iter().all(|own| own.used != FillingUse::Grooves));
}

#[test]
fn seams_take_glue_and_plain_bores_no_putty() {
    let rest = format!(
        "{STRIP}[[conduit]]\nname = \"wires\"\ndiameter = \"15 mm\"\nalong = [[\"200 mm\", \"800 mm\"], [\"1700 mm\", \"800 mm\"]]\n\
         [order]\nputty_waste = \"50 %\"\nglue_line = \"2 mm\"\nsheet = [\"1200 mm\", \"600 mm\"]\n"
    );
    let (_, order) = Made { rest: &rest, ..Made::default() }.order();
    let seams: f64 = order.core.as_ref().expect("a plan").seams.iter().map(|seam| mm(seam.length)).sum();
    assert!(seams > 1000.0, "{seams}");
    near(filling(&order, FillingUse::Joints).volume.get::<liter>(), (2000.0 + seams) * 25.4 * 2.0 * 1.5 / 1e6);
    assert!(order.fillings.iter().all(|own| own.used != FillingUse::Grooves), "{:?}", order.fillings);
}

#[test]
fn bores_are_filled_where_bolts_stand_in_core_without_a_sleeve() {
    let of = |rest: &str| Made { rest, ..Made::default() }.order();
    // Four of eight stand in the strip.
    let both = format!("{STRIP}{}{}{}", bolts(""), held("one", [700, 200], "bolts"), held("two", [700, 500], "bolts"));
    let (top, order) = of(&both);
    let bores = filling(&order, FillingUse::Bores);
    assert_eq!(bores.places, Some(4));
    let [outer, inner] = [&top.outer, &top.inner].map(|skin| mm(skin.laminate().thickness()));
    assert!((outer - inner).abs() > 0.1, "{outer} {inner}");
    let waste = 1.0 + top.criteria.order_putty_waste.value.value;
    let each = |far: f64| DISC * 24.0 * 24.0 * (25.4 + far) * waste / 1e6;
    near(bores.volume.get::<liter>(), 4.0 * each(inner));
    // A wall is bolted to from below: what lies away from it is the outer skin.
    let mut text = Made { rest: &bolts(""), ..Made::default() }.text();
    text.text = text.text.replacen(
        "\"950 mm\"]]\n",
        "\"950 mm\"]]\nfixings = { fixing = \"bolts\", spacing = \"200 mm\", clamped = \"6 mm\" }\n",
        1,
    );
    let table = skinspan::input::read_tables(&[]).expect("the table");
    let top = skinspan::input::read_design(&text, &table, None)
        .unwrap_or_else(|problems| panic!("{}", problems[0].render(false)));
    let order = skinspan::order::order(&top);
    let bores = filling(&order, FillingUse::Bores);
    let places = bores.places.expect("some");
    assert!(places >= 4);
    near(bores.volume.get::<liter>(), count(places) * each(outer));
    // A sleeve fills its bore itself.
    let sleeve = bolts("sleeve = { outside = \"11 mm\", wall = \"1.2 mm\", alloy = \"6061-t6\" }\n");
    let (_, order) = of(&format!("{sleeve}{}", held("one", [700, 500], "bolts")));
    assert!(order.fillings.iter().all(|own| own.used != FillingUse::Bores), "{:?}", order.fillings);
}

#[test]
fn a_crown_takes_more_than_its_plan() {
    let rules = "[order]\nroll_width = \"5 m\"\nlap = \"0 mm\"\nedge_lap = \"0 mm\"\nfabric_waste = \"0\"\nresin_waste = \"0\"\n";
    let (_, flat) = Made { rest: rules, ..Made::default() }.order();
    let edge = format!("crown = \"60 mm\"\n{EDGE}");
    let (top, crowned) = Made { rest: rules, edge: &edge, ..Made::default() }.order();
    // 8/3 (60/1000)², beside the exact length of the parabola within a thousandth of what it adds.
    let adds = 8.0 / 3.0 * 0.06f64 * 0.06;
    near(top.along_crown().value, 1.0 + adds);
    let slope: f64 = 4.0 * 0.06;
    let exact = 0.5 * (1.0 + slope * slope).sqrt() + slope.asinh() / (2.0 * slope);
    assert!((top.along_crown().value - exact).abs() < 0.04 * adds, "{exact}");
    near(m2(crowned.fabrics[0].net), m2(flat.fabrics[0].net) * (1.0 + adds));
    near(kg(crowned.resins.bought()), kg(flat.resins.bought()) * (1.0 + adds));
    near(kg(crowned.coats[0].bought), kg(flat.coats[0].bought) * (1.0 + adds));
    near(kg(crowned.resins.in_top()), kg(flat.resins.in_top()));
}

#[test]
fn mat_below_a_cloth_goes_by_the_square_foot() {
    let outer = "[\"biaxial-mat 17 oz/yd2 + 0.75 oz/ft2 @ 0 deg\"]";
    let mut made = Made { outer, ..Made::default() }.text();
    made.text = made.text.replace("report = \"si\"", "report = \"us\"");
    let table = skinspan::input::read_tables(&[]).expect("the table");
    let top = skinspan::input::read_design(&made, &table, None).expect("a top");
    let text = order_to_text(&skinspan::order::order(&top), &top, 120);
    assert!(text.contains("oz/yd² + 0.75 oz/ft²\n"), "{text}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(16))]
    #[test]
    fn one_more_ply_takes_one_more(length in 800u32..4000, width in 600u32..2500, roll in 300u32..1600) {
        let outline = format!("{{ length = \"{length} mm\", width = \"{width} mm\" }}");
        let rest = format!("[order]\nroll_width = \"{roll} mm\"\nsheet = [\"2400 mm\", \"1200 mm\"]\n");
        let walls = "";
        let of = |outer: &str| {
            let made = Made { outline: &outline, outer, edge: walls, rest: &rest };
            let mut text = made.text();
            // Walls that fit the top.
            text.text = text.text.replace("1950 mm", &format!("{} mm", length - 50)).replace("950 mm\"]]", &format!("{} mm\"]]", width - 50));
            let table = skinspan::input::read_tables(&[]).expect("the table");
            let top = skinspan::input::read_design(&text, &table, None).unwrap_or_else(|problems| panic!("{}", problems[0].render(false)));
            skinspan::order::fabrics(&top)
        };
        let (one, two) = (of("[\"mat 300 g/m2, fibre 30 %\"]"), of("[\"2 x mat 300 g/m2, fibre 30 %\"]"));
        prop_assert!((two[0].length / one[0].length).value - 2.0 < 1e-12);
        // Breadths cover the top with its laps, and no more than a breadth too much.
        let breadths = count(one[0].breadths);
        prop_assert!(one[0].area > one[0].net);
        let wide = |size: u32| f64::from(size) / 1000.0 + 0.1016;
        let (roll, lap) = (f64::from(roll) / 1000.0, 0.0508);
        let covered = roll * breadths - lap * (breadths - 1.0);
        prop_assert!(covered >= wide(length).min(wide(width)) - 1e-9);
    }
}
