//! A top that lifts off its pipes, where its fixings are known.

use std::borrow::Borrow;

use super::{
    HeldDown,
    layout::{Net, Stretch},
    pipes::OnBed,
};
use crate::{
    analysis::{line::backing_at, mount::fixing_stiffness},
    finite_element::{Contact, LiftsOff, Loose, Reader, Sampled, Solution},
    top::{Support, Top},
    units::{Force, Length, Ratio, Stiffness},
};

/// What a solution does: states at all samples, forces on the pipes, and what presses where the top may open.
pub(super) struct Seen {
    pub(super) sampled: Sampled,
    pub(super) beds: Vec<OnBed>,
    pub(super) pressing: Vec<Force>,
}

/// One of the solutions of which a state is made: so many times for strength, and for sag, which is judged at rest.
pub(super) type Part<'a> = (&'a Seen, f64, f64);

/// Openings between a top and its pipes.
pub(super) struct Lifting {
    contact: Contact,
    /// By place that may open: what it does by itself, open by 1 m.
    opened: Vec<Seen>,
    /// By fixing: its pipe, and its place in the row.
    fixings: Vec<(usize, usize)>,
}

impl Net {
    /// Stretches of pipe whose fixings are known, with these and which they are.
    fn loose(&self, top: &Top, core_left: Ratio) -> (Vec<Loose>, Vec<(usize, usize)>) {
        // The opening bends as the top does: an eighth of the smaller side is straight enough between fixings.
        let apart = top.outline.length().min(top.outline.width()) / 8.0;
        let (mut loose, mut all) = (Vec::new(), Vec::new());
        for (bed, stretch) in self.stretches.iter().enumerate() {
            let held = self.fixings(top, stretch.pipe, &stretch.corners, core_left);
            if held.is_empty() {
                continue;
            }
            all.extend(held.iter().map(|(fixing, ..)| (stretch.pipe, *fixing)));
            let fixings: Vec<(Length, Stiffness)> =
                held.into_iter().map(|(_, along, stiffness)| (along, stiffness)).collect();
            let stations = stations(&fixings, self.length(stretch), apart);
            loose.push(Loose { bed, fixings, stations });
        }
        (loose, all)
    }

    fn length(&self, stretch: &Stretch) -> Length {
        let sides = stretch.corners.windows(2);
        sides.map(|side| self.mesh.nodes()[side[0]].distance(self.mesh.nodes()[side[1]])).sum()
    }

    /// How each pipe holds the top down.
    pub(super) fn holds(&self, top: &Top) -> Vec<HeldDown> {
        let (loose, _) = self.loose(top, Ratio::from(1.0));
        let by_fixings = |pipe: usize| {
            let mut own = self.stretches.iter().enumerate().filter(|(_, stretch)| stretch.pipe == pipe);
            own.all(|(bed, _)| loose.iter().any(|loose| loose.bed == bed))
        };
        (0..top.supports.len())
            .map(|pipe| if by_fixings(pipe) { HeldDown::ByFixings } else { HeldDown::AllAlong })
            .collect()
    }

    /// The fixings of a row on a stretch of its pipe: which, how far along the stretch, and how stiff.
    fn fixings(&self, top: &Top, pipe: usize, corners: &[usize], core_left: Ratio) -> Vec<(usize, Length, Stiffness)> {
        let support = &top.supports[pipe];
        let Support { along, fastened: Some(fastened), .. } = support else { return Vec::new() };
        // A clamped edge stays shut; a pad is too small for an opening between its fixings.
        if support.clamps() || support.is_pad() {
            return Vec::new();
        }
        let [Some(from), Some(to)] = [corners.first(), corners.last()] else { return Vec::new() };
        let station = |corner: &usize| along.place(self.mesh.nodes()[*corner]).along;
        let (from, to) = (station(from), station(to));
        let places = fastened.laid.along(along);
        let on_stretch = places.iter().enumerate().filter_map(|(number, &at)| {
            let here = along.place(at).along;
            let within = here >= from.min(to) && here <= from.max(to);
            let stiffness = fixing_stiffness(top, fastened, backing_at(top, at), core_left);
            within.then(|| (number, (here - from).abs(), stiffness))
        });
        on_stretch.collect()
    }

