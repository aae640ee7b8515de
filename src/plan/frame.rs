//! What carries the top: pipes on their posts, walls and pads.

use super::{
    Item, Line, LineKind, Shape,
    gear::foot,
    inlay::{border, centre, label},
};
use crate::{
    geometry::Band,
    top::{Carrier, Top},
};

pub(super) fn pipes(top: &Top) -> Vec<Item> {
    let pipes = top.supports.iter().filter_map(|support| Some((support, support.pipe()?)));
    pipes
        .map(|(support, pipe)| {
            let sides = |width, kind| {
                let sides = Band { line: &support.along, width }.sides();
                sides.map(|side| Shape::Line(Line::straight(side, false, kind)))
            };
            let mut shapes = vec![centre(&support.along)];
            shapes.extend(sides(pipe.outside, LineKind::Edge));
            shapes.extend(sides(support.seat, LineKind::Inner));
            shapes.push(label(&support.name, &support.along));
            Item { name: support.name.clone(), shapes }
        })
        .collect()
}

pub(super) fn posts(top: &Top) -> Vec<Item> {
    let mut items = Vec::new();
    for (support, pipe) in top.supports.iter().filter_map(|support| Some((support, support.pipe()?))) {
        for (number, station) in (1..).zip(&pipe.posts) {
            let at = support.along.at(*station);
            let shapes = vec![Shape::Circle { centre: at, diameter: pipe.outside }, Shape::Cross { at }];
            items.push(Item { name: format!("{}, post {number}", support.name), shapes });
        }
    }
    items
}

pub(super) fn seats(top: &Top) -> Vec<Item> {
    let item = |support: &crate::top::Support| {
        let shapes = match &support.carrier {
            Carrier::Pipe(_) => return None,
            Carrier::Wall(_) => vec![
                border(&support.along, support.seat, LineKind::Edge),
                centre(&support.along),
                label(&support.name, &support.along),
            ],
            Carrier::Pad(pad) => {
                vec![foot(pad.foot, pad.at), Shape::Cross { at: pad.at }, label(&support.name, &support.along)]
            }
        };
        Some(Item { name: support.name.clone(), shapes })
    };
    top.supports.iter().filter_map(item).collect()
}
