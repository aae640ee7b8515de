//! Fixings and gear: whether the sizes of a row fit each other.

use super::*;
use skinspan::material::Property;
use skinspan::units::Length;

fn rises(what: &str, lengths: &[&Property<Length>]) {
    for pair in lengths.windows(2) {
        let (a, b) = (pair[0], pair[1]);
        assert!(a.value < b.value, "{what}: {} is not below {}", a.origin.property, b.origin.property);
    }
}

#[test]
fn the_sizes_of_a_thread_fit_each_other() {
    for t in built_in().threads() {
        let (d, p) = (t.major.value, t.pitch.value);
        // Basic minor diameter of the 60° profile.
        let minor = d - 1.0825 * p;
        assert!(minor < t.tap_drill.value, "{}: the tap would break", t.id);
        rises(&t.id, &[&t.tap_drill, &t.pitch_diameter_max_internal, &t.major, &t.clearance_hole, &t.head_bearing]);
        rises(&t.id, &[&t.minor_max_internal, &t.pitch_diameter_min_external, &t.major_min_external, &t.major]);
        rises(&t.id, &[&t.pitch_diameter_min_external, &t.pitch_diameter_max_internal]);
        rises(&t.id, &[&t.head_bearing, &t.across_flats, &t.large_washer_outside]);
        rises(&t.id, &[&t.head_bearing, &t.washer_outside, &t.large_washer_outside]);
        rises(&t.id, &[&t.clearance_hole, &t.countersunk_head]);
        rises(&t.id, &[&t.washer_thickness, &t.nut_height]);
        // A nut is between 0.6 and 1.1 diameters high; fewer and it would strip.
        let height = (t.nut_height.value / d).value;
        assert!((0.6..1.1).contains(&height), "{}: nut height {height} diameters", t.id);
        assert!((0.08..0.25).contains(&(p / d).value), "{}: pitch", t.id);
        // The tapped hole keeps at least half of the thread's height.
        assert!(((d - t.tap_drill.value) / (1.0825 * p)).value > 0.5, "{}: tap drill", t.id);
    }
}

#[test]
fn a_larger_thread_is_larger_in_everything() {
    let table = built_in();
    for family in ["metric coarse", "unified coarse"] {
        let mut threads: Vec<_> = table.threads().iter().filter(|thread| thread.family == family).collect();
        threads.sort_by(|a, b| a.major.value.partial_cmp(&b.major.value).unwrap());
        assert!(threads.len() > 5);
        for [a, b] in threads.array_windows::<2>() {
            rises(&a.id, &[&a.pitch_diameter_max_internal, &b.pitch_diameter_max_internal]);
            rises(&a.id, &[&a.major_min_external, &b.major_min_external]);
            rises(&a.id, &[&a.tap_drill, &b.tap_drill]);
            rises(&a.id, &[&a.clearance_hole, &b.clearance_hole]);
            rises(&a.id, &[&a.washer_outside, &b.washer_outside]);
            rises(&a.id, &[&a.countersunk_head, &b.countersunk_head]);
            assert!(a.large_washer_outside.value <= b.large_washer_outside.value, "{}", a.id);
            assert!(a.pitch.value < b.pitch.value, "{}", a.id);
        }
    }
}

#[test]
fn the_sizes_of_a_screw_fit_each_other() {
    for s in built_in().screws() {
        rises(&s.id, &[&s.root, &s.major, &s.head]);
        rises(&s.id, &[&s.pilot_board, &s.pilot_plywood, &s.pilot_laminate, &s.major]);
        assert!(s.pilot_board.value <= s.root.value, "{}: the pilot hole in board leaves too little thread", s.id);
        assert!(s.pilot_laminate.value > s.root.value, "{}: the screw would break in laminate", s.id);
        // Depth of thread below the theoretical sharp 60° profile.
        assert!((s.major.value - s.root.value) < 1.7321 * s.pitch.value, "{}", s.id);
    }
}

