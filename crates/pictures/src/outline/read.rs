//! Reads the visible shapes of flat art, in paint order.

use super::transform;
use kurbo::{Affine, BezPath, Circle, Ellipse, Line, Point, Rect, RoundedRect, Shape as _};
use roxmltree::{Document, Node};
use std::fmt;

/// Why no outlines can be drawn.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum OutlineError {
    /// The file is no SVG that can be read.
    Unreadable,
    /// It holds something without an outline: a bitmap, letters, a copy of another part, a style sheet.
    Holds(String),
    /// A path or a shift that cannot be read.
    Form(String),
    /// Nothing in it can be seen.
    Empty,
}

impl fmt::Display for OutlineError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            OutlineError::Unreadable => f.write_str("the artwork cannot be read"),
            OutlineError::Holds(what) => {
                write!(f, "the artwork holds `{what}`, which has no outline")
            }
            OutlineError::Form(what) => write!(f, "the artwork has a `{what}` that cannot be read"),
            OutlineError::Empty => f.write_str("nothing in the artwork can be seen"),
        }
    }
}

impl std::error::Error for OutlineError {}

/// A colour, 0 to 255.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Colour(pub [u8; 3]);

impl Colour {
    /// Grey as the eye weighs it (ITU-R BT.601: .299 R + .587 G + .114 B).
    pub fn grey(self) -> f64 {
        let [r, g, b] = self.0.map(f64::from);
        0.299 * r + 0.587 * g + 0.114 * b
    }

    /// As good as grey.
    pub fn neutral(self) -> bool {
        let [r, g, b] = self.0;
        r.max(g).max(b) - r.min(g).min(b) <= 16
    }
}

/// How a shape is painted.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Look {
    /// Fill, when it has one.
    pub fill: Option<Colour>,
    /// Has it a line?
    pub stroke: bool,
    /// Even-odd fill rule.
    pub even_odd: bool,
}

/// A visible shape.
#[derive(Debug, Clone)]
pub(crate) struct Shape {
    /// Its form after all shifts.
    pub path: BezPath,
    /// Path data as the author wrote it.
    pub written: Option<String>,
    /// Shift from the author's own units.
    pub moved: Affine,
    /// How it is painted.
    pub look: Look,
    /// Stands under a name with `eye` in it.
    pub eye: bool,
}

/// All visible shapes and the view box.
pub(crate) struct Art {
    pub shapes: Vec<Shape>,
    pub view: Option<Rect>,
}

/// Elements that are not drawn themselves.
const SILENT: [&str; 7] = ["title", "desc", "metadata", "defs", "clipPath", "mask", "namedview"];

pub(crate) fn read(svg: &str) -> Result<Art, OutlineError> {
    let doc = Document::parse(svg).map_err(|_| OutlineError::Unreadable)?;
    let root = doc.root_element();
    if root.tag_name().name() != "svg" {
        return Err(OutlineError::Unreadable);
    }
    let black = Look { fill: Some(Colour([0; 3])), stroke: false, even_odd: false };
    let mut shapes = Vec::new();
    children(root, Above { moved: Affine::IDENTITY, look: black, eye: false }, &mut shapes)?;
    if shapes.is_empty() {
        return Err(OutlineError::Empty);
    }
    Ok(Art { shapes, view: root.attribute("viewBox").and_then(view_box) })
}

fn view_box(written: &str) -> Option<Rect> {
    let n: Vec<f64> = written
        .split([' ', ','])
        .filter(|s| !s.is_empty())
        .filter_map(|s| s.parse().ok())
        .collect();
    let &[x, y, w, h] = n.as_slice() else { return None };
    Some(Rect::new(x, y, x + w, y + h))
}

/// What an element takes over from those around it.
#[derive(Clone, Copy)]
struct Above {
    moved: Affine,
    look: Look,
    eye: bool,
}

fn children(node: Node<'_, '_>, above: Above, out: &mut Vec<Shape>) -> Result<(), OutlineError> {
    node.children().filter(Node::is_element).try_for_each(|child| element(child, above, out))
}

fn element(node: Node<'_, '_>, above: Above, out: &mut Vec<Shape>) -> Result<(), OutlineError> {
    let name = node.tag_name().name();
    if SILENT.contains(&name) || hidden(node) {
        return Ok(());
    }
    let own = match node.attribute("transform") {
        Some(t) => transform::parse(t).ok_or_else(|| OutlineError::Form("transform".into()))?,
        None => Affine::IDENTITY,
    };
    let eye = above.eye || node.attribute("id").is_some_and(|id| id.to_lowercase().contains("eye"));
    let here = Above { moved: above.moved * own, look: painted(node, above.look), eye };
    if matches!(name, "g" | "a") {
        return children(node, here, out);
    }
    let Some((path, written)) = form(node)? else {
        return Err(OutlineError::Holds(name.to_owned()));
    };
    if (here.look.fill.is_some() || here.look.stroke) && !path.is_empty() {
        out.push(Shape {
            path: here.moved * path,
            written,
            moved: here.moved,
            look: here.look,
            eye,
        });
    }
    Ok(())
}

