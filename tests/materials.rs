//! The material table: what loads, what does not and why not, and whether the values are possible.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use std::{collections::BTreeSet, sync::LazyLock};

use proptest::prelude::*;
use skinspan::{
    laminate::micromechanics::{Constituent, unidirectional},
    material::{Basis, Curve, Kind, MaterialTable, NoPly, Part, PlyForm, TableProblem, TableText},
    source::{Mark, WORKS},
    units::{Angle, MassDensity, Pressure, Ratio, ThermodynamicTemperature},
};
use uom::si::{
    angle::degree,
    mass_density::kilogram_per_cubic_meter as kg_m3,
    pressure::{gigapascal, megapascal},
    thermodynamic_temperature::degree_celsius,
};

fn built_in() -> &'static MaterialTable {
    static TABLE: LazyLock<MaterialTable> =
        LazyLock::new(|| MaterialTable::built_in().unwrap_or_else(|problems| panic!("{problems:#?}")));
    &TABLE
}

fn layered(text: &str) -> Result<MaterialTable, Vec<TableProblem>> {
    MaterialTable::layered(&[TableText { name: "shop.toml", text }])
}

/// The only problem in a text, and the words of the text that it points at.
fn problem(text: &str) -> (TableProblem, &str) {
    let problems = layered(text).expect_err("the text is faulty");
    assert_eq!(problems.len(), 1, "{problems:?}");
    let problem = problems[0].clone();
    assert_eq!(problem.file, "shop.toml");
    let range = problem.range.clone();
    (problem, &text[range])
}

fn near(value: f64, expected: f64, tolerance: f64) {
    assert!((value - expected).abs() <= tolerance, "{value} against {expected}");
}

fn mpa(pressure: Pressure) -> f64 {
    pressure.get::<megapascal>()
}

fn density(value: f64) -> MassDensity {
    MassDensity::new::<kg_m3>(value)
}

mod built_in_table {
    use super::*;

    #[test]
    fn has_every_kind_and_the_families_of_cores() {
        let table = built_in();
        for kind in Kind::ALL {
            assert!(table.rows().any(|row| row.kind() == kind), "no {}", kind.word());
        }
        for id in [
            "pvc-foam",
            "san-foam",
            "pet-foam",
            "pmi-foam",
            "pu-foam",
            "pvc-linear-foam",
            "balsa",
            "plywood",
            "aramid-honeycomb",
            "pp-honeycomb",
        ] {
            assert!(table.core(id).is_ok(), "no {id}");
        }
    }

    #[test]
    fn every_value_has_text_basis_source_and_summary() {
        let table = built_in();
        for row in table.rows() {
            assert!(!row.name().is_empty() && !row.family().is_empty(), "{}", row.id());
            for property in row.properties() {
                let (what, origin) = (format!("{} {}", row.id(), property.name), property.origin);
                assert!(!origin.as_written.is_empty(), "{what}");
                assert!(property.source.is_some_and(|source| source.text.len() > 8), "{what}");
                assert!(!property.meaning.trim().is_empty(), "{what}");
                // What was read has a place in what was read, or the source is one page.
                if origin.mark == Mark::Read {
                    assert!(!origin.locator.is_empty() || origin.condition.is_some(), "{what} has no locator");
                }
                // What is only assumed cannot be better than an estimate.
                if origin.mark == Mark::Assumed {
                    assert_eq!(property.basis, Basis::Estimate, "{what}");
                }
            }
            assert_eq!(row.summary().is_empty(), row.properties().next().is_none(), "{}", row.id());
        }
    }

    #[test]
    fn every_source_is_used_and_every_cited_work_is_listed() {
        let table = built_in();
        let listed: BTreeSet<_> = table.sources().iter().map(|source| source.key.as_str()).collect();
        let cited: BTreeSet<_> = WORKS.iter().map(|work| work.0).collect();
        let used: BTreeSet<_> =
            table.rows().flat_map(|row| row.properties().map(|p| p.origin.source.as_str())).collect();
        let missing: Vec<_> = cited.difference(&listed).collect();
        assert!(missing.is_empty(), "formulas cite works that the list has not: {missing:?}");
        // The criteria have a table of their own, which cites the same list.
        let directory = concat!(env!("CARGO_MANIFEST_DIR"), "/materials/criteria.toml");
        let criteria = std::fs::read_to_string(directory).unwrap_or_default();
        let unused: Vec<_> = listed
            .iter()
            .filter(|key| !cited.contains(*key) && !used.contains(*key) && !criteria.contains(&format!("\"{key}\"")))
            .collect();
        assert!(unused.is_empty(), "{unused:?}");
    }

