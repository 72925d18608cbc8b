//! Puts the drawn glyphs of a cut together as a TrueType font.

use std::collections::BTreeMap;

use kurbo::BezPath;
use write_fonts::FontBuilder;
use write_fonts::tables::cmap::Cmap;
use write_fonts::tables::glyf::{
    Anchor, Bbox, Component, ComponentFlags, CompositeGlyph, GlyfLocaBuilder, Glyph as Stored,
    SimpleGlyph, Transform,
};
use write_fonts::tables::hmtx::{Hmtx, LongMetric};
use write_fonts::tables::loca::LocaFormat;
use write_fonts::types::GlyphId;

use super::Cut;
use super::direction::direction;
use super::error::HandError;
use super::glyph::{Shape, draw};
use super::spacing::{BLANKS, Placed, blank};
use super::table::Table;
use super::{dots, header, kerning, names, pairs};

/// A glyph with its metrics, in the order of the font.
pub(super) struct Entry {
    pub stored: Stored,
    pub advance: i32,
}

impl Entry {
    pub fn bounds(&self) -> Option<Bbox> {
        self.stored.bbox()
    }
}

/// Builds the font file.
pub(super) fn build(table: &Table, cut: Cut) -> Result<Vec<u8>, HandError> {
    let glyphs = Glyphs::new(table, cut)?;
    let (glyf, loca, format) = glyphs.outlines()?;
    let long = i16::from(format == LocaFormat::Long);
    let mut font = FontBuilder::new();
    font.add_table(&header::head(cut, &glyphs.entries, long)).map_err(refused)?;
    font.add_table(&header::hhea(&glyphs.entries)).map_err(refused)?;
    font.add_table(&header::maxp(&glyphs.entries)).map_err(refused)?;
    font.add_table(&header::os2(cut, &glyphs.entries, &glyphs.ids)).map_err(refused)?;
    font.add_table(&header::post()).map_err(refused)?;
    font.add_table(&names::table(cut)).map_err(refused)?;
    font.add_table(&glyphs.widths()).map_err(refused)?;
    font.add_table(&glyphs.characters()?).map_err(refused)?;
    font.add_table(&pairs::table(&glyphs.kerning(), &glyphs.ids)).map_err(refused)?;
    font.add_table(&glyf).map_err(refused)?;
    font.add_table(&loca).map_err(refused)?;
    Ok(font.build())
}

/// Any refusal of the font library, in its own words.
pub(super) fn refused(why: impl std::fmt::Display) -> HandError {
    HandError::Font(why.to_string())
}

/// The glyphs of a font: the box for what is missing, the characters in order of their codes,
/// and in the dotted cut the dot of which all others are made.
struct Glyphs {
    entries: Vec<Entry>,
    ids: BTreeMap<char, u16>,
    placed: BTreeMap<char, (char, Placed)>,
}

impl Glyphs {
    fn new(table: &Table, cut: Cut) -> Result<Glyphs, HandError> {
        let mut characters: BTreeMap<char, _> = table.iter().map(|(c, g)| (c, Some(g))).collect();
        characters.extend(BLANKS.map(|c| (c, None)));
        let dot = characters.len() as u16 + 1;
        let mut made =
            Glyphs { entries: vec![missing()?], ids: BTreeMap::new(), placed: BTreeMap::new() };
        for (c, glyph) in characters {
            made.ids.insert(c, made.entries.len() as u16);
            let Some(glyph) = glyph else {
                let advance = blank(c).unwrap_or_default();
                made.entries.push(Entry { stored: Stored::Empty, advance });
                continue;
            };
            let drawn = draw(c, glyph, cut)?;
            let stored = store(&drawn.shape, dot)?;
            made.entries.push(Entry { stored, advance: drawn.placed.advance });
            made.placed.insert(c, (glyph.base.unwrap_or(c), drawn.placed));
        }
        if cut == Cut::Dotted {
            let stored = simple(&[circle(dots::RADIUS)])?;
            made.entries.push(Entry { stored, advance: 0 });
        }
        Ok(made)
    }

