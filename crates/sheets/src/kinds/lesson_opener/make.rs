//! Lays the opener's two pages; draws the code symbols.

use super::{Link, Needs, Ready, Sheet};
use crate::code_symbol;
use findings::{Finding, Findings};

pub(super) fn make(needs: &Needs) -> Result<Sheet, Findings> {
    let links = needs.links.iter().map(with_code).collect::<Result<Vec<Link>, Findings>>()?;
    let lists = [needs.words.len(), needs.ready.len(), needs.books.len(), links.len()];
    let ready = lists.iter().any(|n| *n > 0).then(|| Ready {
        words: needs.words.clone(),
        ready: needs.ready.clone(),
        books: needs.books.clone(),
        links,
        caution: needs.caution.clone(),
    });
    Ok(Sheet {
        number: needs.number,
        of: needs.of,
        title: needs.title.clone(),
        question: needs.question.clone(),
        opening: needs.opening.clone(),
        picture: needs.picture.clone(),
        sheets: needs.sheets.clone(),
        ready,
    })
}

fn with_code(link: &Link) -> Result<Link, Findings> {
    match code_symbol::rows(&link.address) {
        Some(code) => Ok(Link { code, ..link.clone() }),
        None => Err(Finding::error(
            "address-too-long",
            format!("the address of `{}` is too long for a code symbol", link.title.plain()),
        )
        .at(&link.at)
        .remedy("use a shorter address of the same page")
        .into()),
    }
}
