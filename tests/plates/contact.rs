//! Plates that lift off their beds, against plates that never had those beds, and against plates that are held down.

use skinspan::{
    finite_element::{Contact, Degree, LiftsOff, Load, Loose, Plate, Solution},
    units::{Force, Length},
};

use crate::kit::{Grid, bed, m, pa, point, sandwich, steps};

/// Eight by four, on beds across it; pushed down along the rim beyond the last of three, it lifts off the middle one.
fn grid() -> Grid {
    Grid::new(&steps(0.0, 1.6, 8), &steps(0.0, 0.8, 4))
}

fn plate(grid: &Grid, lines: &[f64]) -> Plate {
    let beds: Vec<_> = lines.iter().map(|&x| bed(grid.along_y(x, [0.0, 0.8]), 2e8)).collect();
    grid.plate(Degree::Three, &sandwich(), &[], &beds)
}

fn pushed(grid: &Grid, plate: &Plate, force: f64) -> Load {
    grid.pushed_along(plate, &grid.along_y(1.6, [0.0, 0.8]), force)
}

fn along(count: usize) -> Vec<Length> {
    steps(0.0, 0.8, count).into_iter().map(m).collect()
}

fn solved(plate: &Plate, load: &Load) -> Solution {
    plate.solve(&[load]).remove(0)
}

/// With what opens: the tied solution, and each opening times its own.
fn opened(plate: &Plate, contact: &Contact, tied: &Solution) -> (Solution, Vec<Length>) {
    let openings = contact.openings(&contact.pressing(plate, tied)).unwrap().unwrap();
    let mut parts = vec![(tied, 1.0)];
    parts.extend(openings.iter().enumerate().map(|(place, opening)| (&contact.opened()[place], opening.value)));
    (Solution::sum(&parts).unwrap(), openings)
}

fn deflections(grid: &Grid, plate: &Plate, solution: &Solution) -> Vec<f64> {
    let places = [(0.1, 0.1), (0.5, 0.4), (0.9, 0.7), (1.5, 0.3)];
    let of = |(x, y): (f64, f64)| {
        let place = point(x, y);
        grid.state(plate, solution, place, point(0.8, 0.4)).deflection.value
    };
    places.into_iter().map(of).collect()
}

/// What lifts off all along is not there; the others press all along.
#[test]
fn a_bed_that_pulls_all_along_might_as_well_not_be_there() {
    let grid = grid();
    let [three, two] = [&[0.0, 0.6, 1.2][..], &[0.0, 1.2]].map(|lines| plate(&grid, lines));
    let tied = solved(&three, &pushed(&grid, &three, 500.0));
    let loose = [Loose { bed: 1, fixings: Vec::new(), stations: along(4) }];
    let contact = Contact::new(&three, &loose);
    assert!(contact.pressing(&three, &tied).iter().all(|force| *force < Force::default()));
    let (opened, openings) = opened(&three, &contact, &tied);
    assert!(openings.iter().all(|opening| *opening > Length::default()));
    let free = solved(&two, &pushed(&grid, &two, 500.0));
    let [found, due] = [deflections(&grid, &three, &opened), deflections(&grid, &two, &free)];
    // The opening is straight between its places, the plate is not quite.
    for (found, due) in found.iter().zip(&due) {
        assert!((found - due).abs() < 5e-3 * due.abs().max(1e-6), "{found:e} {due:e}");
    }
}

#[test]
fn what_presses_stays_as_it_is() {
    let grid = grid();
    let plate = plate(&grid, &[0.0, 0.6, 1.2]);
    let even = solved(&plate, &Load::none(&plate).pressed(&plate, &|_| pa(1000.0)));
    let loose: Vec<_> = (0..2).map(|bed| Loose { bed, fixings: Vec::new(), stations: along(4) }).collect();
    let contact = Contact::new(&plate, &loose);
    assert_eq!(contact.openings(&contact.pressing(&plate, &even)), Ok(None));
}

/// Fixings pull what the beds no longer do: forces and moments balance, and stiffer fixings come near a plate held down.
#[test]
fn fixings_hold_what_lifts() {
    let grid = grid();
    let plate = plate(&grid, &[0.0, 0.6, 1.2]);
    let up = -800.0;
    let load = pushed(&grid, &plate, up);
    let tied = solved(&plate, &load);
    let at = [0.1, 0.3, 0.5, 0.7];
    let mut last = f64::INFINITY;
    for stiffness in [1e6, 1e7, 1e9, 1e11] {
        let stiffness = Force::new::<uom::si::force::newton>(stiffness) / m(1.0);
        let loose: Vec<_> = (0..3)
            .map(|bed| Loose { bed, fixings: at.iter().map(|y| (m(*y), stiffness)).collect(), stations: along(4) })
            .collect();
        let contact = Contact::new(&plate, &loose);
        let (opened, openings) = opened(&plate, &contact, &tied);
        let pulls = contact.fixing_pulls(&openings);
        assert!(pulls.iter().all(|pull| *pull >= Force::default()));
        // On every bed what presses, less what the fixings pull; about x = 0 the load's moment.
        let (mut force, mut moment) = (0.0, 0.0);
        for (bed, x) in [0.0, 0.6, 1.2].into_iter().enumerate() {
            let mut own: f64 = plate.pushes(bed, &tied).iter().map(|push| push.force.value).sum();
            for (place, opening) in openings.iter().enumerate() {
                let pushes = contact.pushes(&plate, bed, place);
                own += opening.value * pushes.iter().map(|push| push.force.value).sum::<f64>();
            }
            force += own;
            moment += own * x;
        }
        assert!((force - up * 0.8).abs() < 1e-6 * 640.0, "{force}");
        assert!((moment - up * 0.8 * 1.6).abs() < 1e-6 * 1024.0, "{moment}");
        let tip =
            |solution: &Solution| grid.state(&plate, solution, point(1.5, 0.3), point(0.8, 0.4)).deflection.value.abs();
        let sag = tip(&opened);
        assert!(sag < last && sag > tip(&tied), "{sag} {last}");
        last = sag;
    }
    let held = grid.state(&plate, &tied, point(1.5, 0.3), point(0.8, 0.4)).deflection.value.abs();
    assert!(last < 1.01 * held, "{last} {held}");
}

#[test]
fn what_nothing_holds_flies_off() {
    let grid = grid();
    let plate = plate(&grid, &[0.0, 0.6, 1.2]);
    let tied = solved(&plate, &Load::none(&plate).pressed(&plate, &|_| pa(-1000.0)));
    let loose: Vec<_> = (0..3).map(|bed| Loose { bed, fixings: Vec::new(), stations: along(4) }).collect();
    let contact = Contact::new(&plate, &loose);
    assert_eq!(contact.openings(&contact.pressing(&plate, &tied)), Err(LiftsOff));
}