    /// What solutions do, each by itself.
    pub(super) fn seen<S: Borrow<Solution>>(
        &self,
        reader: &Reader<'_>,
        lifting: Option<&Lifting>,
        solutions: &[S],
    ) -> Vec<Seen> {
        let plate = reader.plate();
        let seen = solutions.iter().map(Borrow::borrow).zip(reader.sample(solutions)).map(|(solution, sampled)| Seen {
            sampled,
            beds: (0..self.stretches.len())
                .map(|bed| (plate.pushes(bed, solution), plate.beam_forces(bed, solution)))
                .collect(),
            pressing: lifting.map_or_else(Vec::new, |lifting| lifting.contact.pressing(plate, solution)),
        });
        seen.collect()
    }
}

impl Lifting {
    /// None where no pipe's fixings are known: it is then held down all along.
    pub(super) fn new(top: &Top, net: &Net, reader: &Reader<'_>, core_left: Ratio) -> Option<Self> {
        let (loose, fixings) = net.loose(top, core_left);
        if loose.is_empty() {
            return None;
        }
        let plate = reader.plate();
        let contact = Contact::new(plate, &loose);
        let sampled = reader.sample(contact.opened()).into_iter();
        let opened = sampled.enumerate().map(|(place, sampled)| Seen {
            sampled,
            beds: (0..net.stretches.len())
                .map(|bed| (contact.pushes(plate, bed, place), contact.beam_forces(plate, bed, place)))
                .collect(),
            pressing: Vec::new(),
        });
        let opened = opened.collect();
        Some(Self { contact, opened, fixings })
    }

    /// Places that open, and how far, where all closed the beds would bear this.
    fn openings(&self, pressing: &[Force]) -> Result<Vec<Length>, LiftsOff> {
        let none = || vec![Length::default(); self.contact.places()];
        Ok(self.contact.openings(pressing)?.unwrap_or_else(none))
    }

    /// What opens under what acts alone: each by itself, so many times.
    pub(super) fn opened_under(&self, seen: &Seen) -> Result<Vec<(&Solution, f64)>, LiftsOff> {
        let openings = self.openings(&seen.pressing)?;
        let open = openings.iter().enumerate().filter(|(_, opening)| **opening > Length::default());
        Ok(open.map(|(place, opening)| (&self.contact.opened()[place], opening.value)).collect())
    }

    /// Adds what opens to what acts, and gives the pull of every fixing, pipe by pipe.
    pub(super) fn open<'a>(&'a self, parts: &mut Vec<Part<'a>>, pipes: usize) -> Result<Vec<Vec<Force>>, LiftsOff> {
        let openings = |factor: fn(&Part<'a>) -> f64| {
            let mut pressing = vec![Force::default(); self.contact.places()];
            for part in parts.iter() {
                for (sum, own) in pressing.iter_mut().zip(&part.0.pressing) {
                    *sum += *own * factor(part);
                }
            }
            self.openings(&pressing)
        };
        let strength = openings(|part| part.1)?;
        // Mostly nobody stands at rest otherwise than with strength.
        let alike = parts.iter().all(|part| part.1.to_bits() == part.2.to_bits());
        let sag = if alike { strength.clone() } else { openings(|part| part.2)? };
        for (place, (strength, sag)) in strength.iter().zip(&sag).enumerate() {
            if *strength > Length::default() || *sag > Length::default() {
                parts.push((&self.opened[place], strength.value, sag.value));
            }
        }
        let mut pulls = vec![Vec::new(); pipes];
        for (&(pipe, number), pull) in self.fixings.iter().zip(self.contact.fixing_pulls(&strength)) {
            let of_pipe: &mut Vec<Force> = &mut pulls[pipe];
            if of_pipe.len() <= number {
                of_pipe.resize(number + 1, Force::default());
            }
            of_pipe[number] = pull;
        }
        Ok(pulls)
    }
}

/// Where a top may open: at its fixings, half way between them, and no farther apart than it is straight.
fn stations(fixings: &[(Length, Stiffness)], end: Length, apart: Length) -> Vec<Length> {
    let mut bounds: Vec<Length> = fixings.iter().map(|(along, _)| *along).chain([Length::default(), end]).collect();
    bounds.sort_by(|a, b| a.value.total_cmp(&b.value));
    let mut stations = bounds.clone();
    for pair in bounds.windows(2) {
        let gap = pair[1] - pair[0];
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few dozen")]
        let pieces = ((gap / apart).value.ceil() as u32).max(2);
        stations.extend((1..pieces).map(|k| pair[0] + gap * (f64::from(k) / f64::from(pieces))));
    }
    stations
}
