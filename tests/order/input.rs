//! `[order]` of the design file, and what is said where it is wrong.

use crate::kit::{Made, mm};

fn refused(rest: &str) -> String {
    Made { rest, ..Made::default() }.refused()
}

#[test]
fn it_puts_its_values_into_the_criteria() {
    let top =
        Made { rest: "[order]\nroll_width = \"900 mm\"\nsheet = [\"1500 mm\", \"700 mm\"]\n", ..Made::default() }.top();
    assert!((mm(top.criteria.order_roll_width.value) - 900.0).abs() < 1e-9);
    assert!(top.criteria.order_roll_width.record.changed_by_user);
    assert!((mm(top.criteria.order_sheet_length.value) - 1500.0).abs() < 1e-9);
    assert!((mm(top.criteria.order_sheet_width.value) - 700.0).abs() < 1e-9);
    // Foam leaves the sheets of balsa alone.
    assert!(!top.criteria.order_balsa_sheet_length.record.changed_by_user);
}

#[test]
fn sheets_of_balsa_are_its_own() {
    let mut text = Made { rest: "[order]\nsheet = [\"1200 mm\", \"600 mm\"]\n", ..Made::default() }.text();
    text.text = text.text.replace("pvc-foam", "balsa").replace("80 kg/m3", "150 kg/m3");
    let table = skinspan::input::read_tables(&[]).expect("the table");
    let top = skinspan::input::read_design(&text, &table, None).expect("a top of balsa");
    assert!((mm(top.criteria.order_balsa_sheet_length.value) - 1200.0).abs() < 1e-9);
    assert!(!top.criteria.order_sheet_length.record.changed_by_user);
}

#[test]
fn every_mistake_is_named_with_a_way_out() {
    for (rest, message, help) in [
        ("[order]\nroll_widht = \"50 in\"\n", "`roll_widht` is not a key of `order`", "did you mean `roll_width`?"),
        ("[order]\nroll_width = 1270\n", "1270", "1270 mm"),
        ("[order]\nroll_width = \"0 mm\"\n", "`roll_width`", "leave `roll_width` out"),
        (
            "[order]\nsheet = [\"96 in\"]\n",
            "a sheet has a length and a width, not 1 sizes",
            "sheet = [\"96 in\", \"48 in\"]",
        ),
        ("[order]\nsheet = \"96 in\"\n", "`sheet` is a list", "square brackets"),
        ("[order]\nresin_waste = \"15\"\n", "more than all", "did you mean `\"15 %\"`?"),
        ("[order]\nlap = \"60 in\"\n", "breadths of 1270 mm", "less than `roll_width`"),
        (
            "[order]\nlap = \"3 in\"\n[criteria]\norder-lap = \"2 in\"\n",
            "`lap` is given twice: here, and as `order-lap` in `[criteria]`",
            "leave out one of the two",
        ),
        ("order = \"much\"\n", "`order`", ""),
    ] {
        // What stands behind a header belongs to it: a key of the file comes first.
        let text = if rest.starts_with("order") {
            let mut made = Made::default().text();
            made.text = format!("{rest}{}", made.text);
            let table = skinspan::input::read_tables(&[]).expect("the table");
            let problems = skinspan::input::read_design(&made, &table, None).expect_err("a fault");
            problems.iter().map(|file| file.render(false)).collect()
        } else {
            refused(rest)
        };
        assert!(text.contains(message), "{message}\n{text}");
        assert!(text.contains(help), "{help}\n{text}");
        assert!(text.contains("made.toml"), "{text}");
    }
}
