//! Stores the kerning as a GPOS table: one feature, one lookup of glyph pairs.

use std::collections::BTreeMap;

use write_fonts::tables::gpos::{
    Gpos, PairPos, PairSet, PairValueRecord, PositionLookup, PositionLookupList, ValueRecord,
};
use write_fonts::tables::layout::{
    Feature, FeatureList, FeatureRecord, LangSys, Lookup, LookupFlag, Script, ScriptList,
    ScriptRecord,
};
use write_fonts::types::{GlyphId16, Tag};

/// The table for corrections between characters, `ids` giving their glyphs.
pub(super) fn table(kerning: &BTreeMap<(char, char), i32>, ids: &BTreeMap<char, u16>) -> Gpos {
    let mut sets: BTreeMap<GlyphId16, Vec<PairValueRecord>> = BTreeMap::new();
    for ((a, b), by) in kerning {
        if let (Some(a), Some(b)) = (ids.get(a), ids.get(b)) {
            let closer = ValueRecord::new().with_x_advance(*by as i16);
            let record = PairValueRecord::new(GlyphId16::new(*b), closer, ValueRecord::new());
            sets.entry(GlyphId16::new(*a)).or_default().push(record);
        }
    }
    let covered = sets.keys().copied().collect();
    let pairs = PairPos::format_1(covered, sets.into_values().map(PairSet::new).collect());
    let lookup = PositionLookup::Pair(Lookup::new(LookupFlag::empty(), vec![pairs]));
    let feature = FeatureRecord::new(Tag::new(b"kern"), Feature::new(None, vec![0]));
    let script = |tag| {
        ScriptRecord::new(Tag::new(tag), Script::new(Some(LangSys::new(vec![0])), Vec::new()))
    };
    Gpos::new(
        ScriptList::new(vec![script(b"DFLT"), script(b"latn")]),
        FeatureList::new(vec![feature]),
        PositionLookupList::new(vec![lookup]),
    )
}
