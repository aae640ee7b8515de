//! What a row of each kind may hold. The structs of the kinds and the list of their fields are written once, by
//! [`kind!`], so that a field cannot exist in the one and be unknown to the other.

use std::sync::Arc;

use super::{
    Basis, Curve, Origin, Property,
    curve::Shape,
    measured::{Dimension, Tabled},
};

/// Form of a field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Form {
    Flag,
    Text,
    Texts,
    Layers,
    Value(Dimension),
    Band(Dimension),
    Choices(Dimension),
    Curve { argument: Dimension, value: Dimension },
}

/// Where a value is physically possible, in SI base units, ends excluded.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Bound {
    pub low: f64,
    pub high: f64,
    pub words: &'static str,
}

impl Bound {
    pub(crate) fn holds(self, value: f64) -> bool {
        value > self.low && value < self.high
    }
}

const fn bound(low: f64, high: f64, words: &'static str) -> Bound {
    Bound { low, high, words }
}

pub(crate) const MODULUS: Bound = bound(0.0, 1.2e12, "a modulus is positive and below that of diamond");
pub(crate) const STRENGTH: Bound = bound(0.0, 2.0e10, "a strength is positive and below 20 GPa");
pub(crate) const DENSITY: Bound = bound(0.0, 2.3e4, "a density is positive and below that of the heaviest metals");
pub(crate) const POISSON: Bound = bound(-1.0, 0.5, "Poisson's ratio lies between -1 and 0.5");
pub(crate) const FRACTION: Bound = bound(0.0, 1.0 + 1e-12, "a fraction lies between 0 and 1");
pub(crate) const STRAIN: Bound = bound(0.0, 10.0, "an elongation is positive and below 1000 %");
pub(crate) const EXPANSION: Bound = bound(-2e-5, 5e-4, "thermal expansion of solids lies below 500e-6 1/K");
pub(crate) const TEMPERATURE: Bound = bound(173.15, 873.15, "a temperature of use lies between -100 °C and 600 °C");
pub(crate) const SIZE: Bound = bound(0.0, 10.0, "a size is positive and below 10 m");
pub(crate) const AREAL: Bound = bound(-1e-12, 100.0, "a mass per area is not negative and below 100 kg/m2");
pub(crate) const FORCE: Bound = bound(0.0, 1.0e7, "the load of a fixing is positive and below 10 MN");
pub(crate) const TORQUE: Bound = bound(0.0, 1.0e5, "the torque of a fixing is positive and below 100 kN·m");
pub(crate) const COEFFICIENT: Bound =
    bound(0.0, 10.0, "a coefficient of drag, lift or friction is positive and below 10");
pub(crate) const PLAIN: Bound = bound(f64::NEG_INFINITY, f64::INFINITY, "");

/// One field of a kind.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Field {
    pub name: &'static str,
    /// What it means, from the documentation of the struct.
    pub meaning: &'static str,
    pub form: Form,
    pub required: bool,
    pub bound: Bound,
}

/// One sub-layer of a fabric.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Layer {
    /// Direction of its fibres against the roll direction.
    pub angle: crate::units::Angle,
    /// Its share of the fabric's mass.
    pub share: crate::units::Ratio,
}

/// Content of a field, read.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Cell {
    Flag(bool),
    Text(String),
    Texts(Vec<String>),
    Layers(Vec<Layer>),
    Property(Datum),
}

/// A property, read.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Datum {
    pub shape: Shape,
    /// Ends of the usual range of a value.
    pub between: Option<(f64, f64)>,
    /// What can be bought.
    pub choices: Arc<[f64]>,
    /// Origins of those points that came to us in a weaker way than the rest.
    pub weaker: Arc<[Option<Arc<Origin>>]>,
    pub basis: Basis,
    pub origin: Arc<Origin>,
    /// Where the key of its source stands.
    pub source_range: std::ops::Range<usize>,
}

/// A value with the range in which the trade sees it.
#[derive(Clone, Debug, PartialEq)]
pub struct Banded<Q> {
    /// The value to start from.
    pub typical: Property<Q>,
    /// Lower end of the usual range.
    pub low: Q,
    /// Upper end of the usual range.
    pub high: Q,
}

/// What is sold, in rising order.
#[derive(Clone, Debug, PartialEq)]
pub struct Choices<Q> {
    /// The sizes.
    pub values: Arc<[Q]>,
    /// How good the list is.
    pub basis: Basis,
    /// Where it comes from.
    pub origin: Arc<Origin>,
}

/// A type that a field can have.
pub(crate) trait Slot: Sized {
    const FORM: Form;
    const REQUIRED: bool = true;
    fn take(cell: Option<&Cell>) -> Option<Self>;
}

