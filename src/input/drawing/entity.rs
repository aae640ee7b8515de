//! What is drawn, as pieces of lines.

use std::f64::consts::{PI, TAU};

use kurbo::{Arc, PathEl, Point, Vec2};

use super::{super::problem::Problem, dxf::Entity, path::Path, spline};

/// Notes that lie on a layer and draw no line.
const NOTES: [&str; 14] = [
    "TEXT",
    "MTEXT",
    "DIMENSION",
    "ARC_DIMENSION",
    "LEADER",
    "MULTILEADER",
    "POINT",
    "HATCH",
    "ATTDEF",
    "ATTRIB",
    "VIEWPORT",
    "TOLERANCE",
    "IMAGE",
    "WIPEOUT",
];

/// The line of an entity; none of a note. Curves that are no circles become chords within `tolerance`.
pub(super) fn path(entity: &Entity<'_>, tolerance: f64) -> Result<Option<Path>, Problem> {
    if NOTES.contains(&entity.kind) {
        return Ok(None);
    }
    let from_below = seen_from_below(entity)?;
    let path = match entity.kind {
        "LINE" => {
            let (from, to) = (place(entity, 10)?, place(entity, 11)?);
            return Ok(Some(Path { pieces: vec![(from, 0.0)], end: Some(to) }));
        }
        // Their places stand in the model itself, whichever side they are seen from.
        "ELLIPSE" => return ellipse(entity, from_below, tolerance).map(Some),
        "SPLINE" => return spline::path(entity, tolerance).map(Some),
        "CIRCLE" => {
            let (centre, radius) = (place(entity, 10)?, radius(entity)?);
            let end = |out: f64| (Point::new(centre.x + out, centre.y), 1.0);
            Path { pieces: vec![end(-radius), end(radius)], end: None }
        }
        "ARC" => arc(entity)?,
        "LWPOLYLINE" => light_polyline(entity)?,
        "POLYLINE" => polyline(entity)?,
        other => {
            return Err(Problem::at(entity.range.clone(), format!("a line of {other} cannot be read")).help(
                "explode it into lines and arcs, or move it to another layer; lines, arcs, circles, ellipses, splines \
                 and polylines can be read",
            ));
        }
    };
    Ok(Some(if from_below { mirrored(path) } else { path }))
}

/// Whether an entity is drawn in plan, seen from below.
fn seen_from_below(entity: &Entity<'_>) -> Result<bool, Problem> {
    let [x, y, z] = [(210, 0.0), (220, 0.0), (230, 1.0)].map(|(code, usual)| entity.number_or(code, usual));
    let (x, y, z) = (x?, y?, z?);
    if x.hypot(y) <= 1e-6 * z.abs() && z != 0.0 {
        return Ok(z < 0.0);
    }
    Err(Problem::at(entity.range.clone(), format!("this {} is not drawn in plan", entity.kind))
        .help("flatten the drawing: the outline lies in the plane of x and y"))
}

fn mirrored(path: Path) -> Path {
    let flip = |at: Point| Point::new(-at.x, at.y);
    Path { pieces: path.pieces.into_iter().map(|(at, bulge)| (flip(at), -bulge)).collect(), end: path.end.map(flip) }
}

fn place(entity: &Entity<'_>, code: i32) -> Result<Point, Problem> {
    Ok(Point::new(entity.number(code)?, entity.number(code + 10)?))
}

fn radius(entity: &Entity<'_>) -> Result<f64, Problem> {
    let radius = entity.number(40)?;
    if radius > 0.0 {
        return Ok(radius);
    }
    Err(Problem::at(entity.range.clone(), format!("this {} has no radius", entity.kind)))
}

