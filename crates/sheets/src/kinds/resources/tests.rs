//! Lists of resources, and planted faults.

use super::{Needs, Resources, Row, Section, Sheet};
use crate::ask::Owner;
use crate::fixture::{asking, said};
use crate::kind::Kind;
use crate::tested::{Fault, Tested, keeps_contract};
use findings::Findings;
use proof::{Laid, LaidPage, Mark};

fn needs_of(owner: Owner) -> Needs {
    Resources::needs(&asking(owner).ask()).expect("resources")
}

fn row(s: &mut Sheet, keep: fn(&Row) -> bool) -> Option<&mut Row> {
    s.sections.iter_mut().flat_map(|l| &mut l.rows).find(|r| keep(r))
}

fn section(s: &mut Sheet) -> Option<&mut Vec<Row>> {
    s.sections.iter_mut().map(|l| &mut l.rows).find(|r| !r.is_empty())
}

impl Tested for Resources {
    fn good() -> Vec<Needs> {
        let mut part = asking(Owner::Part(0));
        part.study.links[0].wherever = vec!["middle".into()];
        vec![
            needs_of(Owner::Study),
            needs_of(Owner::Lesson(0)),
            Resources::needs(&part.ask()).expect("of a part"),
        ]
    }

    fn refused() -> Vec<(&'static str, Result<(), Findings>)> {
        let mut long = needs_of(Owner::Study);
        for row in long.rows.iter_mut().filter(|r| r.address.is_some()) {
            row.address = Some(format!("https://example.org/{}", "a".repeat(2400)));
        }
        vec![
            (
                "nothing for this lesson",
                Resources::needs(&asking(Owner::Lesson(1)).ask()).map(|_| ()),
            ),
            (
                "address too long for a symbol",
                Resources::make(&long, &mut craft::Dice::from_number(1)).map(|_| ()),
            ),
        ]
    }

    fn faults() -> &'static [Fault<Self>] {
        &[
            ("resource lost", |_, s, _| section(s).and_then(Vec::pop).is_some()),
            ("resource twice", |_, s, _| section(s).map(|r| r.push(r[0].clone())).is_some()),
            ("one digit of an ISBN", |n, s, _| match row(s, |r| r.isbn.is_some()) {
                Some(r) => {
                    let wrong = r.isbn.as_ref().map(|i| {
                        if i.ends_with('7') { i.replace("-7", "-8") } else { i.replace("-9", "-8") }
                    });
                    let changed = n.rows.iter().all(|o| o.isbn != wrong);
                    r.isbn = wrong;
                    changed
                }
                None => false,
            }),
            ("ISBN lost", |_, s, _| row(s, |r| r.isbn.is_some()).map(|r| r.isbn = None).is_some()),
            ("another title", |_, s, _| {
                row(s, |_| true)
                    .map(|r| r.title = said("books.csv#1/title", "Another book"))
                    .is_some()
            }),
            ("author lost", |_, s, _| row(s, |r| r.by.is_some()).map(|r| r.by = None).is_some()),
            ("time of use lost", |_, s, _| {
                row(s, |r| r.when.is_some()).map(|r| r.when = None).is_some()
            }),
            ("other ages", |_, s, _| {
                row(s, |r| r.ages.is_some()).map(|r| r.ages = Some("0–99".into())).is_some()
            }),
            ("another lesson", |_, s, _| row(s, |_| true).map(|r| r.lessons.push(9)).is_some()),
            ("in another section", |_, s, _| {
                row(s, |r| r.section == Section::Hear).map(|r| r.section = Section::Play).is_some()
            }),
            ("sections out of order", |_, s, _| {
                s.sections.reverse();
                s.sections.len() > 1
            }),
            ("another address", |_, s, _| {
                row(s, |r| r.address.is_some())
                    .map(|r| r.address = Some("https://example.org".into()))
                    .is_some()
            }),
            ("code symbol of another address", |_, s, _| match row(s, |r| !r.code.is_empty()) {
                Some(r) => {
                    r.code = crate::code_symbol::rows("https://example.org").expect("a symbol");
                    true
                }
                None => false,
            }),
            ("code symbol spoilt", |_, s, _| match row(s, |r| !r.code.is_empty()) {
                Some(r) => {
                    let middle = r.code.len() / 2;
                    for line in &mut r.code[middle - 4..middle + 4] {
                        *line = line.replace('0', "2").replace('1', "0").replace('2', "1");
                    }
                    true
                }
                None => false,
            }),
            ("finder square broken", |_, s, _| {
                row(s, |r| !r.code.is_empty()).map(|r| r.code[0].replace_range(0..1, "0")).is_some()
            }),
            ("caution about links lost", |_, s, _| s.caution.take().is_some()),
        ]
    }
}

#[test]
fn contract() {
    keeps_contract(&Resources);
}

#[test]
fn rows_know_their_lessons() {
    let mut asking = asking(Owner::Study);
    asking.study.resources[0].wherever = vec!["middle".into(), "pool".into()];
    let needs = Resources::needs(&asking.ask()).expect("resources");
    let of = |title: &str| {
        needs.rows.iter().find(|r| r.title.plain() == title).map(|r| r.lessons.clone())
    };
    assert_eq!(of("The Hebrides overture"), Some(vec![1, 2]));
    assert_eq!(of("The Edge of the Sea"), Some(vec![]));
    assert_eq!(of("The Seashore Book"), Some(vec![1]));
    assert_eq!(of("Tides explained"), None, "a lesson's own page on line stands on its opener");
    assert_eq!(of("Which seal is it?"), Some(vec![]));
}

#[test]
fn a_wrong_book_number_in_the_list_is_found_even_when_it_is_printed_faithfully() {
    let mut needs = needs_of(Owner::Study);
    // The published example 978-0-306-40615-7 with its last digit changed.
    needs.rows[0].isbn = Some("978-0-306-40615-8".into());
    let sheet = Resources::make(&needs, &mut craft::Dice::from_number(1)).expect("a sheet");
    let proof = Resources::check(&needs, &sheet);
    assert!(proof.findings.iter().any(|f| f.code == "isbn-digit"), "{:?}", proof.findings);
}

#[test]
fn a_code_symbol_that_is_missing_or_small_is_found_on_the_page() {
    let sheet = Resources::make(&needs_of(Owner::Study), &mut craft::Dice::from_number(1))
        .expect("a sheet");
    let rows: Vec<&Row> = sheet.sections.iter().flat_map(|s| &s.rows).collect();
    let at = rows.iter().position(|r| !r.code.is_empty()).expect("a symbol");
    let modules = i64::try_from(rows[at].code.len()).expect("a size") + 8;
    for (side, faults) in [(modules * 500, 0), (modules * 490, 1)] {
        let mark =
            Mark { kind: "code".into(), name: at.to_string(), w: side, h: side, ..Mark::default() };
        let laid = Laid {
            sheet: String::new(),
            pages: vec![LaidPage { marks: vec![mark], ..LaidPage::default() }],
        };
        assert_eq!(Resources::check_page(&sheet, &laid).0.len(), faults, "{side} µm");
    }
    assert_eq!(Resources::check_page(&sheet, &Laid::default()).0.len(), 1);
}