impl Slot for bool {
    const FORM: Form = Form::Flag;
    fn take(cell: Option<&Cell>) -> Option<Self> {
        if let Cell::Flag(flag) = cell? { Some(*flag) } else { None }
    }
}

impl Slot for String {
    const FORM: Form = Form::Text;
    fn take(cell: Option<&Cell>) -> Option<Self> {
        if let Cell::Text(text) = cell? { Some(text.clone()) } else { None }
    }
}

impl Slot for Vec<String> {
    const FORM: Form = Form::Texts;
    fn take(cell: Option<&Cell>) -> Option<Self> {
        if let Cell::Texts(texts) = cell? { Some(texts.clone()) } else { None }
    }
}

impl Slot for Vec<Layer> {
    const FORM: Form = Form::Layers;
    fn take(cell: Option<&Cell>) -> Option<Self> {
        if let Cell::Layers(layers) = cell? { Some(layers.clone()) } else { None }
    }
}

impl<T: Slot> Slot for Option<T> {
    const FORM: Form = T::FORM;
    const REQUIRED: bool = false;
    fn take(cell: Option<&Cell>) -> Option<Self> {
        Some(T::take(cell))
    }
}

fn datum(cell: Option<&Cell>) -> Option<&Datum> {
    if let Cell::Property(datum) = cell? { Some(datum) } else { None }
}

impl<Q: Tabled> Slot for Property<Q> {
    const FORM: Form = Form::Value(Q::DIMENSION);
    fn take(cell: Option<&Cell>) -> Option<Self> {
        let datum = datum(cell)?;
        let Shape::Constant(value) = datum.shape else { return None };
        Some(Self { value: Q::from_si(value), basis: datum.basis, origin: datum.origin.clone() })
    }
}

impl<Q: Tabled> Slot for Banded<Q> {
    const FORM: Form = Form::Band(Q::DIMENSION);
    fn take(cell: Option<&Cell>) -> Option<Self> {
        let (low, high) = datum(cell)?.between?;
        Some(Self { typical: Property::take(cell)?, low: Q::from_si(low), high: Q::from_si(high) })
    }
}

impl<Q: Tabled> Slot for Choices<Q> {
    const FORM: Form = Form::Choices(Q::DIMENSION);
    fn take(cell: Option<&Cell>) -> Option<Self> {
        let datum = datum(cell)?;
        let values = datum.choices.iter().map(|value| Q::from_si(*value)).collect();
        Some(Self { values, basis: datum.basis, origin: datum.origin.clone() })
    }
}

impl<X: Tabled, Y: Tabled> Slot for Curve<X, Y> {
    const FORM: Form = Form::Curve { argument: X::DIMENSION, value: Y::DIMENSION };
    fn take(cell: Option<&Cell>) -> Option<Self> {
        let Datum { shape, weaker, basis, origin, .. } = datum(cell)?.clone();
        Some(Self { shape, weaker, basis, origin, kind: std::marker::PhantomData })
    }
}

/// A kind of row: its fields, and how its struct is made of them.
pub(crate) trait Rowed: Sized {
    const FIELDS: &'static [Field];
    fn build(row: &super::row::Row) -> Option<Self>;
}

/// Writes the struct of a kind and the list of its fields.
macro_rules! kind {
    ($(#[$meta:meta])* $name:ident { $( #[doc = $doc:literal] $field:ident : $type:ty => $bound:ident, )* }) => {
        $(#[$meta])*
        #[derive(Clone, Debug, PartialEq)]
        pub struct $name {
            /// Name in design files.
            pub id: String,
            /// Name for people.
            pub name: String,
            /// Class of material that it belongs to.
            pub family: String,
            /// Caution or explanation that belongs beside every result.
            pub note: Option<String>,
            $( #[doc = $doc] pub $field: $type, )*
        }

        impl $crate::material::schema::Rowed for $name {
            const FIELDS: &'static [$crate::material::schema::Field] = &[$($crate::material::schema::Field {
                name: stringify!($field),
                meaning: $doc,
                form: <$type as $crate::material::schema::Slot>::FORM,
                required: <$type as $crate::material::schema::Slot>::REQUIRED,
                bound: $crate::material::schema::$bound,
            }),*];

            fn build(row: &$crate::material::row::Row) -> Option<Self> {
                Some(Self {
                    id: row.id.clone(),
                    name: row.name.clone(),
                    family: row.family.clone(),
                    note: row.note.clone(),
                    $( $field: $crate::material::schema::Slot::take(row.cell(stringify!($field)))?, )*
                })
            }
        }
    };
}
pub(crate) use kind;
