//! One line of a skin's schedule: `biaxial 600 g/m2 @ 45 deg`, `2 x mat 1.5 oz/ft2`, `gelcoat`.

use std::{ops::Range, sync::Arc};

use uom::si::{areal_mass_density::kilogram_per_square_meter, ratio::ratio};

use super::{
    problem::{Problem, offer},
    reader::{Given, Room},
};
use crate::{
    laminate::{Ply, fibre_content::Densities},
    material::{Banded, Basis, Coat, Fabric, MaterialTable, Part, PlyForm, PlyLayer, Resin},
    top::{Bought, RoundFixing, SkinLayer},
    units::{Angle, ArealMassDensity, Length, ParseError, Ratio, Sign, parse, parse_prefix, parse_signed},
};

/// Masses per area of one layer in kg/m², beyond which a layer is a slip in its unit: a tissue has some 20 g/m², the
/// heaviest fabrics 3 kg/m²; a coat of putty may be 10 mm thick.
const LEAST_LAYER: f64 = 0.005;
const MOST_FABRIC: f64 = 5.0;

/// The lightest chopped strand mats have 100 g/m², in round figures of ounces a little more.
const LEAST_MAT: f64 = 0.12;
const MOST_COAT: f64 = 20.0;

/// How the skins are laid: it decides how much resin stays in them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Process {
    Hand,
    Bag,
    Infusion,
}

/// What all layers of a top share.
pub(super) struct Layup<'a> {
    pub(super) table: &'a MaterialTable,
    /// Absent where the file does not say it: a layer is then read, but cannot be made.
    pub(super) resin: Option<&'a Resin>,
    pub(super) process: Option<Process>,
    pub(super) fibre_fraction: Option<Ratio>,
}

/// A part of the text with its place in the file.
struct Cut<'t> {
    text: &'t str,
    start: usize,
}

impl<'t> Cut<'t> {
    fn trimmed(text: &'t str, start: usize) -> Self {
        let lead = text.len() - text.trim_start().len();
        Self { text: text.trim(), start: start + lead }
    }

    fn range(&self) -> Range<usize> {
        self.start..self.start + self.text.len()
    }
}

/// What is wrong with a fibre content that is no fraction.
pub(super) fn not_a_fibre_content(text: &str, range: Range<usize>) -> Problem {
    let problem = Problem::at(range, "the fibre content is a fraction of the mass: more than nothing, less than all");
    problem.help(match text.trim().parse::<f64>() {
        Ok(number) if number > 1.0 && number < 100.0 => format!("did you mean `{} %`?", text.trim()),
        _ => "write for example `50 %`".to_owned(),
    })
}

/// Reads one layer; a count before it lays it as often. What cannot be read is reported and is `None`.
pub(super) fn read_layer(room: &Room<'_>, given: &Given<String>, layup: &Layup<'_>) -> Option<Vec<SkinLayer>> {
    // In a plain one-line string the text stands one byte behind the quotation mark.
    let plain = given.range.len() == given.text.len() + 2;
    Reading { room, given, plain }.layers(layup)
}

struct Reading<'r, 'a> {
    room: &'r Room<'a>,
    given: &'r Given<String>,
    plain: bool,
}

impl Reading<'_, '_> {
    fn place(&self, range: Range<usize>) -> Range<usize> {
        if self.plain {
            self.given.range.start + 1 + range.start..self.given.range.start + 1 + range.end
        } else {
            self.given.range.clone()
        }
    }

    fn report(&self, range: Range<usize>, message: impl Into<String>, help: impl Into<String>) {
        self.room.report(Problem::at(self.place(range), message).help(help));
    }

    fn fault(&self, cut: &Cut<'_>, error: ParseError) {
        let range = cut.start + error.range.start..cut.start + error.range.end;
        let mut problem = Problem::at(self.place(range), error.message);
        problem.help = error.help;
        if let (true, Some(text)) = (self.plain, error.replacement) {
            problem = problem.patch(self.place(cut.range()), text);
        }
        self.room.report(problem);
    }