    /// A core of twice the density is never weaker, and a foam is softer than the skin that it carries.
    #[test]
    fn cores_grow_stronger_with_density_and_stay_softer_than_skins() {
        for core in built_in().cores() {
            let (low, high) = core.density_range().unwrap();
            assert!(low < high, "{} is given at no density", core.id);
            let (light, heavy) = (core.at(low).unwrap(), core.at(high).unwrap());
            for (a, b, what) in [
                (&light.shear_strength, &heavy.shear_strength, "shear strength"),
                (&light.shear_modulus, &heavy.shear_modulus, "shear modulus"),
                (&light.compressive_strength, &heavy.compressive_strength, "compressive strength"),
                (&light.compressive_modulus, &heavy.compressive_modulus, "compressive modulus"),
                (&light.in_plane_modulus, &heavy.in_plane_modulus, "in-plane modulus"),
            ] {
                assert!(a.value < b.value, "{} {what}", core.id);
            }
            assert!(heavy.in_plane_modulus.value < Pressure::new::<gigapascal>(6.1), "{}", core.id);
            if let (Some(l), Some(w)) = (&light.shear_strength_w, &light.shear_modulus_w) {
                assert!(l.value < light.shear_strength.value && w.value < light.shear_modulus.value, "{}", core.id);
            }
            for sold in core.sold_densities.values.iter() {
                assert!(core.at(*sold).is_ok(), "{} is sold and not given at {sold:?}", core.id);
            }
            let hot = ThermodynamicTemperature::new::<degree_celsius>(23.0);
            near(core.hot_retention.at(hot).unwrap().value.value, 1.0, 1e-12);
            assert!(core.hot_retention.at(core.service_temperature.value).is_ok(), "{}", core.id);
        }
    }

    #[test]
    fn isotropic_rows_keep_shear_modulus_between_the_bounds_of_poissons_ratio() {
        // G = E/(2(1+nu)) with nu from 0 to 0.5.
        for alloy in built_in().alloys() {
            let ratio = (alloy.modulus.value / alloy.shear_modulus.value).value;
            assert!((2.0..=3.0).contains(&ratio), "{}: E/G = {ratio}", alloy.id);
            assert!(alloy.yield_strength.value <= alloy.ultimate_strength.value, "{}", alloy.id);
            if let (Some(y), Some(u)) = (&alloy.weld_yield_strength, &alloy.weld_ultimate_strength) {
                assert!(
                    y.value <= alloy.yield_strength.value && u.value <= alloy.ultimate_strength.value,
                    "{}",
                    alloy.id
                );
            }
        }
        for grade in built_in().fasteners() {
            assert!(grade.proof_stress.value < grade.ultimate_stress.value, "{}", grade.id);
        }
    }

    #[test]
    fn nothing_bonds_to_polyethylene() {
        let table = built_in();
        assert!(!table.board("hdpe").unwrap().bondable);
        assert!(table.board("pu-board-glass-320").unwrap().bondable);
    }
}

mod curves {
    use super::*;

    /// Points of the table, typed again from the data sheet.
    const SHEAR_STRENGTH: [(f64, f64); 5] = [(60.0, 0.76), (80.0, 1.15), (100.0, 1.6), (130.0, 2.2), (200.0, 3.5)];

    #[test]
    fn exact_at_the_points_and_half_way_between_them() {
        let table = built_in();
        let curve = &table.core("pvc-foam").unwrap().shear_strength;
        let at = |x: f64| mpa(curve.at(density(x)).unwrap().value);
        for (x, y) in SHEAR_STRENGTH {
            near(at(x), y, 1e-12);
        }
        for [(x0, y0), (x1, y1)] in SHEAR_STRENGTH.array_windows::<2>() {
            near(at(f64::midpoint(*x0, *x1)), f64::midpoint(*y0, *y1), 1e-12);
        }
    }

