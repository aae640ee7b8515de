//! 49 CFR 393.102(a)(1), securement of cargo: accelerations up to the breaking strength, "applied separately".

use skinspan::criteria::{Criteria, CriterionError};
use uom::si::{f64::Ratio, ratio::ratio};

#[test]
fn trailer_forward_cfr_49_393_102_a_1() -> Result<(), CriterionError> {
    assert_eq!(Criteria::built_in()?.trailer_forward.value, Ratio::new::<ratio>(0.8));
    Ok(())
}