/// In two halves, so that one that goes almost all round stays exact.
fn arc(entity: &Entity<'_>) -> Result<Path, Problem> {
    let (centre, radius) = (place(entity, 10)?, radius(entity)?);
    let (from, to) = (entity.number(50)?.to_radians(), entity.number(51)?.to_radians());
    let sweep = match (to - from).rem_euclid(TAU) {
        0.0 => TAU,
        sweep => sweep,
    };
    let at = |angle: f64| centre + radius * Vec2::from_angle(angle);
    let bulge = (sweep / 8.0).tan();
    Ok(Path { pieces: vec![(at(from), bulge), (at(from + sweep / 2.0), bulge)], end: Some(at(from + sweep)) })
}

/// A chain of places with bulges, closed or not.
fn chain(entity: &Entity<'_>, mut pieces: Vec<(Point, f64)>, closed: bool) -> Result<Path, Problem> {
    if pieces.len() < 2 {
        return Err(Problem::at(entity.range.clone(), format!("this {} has fewer than two places", entity.kind)));
    }
    let end = if closed { None } else { pieces.pop().map(|(at, _)| at) };
    Ok(Path { pieces, end })
}

fn light_polyline(entity: &Entity<'_>) -> Result<Path, Problem> {
    let mut pieces: Vec<(Point, f64)> = Vec::new();
    for group in &entity.groups {
        match (group.code, pieces.last_mut()) {
            (10, _) => pieces.push((Point::new(group.number()?, 0.0), 0.0)),
            (20, Some(piece)) => piece.0.y = group.number()?,
            (42, Some(piece)) => piece.1 = group.number()?,
            _ => {}
        }
    }
    chain(entity, pieces, entity.flags(70)? & 1 == 1)
}

fn polyline(entity: &Entity<'_>) -> Result<Path, Problem> {
    /// A mesh of either kind.
    const MESH: i64 = 16 | 64;
    /// A vertex that only steers the curve through others.
    const STEERS: i64 = 16;
    let flags = entity.flags(70)?;
    if flags & MESH != 0 {
        return Err(Problem::at(entity.range.clone(), "this POLYLINE is a mesh")
            .help("draw the outline as a line, or move the mesh to another layer"));
    }
    let mut pieces = Vec::new();
    for vertex in &entity.vertices {
        if vertex.flags(70)? & STEERS == 0 {
            pieces.push((place(vertex, 10)?, vertex.number_or(42, 0.0)?));
        }
    }
    chain(entity, pieces, flags & 1 == 1)
}

fn ellipse(entity: &Entity<'_>, from_below: bool, tolerance: f64) -> Result<Path, Problem> {
    let (centre, major, ratio) = (place(entity, 10)?, place(entity, 11)?.to_vec2(), entity.number(40)?);
    let (from, to) = (entity.number_or(41, 0.0)?, entity.number_or(42, TAU)?);
    if !(major.hypot() > 0.0 && ratio > 0.0) {
        return Err(Problem::at(entity.range.clone(), "this ELLIPSE has no size"));
    }
    let sweep = match (to - from).rem_euclid(TAU) {
        sweep if sweep < 1e-9 => TAU,
        sweep => sweep,
    };
    // Seen from below the minor axis lies on the other side, and the angle runs the other way.
    let way = if from_below { -1.0 } else { 1.0 };
    let arc = Arc::new(centre, (major.hypot(), major.hypot() * ratio), way * from, way * sweep, major.angle());
    let at = |angle: f64| {
        let minor = way * ratio * Vec2::new(-major.y, major.x);
        centre + angle.cos() * major + angle.sin() * minor
    };
    let start = at(from);
    let mut places = vec![start];
    let tolerance = tolerance.max(1e-6 * major.hypot());
    let curves = std::iter::once(PathEl::MoveTo(start)).chain(arc.append_iter(0.1 * tolerance));
    kurbo::flatten(curves, tolerance, |element| {
        if let PathEl::LineTo(place) = element {
            places.push(place);
        }
    });
    let end = places.pop();
    let pieces = places.into_iter().map(|place| (place, 0.0)).collect();
    Ok(Path { pieces, end: if (TAU - sweep).abs() < 1e-9 * PI { None } else { end } })
}