    fn layers(&self, layup: &Layup<'_>) -> Option<Vec<SkinLayer>> {
        let text = self.given.text.as_str();
        if text.trim().is_empty() {
            self.report(0..text.len(), "this layer is empty", "write for example `biaxial 600 g/m2 @ 45 deg`");
            return None;
        }
        if let Some(comma) = decimal_comma(text) {
            let place = self.place(comma..comma + 1);
            let problem = Problem::at(place.clone(), "a number is written without commas, with a decimal point");
            let thousands = text[comma + 1..].bytes().take_while(u8::is_ascii_digit).count() == 3;
            self.room.report(if self.plain && !thousands {
                problem.help("write a point").patch(place, ".")
            } else {
                problem.help("a comma stands only before the fibre content: `…, fibre 50 %`")
            });
            return None;
        }
        let (body, fraction) = match text.split_once(',') {
            Some((body, rest)) => (body, Some(self.fraction(&Cut::trimmed(rest, body.len() + 1))?)),
            None => (text, None),
        };
        let (body, angle) = match body.split_once('@') {
            Some((body, rest)) => (body, Some(self.angle(&Cut::trimmed(rest, body.len() + 1))?)),
            None => (body, None),
        };
        let mut body = Cut::trimmed(body, 0);
        let mut times = 1;
        if let Some((count, rest)) = body.text.split_once(" x ")
            && let Ok(count) = count.trim().parse::<usize>()
        {
            if !(1..=20).contains(&count) {
                self.report(body.range(), "a layer is laid 1 to 20 times", "write for example `2 x mat 1.5 oz/ft2`");
                return None;
            }
            times = count;
            body = Cut::trimmed(rest, body.start + body.text.len() - rest.len());
        }
        let name_end = body.text.find(char::is_whitespace).unwrap_or(body.text.len());
        let name = Cut { text: &body.text[..name_end], start: body.start };
        let amounts = Cut::trimmed(&body.text[name_end..], body.start + name_end);
        if name.text.starts_with(|c: char| c.is_ascii_digit()) {
            self.report(
                name.range(),
                "a layer starts with the name of a fabric or coat, or with how often it is laid",
                "write for example `2 x mat 1.5 oz/ft2`, with spaces around the `x`",
            );
            return None;
        }
        let mut layer = self.named(layup, &name, &amounts, angle, fraction)?;
        // A count would be read as that of one of the layers that it makes.
        text[body.start..].trim_end().clone_into(&mut layer.text);
        Some(vec![layer; times])
    }

    fn named(
        &self,
        layup: &Layup<'_>,
        name: &Cut<'_>,
        amounts: &Cut<'_>,
        angle: Option<Angle>,
        fraction: Option<Ratio>,
    ) -> Option<SkinLayer> {
        if let Ok(coat) = layup.table.coat(name.text) {
            if angle.is_some() || fraction.is_some() {
                self.report(
                    name.range(),
                    format!("`{}` is a coat: it has no fibre, and no angle", coat.id),
                    format!("write `{}`, and behind it how much if it is not the usual amount", coat.id),
                );
                return None;
            }
            return self.coat(coat, amounts);
        }
        if let Ok(fabric) = layup.table.fabric(name.text) {
            return self.fabric(layup, fabric, name, amounts, angle, fraction);
        }
        let known: Vec<&str> = layup
            .table
            .fabrics()
            .iter()
            .map(|fabric| fabric.id.as_str())
            .chain(layup.table.coats().iter().map(|coat| coat.id.as_str()))
            .collect();
        let problem = Problem::at(self.place(name.range()), format!("no fabric or coat is called `{}`", name.text));
        let place = self.plain.then(|| self.place(name.range()));
        self.room.report(offer(problem, name.text, &known, place, "`"));
        None
    }

