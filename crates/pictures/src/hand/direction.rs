//! Directions without the machine's own sine and cosine, whose last digits differ from one
//! machine to another: a font must have the same bytes on all of them. Adding, multiplying and
//! taking roots are exact by IEEE 754.

use kurbo::Vec2;

/// Unit vector at an angle in degrees: 0 = right, 90 = up. Within 1e-12 of the true one.
pub(super) fn direction(degrees: f64) -> Vec2 {
    let quarter = (degrees / 90.0).round();
    let rest = (degrees - quarter * 90.0).to_radians();
    let (s, c) = (series(rest, 1), series(rest, 0));
    match (quarter as i64).rem_euclid(4) {
        0 => Vec2::new(c, s),
        1 => Vec2::new(-s, c),
        2 => Vec2::new(-c, -s),
        _ => Vec2::new(s, -c),
    }
}

/// Taylor series around 0: of the sine from power 1, of the cosine from power 0. Up to an eighth
/// of a turn the first term left out is smaller than 1e-16.
fn series(x: f64, power: i32) -> f64 {
    let mut term = if power == 1 { x } else { 1.0 };
    let mut sum = term;
    for i in 1..=9 {
        let at = f64::from(2 * i + power);
        term *= -x * x / (at * (at - 1.0));
        sum += term;
    }
    sum
}

/// A vector turned anticlockwise by the angle of a unit vector.
pub(super) fn turned(v: Vec2, by: Vec2) -> Vec2 {
    Vec2::new(v.x * by.x - v.y * by.y, v.x * by.y + v.y * by.x)
}

/// Whether two vectors differ by more than an angle, given by its cosine.
pub(super) fn bends(a: Vec2, b: Vec2, cosine: f64) -> bool {
    a.dot(b) < cosine * a.hypot() * b.hypot()
}
