//! What the program brings along: complete, sourced, physically possible.

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
        assert_eq!(row.summary(System::Us).is_empty(), row.properties().next().is_none(), "{}", row.id());
    }
}

#[test]
fn every_source_is_used_and_every_cited_work_is_listed() {
    let table = built_in();
    let listed: BTreeSet<_> = table.sources().iter().map(|source| source.key.as_str()).collect();
    let cited: BTreeSet<_> = WORKS.iter().map(|work| work.0).collect();
    let used: BTreeSet<_> = table.rows().flat_map(|row| row.properties().map(|p| p.origin.source.as_str())).collect();
    let missing: Vec<_> = cited.difference(&listed).collect();
    assert!(missing.is_empty(), "formulas cite works that the list has not: {missing:?}");
    // The criteria have a table of their own, which cites the same list.
    let criteria = Criteria::built_in().unwrap();
    let of_criteria: BTreeSet<_> = criteria.records().into_iter().map(|record| record.source.as_str()).collect();
    let missing: Vec<_> = of_criteria.difference(&listed).collect();
    assert!(missing.is_empty(), "criteria cite works that the list has not: {missing:?}");
    let unused: Vec<_> = listed
        .iter()
        .filter(|key| !cited.contains(*key) && !used.contains(*key) && !of_criteria.contains(*key))
        .collect();
    assert!(unused.is_empty(), "{unused:?}");
}

/// A criterion can not have been read in a work of which nothing was seen.
#[test]
fn criteria_are_marked_as_their_sources_were_seen() {
    let (table, criteria) = (built_in(), Criteria::built_in().unwrap());
    for record in criteria.records() {
        let source = table.sources().iter().find(|source| source.key == record.source).unwrap();
        match record.mark {
            Mark::Read => assert_eq!(source.seen, Seen::Read, "{}", record.id),
            Mark::Quoted => assert_eq!(source.seen, Seen::Excerpt, "{}", record.id),
            _ => {}
        }
    }
}

/// A work that no formula cites by its constant, and that no published case is named after, is no source.
#[test]
fn every_work_is_cited_somewhere() {
    let text = all_text_below(concat!(env!("CARGO_MANIFEST_DIR"), "/src"));
    let cases = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/validation/main.rs")).unwrap();
    let idle: Vec<_> = WORKS
        .iter()
        .filter(|work| {
            let name = work.0.replace('-', "_");
            let constant = name.to_uppercase();
            let cited = text.contains(&format!("[`{constant}`]")) || text.contains(&format!("work: {constant}"));
            let case = cases.lines().filter_map(|line| line.strip_prefix("mod ")?.strip_suffix(';'));
            !cited && !case.into_iter().any(|case| name.starts_with(case))
        })
        .collect();
    assert!(idle.is_empty(), "{idle:?}");
}

/// The other way round: a file of published cases that bears a year cites a work of the list.
#[test]
fn every_dated_case_is_a_work() {
    let cases = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/validation/main.rs")).unwrap();
    let dated = |name: &&str| name.rsplit('_').next().is_some_and(|year| year.parse().is_ok_and(|y: u16| y > 1900));
    let cases: Vec<_> = cases
        .lines()
        .filter_map(|line| line.strip_prefix("mod ")?.strip_suffix(';'))
        .filter(dated)
        .map(|case| case.replace('_', "-"))
        .collect();
    assert!(cases.len() > 5, "{cases:?}");
    let unlisted: Vec<_> = cases.iter().filter(|case| WORKS.iter().all(|work| work.0 != case.as_str())).collect();
    assert!(unlisted.is_empty(), "{unlisted:?}");
}

fn all_text_below(folder: &str) -> String {
    let (mut folders, mut text) = (vec![std::path::PathBuf::from(folder)], String::new());
    while let Some(folder) = folders.pop() {
        for path in std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()) {
            if path.is_dir() {
                folders.push(path);
            } else {
                text += &std::fs::read_to_string(path).unwrap();
            }
        }
    }
    text
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
            assert!(y.value <= alloy.yield_strength.value && u.value <= alloy.ultimate_strength.value, "{}", alloy.id);
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
