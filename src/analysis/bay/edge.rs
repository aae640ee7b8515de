//! What the edges of a bay see: moments and shears beside the load, and the push on the pipes.

use crate::{
    closed_form::plate::{HeldCutOff, HeldEdge, HeldEdges, PlateFault, PlateLoad, PlatePoint, PlateSeries},
    units::{ForcePerWidth, Length, MomentPerWidth, Ratio, per_width, plain},
};

/// The edges `x = 0` and `y = 0` of a plate, held.
#[derive(Clone, Copy)]
pub(super) struct Beside<'a> {
    pub series: &'a PlateSeries,
    pub held: &'a HeldEdges<'a>,
    /// Distance of the skins: no shear is resolved over less.
    pub skins: Length,
}

/// Results on the edges `x = 0` and `y = 0`, beside the middle of a load.
#[derive(Clone, Copy)]
pub(super) struct AtEdges {
    pub hogging: [MomentPerWidth; 2],
    pub shear: [ForcePerWidth; 2],
    /// Push on the pipe.
    pub push: [ForcePerWidth; 2],
    moment_error: MomentPerWidth,
    shear_error: Ratio,
}

impl Beside<'_> {
    /// Beside the middle of a load.
    ///
    /// ```text
    /// Q = Qx + added          R = Q + [Mxy(y + d/2) − Mxy(y − d/2)]/d          at x = 0, and the other way round
    /// ```
    ///
    /// The plate's edges hold its twist; a pipe does not, and bears it as a push that changes along it. The core beside
    /// the pipe is taken to bear the larger of both.
    pub fn under(&self, load: &PlateLoad, [x, y]: [Length; 2]) -> Result<AtEdges, PlateFault> {
        let (edge, [a, b], half) = ([Length::default()], self.series.sides(), self.skins / 2.0);
        // The middle of the load, and the two places beside it between which the twist is seen to change.
        let seen = |along: Length, side: Length| [along, (along - half).max(edge[0]), (along + half).min(side)];
        let (ys, xs) = (seen(y, b), seen(x, a));
        let (along_y, along_x) = (self.series.at_grid(load, &edge, &ys)?, self.series.at_grid(load, &xs, &edge)?);
        let ends = [along_y[0], along_x[0]];
        let held: [HeldEdge; 2] = self.held.at(load)?;
        let cut_off: [HeldCutOff; 2] = self.held.cut_off(load)?;
        let shear = [ends[0].qx + held[0].added_shear, ends[1].qy + held[1].added_shear];
        let twist = |points: &[PlatePoint], [_, from, to]: [Length; 3]| -> ForcePerWidth {
            per_width(plain(points[2].mxy - points[1].mxy) / (to - from))
        };
        let push = [shear[0] + twist(&along_y, ys), shear[1] + twist(&along_x, xs)];
        let error = |i: usize| {
            let most = shear[i].abs();
            if most > ForcePerWidth::default() {
                ends[i].numerical_error.shear + cut_off[i].added_shear / most
            } else {
                Ratio::default()
            }
        };
        // The error of the edge that bears more: what the other bears decides nothing.
        let shear_error = error(usize::from(shear[1].abs() > shear[0].abs()));
        Ok(AtEdges {
            hogging: held.map(|edge| edge.hogging),
            shear: [0, 1].map(|i| shear[i].max(push[i])),
            push,
            moment_error: cut_off[0].hogging.max(cut_off[1].hogging),
            shear_error,
        })
    }
}

impl AtEdges {
    /// Push on four pipes, with the results of the opposite edges; in the order of [`Bay::pipes`](super::Bay).
    pub fn on_pipes(&self, opposite: &Self) -> [ForcePerWidth; 4] {
        [self.push[1], opposite.push[1], self.push[0], opposite.push[0]]
    }

    /// What the terms left out may amount to: of the shear, and of the moments over the largest of all.
    pub fn error_beside(&self, middle: [MomentPerWidth; 2]) -> Ratio {
        let largest = middle
            .into_iter()
            .chain(self.hogging)
            .fold(MomentPerWidth::default(), |largest, moment| largest.max(moment.abs()));
        let over_pipes =
            if largest > MomentPerWidth::default() { self.moment_error / largest } else { Ratio::default() };
        self.shear_error.max(over_pipes)
    }

    /// The error of the larger shear.
    pub fn shear_error(&self) -> Ratio {
        self.shear_error
    }
}

#[cfg(test)]
mod tests {
    use uom::si::{force::newton, length::meter, pressure::pascal};

    use super::*;
    use crate::{
        closed_form::plate::{EdgeHold, HalfWaves, Plate, PlateStiffness},
        units::{Force, Pressure},
    };

    fn m(x: f64) -> Length {
        Length::new::<meter>(x)
    }

    /// A thin square, simply supported: shear 0.338 q a, and push with the twist 0.420 q a, both for ν = 0.3 in the middle
    /// of the sides (Timoshenko and Woinowsky-Krieger, table 8, from memory).
    #[test]
    fn a_pipe_bears_the_twist_of_the_plate() {
        /// Three printed digits; the mean over 2 % of the side.
        const PRINTED: f64 = 3e-3;
        let d = per_width(Force::new::<newton>(1000.0) * m(1.0));
        let s = per_width(Force::new::<newton>(1e9) / m(1.0));
        let stiffness = PlateStiffness::isotropic(d, Ratio::from(0.3), s);
        let plate = Plate::new(m(1.0), m(1.0), stiffness).expect("a plate");
        let series = plate.series([64, 64], HalfWaves::Odd);
        let held = series.held([EdgeHold::Overhang(m(0.0)); 2]);
        let load = PlateLoad::Uniform(Pressure::new::<pascal>(1.0));
        let beside = Beside { series: &series, held: &held, skins: m(0.02) };
        let edges = beside.under(&load, [m(0.5), m(0.5)]).expect("on the plate");
        for i in 0..2 {
            let bare = series.at(&load, [[m(0.0), m(0.5)], [m(0.5), m(0.0)]][i]).expect("on the plate");
            assert!((bare.qx.max(bare.qy).value / 0.338 - 1.0).abs() < PRINTED, "{bare:?}");
            assert!((edges.push[i].value / 0.420 - 1.0).abs() < PRINTED, "{:?}", edges.push);
            assert_eq!(edges.shear[i], edges.push[i], "the larger of both");
        }
    }
}
