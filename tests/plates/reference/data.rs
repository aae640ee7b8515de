//! What stands in the files.

use serde::Deserialize;

#[derive(Deserialize)]
pub struct Sides {
    pub length_x: f64,
    pub length_y: f64,
}

#[derive(Deserialize)]
#[serde(default, deny_unknown_fields)]
#[derive(Default)]
#[expect(non_snake_case, reason = "names of the data")]
pub struct Stiffnesses {
    pub D11: f64,
    pub D12: f64,
    pub D22: f64,
    pub D66: f64,
    pub D16: f64,
    pub D26: f64,
    pub Sx: f64,
    pub Sy: f64,
    pub A11: f64,
    pub A12: f64,
    pub A22: f64,
    pub A66: f64,
    pub ky: f64,
}

#[derive(Clone, Copy, Deserialize)]
pub struct Area {
    pub x0: f64,
    pub x1: f64,
    pub y0: f64,
    pub y1: f64,
}

impl Area {
    pub fn holds(&self, [x, y]: [f64; 2]) -> bool {
        x > self.x0 && x < self.x1 && y > self.y0 && y < self.y1
    }
}

#[derive(Deserialize)]
pub struct Region {
    #[serde(flatten)]
    pub area: Area,
    pub bending_factor: f64,
    pub shear_factor: f64,
}

#[derive(Deserialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Kind {
    Line {
        holds: Vec<String>,
    },
    Bed {
        stiffness: f64,
    },
    Beam {
        #[serde(rename = "EI")]
        ei: f64,
        posts: Vec<[f64; 2]>,
    },
}

#[derive(Deserialize)]
pub struct Support {
    pub name: String,
    #[serde(flatten)]
    pub kind: Kind,
    #[serde(flatten)]
    pub area: Area,
}

impl Support {
    pub fn is_pad(&self) -> bool {
        matches!(self.kind, Kind::Bed { .. })
    }
}

#[derive(Deserialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Pressing {
    Pressure {
        pressure: f64,
    },
    Patch {
        force: f64,
        #[serde(flatten)]
        area: Area,
    },
    Heat {
        moment: f64,
        #[serde(flatten)]
        area: Option<Area>,
    },
}

#[derive(Deserialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Quantity {
    Deflection {
        x: f64,
        y: f64,
    },
    Mean {
        of: String,
        #[serde(flatten)]
        area: Area,
    },
    Reaction {
        support: String,
        x0: Option<f64>,
        x1: Option<f64>,
    },
    BedForce {
        support: String,
    },
    PostForce {
        support: String,
        x: f64,
    },
    BeamMoment {
        support: String,
        x0: f64,
        x1: f64,
    },
    StrainEnergy,
}

#[derive(Deserialize)]
pub struct Named {
    pub name: String,
    #[serde(flatten)]
    pub quantity: Quantity,
    pub value: f64,
    pub error: f64,
}

#[derive(Deserialize)]
pub struct Problem {
    pub plate: Sides,
    pub stiffness: Stiffnesses,
    #[serde(default)]
    pub pins: Vec<(f64, f64, String)>,
    #[serde(default)]
    pub region: Vec<Region>,
    pub support: Vec<Support>,
    pub load: Vec<Pressing>,
    pub result: Vec<Named>,
}
