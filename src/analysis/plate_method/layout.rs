//! The top in plan as a mesh: which lines its triangles follow, which region each lies in, what carries it where.

use std::f64::consts::PI;

use super::{
    PipeModel,
    conduits::{conduit_at, core_left, in_conduits},
    shells,
};
use crate::{
    analysis::{
        line::{Region, backing_at, region_at},
        sections::Sections,
    },
    finite_element::{
        Beam, Bed, Degree, Fields, Grouping, Held, Mechanism, Model, Plate, Sampler, Sharp, ShellStiffness, Side,
    },
    geometry::{Axis, Band, Point, Polyline},
    mesh::{Mesh, MeshError, Plan},
    top::{Support, Top},
    units::{BeamRigidity, Length, Pressure, Ratio},
};

/// How far the straight sides of triangles may leave a rounded rim, over the smaller side of the top.
const RIM_TOLERANCE: f64 = 1.0 / 400.0;

/// A stretch of the mesh along a line on which a support beds the top.
#[derive(Clone, Debug)]
pub(super) struct Stretch {
    /// The support, as its place in the list.
    pub(super) pipe: usize,
    /// Width of the bearing across the line.
    pub(super) seat: Length,
    pub(super) corners: Vec<usize>,
    /// The pipe, where it bends.
    beam: Option<Beam>,
}

/// The top in plan.
#[derive(Clone, Debug)]
pub(super) struct Net {
    pub(super) mesh: Mesh,
    /// Regions in the order in which they are counted.
    pub(super) regions: Vec<Region>,
    /// By triangle, its region; conduits are too narrow for triangles of their own.
    pub(super) of_triangle: Vec<usize>,
    /// By triangle, the share of the core's shear stiffness that conduits leave.
    core_left: Vec<Ratio>,
    pub(super) stretches: Vec<Stretch>,
    pub(super) disc: Length,
    /// Ends of supports and corners of backing.
    sharp: Vec<Point>,
}

impl Net {
    /// Triangles with sides that are a share of the usual.
    pub(super) fn new(top: &Top, sections: &Sections, sides: Ratio) -> Result<Self, MeshError> {
        let beds = top.bed_lines();
        let mut lines: Vec<Vec<Point>> = beds.iter().map(|(_, line)| line.along.points().to_vec()).collect();
        for backing in &top.backings {
            lines.push(border(&backing.along, backing.width));
        }
        let posts = lines.len();
        for pipe in &top.supports {
            lines.extend(pipe.posts().iter().map(|&at| vec![pipe.along.at(at)]));
        }
        // Shear changes over the depth of the core; the mean over a disc of its depth stands for what a line of seats
        // of that order of width does at its end.
        let disc = sections.field.lever(Axis::X) / 2.0;
        let least = top.outline.length().min(top.outline.width());
        let sharp = sharp_places(top);
        // What people press on as seen from the mid-plane: between triangles much larger than that their shear is lost.
        let foot = top.criteria.standing_footprint.value + disc * 2.0;
        let size = |place: Point| {
            let near = beds.iter().map(|(_, line)| line.along.distance(place)).fold(least, Length::min);
            let end = sharp.iter().map(|end| end.distance(place)).fold(least, Length::min);
            (least / 8.0 + near * 0.35).min(least / 6.0).min(foot * 1.7).min(disc * 3.0 + end) * sides.value
        };
        let tolerance = least * RIM_TOLERANCE;
        let outline = top.outline.contour().flattened(tolerance);
        let holes = top.outline.holes().iter().map(|hole| hole.contour.flattened(tolerance)).collect();
        let plan = Plan { outline, holes, lines, size: &size, merge: disc * 0.1 };
        let mesh = Mesh::new(&plan)?;
        let mut regions = vec![Region::Field];
        regions.extend((0..top.backings.len()).map(Region::Backing));
        regions.extend((0..top.conduits.len()).map(Region::Conduit));
        let of_triangle: Vec<usize> = mesh
            .triangles()
            .iter()
            .map(|corners| {
                let backing = backing_at(top, middle(&mesh, corners));
                backing.map_or(0, |backing| 1 + backing)
            })
            .collect();
        let core_left =
            mesh.triangles().iter().map(|corners| core_left(top, sections, corners.map(|k| mesh.nodes()[k])));
        let core_left = core_left.collect();
        let bends = top.beams();
        let mut post = posts;
        let mut stretches = Vec::new();
        for (line, (number, bed)) in beds.iter().enumerate() {
            // Pads have two lines and no posts, pipes one line.
            let posts = top.supports[*number].posts().len();
            let own: Vec<usize> =
                (post..post + posts).filter_map(|line| Some(*mesh.line(line).first()?.first()?)).collect();
            post += posts;
            for chain in mesh.line(line) {
                let posts = own.iter().copied().filter(|corner| chain.contains(corner)).collect();
                let rigidity = rigidity(&top.supports[*number]).filter(|_| bends[*number]);
                let beam = rigidity.map(|rigidity| Beam { rigidity, posts });
                stretches.push(Stretch { pipe: *number, seat: bed.seat, corners: chain.clone(), beam });
            }
        }
        Ok(Self { mesh, regions, of_triangle, core_left, stretches, disc, sharp })
    }