    #[test]
    fn a_value_that_rests_on_a_remembered_point_says_so() {
        let table = built_in();
        let curve = &table.core("pvc-foam").unwrap().shear_strength;
        let mark = |x: f64| curve.at(density(x)).unwrap().origin.mark;
        assert_eq!(mark(48.0), Mark::Memory);
        assert_eq!(mark(54.0), Mark::Memory);
        assert_eq!(mark(60.0), Mark::Read);
        assert_eq!(mark(120.0), Mark::Read);
        assert_eq!(mark(225.0), Mark::Memory);
    }

    #[test]
    fn outside_the_range_is_an_error_that_names_it() {
        let table = built_in();
        let error = table.core("pvc-foam").unwrap().at(density(300.0)).unwrap_err();
        assert_eq!((error.low, error.high), (density(48.0), density(250.0)));
        let text = error.to_string();
        assert!(text.contains("48.0 kg/m³") && text.contains("250 kg/m³") && text.contains("300 kg/m³"), "{text}");
        assert!(table.core("pvc-foam").unwrap().at(density(f64::NAN)).is_err());
    }

    /// 12.5 lb/ft³ is 200.23 kg/m³: the nominal 200 of a family that ends there.
    #[test]
    fn a_nominal_density_in_the_other_system_is_still_in_range() {
        let table = built_in();
        let pet = table.core("pet-foam").unwrap();
        let rounded = pet.at(density(200.23)).unwrap();
        assert_eq!(rounded.shear_strength.value, pet.at(density(200.0)).unwrap().shear_strength.value);
        assert!(pet.at(density(201.1)).is_err());
    }

    proptest! {
        #[test]
        fn between_the_points_it_is_monotone(a in 48.0..250.0_f64, b in 48.0..250.0_f64) {
            let table = built_in();
            let core = table.core("pvc-foam").unwrap();
            let curves: [&Curve<MassDensity, Pressure>; 3] =
                [&core.shear_strength, &core.compressive_modulus, &core.in_plane_modulus];
            for curve in curves {
                let at = |x: f64| curve.at(density(x)).unwrap().value;
                prop_assert_eq!(a <= b, at(a) <= at(b) || (a - b).abs() < 1e-9);
            }
        }
    }
}

mod published {
    use super::*;

    /// The table prints whole newtons per square millimetre.
    const DIGITS_MPA: f64 = 1.0;
    /// It prints the moduli without rounding: 38000 · 0.30 − 5000.
    const DIGITS_E: f64 = 1e-9;

    fn glass(form: PlyForm, psi: f64) -> skinspan::material::PlyLayer {
        let table = built_in();
        let fabric = table.fabric(if form == PlyForm::Mat { "mat" } else { "woven-roving" }).unwrap();
        let angle = Some(Angle::new::<degree>(0.0));
        let resin = table.resin("polyester").unwrap();
        table.plies(&fabric.parts[0], resin, Ratio::from(psi), angle).unwrap().remove(0)
    }

    #[test]
    fn mat_iso_12215_5_table_h_1() {
        let mat = glass(PlyForm::Mat, 0.30);
        near(mpa(mat.e1.value), 6400.0, DIGITS_E);
        near(mpa(mat.tension1.value), 85.0, DIGITS_MPA);
        near(mpa(mat.compression1.value), 117.0, DIGITS_MPA);
        near(mpa(mat.interlaminar_shear.unwrap().value), 17.0, DIGITS_MPA);
    }

    #[test]
    fn roving_iso_12215_5_table_h_1() {
        let roving = glass(PlyForm::Woven, 0.48);
        near(mpa(roving.e1.value), 13240.0, DIGITS_E);
        near(mpa(roving.tension1.value), 183.0, DIGITS_MPA);
        near(mpa(roving.compression1.value), 144.0, DIGITS_MPA);
        near(mpa(roving.interlaminar_shear.unwrap().value), 14.0, DIGITS_MPA);
    }

    /// BS 4994 gives minima of its own for tanks: two rules agree to this, and a slip by a factor of two does not.
    const TWO_RULES: f64 = 0.22;

