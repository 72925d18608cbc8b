//! Groups pictures by their rights and names every source once.

use super::{Needs, Owned, Rights, Sheet, Source};
use std::collections::{BTreeMap, BTreeSet};

pub(super) fn make(needs: &Needs) -> Sheet {
    let mut by_rights: BTreeMap<(bool, &Rights), Vec<String>> = BTreeMap::new();
    for picture in &needs.pictures {
        // `false` sorts first: pictures whose rights are written down stand before the others.
        let wanting = picture.rights.author.is_none() && picture.rights.licence.is_none();
        by_rights.entry((wanting, &picture.rights)).or_default().push(picture.name.clone());
    }
    let sources: BTreeSet<&Source> = needs.sources.iter().collect();
    Sheet {
        imprint: needs.imprint.clone(),
        pictures: by_rights
            .into_iter()
            .map(|((_, rights), names)| Owned { rights: rights.clone(), names })
            .collect(),
        sources: sources.into_iter().cloned().collect(),
        dictionary: needs.dictionary,
        links: needs.links > 0,
    }
}