    /// How each pipe is taken.
    pub(super) fn pipe_models(&self, top: &Top) -> Vec<PipeModel> {
        (0..top.supports.len())
            .map(|number| {
                let mut own = self.stretches.iter().filter(|stretch| stretch.pipe == number);
                let bends = own.all(|stretch| stretch.beam.is_some());
                if bends { PipeModel::Beam } else { PipeModel::Rigid }
            })
            .collect()
    }

    /// The plate with a share of the core's stiffness left; `like` is one of the same degree, which spares work.
    pub(super) fn plate(
        &self,
        top: &Top,
        sections: &Sections,
        (degree, core_left): (Degree, Ratio),
        like: Option<&Plate>,
    ) -> Result<Plate, Mechanism> {
        let by_region: Vec<ShellStiffness> =
            self.regions.iter().map(|&region| shells::shell(top, sections.of(region), core_left)).collect();
        let fields = Fields::of(&by_region, top.thickness());
        let by_region: Vec<ShellStiffness> = match fields {
            Fields::Bending => by_region.into_iter().map(ShellStiffness::membrane_free).collect(),
            Fields::BendingAndStretching => by_region,
        };
        let beds: Vec<Bed> = self.stretches.iter().map(|stretch| self.bed(top, stretch)).collect();
        // A clamped edge holds the slope across it, and along it too, where nothing turns on a wall that does not give.
        let clamped = Held { rotations: [true; 2], ..Held::default() };
        let held: Vec<(Vec<usize>, Held)> = self
            .stretches
            .iter()
            .filter(|stretch| top.supports[stretch.pipe].clamps())
            .map(|stretch| (stretch.corners.clone(), clamped))
            .collect();
        let model = Model {
            corners: self.mesh.nodes(),
            triangles: self.mesh.triangles(),
            degree,
            fields,
            shells: &|triangle| by_region[self.of_triangle[triangle]].with_shear_left(self.core_left[triangle]),
            held: &held,
            beds: &beds,
        };
        match like {
            None => Plate::new(&model),
            Some(plate) => plate.of_other_stiffness(&model),
        }
    }

    /// What yields between the mid-plane and a support: half of the core, or of the backing in its place, under the seat.
    fn bed(&self, top: &Top, stretch: &Stretch) -> Bed {
        let pipe = &top.supports[stretch.pipe];
        let middle = stretch.corners[stretch.corners.len() / 2];
        let modulus: Pressure = match region_at(top, self.mesh.nodes()[middle]) {
            Region::Backing(index) => top.backings[index].board.compressive_modulus.value,
            Region::Field | Region::Conduit(_) => top.core.material.compressive_modulus.value,
        };
        // The push spreads at 45 degrees over the half of the core that it passes: on the mean by half of that on
        // either side.
        let half = top.core.thickness / 2.0;
        // Lines of one seat share what it spreads.
        let share = stretch.seat / pipe.seat;
        let stiffness = modulus * ((pipe.seat + half) / half * share);
        Bed { corners: stretch.corners.clone(), stiffness, beam: stretch.beam.clone() }
    }

