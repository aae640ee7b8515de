//! Fabrics, their angles and the plies that they make.

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
            for (band, resin) in bands.into_iter().flatten().flat_map(|b| table.resins().iter().map(move |r| (b, r))) {
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
