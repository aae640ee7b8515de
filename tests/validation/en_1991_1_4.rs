//! EN 1991-1-4, wind actions: net pressure on canopies.

use skinspan::{
    criteria::{Criteria, CriterionError},
    load::wind::{Underside, Zone, net_pressure},
};
use uom::si::{f64::Pressure, pressure::pascal};

/// Table 7.6, roof angle 0: `c_p,net` of zones A (interior), B and C (edges).
const EMPTY: [f64; 3] = [-0.6, -1.3, -1.4];
const FULL: [f64; 3] = [-1.5, -1.8, -2.2];
/// Zone A pressing down, at any blockage.
const DOWN_A: f64 = 0.5;

/// The code applies its coefficients to the peak velocity pressure, that of a gust, as we do ours.
#[test]
fn suction_covers_en_1991_1_4_table_7_6_level_canopy() -> Result<(), CriterionError> {
    let criteria = Criteria::built_in()?;
    let q = Pressure::new::<pascal>(1.0);
    for (underside, [a, b, c]) in [(Underside::Open, EMPTY), (Underside::Blocked, FULL)] {
        let roof = criteria.free_roof();
        let net = |zone| net_pressure(q, criteria.gust_factor.value, roof.at(zone, underside).up).get::<pascal>();
        assert!(net(Zone::Interior) <= a, "{underside:?}: {}", net(Zone::Interior));
        assert!(net(Zone::Edge) <= b.min(c), "{underside:?}: {}", net(Zone::Edge));
    }
    Ok(())
}

#[test]
fn pressure_on_the_interior_covers_en_1991_1_4_table_7_6() -> Result<(), CriterionError> {
    let criteria = Criteria::built_in()?;
    let down = criteria.free_roof().at(Zone::Interior, Underside::Open).down;
    let net = net_pressure(Pressure::new::<pascal>(1.0), criteria.gust_factor.value, down);
    assert!(net.get::<pascal>() >= DOWN_A);
    Ok(())
}
