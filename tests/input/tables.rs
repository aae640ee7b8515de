//! Material tables with faults.

use skinspan::input::read_tables;

use crate::{named, rendered};

fn said_of(text: &str) -> String {
    read_tables(&[named("own.toml", text)]).map_or_else(|files| rendered(&files), |_| String::new())
}

#[test]
fn a_table_with_faults_is_shown_at_each_of_them() {
    assert_eq!(said_of(""), "");
    let said = said_of(
        r#"
[[core]]
id = "pvc-foam"
shear_strenght = { value = "1 MPa", basis = "measured", source = "sheets-core", mark = "memory" }

[[resin]]
id   = "house-resin"
like = "vinylister"

[[cores]]
id = "x"
"#,
    );
    let places: Vec<&str> = said.lines().filter(|line| line.contains("-->")).collect();
    assert!(places.iter().all(|place| place.contains("own.toml:")), "{said}");
    for part in ["shear_strenght", "shear_strength", "vinylister", "vinylester", "cores"] {
        assert!(said.contains(part), "{part}: {said}");
    }
    assert_eq!(places.len(), 3, "{said}");
}

#[test]
fn a_table_that_is_no_toml_is_one_mistake() {
    let said = said_of("[[core]\nid = 1\n");
    assert_eq!(said.matches("error: ").count(), 1, "{said}");
    assert!(said.contains("own.toml:1:"), "{said}");
}