    fn coat(&self, coat: &Coat, amounts: &Cut<'_>) -> Option<SkinLayer> {
        let mass = if amounts.text.is_empty() {
            coat.areal_mass.typical.value
        } else if let Ok(mass) = parse::<ArealMassDensity>(amounts.text) {
            if mass <= ArealMassDensity::default() {
                self.report(amounts.range(), "a coat has a positive mass per area", "leave it out if it is not there");
                return None;
            }
            self.as_ever(mass, amounts.range(), ("coat", MOST_COAT))?
        } else {
            match (parse_signed::<Length>(amounts.text, Sign::Positive, "the thickness of a coat"), &coat.thickness) {
                (Ok(thickness), Some(usual)) => {
                    let mass = coat.areal_mass.typical.value * (thickness / usual.typical.value).get::<ratio>();
                    self.as_ever(mass, amounts.range(), ("coat", MOST_COAT))?
                }
                (Err(error), Some(_)) => {
                    self.fault(amounts, error);
                    return None;
                }
                (_, None) => {
                    self.report(
                        amounts.range(),
                        format!("`{}` takes a mass per area", coat.id),
                        "write for example `paint 0.3 kg/m2`, or nothing for the usual amount",
                    );
                    return None;
                }
            }
        };
        Some(SkinLayer {
            text: self.given.text.clone(),
            bought: Bought {
                id: coat.id.clone(),
                name: coat.name.clone(),
                family: coat.family.clone(),
                parts: Vec::new(),
                turned: None,
            },
            plies: Vec::new(),
            round_fixing: Vec::new(),
            fibre: ArealMassDensity::default(),
            fibre_fraction: None,
            mass,
            basis: Basis::Measured,
            stiffness_basis: Basis::Measured,
            carbon: false,
            origins: vec![Arc::clone(&coat.areal_mass.typical.origin)],
        })
    }

    fn fabric(
        &self,
        layup: &Layup<'_>,
        fabric: &Fabric,
        name: &Cut<'_>,
        amounts: &Cut<'_>,
        angle: Option<Angle>,
        fraction: Option<Ratio>,
    ) -> Option<SkinLayer> {
        let masses = self.amounts(fabric, amounts);
        if fabric.needs_angle && angle.is_none() {
            let text = self.given.text.as_str();
            let (body, rest) = text.split_at(text.find(',').unwrap_or(text.len()));
            let (body, rest) = (body.trim(), rest.trim_end());
            self.report(
                name.range(),
                format!("`{}` needs an angle: at 0 and at 45 degrees it is two different materials", fabric.id),
                match &masses {
                    Some(_) => format!("write `{body} @ 45 deg{rest}` or `{body} @ 0 deg{rest}`"),
                    None => "write `@ 45 deg` or `@ 0 deg` behind the amount".to_owned(),
                },
            );
            return None;
        }
        let masses = masses?;
        let mut layer = SkinLayer {
            text: self.given.text.clone(),
            bought: Bought {
                id: fabric.id.clone(),
                name: fabric.name.clone(),
                family: fabric.family.clone(),
                parts: masses.clone(),
                turned: angle.filter(|_| fabric.needs_angle),
            },
            plies: Vec::new(),
            round_fixing: Vec::new(),
            fibre: ArealMassDensity::default(),
            fibre_fraction: None,
            mass: ArealMassDensity::default(),
            basis: Basis::Measured,
            stiffness_basis: Basis::Measured,
            carbon: false,
            origins: Vec::new(),
        };
        for (part, dry) in fabric.parts.iter().zip(masses) {
            self.part(layup, part, dry, angle, fraction, &mut layer)?;
        }
        layer.fibre_fraction = Some(layer.fibre / layer.mass);
        Some(layer)
    }

    /// A mass per area that a layer may have; one that none ever has is a slip in its unit.
    fn as_ever(
        &self,
        mass: ArealMassDensity,
        range: Range<usize>,
        (noun, most): (&str, f64),
    ) -> Option<ArealMassDensity> {
        let [least, most] = [LEAST_LAYER, most].map(ArealMassDensity::new::<kilogram_per_square_meter>);
        if (least..=most).contains(&mass) {
            return Some(mass);
        }
        let both = |mass| self.room.both(mass);
        self.report(
            range,
            format!("no {noun} has {} in one layer", both(mass)),
            format!("it is from {} to {}: is the unit right?", both(least), both(most)),
        );
        None
    }

