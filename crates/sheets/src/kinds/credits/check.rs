//! Goes through pictures and sources again: each named once, nobody forgotten, nobody invented.

use super::{Needs, Sheet, Source};
use findings::Finding;
use proof::Proof;
use std::collections::BTreeSet;

pub(super) fn check(needs: &Needs, sheet: &Sheet) -> Proof {
    let mut proof = Proof::new();
    proof.demand(
        sheet.imprint == needs.imprint,
        "credits-imprint",
        "title, author, press, terms, thanks, issue or date are not the study's",
    );
    pictures(&mut proof, needs, sheet);
    sources(&mut proof, needs, sheet);
    proof.demand(
        sheet.dictionary == needs.dictionary,
        "credits-dictionary",
        "the dictionary is wrongly named or left out",
    );
    proof.demand(
        sheet.links == (needs.links > 0),
        "credits-links",
        "the note on links is wrongly printed or left out",
    );
    if needs.unsourced > 0 {
        let finding = Finding::hint(
            "facts-unsourced",
            format!("{} of the facts that are used have no source yet", needs.unsourced),
        );
        proof.findings.push(finding.remedy("fill in the `source` column of facts.csv"));
    }
    proof
}

fn pictures(proof: &mut Proof, needs: &Needs, sheet: &Sheet) {
    for picture in &needs.pictures {
        let named: Vec<_> =
            sheet.pictures.iter().filter(|o| o.names.contains(&picture.name)).collect();
        let right = matches!(named.as_slice(), [one] if one.rights == picture.rights);
        proof.demand(
            right,
            "credit-picture",
            format!("the picture `{}` is not named once under its own author", picture.name),
        );
    }
    let names: Vec<&String> = sheet.pictures.iter().flat_map(|o| &o.names).collect();
    let unique: BTreeSet<&&String> = names.iter().collect();
    proof.demand(unique.len() == names.len(), "credit-twice", "a picture is named twice");
    proof.demand(
        names.len() == needs.pictures.len(),
        "credit-stray",
        "a picture is named that no sheet shows",
    );
    proof.count("pictures", names.len());
}

fn sources(proof: &mut Proof, needs: &Needs, sheet: &Sheet) {
    let wanted: BTreeSet<&Source> = needs.sources.iter().collect();
    let named: BTreeSet<&Source> = sheet.sources.iter().collect();
    proof.demand(named.len() == sheet.sources.len(), "source-twice", "a source is named twice");
    for source in wanted.difference(&named) {
        proof.fault("source-missing", format!("the source `{}` is not named", source.source));
    }
    for source in named.difference(&wanted) {
        proof.fault(
            "source-stray",
            format!("the source `{}` belongs to no fact that is used", source.source),
        );
    }
    proof.count("sources", named.len());
}