    /// Strength and modulus per glass mass, 200 N/mm and 14000 N/mm per kg/m² at 33 %, over the thickness of such a
    /// mat, 2.24 mm per kg/m²; roving 250 and 16000 at 45 %, over 1.25 mm.
    #[test]
    fn mat_and_roving_bs_4994_unit_values() {
        for (form, psi, strength, modulus, thickness) in
            [(PlyForm::Mat, 0.33, 200.0, 14000.0, 2.24), (PlyForm::Woven, 0.45, 250.0, 16000.0, 1.25)]
        {
            let ply = glass(form, psi);
            near(mpa(ply.tension1.value) / (strength / thickness), 1.0, TWO_RULES);
            near(mpa(ply.e1.value) / (modulus / thickness), 1.0, TWO_RULES);
        }
    }

    /// Printed with two digits.
    const E1_GPA: f64 = 0.5;
    /// Two tables of the same ply, both read, have `8 GPa` and `12 GPa` across the fibre: the estimate must not leave them by
    /// more than their own spread.
    const E2_GPA: f64 = 4.0;

    /// Unidirectional E-glass in epoxy, 60 % by volume: `45 GPa` and `12 GPa`, in a handbook table courtesy of Zweben 1989.
    #[test]
    fn fibre_and_resin_rows_give_the_tabulated_ply_zweben_1989() {
        let table = built_in();
        let (fibre, resin) = (table.fibre("e-glass").unwrap(), table.resin("epoxy").unwrap());
        let of_fibre = Constituent { modulus: fibre.e1.value, nu: fibre.nu12.value, alpha: fibre.alpha1.value };
        let of_resin =
            Constituent { modulus: resin.modulus.value, nu: resin.poisson.value, alpha: resin.thermal_expansion.value };
        let ply = unidirectional(&of_fibre, &of_resin, Ratio::from(0.6));
        near(ply.e1.get::<gigapascal>(), 45.0, E1_GPA);
        near(ply.e2.get::<gigapascal>(), 12.0, E2_GPA);
    }

    /// The chart cuts off, it does not round: 60 kg/m³ is 3.746 lb/ft³ and printed 3.7.
    const CHART_LB_FT3: f64 = 0.05;

    #[test]
    fn foam_density_chart_in_both_systems() {
        for (si, us) in
            [(45.0, 2.8), (60.0, 3.7), (80.0, 5.0), (100.0, 6.2), (130.0, 8.1), (160.0, 10.0), (200.0, 12.5)]
        {
            let read = skinspan::units::parse::<MassDensity>(&format!("{us} lb/ft3")).unwrap();
            let exact = 0.45359237 / 0.3048_f64.powi(3);
            near(read.value, us * exact, 1e-9);
            near(si / exact, us, CHART_LB_FT3);
        }
    }
}

mod fabrics {
    use super::*;

    fn part(table: &MaterialTable, id: &str) -> Part {
        table.fabric(id).unwrap().parts[0].clone()
    }

    #[test]
    fn biaxial_without_an_angle_is_an_error() {
        let table = built_in();
        let resin = table.resin("polyester").unwrap();
        for fabric in table.fabrics().iter().filter(|fabric| fabric.needs_angle) {
            for part in fabric.parts.iter().filter(|part| part.form != PlyForm::Mat) {
                let error = table.plies(part, resin, Ratio::from(0.5), None).unwrap_err();
                assert!(matches!(error, NoPly::NeedsAngle { .. }), "{}", fabric.id);
                assert!(error.to_string().contains("@ 45 deg"));
            }
        }
        let mat = part(table, "mat");
        assert!(table.plies(&mat, resin, Ratio::from(0.3), None).is_ok());
    }

