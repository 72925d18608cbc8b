//! Judged from outside by the `image` crate: what is taken out changes no pixel.

use super::{clean, jpeg, orientation, turned};
use crate::model::PictureForm;
use image::{ExtendedColorType, ImageEncoder, codecs::jpeg::JpegEncoder, codecs::png::PngEncoder};

const SIZE: (u32, u32) = (6, 4);

fn pixels() -> Vec<u8> {
    (0..SIZE.0 * SIZE.1 * 3).map(|n| u8::try_from(n * 7 % 251).expect("below 251")).collect()
}

fn a_png() -> Vec<u8> {
    let mut out = Vec::new();
    PngEncoder::new(&mut out)
        .write_image(&pixels(), SIZE.0, SIZE.1, ExtendedColorType::Rgb8)
        .expect("encodes");
    out
}

fn a_jpeg() -> Vec<u8> {
    let mut out = Vec::new();
    JpegEncoder::new(&mut out)
        .write_image(&pixels(), SIZE.0, SIZE.1, ExtendedColorType::Rgb8)
        .expect("encodes");
    out
}

/// A camera segment in the other byte order, with a place (GPS) beside the way the camera was held.
fn camera(turn: u8) -> Vec<u8> {
    let mut body = b"Exif\0\0II\x2a\0\x08\0\0\0\x02\0".to_vec();
    body.extend_from_slice(&[0x12, 0x01, 3, 0, 1, 0, 0, 0, turn, 0, 0, 0]);
    body.extend_from_slice(&[0x25, 0x88, 4, 0, 1, 0, 0, 0, 38, 0, 0, 0]);
    body.extend_from_slice(b"\0\0\0\0GPS 54.44N 0.61W");
    let length = u16::try_from(body.len() + 2).expect("short").to_be_bytes();
    [&[0xFF, 0xE1], &length[..], &body].concat()
}

fn with_segment(jpeg: &[u8], segment: &[u8]) -> Vec<u8> {
    [&jpeg[..2], segment, &jpeg[2..]].concat()
}

fn holds(bytes: &[u8], words: &[u8]) -> bool {
    bytes.windows(words.len()).any(|w| w == words)
}

#[test]
fn a_photo_loses_its_place_and_keeps_its_pixels() {
    let comment = [&[0xFF, 0xFE, 0, 9][..], b"secret!"].concat();
    let photo = with_segment(&with_segment(&a_jpeg(), &camera(1)), &comment);
    let art = clean(&photo).expect("a good photo");
    assert!(
        holds(&photo, b"GPS")
            && !holds(&art.bytes, b"GPS")
            && !holds(&art.bytes, b"secret")
            && !holds(&art.bytes, b"Exif")
    );
    assert_eq!(
        image::load_from_memory(&art.bytes).expect("decodes"),
        image::load_from_memory(&photo).expect("decodes")
    );
    assert_eq!((art.width, art.height, art.form), (SIZE.0, SIZE.1, PictureForm::Jpeg));
}

#[test]
fn a_photo_taken_on_its_side_still_says_so() {
    let photo = with_segment(&a_jpeg(), &camera(6));
    let art = clean(&photo).expect("a good photo");
    assert_eq!((art.width, art.height), (SIZE.1, SIZE.0));
    assert!(!holds(&art.bytes, b"GPS"));
    let mut decoder = image::ImageReader::new(std::io::Cursor::new(&art.bytes))
        .with_guessed_format()
        .expect("a format")
        .into_decoder()
        .expect("decodes");
    let turn = image::ImageDecoder::orientation(&mut decoder).expect("readable");
    assert_eq!(turn, image::metadata::Orientation::Rotate90);
    assert_eq!(orientation(&turned(8)[4..]), Some(8));
}

#[test]
fn a_png_loses_its_texts_and_keeps_its_pixels() {
    let plain = a_png();
    let mut text = 10_u32.to_be_bytes().to_vec();
    text.extend_from_slice(b"tEXtAuthor\0Ann\0\0\0\0");
    // The first chunk (IHDR) ends at byte 33 (ISO/IEC 15948, section 11.2.2).
    let mut noted = [&plain[..33], &text, &plain[33..]].concat();
    noted.extend_from_slice(b"hidden after the end");
    let art = clean(&noted).expect("a good picture");
    assert_eq!(art.bytes, plain);
    assert_eq!((art.width, art.height, art.form), (SIZE.0, SIZE.1, PictureForm::Png));
}

#[test]
fn damaged_and_huge_pictures_are_refused_before_they_are_decoded() {
    for whole in [a_png(), a_jpeg()] {
        for cut in [10, 40, whole.len() / 2, whole.len() - 3] {
            let findings = clean(&whole[..cut]).expect_err("cut off");
            assert!(findings.has_errors());
        }
    }
    let mut huge = a_png();
    huge[16..20].copy_from_slice(&20_000_u32.to_be_bytes());
    huge[20..24].copy_from_slice(&20_000_u32.to_be_bytes());
    let findings = clean(&huge).expect_err("400 megapixels");
    assert!(findings.iter().all(|f| f.message.contains("400 million pixels")), "{findings:?}");
    let gif = b"GIF89a\x01\0\x01\0\0\0\0;";
    assert!(clean(gif).expect_err("a GIF").iter().all(|f| f.message.contains("GIF")));
}

proptest::proptest! {
    #[test]
    fn random_bytes_never_stop_the_program(head in 0_usize..3, bytes in proptest::collection::vec(proptest::num::u8::ANY, 0..200)) {
        let head: &[u8] = [&b"\x89PNG\r\n\x1a\n"[..], &[0xFF, 0xD8, 0xFF], &[]][head];
        let whole = [head, &bytes].concat();
        let _ = clean(&whole);
        let _ = jpeg(&whole);
        let _ = orientation(&[b"Exif\0\0", &bytes[..]].concat());
    }
}
