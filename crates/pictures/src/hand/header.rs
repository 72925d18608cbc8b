//! The tables that describe a font as a whole. Meanings and values follow the OpenType
//! specification, chapters `head`, `hhea`, `maxp`, `OS/2` and `post`.

use std::collections::BTreeMap;

use write_fonts::tables::glyf::{Bbox, Glyph as Stored};
use write_fonts::tables::head::{Flags, Head, MacStyle};
use write_fonts::tables::hhea::Hhea;
use write_fonts::tables::maxp::Maxp;
use write_fonts::tables::os2::{Os2, SelectionFlags};
use write_fonts::tables::post::Post;
use write_fonts::types::{Fixed, LongDateTime, Tag, Version16Dot16};

use super::font::Entry;
use super::{ASCENDER, CAPITAL, Cut, DESCENDER, EM, X_HEIGHT};

/// Seconds from 1904 to the start of 2026: a fixed date, because the same program must give the
/// same bytes. 122 years, of which 31 (1904, 1908 … 2024) are leap years.
const DATE: i64 = (122 * 365 + 31) * 86_400;

/// White between lines beside the em, in units; room for accents on capitals.
const LINE_GAP: i16 = 200;

fn bounds(entries: &[Entry]) -> Bbox {
    let all = entries.iter().filter_map(Entry::bounds);
    all.reduce(Bbox::union).unwrap_or_default()
}

pub(super) fn head(cut: Cut, entries: &[Entry], long_offsets: i16) -> Head {
    let all = bounds(entries);
    let bold = cut == Cut::Bold;
    Head {
        font_revision: Fixed::from_f64(1.0),
        // Base line at y = 0, left bearing at x = 0, whole-numbered sizes not required.
        flags: Flags::BASELINE_AT_Y_0 | Flags::LSB_AT_X_0,
        units_per_em: EM as u16,
        created: LongDateTime::new(DATE),
        modified: LongDateTime::new(DATE),
        x_min: all.x_min,
        y_min: all.y_min,
        x_max: all.x_max,
        y_max: all.y_max,
        mac_style: if bold { MacStyle::BOLD } else { MacStyle::empty() },
        lowest_rec_ppem: 8,
        index_to_loc_format: long_offsets,
        ..Head::default()
    }
}

pub(super) fn hhea(entries: &[Entry]) -> Hhea {
    let inked = || entries.iter().filter_map(|e| Some((e.advance as i16, e.bounds()?)));
    let least = |values: Vec<i16>| values.into_iter().min().unwrap_or(0);
    Hhea {
        ascender: (ASCENDER as i16).into(),
        descender: (DESCENDER as i16).into(),
        line_gap: LINE_GAP.into(),
        advance_width_max: (entries.iter().map(|e| e.advance as u16).max().unwrap_or(0)).into(),
        min_left_side_bearing: least(inked().map(|(_, b)| b.x_min).collect()).into(),
        min_right_side_bearing: least(inked().map(|(a, b)| a - b.x_max).collect()).into(),
        x_max_extent: inked().map(|(_, b)| b.x_max).max().unwrap_or(0).into(),
        caret_slope_rise: 1,
        caret_slope_run: 0,
        caret_offset: 0,
        number_of_h_metrics: entries.len() as u16,
    }
}

/// Contours and points of a glyph that is no composite.
fn size(entry: &Entry) -> (u16, u16) {
    match &entry.stored {
        Stored::Simple(g) => {
            (g.contours.len() as u16, g.contours.iter().map(|c| c.len() as u16).sum())
        }
        _ => (0, 0),
    }
}

/// Copies of other glyphs that a glyph is made of.
fn parts(entry: &Entry) -> u16 {
    match &entry.stored {
        Stored::Composite(g) => g.components().len() as u16,
        _ => 0,
    }
}

pub(super) fn maxp(entries: &[Entry]) -> Maxp {
    let most = entries.iter().map(parts).max().unwrap_or(0);
    // The one glyph that composites repeat comes last.
    let dot = entries.last().map_or((0, 0), size);
    Maxp {
        num_glyphs: entries.len() as u16,
        max_points: entries.iter().map(|e| size(e).1).max(),
        max_contours: entries.iter().map(|e| size(e).0).max(),
        max_composite_points: Some(most * dot.1),
        max_composite_contours: Some(most * dot.0),
        max_zones: Some(1),
        max_twilight_points: Some(0),
        max_storage: Some(0),
        max_function_defs: Some(0),
        max_instruction_defs: Some(0),
        max_stack_elements: Some(0),
        max_size_of_instructions: Some(0),
        max_component_elements: Some(most),
        max_component_depth: Some(u16::from(most > 0)),
    }
}

/// Mean width of all glyphs that have one.
fn mean_width(entries: &[Entry]) -> i16 {
    let widths: Vec<i32> = entries.iter().map(|e| e.advance).filter(|a| *a > 0).collect();
    (widths.iter().sum::<i32>() / widths.len().max(1) as i32) as i16
}

/// A character's code, or the highest that fits.
fn code(c: Option<&char>) -> u16 {
    c.map_or(0, |c| u16::try_from(u32::from(*c)).unwrap_or(u16::MAX))
}

fn style(bold: bool) -> SelectionFlags {
    if bold { SelectionFlags::BOLD } else { SelectionFlags::REGULAR }
}

pub(super) fn os2(cut: Cut, entries: &[Entry], ids: &BTreeMap<char, u16>) -> Os2 {
    let all = bounds(entries);
    let bold = cut == Cut::Bold;
    Os2 {
        x_avg_char_width: mean_width(entries),
        us_weight_class: if bold { 700 } else { 400 },
        us_width_class: 5,
        y_strikeout_size: 50,
        y_strikeout_position: (X_HEIGHT / 2) as i16,
        // Basic Latin, Latin-1, Latin Extended-A, General Punctuation.
        ul_unicode_range_1: 1 | 1 << 1 | 1 << 2 | 1 << 31,
        ach_vend_id: Tag::new(b"BDRE"),
        fs_selection: style(bold) | SelectionFlags::USE_TYPO_METRICS,
        us_first_char_index: code(ids.keys().next()),
        us_last_char_index: code(ids.keys().next_back()),
        s_typo_ascender: ASCENDER as i16,
        s_typo_descender: DESCENDER as i16,
        s_typo_line_gap: LINE_GAP,
        us_win_ascent: all.y_max.max(0) as u16,
        us_win_descent: (-all.y_min).max(0) as u16,
        ul_code_page_range_1: Some(1),
        ul_code_page_range_2: Some(0),
        sx_height: Some(X_HEIGHT as i16),
        s_cap_height: Some(CAPITAL as i16),
        us_default_char: Some(0),
        us_break_char: Some(32),
        us_max_context: Some(2),
        ..Os2::default()
    }
}

pub(super) fn post() -> Post {
    Post {
        version: Version16Dot16::VERSION_3_0,
        underline_position: (-130i16).into(),
        underline_thickness: 50i16.into(),
        ..Post::default()
    }
}
