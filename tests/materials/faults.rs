//! What is wrong with a table, said with its place.

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
    for (mark, words) in [("read", "read in the source"), ("quoted", "quoted at second hand")] {
        let text = coat(&format!("areal_mass = {{ {} }}", GOOD.replace("\"assumed\"", &format!("\"{mark}\""))));
        assert!(problem(&text).0.message.contains(words), "{mark}");
    }
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
    let problems = layered("[[coat]]\nid = \"mine\"\n\n[[fastener]]\nid = \"mine\"\nname = \"Mine\"\n").unwrap_err();
    let lacks: Vec<_> = problems.iter().map(|problem| problem.message.as_str()).collect();
    for missing in ["`areal_mass`", "coat `mine` has no `name`", "`proof_stress`", "`ultimate_stress`", "`modulus`"] {
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