    /// Samples of a plate. Under the middle of what moves the top is bent most, so that each of its places is one too.
    pub(super) fn sampler(&self, top: &Top, plate: &Plate, moving: impl Iterator<Item = Point>) -> Sampler {
        let sharp: Vec<Sharp> = self.sharp.iter().map(|&at| Sharp { at, radius: self.disc }).collect();
        let mut borne: Vec<[usize; 2]> = self.stretches.iter().flat_map(Stretch::sides).collect();
        borne.sort_unstable();
        let parted = |side: Side| {
            let [a, b] = side.triangles.map(|triangle| self.of_triangle[triangle]);
            a != b || borne.binary_search(&side.corners).is_ok()
        };
        let mut others: Vec<Point> = moving.collect();
        others.sort_by(|a, b| a.x.value.total_cmp(&b.x.value).then(a.y.value.total_cmp(&b.y.value)));
        others.dedup();
        others.extend(in_conduits(top, self.disc));
        Sampler::new(plate, &sharp, &others, &|place| self.mesh.holding(place), &parted)
    }

    pub(super) fn grouping(&self, top: &Top, sections: &Sections, sampler: &Sampler) -> Grouping {
        let levers = self.regions.iter().map(|&region| sections.of(region).lever(Axis::X)).collect();
        let deflections = self.judged(top, sampler);
        let first_conduit = 1 + top.backings.len();
        let regions = sampler.places().map(|(place, triangle)| {
            let conduit = conduit_at(top, place);
            conduit.map_or(self.of_triangle[triangle], |conduit| first_conduit + conduit)
        });
        let borders: Vec<Vec<Point>> =
            top.backings.iter().map(|backing| border(&backing.along, backing.width)).collect();
        let edges = sampler.places().map(|(place, triangle)| self.edge(&borders, place, triangle)).collect();
        Grouping {
            regions: regions.collect(),
            levers,
            edges,
            edge_groups: top.backings.len(),
            deflections,
            discs: self.sharp.clone(),
        }
    }

    /// The backing at whose edge a place of the field lies.
    fn edge(&self, borders: &[Vec<Point>], place: Point, triangle: usize) -> Option<usize> {
        if self.regions[self.of_triangle[triangle]] != Region::Field {
            return None;
        }
        let hair = self.disc * 1e-3;
        borders.iter().position(|border| {
            let sides = border.windows(2);
            sides.map(|side| off(place, side[0], side[1])).fold(self.disc, Length::min) < hair
        })
    }

    /// Distance to the nearest support that does not move: a wall, a pad, a rigid pipe, a post of one that bends.
    pub(super) fn to_support(&self, top: &Top, place: Point) -> Length {
        let distances = self.stretches.iter().map(|stretch| {
            let pipe = &top.supports[stretch.pipe];
            match &stretch.beam {
                None => pipe.distance(place),
                Some(beam) => {
                    let posts = beam.posts.iter().map(|&post| self.mesh.nodes()[post].distance(place));
                    posts.fold(top.outline.length() * 2.0, Length::min)
                }
            }
        });
        distances.fold(top.outline.length() * 2.0, Length::min)
    }
}

impl Net {
    /// What does not move, as far as it goes: rigid pipes from end to end, those that bend from their first post to their
    /// last. Beyond its last post a pipe hangs over too.
    pub(super) fn held(&self, top: &Top) -> Vec<Point> {
        let held = top.supports.iter().zip(self.pipe_models(top)).flat_map(|(support, model)| {
            if model == PipeModel::Rigid {
                return support.bed_lines().iter().flat_map(|line| line.along.points().to_vec()).collect();
            }
            let posts = || support.posts().iter().copied();
            let ends = posts().reduce(Length::min).zip(posts().reduce(Length::max));
            // A pipe that others carry has no post: all of it moves with them.
            let Some((first, last)) = ends else { return Vec::new() };
            let between = |point: &&Point| (first..=last).contains(&support.along.place(**point).along);
            let bends = support.along.points().iter().filter(between).copied();
            bends.chain([first, last].map(|post| support.along.at(post))).collect::<Vec<Point>>()
        });
        held.collect()
    }

