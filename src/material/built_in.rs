//! The tables that come with the program.

/// File name for messages, and text.
pub(crate) const TABLES: [(&str, &str); 22] = [
    ("built-in sources.toml", include_str!("../../materials/sources.toml")),
    ("built-in core.toml", include_str!("../../materials/core.toml")),
    ("built-in fabric.toml", include_str!("../../materials/fabric.toml")),
    ("built-in ply.toml", include_str!("../../materials/ply.toml")),
    ("built-in fibre.toml", include_str!("../../materials/fibre.toml")),
    ("built-in resin.toml", include_str!("../../materials/resin.toml")),
    ("built-in coat.toml", include_str!("../../materials/coat.toml")),
    ("built-in board.toml", include_str!("../../materials/board.toml")),
    ("built-in filler.toml", include_str!("../../materials/filler.toml")),
    ("built-in conduit.toml", include_str!("../../materials/conduit.toml")),
    ("built-in alloy.toml", include_str!("../../materials/alloy.toml")),
    ("built-in fastener.toml", include_str!("../../materials/fastener.toml")),
    ("built-in thread.toml", include_str!("../../materials/thread.toml")),
    ("built-in screw.toml", include_str!("../../materials/screw.toml")),
    ("built-in insert.toml", include_str!("../../materials/insert.toml")),
    ("built-in potted_insert.toml", include_str!("../../materials/potted_insert.toml")),
    ("built-in rivet.toml", include_str!("../../materials/rivet.toml")),
    ("built-in stud.toml", include_str!("../../materials/stud.toml")),
    ("built-in adhesive.toml", include_str!("../../materials/adhesive.toml")),
    ("built-in lubrication.toml", include_str!("../../materials/lubrication.toml")),
    ("built-in body.toml", include_str!("../../materials/body.toml")),
    ("built-in galvanic.toml", include_str!("../../materials/galvanic.toml")),
];
