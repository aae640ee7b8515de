//! Tables over tables.

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
