//! Photographs and scans: PNG and JPEG by content, measured before anything is
//! decoded, with what the camera wrote about place and maker taken out.

use super::Art;
use crate::model::PictureForm;
use findings::{Finding, Findings};
use imagesize::ImageType;
use std::collections::BTreeSet;

/// Most pixels of a bitmap (100 megapixels).
const MOST_PIXELS: usize = 100_000_000;

/// Eight bytes that begin every PNG (ISO/IEC 15948, section 5.2).
const PNG_HEAD: &[u8] = b"\x89PNG\r\n\x1a\n";

/// True when the bytes are no text such as SVG: judged by content, never by the file's ending.
pub(super) fn is_bitmap(bytes: &[u8]) -> bool {
    imagesize::image_type(bytes).is_ok()
        || bytes.starts_with(PNG_HEAD)
        || bytes.starts_with(&[0xFF, 0xD8])
}

/// Measures a bitmap and takes out what does not print.
pub(super) fn clean(bytes: &[u8]) -> Result<Art, Findings> {
    let form = match imagesize::image_type(bytes) {
        Ok(ImageType::Png) => PictureForm::Png,
        Ok(ImageType::Jpeg) => PictureForm::Jpeg,
        Ok(other) => return Err(other_form(&other).into()),
        Err(_) => return Err(damaged().into()),
    };
    let size = imagesize::blob_size(bytes).map_err(|_| Findings::from(damaged()))?;
    let pixels = size.width.saturating_mul(size.height);
    if pixels > MOST_PIXELS {
        return Err(huge(pixels).into());
    }
    let cleaned = match form {
        PictureForm::Png => png(bytes).map(|bytes| (bytes, false)),
        _ => jpeg(bytes),
    };
    let (bytes, turned) = cleaned.ok_or_else(|| Findings::from(damaged()))?;
    let (width, height) =
        if turned { (size.height, size.width) } else { (size.width, size.height) };
    let number = |n: usize| u32::try_from(n).ok().filter(|n| *n > 0);
    let (Some(width), Some(height)) = (number(width), number(height)) else {
        return Err(damaged().into());
    };
    Ok(Art { form, bytes, width, height, origin: (0, 0), ids: BTreeSet::new() })
}

fn other_form(form: &ImageType) -> Finding {
    let debug = format!("{form:?}");
    let name = debug.split(['(', ' ', '{']).next().unwrap_or_default().to_uppercase();
    let fact = format!("this picture is a {name} inside, which does not print");
    Finding::error("picture-form", fact)
        .remedy("open it in a picture program and save it as PNG or JPEG")
}

fn huge(pixels: usize) -> Finding {
    let millions = pixels / 1_000_000;
    let fact = format!("this picture has {millions} million pixels; 100 million can be printed");
    Finding::error("picture-huge", fact)
        .remedy("make it smaller: 5,000 pixels along the longer side fill a page")
}

fn damaged() -> Finding {
    Finding::error("picture-damaged", "this picture is damaged or not complete")
        .remedy("save it again from the program it was made with, or take it from a copy")
}

fn number(bytes: &[u8], at: usize, many: usize) -> Option<usize> {
    let part = bytes.get(at..at.checked_add(many)?)?;
    Some(part.iter().fold(0, |n, b| n << 8 | usize::from(*b)))
}

/// Keeps the chunks that the picture itself needs: texts, camera data and times fall away, and whatever follows the end.
fn png(bytes: &[u8]) -> Option<Vec<u8>> {
    let mut out = PNG_HEAD.to_vec();
    let mut at = PNG_HEAD.len();
    let mut data = false;
    loop {
        let length = number(bytes, at, 4)?;
        let end = at.checked_add(12)?.checked_add(length)?;
        let chunk = bytes.get(at..end)?;
        let name = chunk.get(4..8)?;
        if !matches!(name, b"tEXt" | b"zTXt" | b"iTXt" | b"eXIf" | b"tIME") {
            out.extend_from_slice(chunk);
        }
        data |= name == b"IDAT";
        if name == b"IEND" {
            return data.then_some(out);
        }
        at = end;
    }
}

/// Keeps the segments that the picture itself needs. Camera data and comments fall away; when the camera was
/// held on its side, that alone is written anew. True when width and height change places.
fn jpeg(bytes: &[u8]) -> Option<(Vec<u8>, bool)> {
    let mut out = vec![0xFF, 0xD8];
    let mut at = 2;
    let mut turn = 1;
    loop {
        while number(bytes, at, 2)? == 0xFFFF {
            at += 1;
        }
        let marker = number(bytes, at, 2)?;
        let length = number(bytes, at + 2, 2)?;
        let end = at.checked_add(2)?.checked_add(length)?;
        let segment = bytes.get(at..end).filter(|_| length >= 2 && marker >= 0xFFC0)?;
        let icc =
            marker == 0xFFE2 && segment.get(4..).is_some_and(|s| s.starts_with(b"ICC_PROFILE\0"));
        let extra = (0xFFE1..=0xFFEF).contains(&marker) && marker != 0xFFEE && !icc;
        if marker == 0xFFE1 {
            turn = segment.get(4..).and_then(orientation).unwrap_or(turn);
        }
        if !extra && marker != 0xFFFE {
            out.extend_from_slice(segment);
        }
        at = end;
        if marker == 0xFFDA {
            break;
        }
    }
    let scans = bytes.get(at..)?;
    let last = scans.windows(2).rposition(|w| w == [0xFF, 0xD9])?;
    out.extend_from_slice(scans.get(..last + 2)?);
    if turn > 1 {
        // After the first two bytes, and after a JFIF segment, which must stay first.
        let jfif = number(&out, 2, 2) == Some(0xFFE0);
        let place = if jfif { 4 + number(&out, 4, 2)? } else { 2 };
        out.splice(place..place, turned(turn));
    }
    Some((out, turn >= 5))
}

/// The way the camera was held, 1 to 8: tag 0x0112 of the first directory (Exif 2.3, section 4.6.4).
fn orientation(segment: &[u8]) -> Option<u8> {
    let tiff = segment.strip_prefix(b"Exif\0\0")?;
    let little = tiff.starts_with(b"II");
    let read = |at: usize, many: usize| {
        let part = tiff.get(at..at.checked_add(many)?)?;
        let join = |n: usize, b: &u8| n << 8 | usize::from(*b);
        Some(if little { part.iter().rev().fold(0, join) } else { part.iter().fold(0, join) })
    };
    let start = read(4, 4)?;
    let entries = read(start, 2)?;
    let entry = (0..entries.min(512))
        .map(|n| start + 2 + 12 * n)
        .find(|at| read(*at, 2) == Some(0x0112))?;
    u8::try_from(read(entry + 8, 2)?).ok().filter(|turn| (1..=8).contains(turn))
}

/// A camera segment that says nothing but how the camera was held.
fn turned(turn: u8) -> Vec<u8> {
    let mut segment = vec![0xFF, 0xE1, 0x00, 0x22];
    segment.extend_from_slice(b"Exif\0\0MM\0\x2a\0\0\0\x08\0\x01");
    segment.extend_from_slice(&[0x01, 0x12, 0x00, 0x03, 0, 0, 0, 1, 0, turn, 0, 0, 0, 0, 0, 0]);
    segment
}

#[cfg(test)]
mod tests;
