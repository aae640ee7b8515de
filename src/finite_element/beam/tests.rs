//! What holds beams that meet.

use super::*;
use crate::{
    finite_element::shape::Degree,
    units::{BeamRigidity, Pressure},
};

/// Corners of a grid of three by three fields of one metre, by column and row.
fn corner(column: usize, row: usize) -> usize {
    row * 4 + column
}

/// Lines of such a grid, each with the corners on its way and where its posts stand.
fn lines(each: &[(&[usize], &[usize])]) -> Vec<BeamLine> {
    let places: Vec<[f64; 2]> = (0..16).map(|node| [f64::from(node % 4), f64::from(node / 4)]).collect();
    let fields = (0..3).flat_map(|row| (0..3).map(move |column| [column, row]));
    let triangles: Vec<[usize; 3]> = fields
        .flat_map(|[i, j]| {
            let [a, b, c, d] = [corner(i, j), corner(i + 1, j), corner(i + 1, j + 1), corner(i, j + 1)];
            [[a, b, c], [a, c, d]]
        })
        .collect();
    let numbering = Numbering::new(&places, &triangles, Degree::Two);
    let rigidity: BeamRigidity = si(5e4);
    let stiffness: Pressure = si(5e8);
    let bed = |&(corners, posts): &(&[usize], &[usize])| Bed {
        corners: corners.to_vec(),
        stiffness,
        beam: Some(super::super::plate::Beam { rigidity, posts: posts.to_vec() }),
    };
    let beds: Vec<Bed> = each.iter().map(bed).collect();
    let mut next = 0;
    BeamLine::all(&beds, &numbering, &mut next).expect("lines along sides")
}

fn row(row: usize) -> [usize; 4] {
    [0, 1, 2, 3].map(|column| corner(column, row))
}

fn column(column: usize) -> [usize; 4] {
    [0, 1, 2, 3].map(|row| corner(column, row))
}

/// A bar without posts is held by two rails that are, and by nothing less.
#[test]
fn a_bar_is_held_by_rails_that_are_held() {
    let (low, high, bar) = (row(0), row(3), column(1));
    let held = |on_low: &[usize], on_high: &[usize]| {
        let lines = lines(&[(&low, on_low), (&high, on_high), (&bar, &[])]);
        let end = bar[3];
        (
            lines.iter().map(BeamLine::is_held).collect::<Vec<_>>(),
            lines[2].loose(lines[2].nodes.iter().position(|&node| node == end).unwrap_or(0)),
        )
    };
    let two = |rail: &[usize; 4]| vec![rail[0], rail[3]];
    assert_eq!(held(&two(&low), &two(&high)), (vec![true, true, true], [0.0, 0.0]));
    // One rail that rolls about its only post carries nothing: the bar tips about the other, 3 m from its end.
    assert_eq!(held(&two(&low), &[high[0]]), (vec![true, false, false], [0.0, 3.0]));
    // Nor do rails without any: it drops and tips.
    assert_eq!(held(&[], &[]), (vec![false, false, false], [1.0, 3.0]));
}

/// Two rails and two bars that only carry one another hold nothing, however often they meet.
#[test]
fn beams_that_only_carry_one_another_are_loose() {
    let [low, high, left, right] = [row(0), row(3), column(0), column(3)];
    let all = |posts: &[usize]| -> Vec<bool> {
        lines(&[(&low, posts), (&high, &[]), (&left, &[]), (&right, &[])]).iter().map(BeamLine::is_held).collect()
    };
    assert_eq!(all(&[]), [false; 4]);
    // One of them on two posts carries an end of each bar, which is not enough.
    assert_eq!(all(&[low[0], low[3]]), [true, false, false, false]);
}