#[test]
fn inserts_rivets_and_studs_fit_their_threads_and_holes() {
    let table = built_in();
    for i in table.inserts() {
        let thread = table.thread(&i.thread).unwrap();
        rises(&i.id, &[&thread.major, &i.hole, &i.bulge]);
        rises(&i.id, &[&i.hole, &i.flange]);
        rises(&i.id, &[&i.grip_min, &i.grip_max, &i.length]);
        assert!(i.turning_torque.value < i.breaking_torque.value, "{}: it breaks before it turns", i.id);
        // The thread of the insert cannot bear more than a bolt of the strongest usual class, 12.9, at proof.
        let d = thread.major.value - 0.9382 * thread.pitch.value;
        let bolt = std::f64::consts::FRAC_PI_4 * d * d * Pressure::new::<megapascal>(970.0);
        assert!(i.thread_proof.value < bolt, "{}", i.id);
        assert!(i.shear.value < i.thread_proof.value, "{}", i.id);
    }
    for p in table.potted_inserts() {
        rises(&p.id, &[&table.thread(&p.thread).unwrap().major, &p.outside, &p.bore]);
        rises(&p.id, &[&p.outside, &p.flange]);
    }
    for r in table.rivets() {
        rises(&r.id, &[&r.diameter, &r.hole, &r.head]);
        // Nominal shear stress of a hollow body with its mandrel's stub: between soft aluminium and hard stainless.
        let area = std::f64::consts::FRAC_PI_4 * r.diameter.value * r.diameter.value;
        let stress = (r.shear.value / area).get::<megapascal>();
        assert!((70.0..260.0).contains(&stress), "{}: {stress} MPa", r.id);
        assert!(r.shear.value < r.tension.value, "{}", r.id);
    }
    for s in table.studs() {
        rises(&s.id, &[&s.base_thickness, &table.thread(&s.thread).unwrap().major, &s.base]);
    }
}

#[test]
fn an_insert_of_aluminium_is_never_the_stronger() {
    let table = built_in();
    for size in ["m4", "m5", "m6", "m8", "m10"] {
        let of = |metal: &str| table.insert(&format!("{size}-{metal}")).unwrap();
        let (steel, aluminium) = (of("steel"), of("aluminium"));
        assert!(aluminium.thread_proof.value < steel.thread_proof.value);
        assert!(aluminium.turning_torque.value < steel.turning_torque.value);
        assert!(aluminium.shear.value < steel.shear.value);
        assert_eq!(of("stainless").thread_proof.value, steel.thread_proof.value);
    }
}

#[test]
fn glues_lose_strength_when_hot_and_only_elastic_ones_are_no_structure() {
    for a in built_in().adhesives() {
        let at = |t: f64| a.hot_retention.at(ThermodynamicTemperature::new::<degree_celsius>(t)).unwrap().value;
        assert_eq!(at(23.0), Ratio::from(1.0), "{}", a.id);
        assert!(at(80.0) < at(60.0) && at(60.0) < at(23.0), "{}", a.id);
        let elastic = a.shear_modulus.high < Pressure::new::<megapascal>(10.0);
        assert_eq!(a.structural, !elastic, "{}", a.id);
    }
}

/// Typed again from the table of the data book.
#[test]
fn the_drag_of_standard_bodies_is_that_of_the_data_book() {
    let table = built_in();
    let drag = |id: &str, slenderness: f64| table.body(id).unwrap().drag.at(Ratio::from(slenderness)).unwrap().value;
    for (slenderness, expected) in [(1.0, 0.63), (2.0, 0.68), (5.0, 0.74), (10.0, 0.82), (40.0, 0.98)] {
        near(drag("cylinder", slenderness).value, expected, 1e-12);
    }
    for (id, expected) in [
        ("whip", 1.2),
        ("cylinder-end-on", 0.99),
        ("plate-square", 1.17),
        ("plate-long", 1.98),
        ("hemisphere", 0.38),
        ("cup", 1.42),
        ("half-cylinder", 2.3),
    ] {
        near(drag(id, 1.0).value, expected, 1e-12);
        assert_eq!(table.body(id).unwrap().drag.origin.mark, Mark::Read, "{id}");
    }
}

/// Typed again from the data sheet: proof load in N, turning torque in N·m, shear load in N.
#[test]
fn the_loads_of_blind_inserts_are_those_of_the_sheet() {
    let table = built_in();
    for (id, proof, turning, shear) in [
        ("m4-steel", 6800.0, 1.0, 1500.0),
        ("m5-stainless", 11500.0, 2.0, 2000.0),
        ("m6-stainless", 16500.0, 4.5, 3000.0),
        ("m8-steel", 25000.0, 5.5, 4400.0),
        ("m10-steel", 32000.0, 11.0, 5000.0),
        ("m4-aluminium", 4000.0, 0.9, 1000.0),
        ("m5-aluminium", 6500.0, 1.5, 1200.0),
        ("m6-aluminium", 7800.0, 3.5, 2000.0),
        ("m8-aluminium", 12300.0, 5.0, 2000.0),
        ("m10-aluminium", 17500.0, 6.5, 3800.0),
    ] {
        let insert = table.insert(id).unwrap();
        near(insert.thread_proof.value.value, proof, 1e-9);
        near(insert.turning_torque.value.value, turning, 1e-12);
        near(insert.shear.value.value, shear, 1e-9);
    }
}

