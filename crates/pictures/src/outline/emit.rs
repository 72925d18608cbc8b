//! Writes the outlined shapes as SVG.

use super::read::Shape;
use super::{Manner, Outlined};
use kurbo::{Affine, BezPath, PathEl, Point, Rect};
use std::fmt::Write as _;

/// The finished SVG; its view box is the drawing itself plus half a line, so that it fills the page.
pub(super) fn emit(
    shapes: &[Shape],
    manners: &[Manner],
    bounds: Rect,
    outer: f64,
    inner: f64,
) -> Outlined {
    let pad = outer / 2.0;
    let (left, top) = (bounds.x0 - pad, bounds.y0 - pad);
    let (width, height) =
        ((bounds.width() + 2.0 * pad).ceil(), (bounds.height() + 2.0 * pad).ceil());
    let mut svg = String::new();
    let _ = write!(
        svg,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"{} {} {width} {height}\"><g fill=\"#fff\" stroke=\"#000\" stroke-width=\"{}\" stroke-linejoin=\"round\" stroke-linecap=\"round\">",
        number(left),
        number(top),
        number(outer)
    );
    for (i, (shape, manner)) in shapes.iter().zip(manners).enumerate() {
        svg.push_str(&element(shape, *manner, inner));
        if let Some(edge) = covered_edge(manners, i) {
            svg.push_str(&again(&shapes[edge], manners[edge], inner));
        }
    }
    svg.push_str("</g></svg>");
    Outlined {
        svg,
        width: width as u32,
        height: height as u32,
        shapes: shapes.len(),
        solid: manners.iter().filter(|m| **m == Manner::Solid).count(),
    }
}

/// The shape whose edge the run of its inner shapes that ends at `i` has half covered: its line is drawn once more.
/// Only when nothing but its own inner shapes was drawn since, so that it covers nobody else's.
fn covered_edge(manners: &[Manner], i: usize) -> Option<usize> {
    let Manner::Inner(edge, _) = manners[i] else { return None };
    let own = |m: &Manner| matches!(m, Manner::Inner(j, _) if *j == edge);
    if manners.get(i + 1).is_some_and(own) || !manners[edge + 1..=i].iter().all(own) {
        return None;
    }
    manners[edge + 1..=i].iter().any(|m| matches!(m, Manner::Inner(_, true))).then_some(edge)
}

fn element(shape: &Shape, manner: Manner, inner: f64) -> String {
    let how = match manner {
        Manner::Outer => String::new(),
        Manner::Inner(..) => format!(" stroke-width=\"{}\"", number(inner)),
        Manner::Solid => " fill=\"#000\" stroke=\"none\"".to_owned(),
        Manner::Glint => " stroke=\"none\"".to_owned(),
        Manner::Line => format!(" fill=\"none\" stroke-width=\"{}\"", number(inner)),
    };
    format!("<path{how}{} d=\"{}\"/>", rule(shape), data(shape))
}

fn again(shape: &Shape, manner: Manner, inner: f64) -> String {
    let width = if matches!(manner, Manner::Inner(..)) {
        format!(" stroke-width=\"{}\"", number(inner))
    } else {
        String::new()
    };
    format!("<path fill=\"none\"{width} d=\"{}\"/>", data(shape))
}

fn rule(shape: &Shape) -> &'static str {
    if shape.look.even_odd { " fill-rule=\"evenodd\"" } else { "" }
}

/// The author's own path data where nothing moved it.
fn data(shape: &Shape) -> String {
    match &shape.written {
        Some(d) if shape.moved == Affine::IDENTITY && plain(d) => d.clone(),
        _ => rounded(&shape.path),
    }
}

/// Path data with two decimals: turned shapes come out the same on every machine.
fn rounded(path: &BezPath) -> String {
    let point = |p: Point| format!("{} {}", number(p.x), number(p.y));
    let one = |el: PathEl| match el {
        PathEl::MoveTo(p) => format!("M{}", point(p)),
        PathEl::LineTo(p) => format!("L{}", point(p)),
        PathEl::QuadTo(a, p) => format!("Q{} {}", point(a), point(p)),
        PathEl::CurveTo(a, b, p) => format!("C{} {} {}", point(a), point(b), point(p)),
        PathEl::ClosePath => "Z".to_owned(),
    };
    path.elements().iter().map(|el| one(*el)).collect()
}

/// True when the data holds nothing but commands and numbers, so that it may stand between quotes as it is.
fn plain(d: &str) -> bool {
    d.chars().all(|c| {
        c.is_ascii_alphanumeric() || c.is_ascii_whitespace() || matches!(c, '.' | ',' | '+' | '-')
    })
}

/// At most two decimals, no trailing zeros.
fn number(value: f64) -> String {
    // Adding nothing turns a minus nought into nought.
    let text = format!("{:.2}", (value * 100.0).round() / 100.0 + 0.0);
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}
