//! Pieces of a cut that lie aslant or beside its line.

use super::*;
use crate::{
    input::{NamedText, read_design, read_tables},
    plan::Plan,
};

fn read(changes: &[(&str, &str)], text: &str) -> Top {
    let mut text = text.to_owned();
    for (from, to) in changes {
        assert!(text.contains(from), "{from}");
        text = text.replace(from, to);
    }
    let table = read_tables(&[]).unwrap_or_else(|_| panic!("the table"));
    let top = read_design(&NamedText { name: String::new(), text }, &table, None);
    top.unwrap_or_else(|_| panic!("an example"))
}

#[test]
fn a_hole_cut_beside_its_middle_is_as_wide_as_its_chord() {
    let top = read(&[], include_str!("../../../../examples/survey-launch.toml"));
    let plan = Plan::of(&top);
    let mark = &plan.fixings[0];
    let hole = mark.widest().unwrap_or_default();
    // Six tenths of the radius off the middle the chord is eight tenths of the diameter.
    let cut = Cut::at(&top, &plan.fixings, Axis::Y, mark.at.x + hole * 0.3);
    let layout = Layout::new(&top, &cut, &plan.fixings);
    let drawn = fixing(mark, hole * 0.3, &layout, [0.0, 10.0], Axis::Y).into_string();
    let wide = mm(hole.get::<millimeter>() * 0.8 / layout.scale);
    assert!(drawn.contains(&format!("width=\"{wide}\"")), "{drawn} {wide}");
}

#[test]
fn a_conduit_that_runs_aslant_is_drawn_wider() {
    let text = include_str!("../../../../examples/whip-rail.toml");
    let aslant = (r#"[["50 mm", "100 mm"], ["750 mm", "100 mm"]]"#, r#"[["100 mm", "50 mm"], ["300 mm", "250 mm"]]"#);
    let top = read(&[aslant], text);
    let cut = Cut::at(&top, &[], Axis::Y, Length::new::<millimeter>(200.0));
    let layout = Layout::new(&top, &cut, &[]);
    let half = top.conduits[0].diameter.get::<millimeter>() / 2.0 / layout.scale;
    let drawn = drawn(&top, &cut, &[], &layout, 10.0).into_string();
    let shape = format!("rx=\"{}\" ry=\"{}\"", mm(half * 2f64.sqrt()), mm(half));
    assert!(drawn.contains(&shape), "{drawn} {shape}");
}
