//! A person anywhere on a bay.

use super::{
    Bay,
    edge::Beside,
    effect::{Effect, Patch, one_newton},
    worst::worst_places,
};
use crate::{
    closed_form::plate::{PlateFault, PlateSeries},
    units::{ForcePerWidth, Length, MomentPerWidth, Ratio},
};

/// Under one newton on a footprint, at the worst place for each result.
pub(super) fn anywhere(bay: &Bay, series: &PlateSeries, footing: Length, skins: Length) -> Result<Effect, PlateFault> {
    let size = bay.sides.map(|side| footing.min(side));
    let held = series.held(bay.holds);
    let places = [0, 1].map(|i| (size[i] / 2.0, bay.sides[i] / 2.0));
    let force = one_newton();
    let [sag, mx, my] = worst_places(places, |xs, ys| {
        let under = series.under_patch(force, size, xs, ys)?;
        Ok(under.iter().map(|under| [under.deflection.value, under.mx.value, under.my.value]).collect())
    })?;
    let [over_x, over_y] = worst_places(places, |xs, ys| {
        let over = held.under_patch(force, size, xs, ys)?;
        Ok(over.iter().map(|over| over.each_ref().map(|edge| edge.hogging.value.abs())).collect())
    })?;
    // The shear is largest with the patch beside a pipe, unless a hold draws more to it from further off.
    let beside = Beside { series, held: &held, skins };
    let mut shear = ForcePerWidth::default();
    let mut push = [ForcePerWidth::default(); 2];
    let mut numerical_error = Ratio::default();
    for away in [0.5, 1.0, 1.5] {
        let middle = [bay.sides[0] / 2.0, bay.sides[1] / 2.0];
        for at in [[size[0] * away, middle[1]], [middle[0], size[1] * away]] {
            let patch = Patch::within(bay, size, at);
            let edges = beside.under(&patch.load, patch.centre)?;
            push = [0, 1].map(|i| push[i].max(edges.push[i]));
            let here = edges.shear[0].max(edges.shear[1]);
            if here > shear {
                (shear, numerical_error) = (here, edges.shear_error());
            }
        }
    }
    for (worst, is_moment) in [(&sag, false), (&mx, true), (&my, true)] {
        let patch = Patch::within(bay, size, worst.place);
        let error = series.at(&patch.load, patch.centre)?.numerical_error;
        let error = if is_moment { error.moment } else { error.deflection };
        numerical_error = numerical_error.max(error + worst.missed);
    }
    let moments: [MomentPerWidth; 4] = [mx.value(), my.value(), over_x.value(), over_y.value()];
    let largest = moments.into_iter().fold(MomentPerWidth::default(), MomentPerWidth::max);
    for (i, worst) in [&over_x, &over_y].into_iter().enumerate() {
        let cut_off = held.cut_off(&Patch::within(bay, size, worst.place).load)?;
        if largest > MomentPerWidth::default() {
            numerical_error = numerical_error.max(worst.missed + cut_off[i].hogging / largest);
        }
    }
    Ok(Effect {
        middle: [mx.value(), my.value()],
        over_pipes: [over_x.value(), over_y.value()],
        shear,
        push: [push[1], push[1], push[0], push[0]],
        sag: sag.value(),
        numerical_error,
    })
}
