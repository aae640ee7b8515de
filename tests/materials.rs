//! The material table: what loads, what does not, and whether the values are possible.
#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use skinspan::material::MaterialTable;

#[test]
fn the_built_in_table_loads() {
    if let Err(problems) = MaterialTable::built_in() {
        panic!("{}", problems.iter().map(|p| format!("{p}\n")).collect::<String>());
    }
}