    #[test]
    fn sub_layers_lie_at_the_angle_of_the_roll_plus_their_own() {
        let table = built_in();
        let resin = table.resin("vinylester").unwrap();
        let angles = |id: &str, roll: f64| {
            let angle = Some(Angle::new::<degree>(roll));
            let plies = table.plies(&part(table, id), resin, Ratio::from(0.5), angle).unwrap();
            let share: f64 = plies.iter().map(|ply| ply.share.value).sum();
            near(share, 1.0, 1e-12);
            plies.iter().map(|ply| ply.angle.get::<degree>().round()).collect::<Vec<_>>()
        };
        assert_eq!(angles("biaxial", 0.0), [0.0, 90.0]);
        assert_eq!(angles("biaxial", 45.0), [45.0, 135.0]);
        assert_eq!(angles("quadraxial", 0.0), [0.0, 45.0, 90.0, -45.0]);
        assert_eq!(angles("unidirectional", 90.0), [90.0]);
    }

    #[test]
    fn a_combined_fabric_has_a_part_for_each_mass() {
        let table = built_in();
        let parts = &table.fabric("biaxial-mat").unwrap().parts;
        let forms: Vec<_> = parts.iter().map(|part| part.form).collect();
        assert_eq!(forms, [PlyForm::Unidirectional, PlyForm::Mat]);
        assert_eq!(parts[0].layers.len(), 2);
    }

    /// At every fibre content that the table calls usual, with every resin that the fibre has plies for.
    #[test]
    fn every_fabric_makes_plies_over_its_usual_fibre_content() {
        let table = built_in();
        for fabric in table.fabrics() {
            let mut made = 0;
            for part in &fabric.parts {
                let bands = [&part.fibre_fraction_hand, &part.fibre_fraction_bag, &part.fibre_fraction_infusion];
                for (band, resin) in
                    bands.into_iter().flatten().flat_map(|b| table.resins().iter().map(move |r| (b, r)))
                {
                    for psi in [band.low, band.typical.value, band.high] {
                        match table.plies(part, resin, psi, Some(Angle::new::<degree>(30.0))) {
                            Ok(plies) => {
                                made += 1;
                                for ply in plies {
                                    assert!(ply.elastic().checked().is_ok(), "{}", fabric.id);
                                }
                            }
                            Err(NoPly::NoData { .. }) => assert_ne!(part.fibre, "e-glass", "{}", fabric.id),
                            Err(other) => panic!("{}: {other}", fabric.id),
                        }
                    }
                }
            }
            assert!(made > 0, "{}", fabric.id);
        }
    }

    #[test]
    fn stitching_costs_stiffness_along_the_fibre_only() {
        let table = built_in();
        let (fibre, resin) = (table.fibre("e-glass").unwrap(), table.resin("polyester").unwrap());
        let angle = Some(Angle::new::<degree>(0.0));
        let (wavy, mut straight) = (part(table, "biaxial"), part(table, "biaxial"));
        straight.waviness = None;
        let psi = Ratio::from(0.5);
        let ply = |part: &Part| table.plies(part, resin, psi, angle).unwrap().remove(0);
        near((ply(&wavy).e1.value / ply(&straight).e1.value).value, 0.93, 1e-12);
        assert_eq!(ply(&wavy).e2.value, ply(&straight).e2.value);
        // Rule of mixtures by hand: Vf = (0.5/2560)/(0.5/2560 + 0.5/1200) = 1200/3760.
        let vf = 1200.0 / 3760.0;
        let e1 = vf * fibre.e1.value + (1.0 - vf) * resin.modulus.value;
        near((ply(&straight).e1.value / e1).value, 1.0, 1e-12);
        assert_eq!(ply(&wavy).e1.basis, Basis::Estimate);
        assert_eq!(ply(&wavy).e1.origin.mark, Mark::Derived);
    }

    #[test]
    fn a_mat_is_isotropic() {
        let table = built_in();
        let mat =
            table.plies(&part(table, "mat"), table.resin("epoxy").unwrap(), Ratio::from(0.3), None).unwrap().remove(0);
        assert_eq!(mat.e1.value, mat.e2.value);
        let g = mat.e1.value / (2.0 * (1.0 + mat.nu12.value.value));
        near((mat.g12.value / g).value, 1.0, 1e-12);
    }

    #[test]
    fn fibre_content_out_of_range_is_an_error() {
        let table = built_in();
        let resin = table.resin("polyester").unwrap();
        let error = table.plies(&part(table, "mat"), resin, Ratio::from(0.6), None).unwrap_err();
        assert!(matches!(error, NoPly::FibreContent(_)), "{error}");
    }
}

mod layers {
    use super::*;