    /// Mat is sold by the square foot, cloth by the square yard, which is nine times as large: a mat so light by the yard is
    /// one by the foot.
    fn mat_by_the_yard(&self, mass: ArealMassDensity, amount: &Cut<'_>) -> Option<()> {
        let by_the_yard = amount.text.to_ascii_lowercase().contains("yd");
        if !by_the_yard || mass >= ArealMassDensity::new::<kilogram_per_square_meter>(LEAST_MAT) {
            return Some(());
        }
        let number = amount.text.split(char::is_alphabetic).next().unwrap_or_default().trim_end();
        let message = format!(
            "no mat is so light: {} is {}, and mat is sold by the square foot",
            amount.text,
            self.room.both(mass)
        );
        let place = self.place(amount.range());
        let problem = Problem::at(place.clone(), message)
            .help(format!("did you mean `{number} oz/ft2`? a tissue so light is written in g/m2"));
        self.room.report(if self.plain { problem.patch(place, format!("{number} oz/ft2")) } else { problem });
        None
    }

    /// One mass per area for each part of the fabric, `17 oz/yd2 + 0.75 oz/ft2`.
    fn amounts(&self, fabric: &Fabric, amounts: &Cut<'_>) -> Option<Vec<ArealMassDensity>> {
        let parts = fabric.parts.len();
        let example = if parts == 2 { "17 oz/yd2 + 0.75 oz/ft2" } else { "600 g/m2" };
        let example = format!("{} {example}{}", fabric.id, if fabric.needs_angle { " @ 45 deg" } else { "" });
        let mut masses = Vec::with_capacity(parts);
        let mut rest = Cut { text: amounts.text, start: amounts.start };
        while !rest.text.is_empty() {
            match parse_prefix::<ArealMassDensity>(rest.text) {
                Ok((mass, taken)) if mass > ArealMassDensity::default() => {
                    if fabric.parts.get(masses.len()).is_some_and(|part| part.form == PlyForm::Mat) {
                        self.mat_by_the_yard(mass, &Cut { text: rest.text[..taken].trim_end(), start: rest.start })?;
                    }
                    masses.push(self.as_ever(mass, rest.start..rest.start + taken, ("fabric", MOST_FABRIC))?);
                    let behind = rest.text[taken..].trim_start();
                    let behind_plus = behind.strip_prefix('+').unwrap_or(behind);
                    if behind == behind_plus && !behind.is_empty() {
                        let start = rest.start + rest.text.len() - behind.len();
                        self.report(
                            start..start + behind.len(),
                            "this does not belong to an amount",
                            format!("write for example `{example}`"),
                        );
                        return None;
                    }
                    let next = Cut::trimmed(behind_plus, rest.start + rest.text.len() - behind_plus.len());
                    if behind != behind_plus && next.text.is_empty() {
                        let plus = rest.start + rest.text.len() - behind.len();
                        self.report(
                            plus..plus + 1,
                            "an amount is due behind the `+`",
                            format!("write for example `{example}`"),
                        );
                        return None;
                    }
                    rest = next;
                }
                Ok(_) => {
                    self.report(
                        rest.range(),
                        "a fabric has a positive mass per area",
                        format!("write for example `{example}`"),
                    );
                    return None;
                }
                Err(error) => {
                    self.fault(&rest, error);
                    return None;
                }
            }
        }
        if masses.len() == parts {
            return Some(masses);
        }
        let place = if amounts.text.is_empty() { 0..self.given.text.len() } else { amounts.range() };
        self.report(
            place,
            match parts {
                1 => format!("`{}` takes one mass per area", fabric.id),
                _ => format!("`{}` takes {parts} masses per area, one for each of its parts", fabric.id),
            },
            format!("write for example `{example}`"),
        );
        None
    }

