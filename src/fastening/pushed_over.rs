//! A stub that is pushed over in what it is bedded in, by a force at or above its mouth.

use crate::units::{Force, Length, Pressure};

/// A stiff stub: an insert in its potting, or a plug of potting in the core below a skin.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stub {
    /// Diameter that bears.
    pub diameter: Length,
    /// Depth of the bed.
    pub depth: Length,
    /// Pressure at which the bed gives way.
    pub bed: Pressure,
    /// What can hold it at the mouth of the bed besides: a skin that bears on it; zero where nothing does.
    pub mouth: Force,
    /// What can hold it at the bottom of the bed besides; zero where nothing does.
    pub end: Force,
    /// From the mouth up to the force.
    pub lever: Length,
}

impl Stub {
    /// Force from the side at which it is pushed over.
    ///
    /// ```text
    ///   q = p d
    ///   F = the less of the end's hold and [(B + q h) e + q h²/2]/(h + e)
    ///   B = the less of the mouth's hold and q h + F + (q h²/2 + F h)/e
    ///   V = B − F + q [√(4 e (h + (F − B)/q) + 4 e² + 2 h² + 4 h F/q) − h − 2 e]
    /// ```
    ///
    /// | symbol | meaning                                        | field      |
    /// |--------|------------------------------------------------|------------|
    /// | *p*    | pressure at which the bed gives way            | `bed`      |
    /// | *d*    | diameter that bears                            | `diameter` |
    /// | *h*    | depth of the bed                               | `depth`    |
    /// | *B*    | what holds it at the mouth                     | `mouth`    |
    /// | *F*    | what holds it at the bottom                    | `end`      |
    /// | *e*    | from the mouth up to the force                 | `lever`    |
    ///
    /// It turns about a point in its depth: above it the bed presses back, below it the other way. With nothing at
    /// mouth and end and no lever that is the straight dowel of
    /// [`DowelMode::Turned`](super::DowelMode::Turned); with a lever and a strong mouth it turns about that, and
    /// *V* = (*q h*²/2 + *F h*)/*e*.
    ///
    /// # Validity
    ///
    /// Stub stiff, bed plastic; a bed that breaks off reaches less. Friction and a foot that clamps its head are left
    /// out.
    ///
    /// # Source
    ///
    /// [`DERIVED`](crate::source::DERIVED): equilibrium of forces and of moments about the mouth, all of the bed at its
    /// limit.
    ///
    /// # Examples
    ///
    /// *q* = 10 MPa × 10 mm = 100 N/mm, *h* = 20 mm: free at both ends, 2000 (√2 − 1) = 828.4 N; 10 mm above it,
    /// 100 (√(40 × 20 + 400 + 800) − 40) = 472.1 N; held at its mouth by 500 N,
    /// 500 + 100 (√(40 × 15 + 400 + 800) − 40) = 742.6 N; at its end by 300 N as well,
    /// 200 + 100 (√(40 × 18 + 400 + 800 + 240) − 40) = 847.6 N.
    ///
    /// ```
    /// use skinspan::{fastening::Stub, units::{Force, Length, Pressure}};
    /// use uom::si::{force::newton, length::millimeter, pressure::megapascal};
    /// let (mm, newtons) = (Length::new::<millimeter>, Force::new::<newton>);
    /// let force = |mouth: f64, end: f64, lever: f64| {
    ///     let bed = Pressure::new::<megapascal>(10.0);
    ///     let (mouth, end, lever) = (newtons(mouth), newtons(end), mm(lever));
    ///     Stub { diameter: mm(10.0), depth: mm(20.0), bed, mouth, end, lever }.force().get::<newton>()
    /// };
    /// assert!((force(0.0, 0.0, 0.0) - 828.4).abs() < 0.1);
    /// assert!((force(0.0, 0.0, 10.0) - 472.1).abs() < 0.1);
    /// assert!((force(500.0, 0.0, 10.0) - 742.6).abs() < 0.1);
    /// assert!((force(500.0, 300.0, 10.0) - 847.6).abs() < 0.1);
    /// ```
    #[must_use]
    pub fn force(&self) -> Force {
        let (h, e) = (self.depth, self.lever);
        let q = self.bed * self.diameter;
        let whole: Force = q * h;
        if whole <= Force::default() {
            // Without a bed it stands on its two ends, and is only looked at where it has one.
            return if e > Length::default() { Force::default() } else { self.mouth };
        }
        let turning = |mouth: Force| (mouth + whole) * (e / (h + e)) + whole * (h / (2.0 * (h + e)));
        let end = self.end.min(turning(self.mouth));
        let mouth = if e > Length::default() {
            self.mouth.min(whole + end + whole * (h / (2.0 * e)) + end * (h / e))
        } else {
            self.mouth
        };
        let unheld: Length = (whole + end - mouth) / q;
        let by_end: Length = end / q;
        let reach: Length = (4.0 * e * unheld + 4.0 * e * e + 2.0 * h * h + 4.0 * h * by_end).sqrt();
        let turned: Length = reach - h - 2.0 * e;
        mouth - end + q * turned
    }
}
