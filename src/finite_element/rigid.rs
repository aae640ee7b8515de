//! Movements of the whole plate: found before they make the matrix singular, so that they can be explained.

use nalgebra::{Matrix3, SymmetricEigen, Vector3};

use super::{
    beam::Spring,
    element::Fields,
    numbering::Numbering,
    plate::{Mechanism, point},
};

/// Least share of the stiffest movement as a whole that the softest must have: below it the rest is rounding.
const LEAST_SHARE: f64 = 1e-10;

/// Whether springs and held unknowns hold the plate against dropping and tipping.
pub(super) fn check(
    numbering: &Numbering,
    fields: Fields,
    springs: &[Spring],
    held: &[usize],
) -> Result<(), Mechanism> {
    let (low, high) = bounds(numbering);
    let middle = [0, 1].map(|i| 0.5 * (low[i] + high[i]));
    let reach = (high[0] - low[0]).max(high[1] - low[1]);
    let movement = |place: [f64; 2]| Vector3::new(1.0, (place[0] - middle[0]) / reach, (place[1] - middle[1]) / reach);
    let mut stiffness = Matrix3::zeros();
    let mut largest = springs.iter().map(|spring| spring.stiffness).fold(0.0, f64::max);
    if largest == 0.0 {
        largest = 1.0;
    }
    for spring in springs {
        let m = movement(spring.at_node());
        stiffness += m * m.transpose() * spring.stiffness;
    }
    let (count, first) = (fields.count(), fields.deflection());
    for &unknown in held.iter().filter(|&&unknown| unknown < numbering.shared * count) {
        let place = numbering.places[unknown / count];
        let m = match unknown % count {
            field if field == first => movement(place),
            // A held rotation is a held slope, unless the top slides in shear, which no whole top does.
            field if field == first + 1 => Vector3::new(0.0, 1.0, 0.0),
            field if field == first + 2 => Vector3::new(0.0, 0.0, 1.0),
            _ => continue,
        };
        stiffness += m * m.transpose() * largest;
    }
    let eigen = SymmetricEigen::new(stiffness);
    let softest = (0..3).min_by(|&a, &b| eigen.eigenvalues[a].total_cmp(&eigen.eigenvalues[b])).unwrap_or(0);
    if eigen.eigenvalues[softest] > LEAST_SHARE * eigen.eigenvalues.max() {
        return Ok(());
    }
    let free = eigen.eigenvectors.column(softest);
    let slopes = [free[1] / reach, free[2] / reach];
    let steepest = slopes[0] * slopes[0] + slopes[1] * slopes[1];
    let about = if steepest > 0.0 { [0, 1].map(|i| middle[i] - free[0] * slopes[i] / steepest) } else { middle };
    Err(Mechanism::WholeMoves { about: point(about), tips: slopes })
}

/// The three displacements in the plane that must be held so that the plate does not slide or turn, and no more: two at
/// the first corner of the plate, one at the corner farthest from it.
pub(super) fn in_plane(numbering: &Numbering) -> [usize; 3] {
    let from = numbering.places[0];
    let far = |node: usize| (numbering.places[node][0] - from[0]).hypot(numbering.places[node][1] - from[1]);
    let farthest = (0..numbering.shared).max_by(|&a, &b| far(a).total_cmp(&far(b))).unwrap_or(0);
    let [dx, dy] = [0, 1].map(|i| (numbering.places[farthest][i] - from[i]).abs());
    let count = Fields::BendingAndStretching.count();
    // Held across the line that joins the two, it cannot turn.
    [0, 1, farthest * count + usize::from(dx > dy)]
}

fn bounds(numbering: &Numbering) -> ([f64; 2], [f64; 2]) {
    let (mut low, mut high) = ([f64::INFINITY; 2], [f64::NEG_INFINITY; 2]);
    for place in &numbering.places[..numbering.shared] {
        for i in 0..2 {
            low[i] = low[i].min(place[i]);
            high[i] = high[i].max(place[i]);
        }
    }
    (low, high)
}
