//! Compares what the cover prints with what the study says.

use super::Front;
use proof::Proof;

pub(super) fn check(needs: &Front, sheet: &Front) -> Proof {
    let mut proof = Proof::new();
    let plain = |s: &Option<study::Said>| s.as_ref().map(study::Said::plain);
    let same = [
        ("title", sheet.title.plain() == needs.title.plain()),
        ("subtitle", plain(&sheet.subtitle) == plain(&needs.subtitle)),
        ("author", plain(&sheet.author) == plain(&needs.author)),
        ("press", plain(&sheet.press) == plain(&needs.press)),
        ("issue", sheet.issue == needs.issue),
        ("ages", sheet.ages == needs.ages),
        ("number of lessons", sheet.lessons == needs.lessons),
        ("picture", sheet.picture == needs.picture),
    ];
    for (what, holds) in same {
        proof.demand(holds, "cover-words", format!("the {what} on the cover is not the study's"));
    }
    proof.demand(!sheet.title.plain().trim().is_empty(), "cover-title", "the cover has no title");
    proof.demand(
        sheet.ages.from <= sheet.ages.to,
        "cover-ages",
        "the ages on the cover run backwards",
    );
    if let Some(picture) = &sheet.picture {
        let drawable = picture.width > 0 && picture.height > 0 && !picture.hash.is_empty();
        proof.demand(
            drawable,
            "cover-picture",
            format!("the picture `{}` has no size", picture.name),
        );
        proof.count("picture", &picture.name);
    }
    proof.count("letters in the title", sheet.title.plain().chars().count());
    proof
}
