//! Force in a bolt with preload.

use crate::units::{Force, Ratio};

/// Force in a bolt that was tightened and is then pulled.
///
/// ```text
///   F_b = max(F_i + C P, P)
/// ```
///
/// | symbol | meaning                                                                     | argument  |
/// |--------|-----------------------------------------------------------------------------|-----------|
/// | `F_i`  | preload that is left in service                                             | `preload` |
/// | *P*    | pull from outside; a push is below zero                                     | `pull`    |
/// | *C*    | share of the pull that the bolt sees, `k_b`/(`k_b` + `k_m`) of the stiffnesses of bolt and clamped parts | `share` |
///
/// # Validity
///
/// *C* from 0 to 1. Above [`separation_load`] the parts are apart and the bolt carries all. A preload through foam,
/// or through a board that creeps, does not last: take `F_i` = 0 and *C* = 1 unless metal or solid laminate lies under
/// the head.
///
/// # Source
///
/// [`SHIGLEY_9`](crate::source::SHIGLEY_9), equation 8-24 (the example that uses it was read).
///
/// # Examples
///
/// 10 kN of preload, 4 kN of pull, *C* = 0.25: 11 kN; a pull of 20 kN has parted the joint: 20 kN.
///
/// ```
/// use skinspan::{fastening::bolt_load, units::{Force, Ratio}};
/// use uom::si::force::kilonewton;
/// let kn = Force::new::<kilonewton>;
/// assert!((bolt_load(kn(10.0), kn(4.0), Ratio::from(0.25)).get::<kilonewton>() - 11.0).abs() < 1e-12);
/// assert!((bolt_load(kn(10.0), kn(20.0), Ratio::from(0.25)).get::<kilonewton>() - 20.0).abs() < 1e-12);
/// ```
#[must_use]
pub fn bolt_load(preload: Force, pull: Force, share: Ratio) -> Force {
    let closed = preload + share * pull;
    if pull > closed { pull } else { closed }
}

/// Pull at which the clamped parts come apart.
///
/// ```text
///   P₀ = F_i / (1 − C)
/// ```
///
/// | symbol | meaning                        | argument  |
/// |--------|--------------------------------|-----------|
/// | `F_i`  | preload that is left           | `preload` |
/// | *C*    | share, as in [`bolt_load`]     | `share`   |
///
/// # Validity
///
/// *C* below 1; at 1 the parts are never pressed together by the bolt, and the answer is `None`.
///
/// # Source
///
/// [`DERIVED`](crate::source::DERIVED): no force left between the parts.
///
/// # Examples
///
/// 10 kN and *C* = 0.2: 12.5 kN.
///
/// ```
/// use skinspan::{fastening::separation_load, units::{Force, Ratio}};
/// use uom::si::force::kilonewton;
/// let p0 = separation_load(Force::new::<kilonewton>(10.0), Ratio::from(0.2)).unwrap();
/// assert!((p0.get::<kilonewton>() - 12.5).abs() < 1e-12);
/// ```
#[must_use]
pub fn separation_load(preload: Force, share: Ratio) -> Option<Force> {
    let members = Ratio::from(1.0) - share;
    (members.value > 0.0).then(|| preload / members)
}
