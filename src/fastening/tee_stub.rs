//! Plastic limit of a metal foot with a bolt on either side of its web.

use crate::units::{Force, Length, Pressure};

/// Foot of ductile metal: a web that pulls at the middle of a flange, bolts on either side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TeeStub {
    /// Thickness of the flange.
    pub thickness: Length,
    /// Yield stress of the flange; of its heat-affected zone where it is welded.
    pub yield_stress: Pressure,
    /// Width of flange that each yield line crosses; at most the width that there is.
    pub effective_length: Length,
    /// From the bolt to the face of the web, less 0.8 of the fillet.
    pub bolt_to_web: Length,
    /// From the bolt to the edge of the flange.
    pub bolt_to_edge: Length,
    /// What all bolts on both sides bear in pull.
    pub bolts: Force,
}

/// What gives way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TeeStubMode {
    /// Four yield lines: the flange bends at the web and at the bolts.
    FlangeYields,
    /// Yield lines at the web, and the bolts break under pull and prying.
    FlangeAndBolts,
    /// The bolts break; the flange stays straight.
    Bolts,
}

/// Pull that a foot bears.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TeeStubCapacity {
    /// Pull on the web.
    pub force: Force,
    /// What gives way at it.
    pub mode: TeeStubMode,
}

impl TeeStub {
    /// Largest pull on the web.
    ///
    /// ```text
    ///   M  = l t² f/4
    ///   F₁ = 4 M/m
    ///   F₂ = (2 M + n B)/(m + n)        n at most 1.25 m
    ///   F₃ = B
    ///   F  = min(F₁, F₂, F₃)
    /// ```
    ///
    /// | symbol | meaning                                 | field              |
    /// |--------|-----------------------------------------|--------------------|
    /// | *t*    | thickness of the flange                 | `thickness`        |
    /// | *f*    | yield stress                            | `yield_stress`     |
    /// | *l*    | effective length                        | `effective_length` |
    /// | *m*    | bolt to web                             | `bolt_to_web`      |
    /// | *n*    | bolt to edge                            | `bolt_to_edge`     |
    /// | *B*    | pull of all bolts                       | `bolts`            |
    ///
    /// # Validity
    ///
    /// Ductile flange on a base that does not give; on a soft base there is less prying, so this is safe. Not for cast or
    /// plastic feet: [`elastic_prying_factor`](super::elastic_prying_factor).
    ///
    /// # Source
    ///
    /// [`EN_1993_1_8`](crate::source::EN_1993_1_8), Table 6.2, method 1, before its partial factors (read in the draft
    /// prEN 1993-1-8 of December 2000, equations 6.5 to 6.9); for a given *n* the same as the lower bound of plastic
    /// theory.
    ///
    /// # Examples
    ///
    /// Flange 6 mm of 240 MPa, *l* = 80 mm, *m* = 20, *n* = 20 mm, bolts 20 kN together: *M* = 172.8 N·m, *F₁* = 34.56,
    /// *F₂* = (345.6 + 400)/40 = 18.64, *F₃* = 20 kN.
    ///
    /// ```
    /// use skinspan::{fastening::{TeeStub, TeeStubMode}, units::{Force, Length, Pressure}};
    /// use uom::si::{force::kilonewton, length::millimeter, pressure::megapascal};
    /// let mm = Length::new::<millimeter>;
    /// let foot = TeeStub {
    ///     thickness: mm(6.0),
    ///     yield_stress: Pressure::new::<megapascal>(240.0),
    ///     effective_length: mm(80.0),
    ///     bolt_to_web: mm(20.0),
    ///     bolt_to_edge: mm(20.0),
    ///     bolts: Force::new::<kilonewton>(20.0),
    /// };
    /// assert!((foot.capacity().force.get::<kilonewton>() - 18.64).abs() < 1e-9);
    /// assert_eq!(foot.capacity().mode, TeeStubMode::FlangeAndBolts);
    /// ```
    #[must_use]
    pub fn capacity(&self) -> TeeStubCapacity {
        let m = self.bolt_to_web;
        let longest = 1.25 * m;
        let n = if self.bolt_to_edge > longest { longest } else { self.bolt_to_edge };
        // Moment per length of lever, kept as the force that it makes on the lever *m*.
        let plastic = self.effective_length * self.thickness * self.thickness * self.yield_stress / (4.0 * m);
        let yielding = [
            (4.0 * plastic, TeeStubMode::FlangeYields),
            ((2.0 * plastic * m + n * self.bolts) / (m + n), TeeStubMode::FlangeAndBolts),
        ];
        let (force, mode) = yielding
            .into_iter()
            .fold((self.bolts, TeeStubMode::Bolts), |least, flange| if flange.0 < least.0 { flange } else { least });
        TeeStubCapacity { force, mode }
    }
}