    const SOURCE: &str = "[[source]]\nkey = \"ours\"\ntext = \"Our own coupons, 2 batches\"\nseen = \"read\"\n";

    #[test]
    fn a_users_value_wins_and_leaves_the_rest() {
        let text = format!(
            "{SOURCE}[[core]]\nid = \"pvc-foam\"\nshear_strength = {{ points = [[\"60 kg/m3\", \"0.7 MPa\"], [\"100 kg/m3\", \
             \"1.5 MPa\"]], basis = \"measured\", source = \"ours\", mark = \"read\" }}\n"
        );
        let core = layered(&text).unwrap().core("pvc-foam").unwrap().at(density(80.0)).unwrap();
        near(mpa(core.shear_strength.value), 1.1, 1e-12);
        assert_eq!(core.shear_strength.basis, Basis::Measured);
        assert_eq!(core.shear_strength.origin.table, "shop.toml");
        assert_eq!(core.shear_strength.origin.as_written, "0.7 MPa at 60 kg/m3; 1.5 MPa at 100 kg/m3");
        assert_eq!(core.shear_modulus.origin.table, "built-in core.toml");
        assert_eq!(core.name, "Cross-linked PVC foam");
    }

    #[test]
    fn the_last_table_wins() {
        let row = |value: &str| {
            format!(
                "[[coat]]\nid = \"paint\"\nareal_mass = {{ value = \"{value}\", between = [\"0.1 kg/m2\", \"0.9 kg/m2\"], basis \
                 = \"estimate\", source = \"assumption\", mark = \"assumed\" }}\n"
            )
        };
        let (first, second) = (row("0.4 kg/m2"), row("0.5 kg/m2"));
        let tables = [TableText { name: "a.toml", text: &first }, TableText { name: "b.toml", text: &second }];
        let table = MaterialTable::layered(&tables).unwrap();
        let mass = &table.coat("paint").unwrap().areal_mass.typical;
        assert_eq!((mass.value.value, mass.origin.table.as_str()), (0.5, "b.toml"));
    }

    #[test]
    fn a_new_row_takes_from_another_what_it_lacks() {
        let text = format!(
            "{SOURCE}[[board]]\nid = \"our-board\"\nname = \"Our board\"\nlike = \"pu-board-320\"\ndensity = {{ value = \"20.5 \
             lb/ft3\", basis = \"measured\", source = \"ours\", mark = \"read\" }}\n"
        );
        let table = layered(&text).unwrap();
        let (ours, base) = (table.board("our-board").unwrap(), table.board("pu-board-320").unwrap());
        near(ours.density.value.value, 20.5 * 0.45359237 / 0.3048_f64.powi(3), 1e-9);
        assert_eq!(ours.shear_strength, base.shear_strength);
        assert_eq!(ours.shear_strength.origin.row, "board pu-board-320");
    }

    #[test]
    fn unknown_names_offer_the_near_one() {
        let error = built_in().core("pvc-fome").unwrap_err();
        assert_eq!(error.near.as_deref(), Some("pvc-foam"));
        assert!(error.known.iter().any(|name| name == "balsa"));
        assert!(built_in().resin("polyestr").unwrap_err().to_string().contains("`polyester`"));
    }
}

mod faults {
    use super::*;

    fn coat(property: &str) -> String {
        format!("[[coat]]\nid = \"paint\"\n{property}\n")
    }

    const GOOD: &str = "value = \"0.4 kg/m2\", between = [\"0.1 kg/m2\", \"0.9 kg/m2\"], basis = \"estimate\", source = \"assumption\", mark = \"assumed\"";

    #[test]
    fn the_good_row_of_these_tests_loads() {
        assert!(layered(&coat(&format!("areal_mass = {{ {GOOD} }}"))).is_ok());
    }

    #[test]
    fn a_value_without_a_source_does_not_load() {
        let text = coat(&format!("areal_mass = {{ {} }}", GOOD.replace("source = \"assumption\", ", "")));
        let (problem, place) = problem(&text);
        assert_eq!(place, "areal_mass");
        assert!(problem.message.contains("has no source"), "{problem}");
    }

