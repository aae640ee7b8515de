//! Kinds of rows for fixings: threads, screws, inserts, rivets, studs, and what sticks or eases them.

use super::{Banded, Curve, Property, schema::kind};
use crate::units::{Force, Length, Pressure, Ratio, ThermodynamicTemperature, Torque};

kind! {
    /// A machine thread with the hole, head, nut and washers that go with it.
    Thread {
        #[doc = "Major diameter, nominal."]
        major: Property<Length> => SIZE,
        #[doc = "Pitch, from thread to thread."]
        pitch: Property<Length> => SIZE,
        #[doc = "Largest pitch diameter of the tapped hole, class 6H or 2B."]
        pitch_diameter_max_internal: Property<Length> => SIZE,
        #[doc = "Largest minor diameter of the tapped hole, class 6H or 2B."]
        minor_max_internal: Property<Length> => SIZE,
        #[doc = "Smallest major diameter of the bolt, class 6g or 2A."]
        major_min_external: Property<Length> => SIZE,
        #[doc = "Smallest pitch diameter of the bolt, class 6g or 2A."]
        pitch_diameter_min_external: Property<Length> => SIZE,
        #[doc = "Drill for tapping in metal, board and laminate."]
        tap_drill: Property<Length> => SIZE,
        #[doc = "Clearance hole, medium or normal fit."]
        clearance_hole: Property<Length> => SIZE,
        #[doc = "Width across flats of hexagon head and nut, nominal."]
        across_flats: Property<Length> => SIZE,
        #[doc = "Outside diameter of the bearing face of a hexagon head; the smallest that is allowed where the source gives one."]
        head_bearing: Property<Length> => SIZE,
        #[doc = "Diameter of a countersunk head as made."]
        countersunk_head: Property<Length> => SIZE,
        #[doc = "Height of the nut, the largest."]
        nut_height: Property<Length> => SIZE,
        #[doc = "Outside diameter of the normal washer."]
        washer_outside: Property<Length> => SIZE,
        #[doc = "Thickness of the normal washer."]
        washer_thickness: Property<Length> => SIZE,
        #[doc = "Outside diameter of the large washer."]
        large_washer_outside: Property<Length> => SIZE,
        #[doc = "Thickness of the large washer."]
        large_washer_thickness: Property<Length> => SIZE,
    }
}

kind! {
    /// A screw that cuts or forms its own thread in the backing.
    Screw {
        #[doc = "Form: wood, tapping or lag."]
        form: String => PLAIN,
        #[doc = "Outside diameter of the thread."]
        major: Property<Length> => SIZE,
        #[doc = "Root diameter of the thread."]
        root: Property<Length> => SIZE,
        #[doc = "Pitch, from thread to thread."]
        pitch: Property<Length> => SIZE,
        #[doc = "Diameter of the head where it bears; across flats for a hexagon."]
        head: Property<Length> => SIZE,
        #[doc = "Pilot hole in polyurethane board."]
        pilot_board: Property<Length> => SIZE,
        #[doc = "Pilot hole in plywood."]
        pilot_plywood: Property<Length> => SIZE,
        #[doc = "Pilot hole in solid laminate."]
        pilot_laminate: Property<Length> => SIZE,
    }
}

kind! {
    /// A blind threaded insert, set from one side into a sheet (rivet nut). Loads are those of the insert in a steel
    /// plate: its thread and its body, not its hold in a laminate.
    Insert {
        #[doc = "Thread, by its row."]
        thread: String => PLAIN,
        #[doc = "Hole that it is set in."]
        hole: Property<Length> => SIZE,
        #[doc = "Outside diameter of the flange."]
        flange: Property<Length> => SIZE,
        #[doc = "Length of the body below the flange, before setting."]
        length: Property<Length> => SIZE,
        #[doc = "Diameter of the bulge behind the sheet after setting."]
        bulge: Property<Length> => SIZE,
        #[doc = "Thinnest sheet that it grips."]
        grip_min: Property<Length> => SIZE,
        #[doc = "Thickest sheet that it grips."]
        grip_max: Property<Length> => SIZE,
        #[doc = "Axial load that the thread bears without damage."]
        thread_proof: Property<Force> => FORCE,
        #[doc = "Tightening torque at which it breaks."]
        breaking_torque: Property<Torque> => TORQUE,
        #[doc = "Tightening torque at which it turns in its hole: the limit of tightening."]
        turning_torque: Property<Torque> => TORQUE,
        #[doc = "Shear load of the set insert."]
        shear: Property<Force> => FORCE,
    }
}

kind! {
    /// A threaded insert that is potted into the core.
    PottedInsert {
        #[doc = "Thread, by its row."]
        thread: String => PLAIN,
        #[doc = "Outside diameter."]
        outside: Property<Length> => SIZE,
        #[doc = "Height."]
        height: Property<Length> => SIZE,
        #[doc = "Outside diameter of the flange."]
        flange: Property<Length> => SIZE,
        #[doc = "Bore that it is potted in."]
        bore: Property<Length> => SIZE,
    }
}

kind! {
    /// A blind rivet, open end, protruding head.
    Rivet {
        #[doc = "Diameter of the body, nominal."]
        diameter: Property<Length> => SIZE,
        #[doc = "Hole, the largest."]
        hole: Property<Length> => SIZE,
        #[doc = "Diameter of the head, nominal."]
        head: Property<Length> => SIZE,
        #[doc = "Smallest tensile load."]
        tension: Property<Force> => FORCE,
        #[doc = "Smallest shear load, one shear plane."]
        shear: Property<Force> => FORCE,
    }
}

kind! {
    /// A stud on a plate that is glued to a skin.
    Stud {
        #[doc = "Thread, by its row."]
        thread: String => PLAIN,
        #[doc = "Diameter of the base."]
        base: Property<Length> => SIZE,
        #[doc = "Thickness of the base."]
        base_thickness: Property<Length> => SIZE,
    }
}

kind! {
    /// A glue between fittings, backing and skins.
    Adhesive {
        #[doc = "Shear strength of a lap joint on glass laminate: the joint, often the laminate's peeling, not the glue alone."]
        lap_shear: Banded<Pressure> => STRENGTH,
        #[doc = "Tensile strength normal to the bond."]
        flatwise_tension: Banded<Pressure> => STRENGTH,
        #[doc = "Shear modulus."]
        shear_modulus: Banded<Pressure> => MODULUS,
        #[doc = "Thickness of the bond as laid."]
        bond_thickness: Banded<Length> => SIZE,
        #[doc = "Fraction of the room-temperature strength that is left when hot."]
        hot_retention: Curve<ThermodynamicTemperature, Ratio> => FRACTION,
        #[doc = "Whether a load may rest on it for years."]
        structural: bool => PLAIN,
    }
}

kind! {
    /// State of thread and head when a bolt is tightened: torque = nut factor · diameter · preload.
    Lubrication {
        #[doc = "Nut factor, with the range in which it scatters; a low one gives more preload."]
        nut_factor: Banded<Ratio> => COEFFICIENT,
    }
}