    fn outlines(
        &self,
    ) -> Result<
        (write_fonts::tables::glyf::Glyf, write_fonts::tables::loca::Loca, LocaFormat),
        HandError,
    > {
        let mut builder = GlyfLocaBuilder::new();
        for entry in &self.entries {
            builder.add_glyph(&entry.stored).map_err(refused)?;
        }
        Ok(builder.build())
    }

    fn widths(&self) -> Hmtx {
        let metric =
            |e: &Entry| LongMetric::new(e.advance as u16, e.bounds().map_or(0, |b| b.x_min));
        Hmtx::new(self.entries.iter().map(metric).collect(), Vec::new())
    }

    fn characters(&self) -> Result<Cmap, HandError> {
        let pairs = self.ids.iter().map(|(c, id)| (*c, GlyphId::from(*id)));
        Cmap::from_mappings(pairs).map_err(refused)
    }

    fn kerning(&self) -> BTreeMap<(char, char), i32> {
        kerning::pairs(&self.placed)
    }
}

fn store(shape: &Shape, dot: u16) -> Result<Stored, HandError> {
    match shape {
        Shape::Outline(paths) => simple(paths),
        Shape::Dots(middles) => composite(middles, dot),
    }
}

fn simple(paths: &[BezPath]) -> Result<Stored, HandError> {
    let whole: BezPath = paths.iter().flat_map(|p| p.elements().iter().copied()).collect();
    let glyph = SimpleGlyph::from_bezpath(&whole).map_err(|e| HandError::Font(format!("{e:?}")))?;
    Ok(Stored::Simple(glyph))
}

/// Many copies of the dot: a quarter of the size of many outlines.
fn composite(middles: &[(i32, i32)], dot: u16) -> Result<Stored, HandError> {
    let r = dots::RADIUS as i16;
    let components = middles.iter().map(|&(x, y)| {
        let (x, y) = (x as i16, y as i16);
        let part = Component::new(
            GlyphId::from(dot),
            Anchor::Offset { x, y },
            Transform::default(),
            ComponentFlags::default(),
        );
        (part, Bbox { x_min: x - r, y_min: y - r, x_max: x + r, y_max: y + r })
    });
    let mut components = components;
    let none = || HandError::Font("a dotted glyph has no dots".into());
    let (first, bounds) = components.next().ok_or_else(none)?;
    let mut glyph = CompositeGlyph::new(first, bounds);
    components.for_each(|(part, bounds)| glyph.add_component(part, bounds));
    Ok(Stored::Composite(glyph))
}

/// The dot, clockwise, as eight quadratics.
fn circle(radius: i32) -> BezPath {
    // The control point of an eighth of a circle lies where its end tangents meet: r / cos(π/8).
    let r = f64::from(radius);
    let out = r / direction(22.5).x;
    let at = |radius: f64, eighths: f64| (direction(-45.0 * eighths) * radius).to_point().round();
    let mut path = BezPath::new();
    path.move_to(at(r, 0.0));
    for i in (0..8).map(f64::from) {
        path.quad_to(at(out, i + 0.5), at(r, i + 1.0));
    }
    path.close_path();
    path
}

/// The box that stands for a character the font lacks.
fn missing() -> Result<Entry, HandError> {
    let frame = |x0: f64, y0: f64, x1: f64, y1: f64, clockwise: bool| {
        let mut corners = [(x0, y0), (x0, y1), (x1, y1), (x1, y0)];
        if !clockwise {
            corners.reverse();
        }
        let mut path = BezPath::new();
        path.move_to(corners[0]);
        corners[1..].iter().for_each(|c| path.line_to(*c));
        path.close_path();
        path
    };
    let stored =
        simple(&[frame(60.0, 0.0, 440.0, 740.0, true), frame(110.0, 50.0, 390.0, 690.0, false)])?;
    Ok(Entry { stored, advance: 500 })
}
