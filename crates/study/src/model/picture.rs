//! Pictures with their rights, points and pieces.

use super::Said;
use findings::Place;
use serde::{Deserialize, Serialize};

/// May a picture be sold as part of a study?
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum MayBeSold {
    /// Yes.
    Yes,
    /// No.
    No,
    /// Ask first.
    Ask,
}

/// How a picture's file is coded.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum PictureForm {
    /// Vector.
    Svg,
    /// Bitmap.
    Png,
    /// Bitmap.
    Jpeg,
}

/// Artwork with its alt text, rights record, points and named pieces.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Picture {
    /// File name without its ending.
    pub name: String,
    /// How it is coded.
    pub form: PictureForm,
    /// The file's bytes as they go to the press: SVG cleaned, bitmaps without EXIF.
    #[serde(skip)]
    pub bytes: std::sync::Arc<[u8]>,
    /// Hash of the bytes, lower-case hexadecimal.
    pub hash: String,
    /// Width in pixels or SVG user units.
    pub width: u32,
    /// Height in pixels or SVG user units.
    pub height: u32,
    /// Alt text, when written.
    pub alt: Option<Said>,
    /// Who made it.
    pub author: Option<String>,
    /// Licence.
    pub licence: Option<String>,
    /// Where it comes from.
    pub source: Option<String>,
    /// May it be sold?
    pub may_be_sold: Option<MayBeSold>,
    /// Named points in the picture's own units times 10 (tenths).
    pub points: Vec<Landmark>,
    /// Pieces: id in the SVG, plain name.
    pub pieces: Vec<(String, String)>,
    /// The picture's file.
    pub place: Place,
}

/// A named point on a picture.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Landmark {
    /// Name of the point.
    pub name: String,
    /// Tenths of the picture's own unit from its left edge.
    pub x: i32,
    /// Tenths of the picture's own unit from its top edge.
    pub y: i32,
    /// Id of the piece it lies on.
    pub piece: Option<String>,
}