#[test]
fn the_drag_of_a_cylinder_grows_with_slenderness_to_that_of_the_whip() {
    let table = built_in();
    let drag = |id: &str, slenderness: f64| table.body(id).unwrap().drag.at(Ratio::from(slenderness));
    assert_eq!(drag("cylinder", 1.0).unwrap().value, Ratio::from(0.63));
    assert_eq!(drag("cylinder", 40.0).unwrap().origin.mark, Mark::Read);
    assert_eq!(drag("cylinder", 100.0).unwrap().value, drag("whip", 500.0).unwrap().value);
    assert_eq!(drag("cylinder", 70.0).unwrap().origin.mark, Mark::Assumed);
    assert!(drag("cylinder", 200.0).is_err(), "the table does not extrapolate");
    // A plate stops more wind than anything round that turns its dome to it.
    assert!(drag("hemisphere", 1.0).unwrap().value < drag("plate-square", 1.0).unwrap().value);
}

#[test]
fn severity_follows_the_steps_between_the_metals() {
    let table = built_in();
    for couple in table.galvanics() {
        let steps = couple.steps.value.value;
        let expected: &[&str] = match steps {
            0.0 => &["none"],
            s if s < -1.5 => &["severe"],
            s if s.abs() < 1.5 => &["mild", "moderate"],
            _ => &["moderate"],
        };
        assert!(expected.contains(&couple.severity.as_str()), "{}: {} at {steps} steps", couple.id, couple.severity);
        // The reverse couple has the reverse steps.
        if let Some(reverse) = table.couple(&couple.part, &couple.fastener) {
            near(reverse.steps.value.value, -steps, 1e-12);
        }
    }
    for grade in table.fasteners() {
        for part in table.alloys() {
            assert!(table.couple(&grade.family, &part.family).is_some(), "{} in {}", grade.family, part.family);
        }
        assert!(table.couple(&grade.family, "carbon").is_some(), "{}", grade.family);
    }
}

/// Every board and every ply can be checked against every way in which a fixing fails in it.
#[test]
fn boards_and_plies_have_what_fixings_ask_of_them() {
    let table = built_in();
    for board in table.boards() {
        let (thread, bearing) = (board.thread_shear.as_ref(), board.bearing_strength.as_ref());
        assert!(thread.is_some() && bearing.is_some(), "{}", board.id);
        // A thread does not strip at more than the board's own strength in bearing.
        assert!(thread.unwrap().value <= bearing.unwrap().value * 1.2, "{}", board.id);
    }
    for ply in table.rows().filter(|row| row.kind() == Kind::Ply) {
        for needed in ["bearing", "punching_shear"] {
            assert!(ply.properties().any(|property| property.name == needed), "{} {needed}", ply.id());
        }
    }
}

#[test]
fn a_row_that_names_no_thread_or_no_form_does_not_load() {
    for (kind, id) in [("stud", "m6-stud"), ("insert", "m6-steel"), ("potted-insert", "m6-potted")] {
        let row = format!("[[{kind}]]\nid = \"{id}\"\nthread = \"m7\"\n");
        let message = problem(&row).0.message;
        assert!(message.contains("no thread is called `m7`"), "{kind}: {message}");
    }
    let screw = "[[screw]]\nid = \"wood-8\"\nform = \"coach\"\n";
    assert!(problem(screw).0.message.contains("none of wood, tapping, lag"));
    let couple = "[[galvanic]]\nid = \"steel-in-steel\"\nseverity = \"bad\"\n";
    assert!(problem(couple).0.message.contains("none of none, mild, moderate, severe"));
    let ply = "[[ply]]\nid = \"e-glass-mat\"\nform = \"felt\"\n";
    assert!(problem(ply).0.message.contains("form `felt` of a ply is none of mat, woven, unidirectional"));
}

#[test]
fn loads_and_torques_of_fixings_are_positive_and_have_units() {
    let rivet = |value: &str| {
        format!(
            "[[rivet]]\nid = \"rivet-al-4-8\"\nshear = {{ value = \"{value}\", basis = \"estimate\", source = \"assumption\", \
             mark = \"assumed\" }}\n"
        )
    };
    assert!(problem(&rivet("0 N")).0.message.contains("not physical"));
    assert!(problem(&rivet("3 MPa")).0.message.contains("MPa"));
    let table = layered(&rivet("400 lbf")).unwrap();
    near(table.rivet("rivet-al-4-8").unwrap().shear.value.value, 400.0 * 0.45359237 * 9.80665, 1e-9);
    let torque = "[[insert]]\nid = \"m6-steel\"\nturning_torque = { value = \"40 lbf·in\", basis = \"measured\", source = \
                  \"assumption\", mark = \"read\" }\n";
    assert!(problem(torque).0.message.contains("marked `read in the source`"));
}
