//! 49 CFR 393.102(a)(1), securement of cargo: accelerations up to the breaking strength, "applied separately".

use skinspan::criteria::{Criteria, CriterionError};
use uom::si::{f64::Ratio, ratio::ratio};

#[test]
fn road_events_cfr_49_393_102_a_1() -> Result<(), CriterionError> {
    let events = Criteria::built_in()?.road().events();
    let in_plane = events.map(|event| (event.forward.get::<ratio>(), event.port.get::<ratio>()));
    assert_eq!(in_plane[..4], [(0.8, 0.0), (-0.5, 0.0), (0.0, 0.5), (0.0, -0.5)]);
    // The rule has no vertical event; in those above the weight rests as it does on a level road.
    assert!(events[..4].iter().all(|event| event.down == Ratio::new::<ratio>(1.0)));
    Ok(())
}