    fn part(
        &self,
        layup: &Layup<'_>,
        part: &Part,
        dry: ArealMassDensity,
        angle: Option<Angle>,
        fraction: Option<Ratio>,
        layer: &mut SkinLayer,
    ) -> Option<()> {
        let (resin, process) = (layup.resin?, layup.process?);
        let usual: Option<&Banded<Ratio>> = match process {
            Process::Hand => part.fibre_fraction_hand.as_ref(),
            Process::Bag => part.fibre_fraction_bag.as_ref(),
            Process::Infusion => part.fibre_fraction_infusion.as_ref(),
        };
        let Some(psi) = fraction.or(layup.fibre_fraction).or(usual.map(|usual| usual.typical.value)) else {
            self.report(
                0..self.given.text.len(),
                format!("the table does not know how much fibre `{}` holds when laid this way", part.fabric),
                "say so: `…, fibre 50 %`",
            );
            return None;
        };
        let plies = match layup.table.plies(part, resin, psi, angle) {
            Ok(plies) => plies,
            Err(error) => {
                self.report(
                    0..self.given.text.len(),
                    error.to_string(),
                    "see `skinspan materials` for what the table has",
                );
                return None;
            }
        };
        let Ok(fibre) = layup.table.fibre(&part.fibre) else { return None };
        let densities = Densities { fibre: fibre.density.value, resin: resin.density.value };
        let thickness = densities.ply_thickness(dry, psi);
        layer.plies.extend(plies.iter().map(|ply| Ply {
            elastic: ply.elastic(),
            strength: Some(ply.strength()),
            thickness: thickness * ply.share.get::<ratio>(),
            angle: ply.angle,
        }));
        layer.carbon |= fibre.family == "carbon";
        layer.fibre += dry;
        layer.mass += dry / psi;
        if let Some(first) = plies.first() {
            layer.basis = layer.basis.max(strength_basis(first));
            layer.stiffness_basis = layer.stiffness_basis.max(first.e1.basis).max(first.e2.basis).max(first.g12.basis);
            layer.round_fixing.push(RoundFixing {
                thickness,
                bearing: first.bearing.clone(),
                punching_shear: first.punching_shear.clone(),
            });
            layer.origins.extend(origins(first));
        }
        Some(())
    }

    fn angle(&self, cut: &Cut<'_>) -> Option<Angle> {
        match parse::<Angle>(cut.text) {
            Ok(angle) => Some(angle),
            Err(error) => {
                self.fault(cut, error);
                None
            }
        }
    }

    fn fraction(&self, cut: &Cut<'_>) -> Option<Ratio> {
        let Some(number) = cut.text.strip_prefix("fibre") else {
            if cut.text.starts_with("fiber") {
                let place = self.place(cut.start..cut.start + "fiber".len());
                let problem = Problem::at(place.clone(), "the word is `fibre` here").help("did you mean `fibre`?");
                self.room.report(if self.plain { problem.patch(place, "fibre") } else { problem });
                return None;
            }
            self.report(cut.range(), "behind the comma stands the fibre content", "write `…, fibre 50 %`");
            return None;
        };
        let number = Cut::trimmed(number, cut.start + "fibre".len());
        match parse::<Ratio>(number.text) {
            Ok(fraction) if fraction > Ratio::new::<ratio>(0.0) && fraction < Ratio::new::<ratio>(1.0) => {
                Some(fraction)
            }
            Ok(_) => {
                self.room.report(not_a_fibre_content(number.text, self.place(number.range())));
                None
            }
            Err(_) if number.text.contains('@') => {
                self.report(
                    number.range(),
                    "the angle stands before the comma",
                    "write for example `biaxial 600 g/m2 @ 45 deg, fibre 50 %`",
                );
                None
            }
            Err(error) => {
                self.fault(&number, error);
                None
            }
        }
    }
}

/// A comma between two digits: the decimal comma of half the world.
fn decimal_comma(text: &str) -> Option<usize> {
    let is_digit = |byte: Option<&u8>| byte.is_some_and(u8::is_ascii_digit);
    let bytes = text.as_bytes();
    (1..bytes.len()).find(|at| bytes[*at] == b',' && is_digit(bytes.get(at - 1)) && is_digit(bytes.get(at + 1)))
}

fn strength_basis(ply: &PlyLayer) -> Basis {
    [&ply.tension1, &ply.compression1, &ply.tension2, &ply.compression2, &ply.shear]
        .into_iter()
        .map(|strength| strength.basis)
        .max()
        .unwrap_or(Basis::Estimate)
}

fn origins(ply: &PlyLayer) -> impl Iterator<Item = Arc<crate::material::Origin>> + '_ {
    let stresses =
        [&ply.e1, &ply.e2, &ply.g12, &ply.tension1, &ply.compression1, &ply.tension2, &ply.compression2, &ply.shear];
    stresses.into_iter().map(|property| Arc::clone(&property.origin))
}
