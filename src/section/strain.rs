//! How far the skins are strained by load.

use nalgebra::{Matrix3, Vector3};

use super::{Section, Skin};
use crate::{laminate::Resultants, units::Ratio};

/// Strains at both faces of both skins per unit of each load: per force, per moment.
#[derive(Clone, Debug)]
pub struct FaceStrains([(Matrix3<f64>, Matrix3<f64>); 4]);

impl Section {
    /// Strains at the faces of the skins, for many loads on one section.
    ///
    /// ```text
    /// ε(z) = (A⁻¹ − (z − R) D*⁻¹ Rᵀ) N + (z − R) D*⁻¹ M,   R = A⁻¹ B
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `N`, `M` | forces and moments per width |
    /// | `A`, `B`, `D*` | stiffness of the section, `D* = D − B A⁻¹ B` |
    /// | `z` | of the face, inwards of the mid-plane |
    ///
    /// # Validity
    /// Plane sections; the skin's own bending beside a load or a seat is not in it, nor what heat strains without a stress.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED): classical lamination theory, as [`Section::unit_response`].
    ///
    /// # Examples
    /// ```
    #[doc = sample!()]
    /// let mut m = MomentPerWidth::default();
    /// m.value = 485.0 + 1.0 / 3.0; // bends to 0.1/m; 12 mm from the middle that strains by 0.12 %
    /// let load = section.bent(Axis::X, Width::Wide, m);
    /// near(section.face_strains().largest(&load).value, 0.0012);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn face_strains(&self) -> FaceStrains {
        let compliance = self.compliance();
        let face = |skin: Skin, side: f64| {
            let z = self.skin_middle(skin).value + side * 0.5 * self.skin(skin).thickness().value;
            let per_moment = (Matrix3::identity() * z - compliance.ratio) * compliance.d;
            let per_force = compliance.a_inverse - per_moment * compliance.ratio.transpose();
            (per_force, per_moment)
        };
        FaceStrains([face(Skin::Outer, -1.0), face(Skin::Outer, 1.0), face(Skin::Inner, -1.0), face(Skin::Inner, 1.0)])
    }
}

impl FaceStrains {
    /// The largest strain in any direction at any face, whichever its sign.
    ///
    /// ```text
    /// ε = |ε_x + ε_y| / 2 + √((ε_x − ε_y)² + γ²) / 2
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | `ε_x`, `ε_y`, `γ` | strains and shear strain of a face |
    ///
    /// # Validity
    /// As [`Section::face_strains`]. No strain along the fibres of a ply is larger.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED): the circle of plane strain.
    ///
    /// # Examples
    ///
    /// See [`Section::face_strains`].
    #[must_use]
    pub fn largest(&self, under: &Resultants) -> Ratio {
        let (force, moment) = (under.force.vector(), under.moment.vector());
        let each = self.0.iter().map(|(per_force, per_moment)| largest(per_force * force + per_moment * moment));
        Ratio::from(each.fold(0.0, f64::max))
    }
}

/// The larger of the two principal strains, by size.
fn largest(strain: Vector3<f64>) -> f64 {
    let [x, y, xy] = [strain[0], strain[1], strain[2]];
    0.5 * (x + y).abs() + 0.5 * (x - y).hypot(xy)
}

#[cfg(test)]
mod tests {
    use nalgebra::Vector3;

    use super::largest;

    #[test]
    fn by_the_circle() {
        let near = |a: f64, b: f64| assert!((a - b).abs() < 1e-12, "{a} {b}");
        near(largest(Vector3::new(3.0, -1.0, 3.0)), 1.0 + 2.5);
        near(largest(Vector3::new(-3.0, 1.0, 3.0)), 1.0 + 2.5);
        near(largest(Vector3::new(0.0, 0.0, 2.0)), 1.0);
        near(largest(Vector3::new(2.0, 2.0, 0.0)), 2.0);
    }
}
