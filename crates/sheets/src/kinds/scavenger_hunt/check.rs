//! Is everything to be found on the pages once, with its own words, and are the cautions there?

use super::needs::speaks_of;
use super::{Find, Needs, Sheet, Thing};
use crate::cautions::cautions;
use findings::{Finding, Findings};
use proof::{Laid, Proof};
use study::Band;

/// Most things a page: large pictures for the youngest, then as many as keep their words readable; our own numbers.
fn most(band: Band) -> usize {
    match band {
        Band::A => 8,
        Band::B | Band::C => 12,
        Band::D => 16,
    }
}

/// The proof of a hunt.
pub(super) fn check(needs: &Needs, sheet: &Sheet) -> Proof {
    let mut proof = Proof::new();
    let finds: Vec<&Find> = sheet.pages.iter().flatten().collect();
    proof.count("things", finds.len());
    proof.count("pages", sheet.pages.len());
    proof.demand(
        finds.len() == needs.things.len(),
        "hunt-count",
        "not every thing to find stands on the pages once",
    );
    for (i, (find, thing)) in finds.iter().zip(&needs.things).enumerate() {
        proof.demand(
            usize::try_from(find.n) == Ok(i + 1),
            "hunt-number",
            format!("`{}` has the wrong number", find.item.plain()),
        );
        same(needs, find, thing, &mut proof);
    }
    for page in &sheet.pages {
        proof.demand(!page.is_empty(), "hunt-empty", "a page of the hunt is empty");
        proof.demand(
            page.len() <= most(needs.band),
            "hunt-crowded",
            format!("a page holds {} things to find", page.len()),
        );
    }
    proof.demand(
        sheet.large == (needs.band == Band::A),
        "hunt-size",
        "the pictures have the wrong size for the age",
    );
    careful(needs, sheet, &mut proof);
    proof
}

fn same(needs: &Needs, find: &Find, thing: &Thing, proof: &mut Proof) {
    let name = thing.item.plain();
    proof.demand(
        find.item == thing.item,
        "hunt-other",
        format!("something else is printed for `{name}`"),
    );
    proof.demand(
        find.picture == thing.picture,
        "hunt-picture",
        format!("`{name}` has another picture"),
    );
    proof.demand(
        find.safe == thing.safe,
        "hunt-safe",
        format!("what to do with `{name}` is not printed as written"),
    );
    let hint = if needs.band == Band::A { None } else { thing.hint.as_ref() };
    proof.demand(
        find.hint.as_ref() == hint,
        "hunt-hint",
        format!("the hint for `{name}` is not printed as written"),
    );
    if find.safe.is_none() {
        let finding = Finding::hint(
            "hunt-rule",
            format!("nothing says what to do with `{name}` once it is found"),
        )
        .at(&thing.item.at);
        proof
            .findings
            .push(finding.remedy("write it under `safe` in `hunt.csv`, such as look, do not take"));
    }
    if find.picture.is_none() && needs.band == Band::A {
        let finding = Finding::warning(
            "hunt-unseen",
            format!("`{name}` has no picture for children who cannot read yet"),
        )
        .at(&thing.item.at);
        proof.findings.push(finding.remedy("name one under `picture` in `hunt.csv`"));
    }
}

/// The cautions of every tag, and the shore's where the words speak of it.
fn careful(needs: &Needs, sheet: &Sheet, proof: &mut Proof) {
    let wanted = cautions(&needs.tags, &[] as &[&str], &needs.language);
    proof.count("cautions", sheet.cautions.len());
    proof.demand(
        sheet.cautions == wanted,
        "hunt-cautions",
        "the cautions are not those that the tags call for, closing sentence last",
    );
    let tagged = needs.tags.iter().any(|t| t == "shore");
    if let Some(thing) = needs.things.iter().find(|t| !tagged && speaks_of(t, &needs.shore_words)) {
        let message = format!(
            "`{}` is found by the sea, and the cautions for the shore are not printed",
            thing.item.plain()
        );
        proof.findings.push(
            Finding::warning("hunt-shore", message)
                .at(&thing.item.at)
                .remedy("add `shore` to the `tags` of this sheet"),
        );
    }
}

/// Confirms that every thing is laid out with its tick box, in order.
pub(super) fn check_page(sheet: &Sheet, laid: &Laid) -> Findings {
    let wanted: Vec<String> = sheet.pages.iter().flatten().map(|f| f.n.to_string()).collect();
    let found: Vec<&str> = laid.marks("find").map(|(_, m)| m.name.as_str()).collect();
    if found == wanted {
        return Findings::none();
    }
    Finding::error(
        "hunt-laid",
        format!("{} of {} things stand on the pages in order", found.len(), wanted.len()),
    )
    .into()
}