/// A property from the element's `style` or its own attribute.
fn property<'a>(node: Node<'a, '_>, name: &str) -> Option<&'a str> {
    let styled = node.attribute("style").into_iter().flat_map(|s| s.split(';'));
    let styled = styled
        .filter_map(|p| p.split_once(':'))
        .find(|(n, _)| n.trim() == name)
        .map(|(_, v)| v.trim());
    styled.or_else(|| node.attribute(name).map(str::trim))
}

fn hidden(node: Node<'_, '_>) -> bool {
    property(node, "display") == Some("none")
        || property(node, "visibility") == Some("hidden")
        || property(node, "opacity").and_then(|o| o.parse::<f64>().ok()) == Some(0.0)
}

fn painted(node: Node<'_, '_>, above: Look) -> Look {
    let clear = |name: &str| property(node, name).and_then(|o| o.parse::<f64>().ok()) == Some(0.0);
    let mut look = above;
    if let Some(fill) = property(node, "fill") {
        look.fill = colour(fill);
    }
    if let Some(stroke) = property(node, "stroke") {
        look.stroke = stroke != "none";
    }
    if let Some(rule) = property(node, "fill-rule") {
        look.even_odd = rule == "evenodd";
    }
    if clear("fill-opacity") {
        look.fill = None;
    }
    if clear("stroke-opacity") || clear("stroke-width") {
        look.stroke = false;
    }
    look
}

/// Named colours other than these, and gradients, count as a middle grey: they only have to be known from black and white.
fn colour(written: &str) -> Option<Colour> {
    let hex = |s: &str| u8::from_str_radix(s, 16).ok();
    match written.to_ascii_lowercase().as_str() {
        "none" | "transparent" => None,
        "black" => Some(Colour([0; 3])),
        "white" => Some(Colour([255; 3])),
        other => {
            let digits = other.strip_prefix('#').filter(|d| d.is_ascii()).unwrap_or_default();
            let parts: Option<Vec<u8>> = match digits.len() {
                6 => (0..3).map(|i| hex(&digits[2 * i..2 * i + 2])).collect(),
                3 => (0..3).map(|i| hex(&digits[i..=i]).map(|v| v * 17)).collect(),
                _ => None,
            };
            Some(Colour(parts.and_then(|p| p.try_into().ok()).unwrap_or([128; 3])))
        }
    }
}

type Form = (BezPath, Option<String>);

/// The form of an element; none when it is no shape.
fn form(node: Node<'_, '_>) -> Result<Option<Form>, OutlineError> {
    let n = |name: &str| {
        node.attribute(name)
            .and_then(|v| v.trim().trim_end_matches("px").parse::<f64>().ok())
            .unwrap_or(0.0)
    };
    let fine = 0.05;
    let path = match node.tag_name().name() {
        "path" => {
            let d = node.attribute("d").unwrap_or_default();
            let path = BezPath::from_svg(d).map_err(|_| OutlineError::Form("path".into()))?;
            return Ok(Some((path, Some(d.to_owned()))));
        }
        "circle" => Circle::new((n("cx"), n("cy")), n("r")).to_path(fine),
        "ellipse" => Ellipse::new((n("cx"), n("cy")), (n("rx"), n("ry")), 0.0).to_path(fine),
        "rect" => {
            let rect = Rect::new(n("x"), n("y"), n("x") + n("width"), n("y") + n("height"));
            RoundedRect::from_rect(rect, n("rx").max(n("ry"))).to_path(fine)
        }
        "line" => Line::new((n("x1"), n("y1")), (n("x2"), n("y2"))).to_path(fine),
        "polygon" => corners(node, true)?,
        "polyline" => corners(node, false)?,
        _ => return Ok(None),
    };
    Ok(Some((path, None)))
}

fn corners(node: Node<'_, '_>, close: bool) -> Result<BezPath, OutlineError> {
    let wrong = || OutlineError::Form(node.tag_name().name().to_owned());
    let written = node.attribute("points").unwrap_or_default();
    let numbers = written.split(|c: char| c == ',' || c.is_whitespace()).filter(|s| !s.is_empty());
    let numbers: Vec<f64> =
        numbers.map(|s| s.parse().map_err(|_| wrong())).collect::<Result<_, _>>()?;
    let mut path = BezPath::new();
    for (i, xy) in numbers.chunks_exact(2).enumerate() {
        let p = Point::new(xy[0], xy[1]);
        if i == 0 { path.move_to(p) } else { path.line_to(p) }
    }
    if close && !path.is_empty() {
        path.close_path();
    }
    Ok(path)
}
