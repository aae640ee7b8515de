//! Bending of a round tube: a pipe of the frame between its posts.

use std::f64::consts::PI;

use uom::si::volume::cubic_meter;

use crate::units::{Length, Pressure, Ratio, Torque, Volume};

/// A round tube.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tube {
    /// Outside diameter.
    pub outside: Length,
    /// Thickness of its wall, at most half of the diameter.
    pub wall: Length,
}

impl Tube {
    /// Elastic section modulus of a round tube.
    ///
    /// ```text
    ///   Z = 2 I/D = π (D⁴ − (D − 2t)⁴)/(32 D)
    /// ```
    ///
    /// | symbol | meaning              | argument  |
    /// |--------|----------------------|-----------|
    /// | *D*    | outside diameter     | `outside` |
    /// | *t*    | thickness of wall    | `wall`    |
    ///
    /// # Validity
    ///
    /// Round and of even wall.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): second moments of two discs.
    ///
    /// # Examples
    ///
    /// A tube of 50 mm with a wall of 4 mm: π (50⁴ − 42⁴)/(32 × 50) = π × 3 138 304/1600 = 6162 mm³.
    ///
    /// ```
    /// use skinspan::{strength::Tube, units::Length};
    /// use uom::si::{length::millimeter, volume::cubic_millimeter};
    /// let tube = Tube { outside: Length::new::<millimeter>(50.0), wall: Length::new::<millimeter>(4.0) };
    /// assert!((tube.section_modulus().get::<cubic_millimeter>() - 6162.0).abs() < 0.5);
    /// ```
    #[must_use]
    pub fn section_modulus(self) -> Volume {
        let (d, inside) = (self.outside.value, self.outside.value - 2.0 * self.wall.value);
        Volume::new::<cubic_meter>(PI * (d.powi(4) - inside.powi(4)) / (32.0 * d))
    }

    /// Stress in the outermost fibre of a round tube that is bent.
    ///
    /// ```text
    ///   σ = M/Z
    /// ```
    ///
    /// | symbol | meaning                                          | argument |
    /// |--------|--------------------------------------------------|----------|
    /// | *M*    | bending moment                                   | `moment` |
    /// | *Z*    | [`section modulus`](Tube::section_modulus)       |          |
    ///
    /// # Validity
    ///
    /// Elastic, and a wall thick enough not to buckle: see [`slenderness`](Tube::slenderness). Local bending of the wall
    /// where a seat or a post presses on it is not in it.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): bending of beams.
    ///
    /// # Examples
    ///
    /// 1 kN in the middle of 1 m of that tube on two posts: 250 N·m, 250 000/6162 = 40.57 MPa.
    ///
    /// ```
    /// use skinspan::{strength::Tube, units::{Length, Torque}};
    /// use uom::si::{length::millimeter, pressure::megapascal, torque::newton_meter};
    /// let tube = Tube { outside: Length::new::<millimeter>(50.0), wall: Length::new::<millimeter>(4.0) };
    /// let stress = tube.bending_stress(Torque::new::<newton_meter>(250.0));
    /// assert!((stress.get::<megapascal>() - 40.57).abs() < 0.01);
    /// ```
    #[must_use]
    pub fn bending_stress(self, moment: Torque) -> Pressure {
        moment / self.section_modulus()
    }

    /// Slenderness of the wall of a round tube against local buckling.
    ///
    /// ```text
    ///   β = 3 √(D/t)
    /// ```
    ///
    /// # Validity
    ///
    /// A bent tube whose `β` lies at or below the limit of its class reaches its proof strength at the outermost fibre; the
    /// limit, over √(250 MPa/f), belongs to the caller.
    ///
    /// # Source
    ///
    /// [`EN_1999_1_1`](crate::source::EN_1999_1_1), 6.1.4.3, round tubes, from memory.
    ///
    /// # Examples
    ///
    /// ```
    /// use skinspan::{strength::Tube, units::Length};
    /// use uom::si::length::millimeter;
    /// let tube = Tube { outside: Length::new::<millimeter>(64.0), wall: Length::new::<millimeter>(4.0) };
    /// assert!((tube.slenderness().value - 12.0).abs() < 1e-12); // 3 √16
    /// ```
    #[must_use]
    pub fn slenderness(self) -> Ratio {
        Ratio::from(3.0 * (self.outside / self.wall).value.sqrt())
    }

    /// The wall with which a tube of this diameter has a section modulus; none where not even a bar has it.
    ///
    /// ```text
    ///   t = (D − (D⁴ − 32 D Z/π)^¼)/2
    /// ```
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): [`section_modulus`](Tube::section_modulus), solved for the wall.
    ///
    /// # Examples
    ///
    /// ```
    /// use skinspan::{strength::Tube, units::Length};
    /// use uom::si::length::millimeter;
    /// let tube = Tube { outside: Length::new::<millimeter>(50.0), wall: Length::new::<millimeter>(4.0) };
    /// let wall = tube.wall_for(tube.section_modulus()).ok_or("a bar")?;
    /// assert!((wall.get::<millimeter>() - 4.0).abs() < 1e-9);
    /// assert_eq!(tube.wall_for(tube.section_modulus() * 3.0), None); // a bar has π 50³/32 = 12 272 mm³
    /// # Ok::<(), &str>(())
    /// ```
    #[must_use]
    pub fn wall_for(self, modulus: Volume) -> Option<Length> {
        let d = self.outside.value;
        let inside = d.powi(4) - 32.0 * d * modulus.value / PI;
        (inside >= 0.0).then(|| (self.outside - Length::new::<uom::si::length::meter>(inside.powf(0.25))) / 2.0)
    }
}
