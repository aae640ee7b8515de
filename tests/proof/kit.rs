//! Tops for the tests.

use std::{
    fs,
    sync::{Arc, LazyLock, Mutex, OnceLock},
};

use skinspan::{
    analysis::{Analysis, PlateMethod},
    geometry::{Foot, Point},
    input::{NamedText, read_design, read_tables},
    load_case::{Duration, LoadCase, State},
    proof::{GaugeAt, NoProof, Proof, Readings, Row, Wanted, proof},
    top::{Gear, Top},
    units::{Area, Length, Ratio},
};
use uom::si::length::millimeter;

/// A flat rectangle on walls at its ends, in SI; `service` says what presses on it, `rest` what else.
pub fn text(service: &str, rest: &str) -> NamedText {
    let text = format!(
        "title = \"strip\"\nreport = \"si\"\n\
         [top]\noutline = {{ length = \"2400 mm\", width = \"700 mm\" }}\nprocess = \"hand\"\nresin = \"vinylester\"\n\
         outer = [\"3 x biaxial 600 g/m2 @ 0 deg, fibre 50 %\"]\n\
         core = {{ material = \"pvc-foam\", density = \"80 kg/m3\", thickness = \"38.1 mm\" }}\n\
         inner = [\"3 x biaxial 600 g/m2 @ 0 deg, fibre 50 %\"]\n\
         [[wall]]\nname = \"fore\"\nseat = \"30 mm\"\nalong = [[\"100 mm\", \"0 mm\"], [\"100 mm\", \"700 mm\"]]\n\
         [[wall]]\nname = \"aft\"\nseat = \"30 mm\"\nalong = [[\"1900 mm\", \"0 mm\"], [\"1900 mm\", \"700 mm\"]]\n{rest}\n\
         [service]\nspeed = \"none\"\nstorm = \"none\"\ntrailer = \"none\"\nslam = \"none\"\n\
         walking = \"no-walk\"\nunderside = \"blocked\"\nsun = \"none\"\n{service}\n"
    );
    NamedText { name: "strip.toml".to_owned(), text }
}

pub const SNOW: &str = "people = 0\nsnow = \"1 kPa\"";

pub fn read(text: &NamedText) -> Top {
    let table = read_tables(&[]).expect("the built-in table");
    read_design(text, &table, None).unwrap_or_else(|problems| panic!("{}", problems[0].render(false)))
}

pub fn example(name: &str) -> Top {
    let path = format!("{}/examples/{name}.toml", env!("CARGO_MANIFEST_DIR"));
    read(&NamedText { name: name.to_owned(), text: fs::read_to_string(path).expect("an example") })
}

/// An example, and its card.
pub type Card = (Top, Result<Proof, NoProof>);

/// The card of an example as it is asked for, worked out once for all tests.
pub fn card_of(name: &'static str, wanted: Wanted) -> Arc<Card> {
    type Known = (&'static str, Wanted, Arc<OnceLock<Arc<Card>>>);
    static KNOWN: Mutex<Vec<Known>> = Mutex::new(Vec::new());
    let own = {
        let mut known = KNOWN.lock().expect("nothing fails in it");
        let at = known.iter().position(|known| (known.0, known.1) == (name, wanted)).unwrap_or_else(|| {
            known.push((name, wanted, Arc::default()));
            known.len() - 1
        });
        known[at].2.clone()
    };
    let made = || {
        let top = example(name);
        let card = proof(&top, wanted);
        Arc::new((top, card))
    };
    own.get_or_init(made).clone()
}

/// The top with the bags of a card for gear, dry.
pub fn under_bags(top: &Top, proof: &Proof) -> Top {
    let mut criteria = (*top.criteria).clone();
    criteria.wet_core.value = Ratio::from(1.0);
    criteria.wet_laminate.value = Ratio::from(1.0);
    let [length, width] = proof.bag_size;
    let gear = proof.heaps.iter().map(|heap| Gear {
        name: "bags".to_owned(),
        mass: proof.bag * count(heap.bags),
        cg_height: Length::default(),
        at: heap.at,
        foot: Foot::Rectangle { length, width },
        wind_area: Area::default(),
        wind_height: Length::default(),
        drag: Ratio::default(),
        lift: Ratio::default(),
        limber: false,
        grab_height: None,
        given: Vec::new(),
        fastened: None,
    });
    Top { gear: gear.collect(), criteria: criteria.into(), ..top.clone() }
}

/// Bags alone.
pub fn bags() -> LoadCase {
    let case = LoadCase::at_rest("bags", "bags", State { hot: false, duration: Duration::Short });
    LoadCase { gravity: Ratio::default(), ..case }
}

/// What gauges would read under all bags on a top that is in truth another.
pub fn read_by(truth: &Top, proof: &Proof) -> Vec<Length> {
    let loaded = under_bags(truth, proof);
    let analysis = Analysis::without_forces(&loaded, vec![bags()]).expect("sections");
    let places: Vec<Point> = proof.gauges.iter().map(|gauge| gauge.at).collect();
    let left = analysis.core_left(0);
    PlateMethod::deflections(&loaded, &analysis.sections, left, &analysis.cases, &places).expect("a solution").remove(0)
}

pub fn count(of: usize) -> f64 {
    f64::from(u32::try_from(of).expect("a count"))
}

pub fn mm(length: f64) -> Length {
    Length::new::<millimeter>(length)
}

pub fn usual() -> (Top, Proof) {
    static USUAL: LazyLock<(Top, Proof)> = LazyLock::new(|| {
        let top = read(&text(SNOW, "[criteria]\nproof-bag = \"10 kg\"\n"));
        let proof = proof(&top, Wanted::Even).expect("a test");
        (top, proof)
    });
    USUAL.clone()
}

/// Loaded and unloaded by all steps, straight, with a zero of its own at each gauge.
pub fn readings(proof: &Proof, full: &[Length]) -> Readings {
    let all = proof.steps.last().expect("steps").bags;
    let up: Vec<usize> = std::iter::once(0).chain(proof.steps.iter().map(|step| step.bags)).collect();
    let down = up.iter().rev().skip(1);
    let row = |bags: &usize| Row {
        bags: *bags,
        readings: full.iter().map(|full| Some(mm(0.3) + *full * (count(*bags) / count(all)))).collect(),
    };
    Readings { rows: up.iter().chain(down).map(row).collect(), heads: vec![None; full.len()] }
}

pub fn on_support(proof: &Proof, gauge: usize) -> bool {
    matches!(proof.gauges[gauge].on, GaugeAt::Support(_))
}
