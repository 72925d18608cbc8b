//! Puts text, words box, aside and sources together.

use super::{Needs, Sheet};
use crate::shared::SourceLine;
use std::collections::BTreeSet;

pub(super) fn make(needs: &Needs) -> Sheet {
    let sources: BTreeSet<SourceLine> =
        needs.facts.iter().filter_map(|f| f.source.clone()).collect();
    Sheet {
        title: needs.title.clone(),
        text: needs.text.clone(),
        picture: needs.picture.clone(),
        caption: needs.caption.clone(),
        glossary: needs.terms.clone(),
        more: needs.more.clone(),
        sources: sources.into_iter().collect(),
    }
}