    #[test]
    fn an_unknown_unit_points_at_the_unit() {
        let text = coat(&format!("areal_mass = {{ {} }}", GOOD.replace("0.4 kg/m2", "0.4 kg/m5")));
        let (_, place) = problem(&text);
        assert!(place.contains("kg/m5") && !place.contains("value"), "{place}");
    }

    #[test]
    fn a_bare_number_is_offered_with_a_unit() {
        let text = coat(&format!("areal_mass = {{ {} }}", GOOD.replace("\"0.4 kg/m2\"", "0.4")));
        let (problem, place) = problem(&text);
        assert_eq!(place, "0.4");
        assert!(problem.help.unwrap().contains("\"0.4 kg/m2\""));
    }

    #[test]
    fn a_duplicate_id_is_an_error() {
        let row = coat(&format!("areal_mass = {{ {GOOD} }}"));
        let twice = format!("{row}{row}");
        let (problem, _) = problem(&twice);
        assert!(problem.message.contains("twice"), "{problem}");
        assert!(problem.range.start >= row.len(), "the second row is the faulty one");
    }

    #[test]
    fn a_misspelt_key_offers_the_right_one() {
        let text = coat(&format!("areal_mas = {{ {GOOD} }}"));
        let (problem, place) = problem(&text);
        assert_eq!(place, "areal_mas");
        assert_eq!(problem.help.as_deref(), Some("did you mean `areal_mass`?"));
    }

    #[test]
    fn a_misspelt_key_inside_a_property_offers_the_right_one() {
        let text = coat(&format!("areal_mass = {{ {GOOD}, locater = \"p. 2\" }}"));
        let (problem, place) = problem(&text);
        assert_eq!(place, "locater");
        assert_eq!(problem.help.as_deref(), Some("did you mean `locator`?"));
    }

    #[test]
    fn a_misspelt_kind_offers_the_right_one() {
        let (problem, place) = problem("[[cores]]\nid = \"x\"\n");
        assert_eq!((place, problem.help.as_deref()), ("cores", Some("did you mean `core`?")));
    }

    #[test]
    fn an_unknown_source_points_at_its_key() {
        let text = coat(&format!("areal_mass = {{ {} }}", GOOD.replace("\"assumption\"", "\"assumptoin\"")));
        let (problem, place) = problem(&text);
        assert_eq!((place, problem.help.as_deref()), ("\"assumptoin\"", Some("did you mean `assumption`?")));
    }

    #[test]
    fn what_was_not_seen_cannot_be_marked_as_read() {
        let text = coat(&format!("areal_mass = {{ {} }}", GOOD.replace("\"assumed\"", "\"read\"")));
        assert!(problem(&text).0.message.contains("marked as read"));
    }

    #[test]
    fn a_source_cannot_be_replaced_under_the_values_that_cite_it() {
        let (problem, _) = problem("[[source]]\nkey = \"practice\"\ntext = \"Something else\"\nseen = \"read\"\n");
        assert!(problem.message.contains("stands in the list already"));
    }

    #[test]
    fn unphysical_values_are_errors() {
        let resin = |field: &str, value: &str| {
            format!(
                "[[resin]]\nid = \"epoxy\"\n{field} = {{ value = \"{value}\", basis = \"estimate\", source = \"assumption\", mark = \
                 \"assumed\" }}\n"
            )
        };
        for (field, bad, good) in [
            ("modulus", "-3 GPa", "3 GPa"),
            ("modulus", "0 GPa", "3 GPa"),
            ("density", "0 kg/m3", "1200 kg/m3"),
            ("density", "1200 g/cm3", "1.2 g/cm3"),
            ("poisson", "0.5", "0.49"),
            ("shrinkage", "7", "7 %"),
            ("heat_distortion", "700 °C", "70 °C"),
        ] {
            let bad = resin(field, bad);
            let (problem, place) = problem(&bad);
            assert!(problem.message.contains("not physical"), "{field}: {problem}");
            assert!(place.starts_with('"'), "{place}");
            assert!(layered(&resin(field, good)).is_ok(), "{field} {good}");
        }
    }

