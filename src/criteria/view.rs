//! Criteria that belong together, as the functions that use them take them.

use super::{Criteria, Criterion};
use crate::{
    load::wind::{FreeRoof, NetPair, ZoneCoefficients},
    material::Basis,
    units::Ratio,
};

impl Criteria {
    /// Net wind coefficients of a level top on pipes.
    #[must_use]
    pub fn free_roof(&self) -> FreeRoof {
        let pair = |down: &Criterion<Ratio>, up: &Criterion<Ratio>| NetPair { down: down.value, up: up.value };
        FreeRoof {
            open: ZoneCoefficients {
                interior: pair(&self.wind_open_interior_down, &self.wind_open_interior_up),
                edge: pair(&self.wind_open_edge_down, &self.wind_open_edge_up),
                corner: pair(&self.wind_open_corner_down, &self.wind_open_corner_up),
            },
            blocked: ZoneCoefficients {
                interior: pair(&self.wind_blocked_interior_down, &self.wind_blocked_interior_up),
                edge: pair(&self.wind_blocked_edge_down, &self.wind_blocked_edge_up),
                corner: pair(&self.wind_blocked_corner_down, &self.wind_blocked_corner_up),
            },
        }
    }

    /// Share of a material value that its basis lets us count.
    #[must_use]
    pub fn basis_share(&self, basis: Basis) -> &Criterion<Ratio> {
        match basis {
            Basis::Measured => &self.basis_measured,
            Basis::Minimum => &self.basis_minimum,
            Basis::Characteristic => &self.basis_characteristic,
            Basis::Typical => &self.basis_typical,
            Basis::Estimate => &self.basis_estimate,
        }
    }
}

#[cfg(test)]
mod tests {
    use uom::si::ratio::ratio;

    use super::*;
    use crate::load::wind::{Underside, Zone};

    fn built_in() -> Criteria {
        Criteria::built_in().unwrap_or_else(|error| panic!("{error}"))
    }

    #[test]
    fn edges_and_corners_are_never_milder() {
        let roof = built_in().free_roof();
        for underside in [Underside::Open, Underside::Blocked] {
            let [interior, edge, corner] =
                [Zone::Interior, Zone::Edge, Zone::Corner].map(|zone| roof.at(zone, underside));
            assert!(interior.down < edge.down && edge.down < corner.down);
            assert!(interior.up > edge.up && edge.up > corner.up);
        }
    }

    #[test]
    fn a_blocked_underside_lifts_more_and_presses_less() {
        let roof = built_in().free_roof();
        for zone in [Zone::Interior, Zone::Edge, Zone::Corner] {
            let (open, blocked) = (roof.at(zone, Underside::Open), roof.at(zone, Underside::Blocked));
            assert!(blocked.up < open.up && blocked.down < open.down);
        }
    }

    #[test]
    fn a_poorer_basis_counts_less() {
        let criteria = built_in();
        let share = |basis| criteria.basis_share(basis).value.get::<ratio>();
        assert!(share(Basis::Estimate) < share(Basis::Typical) && share(Basis::Typical) < share(Basis::Minimum));
    }

    #[test]
    fn a_longer_load_never_leaves_more() {
        let c = built_in();
        for [instant, short, long, permanent] in [
            [&c.foam_strength_instant, &c.foam_strength_short, &c.foam_strength_long, &c.foam_strength_permanent],
            [&c.foam_modulus_instant, &c.foam_modulus_short, &c.foam_modulus_long, &c.foam_modulus_permanent],
            [&c.balsa_strength_instant, &c.balsa_strength_short, &c.balsa_strength_long, &c.balsa_strength_permanent],
            [&c.balsa_modulus_instant, &c.balsa_modulus_short, &c.balsa_modulus_long, &c.balsa_modulus_permanent],
            [
                &c.laminate_strength_instant,
                &c.laminate_strength_short,
                &c.laminate_strength_long,
                &c.laminate_strength_permanent,
            ],
            [
                &c.laminate_modulus_instant,
                &c.laminate_modulus_short,
                &c.laminate_modulus_long,
                &c.laminate_modulus_permanent,
            ],
        ] {
            assert!(instant.value >= short.value && short.value > long.value && long.value > permanent.value);
        }
    }
}
