//! Bangladesh National Building Code 2020, Part 6, Chapter 2: the figure of free roofs, after ASCE 7-05 Fig. 6-19A.

use skinspan::{
    criteria::{Criteria, CriterionError},
    load::wind::{NetPair, Underside, Zone},
};
use uom::si::{f64::Ratio, ratio::ratio};

fn pair(down: f64, up: f64) -> NetPair {
    NetPair { down: Ratio::new::<ratio>(down), up: Ratio::new::<ratio>(up) }
}

/// Angle 0, effective wind area up to *a*², in the order zone 1, 2, 3.
#[test]
fn net_coefficients_bnbc_2020_figure_6_2_19_a() -> Result<(), CriterionError> {
    let roof = Criteria::built_in()?.free_roof();
    let clear = [(Zone::Interior, 1.2, -1.1), (Zone::Edge, 1.8, -1.7), (Zone::Corner, 2.4, -3.3)];
    for (zone, down, up) in clear {
        assert_eq!(roof.at(zone, Underside::Open), pair(down, up));
    }
    assert_eq!(roof.at(Zone::Corner, Underside::Blocked), pair(1.0, -3.6));
    for (zone, down, up) in [(Zone::Interior, 0.5, -1.2), (Zone::Edge, 0.8, -1.8)] {
        let blocked = roof.at(zone, Underside::Blocked);
        assert_eq!(blocked.down, pair(down, up).down);
        // A harsher code governs the suction of a blocked top.
        assert!(blocked.up < pair(down, up).up);
    }
    Ok(())
}