    #[test]
    fn points_out_of_order_and_up_and_down_are_errors() {
        let core = |points: &str| {
            format!(
                "[[core]]\nid = \"balsa\"\nshear_strength = {{ points = {points}, basis = \"estimate\", source = \"assumption\", \
                 mark = \"assumed\" }}\n"
            )
        };
        let rising = "[[\"100 kg/m3\", \"2 MPa\"], [\"150 kg/m3\", \"3 MPa\"], [\"220 kg/m3\", \"4 MPa\"]]";
        assert!(layered(&core(rising)).is_ok());
        let swapped = core(&rising.replace("100 kg", "160 kg"));
        assert!(problem(&swapped).0.message.contains("rising order"));
        let zigzag = core(&rising.replace("3 MPa", "5 MPa"));
        assert!(problem(&zigzag).0.message.contains("up and down"));
    }

    #[test]
    fn a_new_row_says_everything_that_it_lacks_in_one_run() {
        let problems =
            layered("[[coat]]\nid = \"mine\"\n\n[[fastener]]\nid = \"mine\"\nname = \"Mine\"\n").unwrap_err();
        let lacks: Vec<_> = problems.iter().map(|problem| problem.message.as_str()).collect();
        for missing in ["`areal_mass`", "coat `mine` has no `name`", "`proof_stress`", "`ultimate_stress`", "`modulus`"]
        {
            assert!(lacks.iter().any(|message| message.contains(missing)), "{missing} in {lacks:?}");
        }
    }

    #[test]
    fn a_fabric_with_a_direction_must_need_an_angle() {
        let text = "[[fabric]]\nid = \"biaxial\"\nneeds_angle = false\n";
        assert!(problem(text).0.message.contains("needs_angle"));
        let text = "[[fabric]]\nid = \"biaxial\"\nlayers = [{ angle = \"0 deg\", share = 0.5 }]\n";
        assert!(problem(text).0.message.contains("add up to 0.5"));
        let text = "[[fabric]]\nid = \"biaxial\"\nfibre = \"e-glas\"\n";
        let problems = layered(text).unwrap_err();
        assert!(problems.iter().all(|problem| problem.message.contains("did you mean `e-glass`?")), "{problems:?}");
    }

    #[test]
    fn several_files_and_several_faults_come_in_one_run() {
        let (a, b) = ("[[coat]]\nid = \"A b\"\n\n[[core]]\nname = 3\n", "x = ");
        let tables = [TableText { name: "a.toml", text: a }, TableText { name: "b.toml", text: b }];
        let problems = MaterialTable::layered(&tables).unwrap_err();
        assert!(problems.iter().filter(|problem| problem.file == "a.toml").count() >= 2, "{problems:?}");
        assert!(problems.iter().any(|problem| problem.file == "b.toml"), "{problems:?}");
    }

    /// Pieces of which faulty tables are made.
    fn fragment() -> impl Strategy<Value = String> {
        let words = vec![
            "[[core]]\n",
            "[[fabric]]\n",
            "[[ply]]\n",
            "[[source]]\n",
            "[core]\n",
            "id = \"pvc-foam\"\n",
            "id = 3\n",
            "like = \"x\"\n",
            "shear_strength = ",
            "layers = ",
            "parts = ",
            "{ value = \"1 MPa\", ",
            "points = [",
            "[\"60 kg/m3\", ",
            "\"1 MPa\"], ",
            "law = [\"1 MPa\"], range = [0, 1], ",
            "choices = [], ",
            "basis = \"typical\", ",
            "source = \"practice\" }\n",
            "mark = \"read\" }\n",
            "\"",
            "'",
            "{",
            "}",
            "[",
            "]",
            ",",
            "\n",
            "\\u0000",
            "°",
            "1e999",
            "nan",
            "-inf",
            "true",
        ];
        prop_oneof![4 => prop::sample::select(words).prop_map(str::to_owned), 1 => ".{0,8}"]
    }

    proptest! {
        #[test]
        fn no_text_panics_and_every_place_is_inside_the_text(pieces in prop::collection::vec(fragment(), 0..24)) {
            let text = pieces.concat();
            if let Err(problems) = layered(&text) {
                for problem in problems {
                    prop_assert!(text.get(problem.range.clone()).is_some(), "{problem:?} in {text:?}");
                }
            }
        }
    }
}
