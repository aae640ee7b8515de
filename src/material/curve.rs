//! A property that depends on density, glass content or temperature.

use std::{marker::PhantomData, sync::Arc};

use super::{Basis, Origin, OutOfRange, Property};
use crate::units::{Dimensioned, ThermodynamicTemperature};

/// Nominal densities are rounded between kg/m³ and lb/ft³ (12.5 lb/ft³ is 200.2 kg/m³), so the ends of a range
/// reach this fraction further, with the value of the end.
const END_ROUNDING: f64 = 0.005;

/// A temperature counts from absolute zero, of which half a percent would be 1.8 K: what is past its end softens unseen. Only
/// what changing units costs is let through.
const DEGREE_ROUNDING: f64 = 1e-9;

/// How the value runs; numbers in SI base units.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Shape {
    Constant(f64),
    /// Rising arguments, linear in between.
    Points(Arc<[(f64, f64)]>),
    /// Polynomial, lowest power first, inside a range of the argument.
    Law(Arc<[f64]>, f64, f64),
}

impl Shape {
    /// Range of the argument; `None` for a value that holds everywhere.
    pub(crate) fn range(&self) -> Option<(f64, f64)> {
        match self {
            Self::Constant(_) => None,
            Self::Points(points) => points.first().zip(points.last()).map(|(a, b)| (a.0, b.0)),
            Self::Law(_, low, high) => Some((*low, *high)),
        }
    }

    /// Which points the value at an argument rests on; a pair of the same if it lies on one.
    fn neighbours(points: &[(f64, f64)], x: f64) -> (usize, usize) {
        let upper = points.partition_point(|point| point.0 < x).min(points.len().saturating_sub(1));
        let on_it = points.get(upper).is_some_and(|point| point.0 <= x);
        if on_it { (upper, upper) } else { (upper.saturating_sub(1), upper) }
    }

    /// Value at an argument inside the range.
    pub(crate) fn at(&self, x: f64) -> f64 {
        match self {
            Self::Constant(value) => *value,
            Self::Points(points) => {
                let (a, b) = Self::neighbours(points, x);
                match (points.get(a), points.get(b)) {
                    (Some(&(_, ya)), Some(_)) if a == b => ya,
                    (Some(&(xa, ya)), Some(&(xb, yb))) => ya + (yb - ya) * (x - xa) / (xb - xa),
                    _ => f64::NAN,
                }
            }
            Self::Law(coefficients, ..) => coefficients.iter().rev().fold(0.0, |sum, c| sum * x + c),
        }
    }
}

/// A property as a function: constant, given at points with straight lines between them, or a polynomial.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve<X, Y> {
    pub(crate) shape: Shape,
    /// Origins of those points that came to us in a weaker way than the rest.
    pub(crate) weaker: Arc<[Option<Arc<Origin>>]>,
    /// How good the values are.
    pub basis: Basis,
    /// Where they come from.
    pub origin: Arc<Origin>,
    pub(crate) kind: PhantomData<(X, Y)>,
}

impl<X: Dimensioned, Y: Dimensioned> Curve<X, Y> {
    /// The property at one argument.
    ///
    /// ```text
    /// points: y = yₐ + (y_b − yₐ)·(x − xₐ)/(x_b − xₐ)      law: y = a₀ + a₁x + a₂x² …
    /// ```
    ///
    /// | symbol | meaning |
    /// |---|---|
    /// | x, y | argument (density, glass mass fraction, temperature) and value |
    /// | a, b | the given points on either side of x |
    /// | a₀, a₁, … | coefficients of a rule formula |
    ///
    /// # Validity
    /// Inside the given range; its ends reach half a percent further, as nominal densities are rounded, but not those of a
    /// temperature.
    ///
    /// # Errors
    /// [`OutOfRange`] beyond that: the table does not extrapolate.
    ///
    /// # Source
    /// [`DERIVED`](crate::source::DERIVED), linear interpolation.
    ///
    /// # Examples
    /// A foam of 90 kg/m³ lies half way between its neighbours of 80 and 100 kg/m³:
    /// ```
    /// use skinspan::{material::MaterialTable, units::MassDensity};
    /// use uom::si::mass_density::kilogram_per_cubic_meter as kg_m3;
    /// let table = MaterialTable::built_in().unwrap();
    /// let strength = &table.core("pvc-foam").unwrap().shear_strength;
    /// let at = |density| strength.at(MassDensity::new::<kg_m3>(density)).unwrap().value;
    /// assert!((at(90.0) - (at(80.0) + at(100.0)) / 2.0).value.abs() < 1e-6); // Pa
    /// ```
    pub fn at(&self, x: X) -> Result<Property<Y>, OutOfRange<X>> {
        let given = x.si();
        let rounding = if X::NAME == ThermodynamicTemperature::NAME { DEGREE_ROUNDING } else { END_ROUNDING };
        let mut inside = given;
        if let Some((low, high)) = self.shape.range() {
            inside = given.clamp(low, high);
            let slack = rounding * inside.abs();
            if given.is_nan() || (given - inside).abs() > slack {
                let (low, high) = (X::from_si(low), X::from_si(high));
                return Err(OutOfRange { origin: self.origin.clone(), given: x, low, high });
            }
        }
        let value = Y::from_si(self.shape.at(inside));
        Ok(Property { value, basis: self.basis, origin: self.origin_at(inside).clone() })
    }

    /// The weaker origin of the points that a value rests on.
    fn origin_at(&self, x: f64) -> &Arc<Origin> {
        let Shape::Points(points) = &self.shape else { return &self.origin };
        let (a, b) = Shape::neighbours(points, x);
        let weaker = |i: usize| self.weaker.get(i).and_then(Option::as_ref);
        weaker(a).or_else(|| weaker(b)).unwrap_or(&self.origin)
    }

    /// Lowest and highest argument with a value; `None` if the value holds everywhere.
    #[must_use]
    pub fn range(&self) -> Option<(X, X)> {
        self.shape.range().map(|(low, high)| (X::from_si(low), X::from_si(high)))
    }
}
