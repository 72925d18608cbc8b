//! Compares the opener with its lesson, reads the code symbols back, measures them on the page.

use super::{Link, Needs, Ready, Sheet};
use findings::{Finding, Findings};
use proof::{Laid, Proof, isbn, symbol};

pub(super) fn check(needs: &Needs, sheet: &Sheet) -> Proof {
    let mut proof = Proof::new();
    let counted = sheet.number == needs.number
        && sheet.of == needs.of
        && (1..=sheet.of).contains(&sheet.number);
    proof.demand(
        counted,
        "opener-number",
        format!("lesson {} of {} is not the right number", sheet.number, sheet.of),
    );
    let words = sheet.title == needs.title
        && sheet.question == needs.question
        && sheet.opening == needs.opening;
    proof.demand(words, "opener-words", "title, question or opening text are not the lesson's");
    proof.demand(
        sheet.picture == needs.picture,
        "opener-picture",
        "the picture is not the lesson's",
    );
    listed(&mut proof, needs, sheet);
    let empty = Ready { words: vec![], ready: vec![], books: vec![], links: vec![], caution: None };
    ready(&mut proof, needs, sheet.ready.as_ref().unwrap_or(&empty));
    proof
}

fn listed(proof: &mut Proof, needs: &Needs, sheet: &Sheet) {
    proof.demand(
        sheet.sheets == needs.sheets,
        "opener-sheets",
        "the lesson's sheets are not listed once each in printing order",
    );
    proof.count("sheets listed", sheet.sheets.len());
}

fn ready(proof: &mut Proof, needs: &Needs, printed: &Ready) {
    for term in &needs.words {
        let right = printed.words.iter().filter(|t| *t == term).count() == 1;
        proof.demand(
            right,
            "opener-word",
            format!("`{}` does not stand once with its meaning", term.term.plain()),
        );
    }
    proof.demand(
        printed.words.len() == needs.words.len(),
        "opener-word",
        "a word is lost or strange",
    );
    proof.demand(
        printed.words.len() <= 8,
        "opener-words-many",
        "there are more than eight words to know",
    );
    proof.demand(
        printed.ready == needs.ready,
        "opener-ready",
        "what to have ready is not what the lesson asks for",
    );
    proof.demand(printed.books == needs.books, "opener-books", "the books are not the lesson's");
    for book in &printed.books {
        let holds = book.isbn.as_deref().is_none_or(isbn::isbn_holds);
        proof.demand(
            holds,
            "isbn-digit",
            format!("the ISBN of `{}` has a wrong digit", book.title.plain()),
        );
    }
    links(proof, needs, printed);
    proof.count("words", printed.words.len());
    proof.count("books", printed.books.len());
}

fn links(proof: &mut Proof, needs: &Needs, printed: &Ready) {
    let bare = |l: &Link| Link { code: Vec::new(), ..l.clone() };
    let same = printed.links.iter().map(bare).collect::<Vec<_>>() == needs.links;
    proof.demand(same, "opener-links", "the pages on line are not the lesson's");
    for link in &printed.links {
        proof.demand(
            link.address.starts_with("https://"),
            "address-https",
            format!("`{}` does not begin with https://", link.address),
        );
        let read = symbol::read(&link.code);
        let right =
            read.as_deref() == Some(link.address.as_str()) && symbol::finders_hold(&link.code);
        proof.demand(
            right,
            "code-symbol",
            format!("the code symbol of `{}` does not read its address", link.title.plain()),
        );
    }
    let cautioned =
        printed.caution == needs.caution && (printed.links.is_empty() || printed.caution.is_some());
    proof.demand(cautioned, "caution-missing", "the caution about links is missing");
    proof.count("code symbols read", printed.links.len());
}

pub(super) fn check_page(sheet: &Sheet, laid: &Laid) -> Findings {
    let links = sheet.ready.iter().flat_map(|r| &r.links).enumerate();
    let faults = links.filter_map(|(i, link)| {
        Some((link, symbol::fault_on_page(laid, &i.to_string(), link.code.len())?))
    });
    faults.map(|(link, what)| fault(link, what)).collect()
}

fn fault(link: &Link, what: &str) -> Finding {
    Finding::error("code-on-page", format!("the code symbol of `{}` {what}", link.title.plain()))
        .at(&link.at)
        .remedy("use a shorter address, or take the link out of this lesson")
}
