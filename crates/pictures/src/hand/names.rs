//! The names under which a cut is found.

use write_fonts::tables::name::{Name, NameRecord};
use write_fonts::types::NameId;

use super::Cut;

/// Windows platform, Unicode, English of the United States (OpenType specification, `name`).
const PLATFORM: (u16, u16, u16) = (3, 1, 0x409);

/// The name table of a cut.
pub(super) fn table(cut: Cut) -> Name {
    let family = cut.family();
    let style = match cut {
        Cut::Bold => "Bold",
        _ => "Regular",
    };
    let full = format!("{family} {style}");
    let mut post_script = full.replace(' ', "");
    post_script.insert(post_script.len() - style.len(), '-');
    let texts = [
        (NameId::FAMILY_NAME, family.to_owned()),
        (NameId::SUBFAMILY_NAME, style.to_owned()),
        (NameId::UNIQUE_ID, format!("1.000;{post_script}")),
        (NameId::FULL_NAME, full),
        (NameId::VERSION_STRING, "Version 1.000".to_owned()),
        (NameId::POSTSCRIPT_NAME, post_script),
    ];
    let (platform, encoding, language) = PLATFORM;
    let record = |(id, text): (NameId, String)| {
        NameRecord::new(platform, encoding, language, id, text.into())
    };
    let mut records: Vec<NameRecord> = texts.into_iter().map(record).collect();
    records.sort();
    Name::new(records)
}
