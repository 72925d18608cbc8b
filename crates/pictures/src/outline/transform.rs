//! The `transform` attribute of SVG.

use kurbo::{Affine, Vec2};

/// The transform that is written, or nothing when it cannot be read.
pub(super) fn parse(written: &str) -> Option<Affine> {
    let mut all = Affine::IDENTITY;
    let mut rest = written.trim();
    while !rest.is_empty() {
        let (name, after) = rest.split_once('(')?;
        let (inside, after) = after.split_once(')')?;
        let numbers: Option<Vec<f64>> = inside
            .split(|c: char| c == ',' || c.is_whitespace())
            .filter(|n| !n.is_empty())
            .map(|n| n.parse().ok())
            .collect();
        all *= one(name.trim(), &numbers?)?;
        rest = after.trim_start_matches(|c: char| c == ',' || c.is_whitespace());
    }
    Some(all)
}

// What is turned or slanted is written with two decimals, so that last digits do not matter.
#[allow(clippy::disallowed_methods)]
fn one(name: &str, n: &[f64]) -> Option<Affine> {
    match (name, n) {
        ("matrix", &[a, b, c, d, e, f]) => Some(Affine::new([a, b, c, d, e, f])),
        ("translate", &[x]) => Some(Affine::translate(Vec2::new(x, 0.0))),
        ("translate", &[x, y]) => Some(Affine::translate(Vec2::new(x, y))),
        ("scale", &[s]) => Some(Affine::scale(s)),
        ("scale", &[x, y]) => Some(Affine::scale_non_uniform(x, y)),
        ("rotate", &[a]) => Some(Affine::rotate(a.to_radians())),
        ("rotate", &[a, x, y]) => {
            let to = Vec2::new(x, y);
            Some(Affine::translate(to) * Affine::rotate(a.to_radians()) * Affine::translate(-to))
        }
        ("skewX", &[a]) => Some(Affine::skew(a.to_radians().tan(), 0.0)),
        ("skewY", &[a]) => Some(Affine::skew(0.0, a.to_radians().tan())),
        _ => None,
    }
}
