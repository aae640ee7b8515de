//! Tops for the tests: SI, by a few of their sizes.

use std::{fs, path::Path, sync::LazyLock};

use skinspan::{
    input::{NamedText, read_design, read_tables},
    order::{Order, order},
    top::Top,
};
use uom::si::{
    area::square_meter,
    length::{meter, millimeter},
    mass::kilogram,
};

/// Rounding of sums of numbers that are worked out by hand.
pub const ROUNDING: f64 = 1e-9;

/// A top of which a test says outline, edge and what else.
pub struct Made<'a> {
    pub outline: &'a str,
    pub outer: &'a str,
    pub edge: &'a str,
    pub rest: &'a str,
}

pub const RECTANGLE: &str = "{ length = \"2000 mm\", width = \"1000 mm\" }";
pub const OUTER: &str =
    "[\"gelcoat 0.6 kg/m2\", \"mat 300 g/m2, fibre 30 %\", \"biaxial 600 g/m2 @ 0 deg, fibre 50 %\"]";
pub const EDGE: &str = "edge = { setback = \"40 mm\", fill = \"putty-glass-bubble\" }";
pub const WALLS: &str = "[[wall]]\nname = \"fore\"\nseat = \"30 mm\"\nalong = [[\"50 mm\", \"50 mm\"], [\"50 mm\", \"950 mm\"]]\n\
                         [[wall]]\nname = \"aft\"\nseat = \"30 mm\"\nalong = [[\"1950 mm\", \"50 mm\"], [\"1950 mm\", \"950 mm\"]]\n";

impl Default for Made<'_> {
    fn default() -> Self {
        Self { outline: RECTANGLE, outer: OUTER, edge: EDGE, rest: "" }
    }
}

impl Made<'_> {
    pub fn text(&self) -> NamedText {
        let Self { outline, outer, edge, rest } = self;
        let text = format!(
            "title = \"made\"\nreport = \"si\"\n\
             [top]\noutline = {outline}\nprocess = \"hand\"\nresin = \"vinylester\"\nouter = {outer}\n\
             core = {{ material = \"pvc-foam\", density = \"80 kg/m3\", thickness = \"25.4 mm\" }}\n\
             inner = [\"biaxial 600 g/m2 @ 0 deg, fibre 50 %\"]\n{edge}\n\
             {WALLS}{rest}\n\
             [service]\nspeed = \"20 kn\"\nstorm = \"30 m/s\"\ntrailer = \"none\"\nslam = \"none\"\npeople = 0\n\
             walking = \"no-walk\"\nunderside = \"blocked\"\nsun = \"none\"\n"
        );
        NamedText { name: "made.toml".to_owned(), text }
    }

    pub fn top(&self) -> Top {
        let table = read_tables(&[]).expect("the built-in table");
        read_design(&self.text(), &table, None).unwrap_or_else(|problems| panic!("{}", problems[0].render(false)))
    }

    pub fn order(&self) -> (Top, Order) {
        let top = self.top();
        let order = order(&top);
        (top, order)
    }

    /// What is said of a file that is wrong.
    pub fn refused(&self) -> String {
        let table = read_tables(&[]).expect("the built-in table");
        let problems = read_design(&self.text(), &table, None).expect_err("a fault in the file");
        problems.iter().map(|file| file.render(false)).collect()
    }
}

/// Every example that describes a whole top, with what is bought for it: ordered once for all tests.
pub static ORDERED: LazyLock<Vec<(String, Top, Order)>> = LazyLock::new(|| {
    let ordered = |(name, top)| {
        let order = order(&top);
        (name, top, order)
    };
    examples().into_iter().map(ordered).collect()
});

fn examples() -> Vec<(String, Top)> {
    let table = read_tables(&[]).expect("the built-in table");
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/examples");
    let mut names: Vec<String> = fs::read_dir(folder)
        .expect("examples")
        .map(|entry| entry.expect("an entry").file_name().into_string().expect("a name"))
        .filter(|name| Path::new(name).extension().is_some_and(|extension| extension == "toml"))
        .collect();
    names.sort();
    let read = |name: String| {
        let text = fs::read_to_string(format!("{folder}/{name}")).expect("an example");
        let whole = text.contains("\n[top]") && !text.contains("drawing =");
        whole.then(|| {
            let named = NamedText { name: name.clone(), text };
            (name, read_design(&named, &table, None).expect("an example without fault"))
        })
    };
    names.into_iter().filter_map(read).collect()
}

pub fn count(of: usize) -> f64 {
    f64::from(u32::try_from(of).expect("a count"))
}

pub fn kg(mass: skinspan::units::Mass) -> f64 {
    mass.get::<kilogram>()
}

pub fn m(length: skinspan::units::Length) -> f64 {
    length.get::<meter>()
}

pub fn mm(length: skinspan::units::Length) -> f64 {
    length.get::<millimeter>()
}

pub fn m2(area: skinspan::units::Area) -> f64 {
    area.get::<square_meter>()
}

#[track_caller]
pub fn near(found: f64, expected: f64) {
    assert!((found - expected).abs() <= ROUNDING * expected.abs().max(1.0), "{found} is not {expected}");
}