    /// The region that a triangle lies in.
    pub(super) fn region(&self, triangle: usize) -> Region {
        self.regions[self.of_triangle[triangle]]
    }

    pub(super) fn middle(&self, triangle: usize) -> Point {
        middle(&self.mesh, &self.mesh.triangles()[triangle])
    }

    pub(super) fn corners(&self, triangle: usize) -> [Point; 3] {
        self.mesh.triangles()[triangle].map(|corner| self.mesh.nodes()[corner])
    }
}

impl Stretch {
    fn sides(&self) -> impl Iterator<Item = [usize; 2]> {
        self.corners.windows(2).map(|side| [side[0].min(side[1]), side[0].max(side[1])])
    }
}

/// Bending rigidity of a pipe of which wall and alloy are given. Below a hole the pipe goes on. Here it ends there, and its
/// stretches are held by the posts and joints that each has, or by the panel alone: more limber than the pipe is.
fn rigidity(support: &Support) -> Option<BeamRigidity> {
    let pipe = support.pipe()?;
    let (wall, alloy) = (pipe.wall?, pipe.alloy.as_ref()?);
    let inside = pipe.outside - wall * 2.0;
    let square = |d: Length| d * d;
    let second_moment = (square(pipe.outside) * square(pipe.outside) - square(inside) * square(inside)) * (PI / 64.0);
    Some(alloy.modulus.value * second_moment)
}

/// Ends of supports and corners of backing, those that nearly coincide once.
fn sharp_places(top: &Top) -> Vec<Point> {
    let nearest = top.core.thickness / 2.0;
    let ends = top.bed_lines().into_iter().flat_map(|(_, line)| line.along.ends());
    let corners = top.backings.iter().flat_map(|backing| {
        let border = border(&backing.along, backing.width);
        border[1..].to_vec()
    });
    let mut all: Vec<Point> = Vec::new();
    for place in ends.chain(corners) {
        let on_top = top.outline.within_by(place) > Length::default();
        if on_top && all.iter().all(|known| known.distance(place) > nearest) {
            all.push(place);
        }
    }
    all
}

/// Whether a place lies within the convex hull of points: no line through it has all of them on one side.
pub(super) fn in_hull(points: &[Point], place: Point) -> bool {
    let mut turns: Vec<f64> =
        points.iter().map(|point| (point.y - place.y).value.atan2((point.x - place.x).value)).collect();
    turns.sort_by(f64::total_cmp);
    let Some(&first) = turns.first() else { return false };
    let next = turns.iter().skip(1).copied().chain([first + 2.0 * PI]);
    turns.iter().zip(next).all(|(turn, next)| next - turn <= PI + 1e-9)
}

/// Distance of a place from the straight piece between two.
fn off(place: Point, from: Point, to: Point) -> Length {
    let length = from.distance(to);
    let [dx, dy] = [(to.x - from.x) / length, (to.y - from.y) / length];
    let along = (dx * (place.x - from.x) + dy * (place.y - from.y)).max(Length::default()).min(length);
    place.distance(Point { x: from.x + along * dx, y: from.y + along * dy })
}

pub(super) fn middle(mesh: &Mesh, corners: &[usize; 3]) -> Point {
    let [a, b, c] = corners.map(|corner| mesh.nodes()[corner]);
    Point { x: (a.x + b.x + c.x) / 3.0, y: (a.y + b.y + c.y) / 3.0 }
}

/// The border of a band about a line, its last place its first.
fn border(along: &Polyline, width: Length) -> Vec<Point> {
    let mut ring = Band { line: along, width }.border();
    ring.push(ring[0]);
    ring
}
