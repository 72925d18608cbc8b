//! Kerning: draws two glyphs together where their shapes leave a hole between them, and apart
//! where one reaches into the other.

use std::collections::BTreeMap;

use super::spacing::{Placed, Profile};

/// Excess white that is left as it is, in units.
const SLACK: f64 = 25.0;
/// Part of the remaining excess that is taken away.
const SHARE: f64 = 0.6;
/// No pair is drawn closer than this, in units.
pub(super) const CLOSEST: i32 = -110;
/// White under which two glyphs seem to touch, in units; diagonals side by side keep this much.
const TOUCHING: f64 = 24.0;
/// White to which such a pair is opened, in units.
const OPENED: f64 = 40.0;
/// No pair is drawn further apart than this, in units.
pub(super) const WIDEST: i32 = 110;
/// Smaller corrections are not seen, in units.
const SEEN: i32 = 8;
/// Ink this many bands above or below still counts as beside: a comma must not slide under the
/// foot of a letter, nor an apostrophe over its shoulder.
const REACH: i32 = 3;

/// Correction for each pair that needs one, in units; negative ones draw it together.
pub(super) fn pairs(placed: &BTreeMap<char, (char, Placed)>) -> BTreeMap<(char, char), i32> {
    // A letter with an accent is kerned like the letter alone.
    let shapes: BTreeMap<char, Sides> = placed
        .iter()
        .filter(|(c, (base, _))| *c == base)
        .map(|(c, (_, p))| (*c, Sides::new(p)))
        .collect();
    let mut found = BTreeMap::new();
    for (a, left) in &shapes {
        for (b, right) in &shapes {
            let both_figures = a.is_ascii_digit() && b.is_ascii_digit();
            let kern = if both_figures { 0 } else { left.correction(right) };
            if kern.abs() >= SEEN {
                found.insert((*a, *b), kern);
            }
        }
    }
    let base = |c: &char| placed.get(c).map_or(*c, |(base, _)| *base);
    let all = placed.keys().flat_map(|a| placed.keys().map(move |b| (*a, *b)));
    all.filter_map(|(a, b)| Some(((a, b), *found.get(&(base(&a), base(&b)))?))).collect()
}

/// White on both sides of a glyph, band by band, counted from its writing positions.
struct Sides {
    before: BTreeMap<i32, f64>,
    after: BTreeMap<i32, f64>,
    bearings: (f64, f64),
}

impl Sides {
    fn new(placed: &Placed) -> Sides {
        let advance = f64::from(placed.advance);
        Sides {
            before: spread(&placed.profile, |e| e.0),
            after: spread(&placed.profile, |e| advance - e.1),
            bearings: placed.bearings,
        }
    }

    /// The correction when `next` follows. It comes from the narrowest white between both, less
    /// what their bearings meant to leave.
    fn correction(&self, next: &Sides) -> i32 {
        let beside = self.after.iter();
        let white = beside.filter_map(|(band, a)| Some(a + next.before.get(band)?));
        let narrowest = white.fold(f64::INFINITY, f64::min);
        if narrowest < TOUCHING {
            return ((OPENED - narrowest).round() as i32).min(WIDEST);
        }
        let excess = narrowest - self.bearings.1 - next.bearings.0;
        if excess <= SLACK {
            return 0;
        }
        ((-SHARE * (excess - SLACK)).round() as i32).max(CLOSEST)
    }
}

/// The white beside each band, as narrow as in the bands within reach.
fn spread(profile: &Profile, white: impl Fn(&(f64, f64)) -> f64) -> BTreeMap<i32, f64> {
    let mut out: BTreeMap<i32, f64> = BTreeMap::new();
    for (band, edges) in profile {
        for near in band - REACH..=band + REACH {
            let at = out.entry(near).or_insert(f64::INFINITY);
            *at = at.min(white(edges));
        }
    }
    out
}
