//! The list of criteria: one field for each table of `materials/criteria.toml`, and the other way round.

use std::collections::BTreeMap;

use serde::Deserialize;

use super::{
    CriterionError,
    record::{Criterion, Entry, Record, id_of},
};
use crate::units::{
    Angle, Force, Frequency, Length, Mass, MassDensity, Pressure, Ratio, ThermodynamicTemperature, Time, Velocity,
};

const FILE: &str = include_str!("../../materials/criteria.toml");

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Tables {
    criterion: Vec<Entry>,
}

macro_rules! criteria {
    ($($(#[$doc:meta])* $field:ident: $quantity:ty;)*) => {
        /// Every factor, share, limit, coefficient and default, typed.
        #[derive(Clone, Debug, PartialEq)]
        pub struct Criteria {
            $($(#[$doc])* pub $field: Criterion<$quantity>,)*
        }

        impl Criteria {
            /// The criteria that come with the program.
            ///
            /// # Errors
            ///
            /// A fault in the built-in file; a test holds it free of them.
            ///
            /// # Examples
            ///
            /// ```
            /// use skinspan::criteria::Criteria;
            /// use uom::si::ratio::ratio;
            /// let criteria = Criteria::built_in()?;
            /// assert_eq!(criteria.core_shear_factor.value.get::<ratio>(), 2.5);
            /// assert_eq!(criteria.core_shear_factor.record.source, "abs-yachts-2021");
            /// # Ok::<(), skinspan::criteria::CriterionError>(())
            /// ```
            pub fn built_in() -> Result<Self, CriterionError> {
                let tables: Tables =
                    toml::from_str(FILE).map_err(|error| CriterionError::value("criteria.toml", error.message()))?;
                let mut entries = BTreeMap::new();
                for entry in tables.criterion {
                    if let Some(twin) = entries.insert(entry.id.clone(), entry) {
                        return Err(CriterionError::value(&twin.id, "the file has this criterion twice"));
                    }
                }
                let criteria = Self { $($field: Criterion::take(&mut entries, stringify!($field))?,)* };
                match entries.into_keys().next() {
                    Some(id) => Err(CriterionError::value(&id, "no part of the program uses this criterion")),
                    None => Ok(criteria),
                }
            }

            /// Puts a value of the design file in place of a built-in one.
            ///
            /// # Errors
            ///
            /// An unknown name, with the nearest known one; a text that is not the quantity; a value that would turn the
            /// criterion's meaning round: a factor below 1, a share above 1, a limit of zero, the wrong sign.
            ///
            /// # Examples
            ///
            /// ```
            /// use skinspan::criteria::Criteria;
            /// use uom::si::{length::millimeter, ratio::ratio};
            /// let mut criteria = Criteria::built_in()?;
            /// criteria.with_override("core-shear-factor", "3")?;
            /// criteria.with_override("people-spacing", "18 in")?;
            /// assert_eq!(criteria.core_shear_factor.value.get::<ratio>(), 3.0);
            /// assert!((criteria.people_spacing.value.get::<millimeter>() - 457.2).abs() < 1e-9);
            /// assert!(criteria.core_shear_factor.record.changed_by_user);
            /// assert_eq!(criteria.core_shear_factor.record.built_in, "2.5");
            ///
            /// let error = criteria.with_override("core-sheer-factor", "3").unwrap_err();
            /// assert_eq!(error.near.as_deref(), Some("core-shear-factor"));
            /// # Ok::<(), skinspan::criteria::CriterionError>(())
            /// ```
            pub fn with_override(&mut self, id: &str, text: &str) -> Result<(), CriterionError> {
                $(if id == id_of(stringify!($field)) {
                    return self.$field.change(text);
                })*
                Err(CriterionError::unknown(id, self.records().into_iter().map(|record| record.id.as_str())))
            }

            /// What is written about each criterion, in the order of the report.
            #[must_use]
            pub fn records(&self) -> Vec<&Record> {
                vec![$(&self.$field.record,)*]
            }
        }
    };
}

criteria! {
    // factors
    /// Factor on the failure of a ply along its fibres, in shear, or of a mat or weave in any direction.
    ply_failure_factor: Ratio;
    /// Factor on cracks between the fibres of a ply with one direction.
    ply_cracking_factor: Ratio;
    /// Factor on wrinkling of the compressed skin.
    wrinkling_factor: Ratio;
    /// Factor on shear crimping.
    crimping_factor: Ratio;
    /// Factor on buckling of the top in compression.
    buckling_factor: Ratio;
    /// Factor on core shear strength, cross-linked PVC, PET and other foams.
    core_shear_factor: Ratio;
    /// Factor on core shear strength, linear PVC and SAN.
    core_shear_ductile_factor: Ratio;
    /// Factor on core shear strength, end-grain balsa and rigid polyurethane.
    core_shear_brittle_factor: Ratio;
    /// Factor on core compression strength.
    core_crush_factor: Ratio;
    /// Factor on the load that dents the skin.
    indentation_factor: Ratio;
    /// Factor on dimpling of the skin over a cell or void.
    dimpling_factor: Ratio;
    /// Factor on the proof strength of a pipe that is bent.
    pipe_bending_factor: Ratio;
    // fixings
    /// Factor on the strength of the fastener itself.
    fastener_steel_factor: Ratio;
    /// Factor on pull-out from backing, own tests.
    pull_out_measured_factor: Ratio;
    /// Factor on pull-out from backing, data sheet or formula.
    pull_out_table_factor: Ratio;
    /// Extra factor on every fixing.
    fitting_factor: Ratio;
    /// Factor on bearing, shear-out and net section of a skin.
    skin_bearing_factor: Ratio;
    /// Factor on a glued bond, own tests.
    bond_measured_factor: Ratio;
    /// Factor on a glued bond, data sheet.
    bond_table_factor: Ratio;
    /// Least factor on pull of a bolt in a foot that is not stiff.
    prying_factor: Ratio;
    /// Factor on pull of a bolt in a foot or tab whose measures are not known.
    prying_unknown: Ratio;
    /// Factor on tension across the bond of skin and core.
    core_tension_factor: Ratio;
    /// Distance of a fixing from the side of its backing, in diameters.
    backing_side_distance: Ratio;
    /// Distance of a fixing from the end of its backing, in diameters.
    backing_end_distance: Ratio;
    /// Bore round a through-bolt that is filled and drilled again, in bolt diameters.
    plug_diameters: Ratio;
    /// Turns of thread that stand out of a nut.
    turns_out_of_nut: Ratio;
    /// Samples of a pull-out test.
    pull_test_samples: Ratio;
    /// Least full thread of a screw in board, wood or plastic, in diameters.
    engagement_soft: Ratio;
    /// Least full thread of a screw in metal or solid laminate, in diameters.
    engagement_hard: Ratio;
    /// Longest full thread that is counted, in diameters.
    engagement_credit: Ratio;
    /// Thread that the mouth of its hole loses, in pitches.
    thread_lead_in: Ratio;
    /// Thread that the end of a machine screw lacks, in pitches.
    thread_tip: Ratio;
    /// Point of a screw that does not hold, in diameters.
    screw_tip: Ratio;
    /// Factor on what a preload may use of a fixing and its hold.
    tightening_factor: Ratio;
    /// Factor on fixings under load that repeats.
    fatigue_factor: Ratio;
    /// Landings that pull on fixings in the life of a top.
    fatigue_cycles: Ratio;
    /// Rolls that pull on fixings in the life of a top.
    fatigue_cycles_rolling: Ratio;
    /// How far a washer reaches beyond the nut, in its own thicknesses.
    washer_reach: Ratio;
    /// Diameter of a blind rivet behind the sheet, over that of its body.
    rivet_tail: Ratio;
    /// Diameter over skin thickness above which bearing strength is not all there.
    slender_hole: Ratio;
    /// Stress at the rim of a hole over the mean beside it.
    hole_stress: Ratio;
    /// Clear distance of a hole from a conduit, in its diameters.
    conduit_clearance: Ratio;
    /// Length from which a backing counts as a strip, in lengths of the footing.
    backing_strip_length: Ratio;
    /// How far a backing goes on beyond the footing, in its thicknesses.
    backing_beyond_foot: Ratio;
    // gear
    /// Acceleration of gear sideways, over gravity.
    gear_sideways: Ratio;
    /// Acceleration of gear fore and aft, over gravity.
    gear_fore_aft: Ratio;
    /// Acceleration of the top in its plane while landing, over gravity.
    landing_in_plane: Ratio;
    /// Roll to one side.
    roll_angle: Angle;
    /// Time of a roll from one side to the other and back.
    roll_period: Time;
    /// Height of the top above the axis about which the boat rolls.
    roll_height: Length;
    /// Force on a whip over that of its mass at the acceleration of its foot.
    whip_resonance: Ratio;
    /// Pull of a snagged line on a whip.
    whip_snag_force: Force;
    /// Height of that pull above the foot.
    whip_snag_height: Length;
    // knock-downs
    /// Share of a measured value that is counted.
    basis_measured: Ratio;
    /// Share of a guaranteed minimum that is counted.
    basis_minimum: Ratio;
    /// Share of a characteristic value that is counted.
    basis_characteristic: Ratio;
    /// Share of a typical value that is counted.
    basis_typical: Ratio;
    /// Share of an estimate that is counted.
    basis_estimate: Ratio;
    /// Strength left in a laminate that is soaked.
    wet_laminate: Ratio;
    /// Strength and modulus left in a foam that is soaked.
    wet_core: Ratio;
    /// Strength left in a backing board above that temperature.
    board_hot: Ratio;
    /// Strength left in foam under a load of seconds.
    foam_strength_instant: Ratio;
    /// Modulus left in foam under a load of seconds.
    foam_modulus_instant: Ratio;
    /// Strength left in balsa under a load of seconds.
    balsa_strength_instant: Ratio;
    /// Modulus left in balsa under a load of seconds.
    balsa_modulus_instant: Ratio;
    /// Strength left in a laminate under a load of seconds.
    laminate_strength_instant: Ratio;
    /// Modulus left in a laminate under a load of seconds.
    laminate_modulus_instant: Ratio;
    /// Strength left in foam under a load of minutes to hours.
    foam_strength_short: Ratio;
    /// Modulus left in foam under a load of minutes to hours.
    foam_modulus_short: Ratio;
    /// Strength left in balsa under a load of minutes to hours.
    balsa_strength_short: Ratio;
    /// Modulus left in balsa under a load of minutes to hours.
    balsa_modulus_short: Ratio;
    /// Strength left in a laminate under a load of minutes to hours.
    laminate_strength_short: Ratio;
    /// Modulus left in a laminate under a load of minutes to hours.
    laminate_modulus_short: Ratio;
    /// Strength left in foam under a load of weeks to months.
    foam_strength_long: Ratio;
    /// Modulus left in foam under a load of weeks to months.
    foam_modulus_long: Ratio;
    /// Strength left in balsa under a load of weeks to months.
    balsa_strength_long: Ratio;
    /// Modulus left in balsa under a load of weeks to months.
    balsa_modulus_long: Ratio;
    /// Strength left in a laminate under a load of weeks to months.
    laminate_strength_long: Ratio;
    /// Modulus left in a laminate under a load of weeks to months.
    laminate_modulus_long: Ratio;
    /// Strength left in foam under a load of years.
    foam_strength_permanent: Ratio;
    /// Modulus left in foam under a load of years.
    foam_modulus_permanent: Ratio;
    /// Strength left in balsa under a load of years.
    balsa_strength_permanent: Ratio;
    /// Modulus left in balsa under a load of years.
    balsa_modulus_permanent: Ratio;
    /// Strength left in a laminate under a load of years.
    laminate_strength_permanent: Ratio;
    /// Modulus left in a laminate under a load of years.
    laminate_modulus_permanent: Ratio;
    /// Hold of a screw in plywood over the formula for wood.
    plywood_withdrawal: Ratio;
    /// Hold of a blind insert in laminate over the shear of the sheet round its bulge.
    insert_in_laminate: Ratio;
    /// Side and bottom of a plug of potting together, over the sum of each alone.
    potting_together: Ratio;
    /// Hold left under load that repeats.
    fatigue_hold: Ratio;
    /// Strength that laminate loses with each tenfold of cycles.
    fatigue_laminate: Ratio;
    /// Bearing strength left in a skin that is thin beside the fixing.
    slender_hole_left: Ratio;
    /// Share of a pull on backing that hangs on the bond to the far skin.
    backing_far_share: Ratio;
    /// Mean shear over peak along the rim of a backing with corners.
    plug_evenness: Ratio;
    // limits
    /// Rise of the crown over the width of the top, as far as it counts as shallow.
    shallow_crown: Ratio;
    /// Sag between pipes over the span, where people walk.
    sag_walked_limit: Ratio;
    /// Sag between pipes over the span, elsewhere.
    sag_unwalked_limit: Ratio;
    /// Sag over the span under a load of years.
    sag_sustained_limit: Ratio;
    /// Sag of an overhang's tip over its length.
    tip_sag_limit: Ratio;
    /// Sag under the underfoot force at the softest place.
    underfoot_sag_limit: Length;
    /// Force that the underfoot sag is measured with.
    underfoot_force: Force;
    /// Most slenderness 3 √(D/t) of the wall of a pipe that is bent, over √(250 MPa/f).
    pipe_wall_slenderness: Ratio;
    /// Lowest natural frequency.
    first_frequency_limit: Frequency;
    /// Bow in the sun over the span.
    bow_limit: Ratio;
    // wind
    /// Density of air.
    air_density: MassDensity;
    /// Gust-effect factor of a stiff top.
    gust_factor: Ratio;
    /// Drag coefficient of the edge of the top.
    edge_drag: Ratio;
    /// Net coefficient pressing down, interior, underside open.
    wind_open_interior_down: Ratio;
    /// Net coefficient lifting, interior, underside open.
    wind_open_interior_up: Ratio;
    /// Net coefficient pressing down, edge, underside open.
    wind_open_edge_down: Ratio;
    /// Net coefficient lifting, edge, underside open.
    wind_open_edge_up: Ratio;
    /// Net coefficient pressing down, corner, underside open.
    wind_open_corner_down: Ratio;
    /// Net coefficient lifting, corner, underside open.
    wind_open_corner_up: Ratio;
    /// Net coefficient pressing down, interior, underside blocked.
    wind_blocked_interior_down: Ratio;
    /// Net coefficient lifting, interior, underside blocked.
    wind_blocked_interior_up: Ratio;
    /// Net coefficient pressing down, edge, underside blocked.
    wind_blocked_edge_down: Ratio;
    /// Net coefficient lifting, edge, underside blocked.
    wind_blocked_edge_up: Ratio;
    /// Net coefficient pressing down, corner, underside blocked.
    wind_blocked_corner_down: Ratio;
    /// Net coefficient lifting, corner, underside blocked.
    wind_blocked_corner_up: Ratio;
    /// Width of edge zones over the least width of the top.
    wind_zone_fraction: Ratio;
    /// Least width of edge zones.
    wind_zone_minimum: Length;
    /// Turn of the rim within a zone's width that makes a corner of it.
    wind_corner_turn: Angle;
    /// Wind from ahead while running.
    headwind: Velocity;
    /// Gust or passing truck while trailering.
    trailer_gust: Velocity;
    /// Share of weight that may be counted against uplift.
    weight_against_uplift: Ratio;
    // people
    /// Mass of a person with clothes and tool.
    person_mass: Mass;
    /// Force of a step over weight at rest.
    step_factor: Ratio;
    /// Side of the square under a heel.
    standing_footprint: Length;
    /// Distance between two people side by side.
    people_spacing: Length;
    /// Hand load at an edge, any direction.
    hand_force: Force;
    /// Length of edge that the hand load spreads over.
    hand_length: Length;
    // walking
    /// Pressure on a top that people use.
    walk_on_pressure: Pressure;
    /// Pressure on a coachroof.
    coachroof_pressure: Pressure;
    // accelerations
    /// One peak in how many the top is designed for, where the acceleration comes from the boat's data.
    slam_one_in: Ratio;
    /// Distance of the bow ahead of the centre of gravity over the waterline length.
    slam_bow_ahead: Ratio;
    /// Upward inertia after a slam, over gravity.
    slam_rebound: Ratio;
    /// Acceleration of gear over that of the top.
    gear_amplification: Ratio;
    /// Downward inertia on the road with weight, over gravity.
    trailer_down: Ratio;
    /// Inertia forward on the road, over gravity.
    trailer_forward: Ratio;
    /// Force that repeats over that of the design landing, steel.
    cyclic_share_steel: Ratio;
    /// Force that repeats over that of the design landing, what fixings hold in.
    cyclic_share_hold: Ratio;
    /// Force that repeats over that of the design roll, steel.
    cyclic_share_rolling_steel: Ratio;
    /// Force that repeats over that of the design roll, what fixings hold in.
    cyclic_share_rolling_hold: Ratio;
    // sun
    /// Temperature at which the top is flat.
    sun_flat: ThermodynamicTemperature;
    /// Outer skin of a dark top in still sun.
    sun_dark_outer: ThermodynamicTemperature;
    /// Inner skin below it.
    sun_dark_inner: ThermodynamicTemperature;
    /// Core at the outer bond.
    sun_dark_core: ThermodynamicTemperature;
    /// Outer skin of a white top in still sun.
    sun_light_outer: ThermodynamicTemperature;
    /// Inner skin below it.
    sun_light_inner: ThermodynamicTemperature;
    /// Core at the outer bond.
    sun_light_core: ThermodynamicTemperature;
    /// Temperature above which a backing board loses strength.
    board_hot_above: ThermodynamicTemperature;
    // lifting
    /// Jerk of a lift over weight at rest.
    lift_factor: Ratio;
    // frame
    /// Width of the seat on a pipe over its diameter, where the design file gives none.
    seat_share: Ratio;
    /// Share of a pipe's push that comes on the edges of a hard seat instead of evenly over its width.
    seat_edge_share: Ratio;
    /// Largest moment that a skin has by itself beside a backing over that of the closed form.
    backing_edge_share: Ratio;
    // method
    /// Share of the widest bay, on either side of a strip, within which gear counts whole on it.
    gear_share_of_bay: Ratio;
    /// Poisson's ratio of every backing board.
    board_poisson: Ratio;
    // water
    /// Density of standing water.
    water_density: MassDensity;
    /// Density of sea water.
    sea_water_density: MassDensity;
    // drawing
    /// What the panel is laid up beyond its outline, to be trimmed off.
    trim_allowance: Length;
    /// Smallest hole that the band beside a conduit is drawn for.
    no_drill_hole: Length;
    // order
    /// Width of a roll of fabric.
    order_roll_width: Length;
    /// How far two breadths of a fabric lap.
    order_lap: Length;
    /// How far a fabric is laid over the outline, to be trimmed.
    order_edge_lap: Length;
    /// What is lost of a roll beyond its offcuts, over what is cut from it.
    order_fabric_waste: Ratio;
    /// Resin and coats that do not stay in the top, over those that do.
    order_resin_waste: Ratio;
    /// Putty that does not stay in the top, over that which does.
    order_putty_waste: Ratio;
    /// Board that is lost in saw cuts and offcuts, over that which stays in the top.
    order_board_waste: Ratio;
    /// Thickness of glue and putty in joints of backing and core, and below studs.
    order_glue_line: Length;
    /// Catalyst over the mass of polyester or vinylester resin and gelcoat.
    order_catalyst_share: Ratio;
    /// Hardener over the mass of epoxy resin that it is mixed into.
    order_hardener_share: Ratio;
    /// Length of a core sheet, but for balsa.
    order_sheet_length: Length;
    /// Its width.
    order_sheet_width: Length;
    /// Length of a sheet of end-grain balsa.
    order_balsa_sheet_length: Length;
    /// Its width.
    order_balsa_sheet_width: Length;
    /// A seam of the core lies at mid-span where its ways to the two nearest supports differ by less than this share of their sum.
    order_seam_off_mid_span: Ratio;
    /// Least distance of a seam of the core from the wall of a conduit and from the end of a backing.
    order_seam_clear: Length;
    /// Least width of a piece of core: narrower ones are avoided where as few sheets do.
    order_least_piece: Length;
    /// Fixings that are bought over those that are set.
    order_spares: Ratio;
    // slings
    /// Angle of a sling from the vertical when the finished top is lifted at four places.
    sling_angle: Angle;
    /// Legs of four slings that are counted on.
    sling_legs: Ratio;
    /// Side of the square that a sling bears on, from below.
    sling_pad: Length;
    // proof
    /// Mass of a bag.
    proof_bag: Mass;
    /// Length of a bag as it lies.
    proof_bag_length: Length;
    /// Its width.
    proof_bag_width: Length;
    /// Test load over the load that governs the design.
    proof_share: Ratio;
    /// Bags at one place may make so much of what the case asks, where that makes whole layers.
    proof_whole_layers: Ratio;
    /// How far a check may be used under the test load.
    proof_most_used: Ratio;
    /// How far a gauge may be off, stand and all.
    proof_gauge_noise: Length;
    /// How far a support may settle beyond its band before the test stops.
    proof_settling: Length;
    /// Largest residual after unloading, over the reading under full load.
    proof_residual: Ratio;
    /// Largest way of a reading off the straight line through all steps, over that under full load.
    proof_straightness: Ratio;
    /// Wait after each step, and after unloading.
    proof_wait: Time;
    /// Largest way that a top may fall on the blocks below it.
    proof_fall: Length;
    /// Stiffness of a material may differ so much from a value measured on own coupons.
    proof_scatter_measured: Ratio;
    /// From a minimum or a characteristic value.
    proof_scatter_minimum: Ratio;
    /// From a typical value.
    proof_scatter_typical: Ratio;
    /// From an estimate.
    proof_scatter_estimate: Ratio;
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;
    use crate::source::Mark;

    fn built_in() -> Criteria {
        Criteria::built_in().unwrap_or_else(|error| panic!("{}: {error}", error.id))
    }

    #[test]
    fn every_table_is_a_field_and_every_field_a_table() {
        let criteria = built_in();
        let tables = FILE.lines().filter(|line| *line == "[[criterion]]").count();
        assert_eq!(criteria.records().len(), tables);
    }

    #[test]
    fn fields_stand_in_the_order_of_the_file() {
        let criteria = built_in();
        let fields: Vec<_> = criteria.records().into_iter().map(|record| record.id.as_str()).collect();
        let tables: Vec<_> = FILE.lines().filter_map(|line| line.strip_prefix("id = \"")?.strip_suffix('"')).collect();
        assert_eq!(fields, tables);
    }

    #[test]
    fn what_was_read_says_where() {
        for record in built_in().records() {
            assert!(!record.title.is_empty() && !record.source.is_empty(), "{}", record.id);
            if matches!(record.mark, Mark::Read | Mark::Quoted) {
                assert!(!record.locator.is_empty(), "{} was read, and nobody knows where", record.id);
            }
            let ours = record.source == "assumption";
            assert_eq!(ours, record.mark == Mark::Assumed, "{}: mark and source disagree", record.id);
        }
    }

    #[test]
    fn groups_are_not_scattered() {
        let mut groups: Vec<String> = built_in().records().into_iter().map(|record| record.group.clone()).collect();
        groups.dedup();
        assert_eq!(groups.iter().collect::<BTreeSet<_>>().len(), groups.len(), "{groups:?}");
    }

    #[test]
    fn built_in_values_would_pass_as_overrides() {
        let mut criteria = built_in();
        let values: Vec<_> =
            criteria.records().into_iter().map(|record| (record.id.clone(), record.built_in.clone())).collect();
        for (id, value) in values {
            assert_eq!(criteria.with_override(&id, &value), Ok(()));
        }
    }

    #[test]
    fn an_override_can_not_turn_a_meaning_round() {
        let mut criteria = built_in();
        for (id, text) in [
            ("core-shear-factor", "0.9"),
            ("fitting-factor", "0"),
            ("basis-typical", "1.01"),
            ("wet-core", "0"),
            ("sag-walked-limit", "0"),
            ("wind-open-edge-up", "1.7"),
            ("wind-open-edge-down", "-1.8"),
            ("walk-on-pressure", "-1 kPa"),
            ("person-mass", "-100 kg"),
            ("person-mass", "9000 lb"),
            ("person-mass", "3 kg"),
            ("air-density", "1225 kg/m3"),
        ] {
            assert!(criteria.with_override(id, text).is_err(), "{id} = {text}");
        }
        assert_eq!(criteria, built_in());
        for (id, text) in [
            ("headwind", "0 kn"),
            ("person-mass", "300 lb"),
            ("ply-cracking-factor", "60"),
            ("proof-gauge-noise", "0.1 um"),
        ] {
            assert_eq!(criteria.with_override(id, text), Ok(()));
        }
    }

    /// What nothing reads would stand in the report as if it mattered.
    #[test]
    fn every_criterion_is_used() {
        let source = every_file_of_the_library();
        // The factors on fixings wait for the checks of fixings, what gear does for its mounts.
        let waiting =
            |record: &Record| ["fixings", "gear"].contains(&record.group.as_str()) || record.id == "gear-amplification";
        let unused: Vec<_> = built_in()
            .records()
            .into_iter()
            .filter(|record| !waiting(record) && !source.contains(&format!(".{}", record.id.replace('-', "_"))))
            .map(|record| record.id.clone())
            .collect();
        assert!(unused.is_empty(), "{unused:?}");
    }

    /// The text below `src`, but for this file, whose list names every criterion.
    fn every_file_of_the_library() -> String {
        let mut folders = vec![std::path::PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/src"))];
        let mut text = String::new();
        while let Some(folder) = folders.pop() {
            for path in std::fs::read_dir(&folder).into_iter().flatten().flatten().map(|entry| entry.path()) {
                if path.is_dir() {
                    folders.push(path);
                } else if !path.ends_with("criteria/list.rs") {
                    text += &std::fs::read_to_string(&path).unwrap_or_default();
                }
            }
        }
        text
    }

    #[test]
    fn a_wrong_quantity_is_explained() {
        let error = built_in().with_override("person-mass", "100").err();
        assert!(error.as_ref().is_some_and(|error| error.parse.is_some()), "{error:?}");
    }
}
