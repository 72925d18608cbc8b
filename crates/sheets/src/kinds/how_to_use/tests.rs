//! Print guides, and planted faults.

use super::{HowToUse, Needs, Row, Shown};
use crate::ask::{Gathered, Owner};
use crate::fixture::{asking, gathered};
use crate::kind::Kind;
use crate::tested::{Fault, Tested, keeps_contract};
use findings::Findings;
use proof::{Laid, LaidPage, Mark};

fn full() -> Needs {
    let mut asking = asking(Owner::Study);
    asking.gathered = gathered();
    let mut needs = HowToUse::needs(&asking.ask()).expect("a guide");
    let pairs = needs.sheets.iter_mut().find(|r| r.card).expect("a card sheet");
    pairs.backs = true;
    let further = Row {
        id: "ls-0.reading.b".into(),
        further: true,
        card: false,
        backs: false,
        ..needs.sheets[4].clone()
    };
    needs.sheets.insert(5, further);
    needs
}

impl Tested for HowToUse {
    fn good() -> Vec<Needs> {
        let mut one = asking(Owner::Study);
        one.gathered = Gathered { entries: gathered().entries.split_off(13) };
        vec![full(), HowToUse::needs(&one.ask()).expect("a guide to one sheet")]
    }

    fn refused() -> Vec<(&'static str, Result<(), Findings>)> {
        vec![("no other sheets", HowToUse::needs(&asking(Owner::Study).ask()).map(|_| ()))]
    }

    fn faults() -> &'static [Fault<Self>] {
        &[
            ("card sheet forgotten", |_, s, _| s.card.pop().is_some()),
            ("card sheet twice", |_, s, _| match s.card.first().cloned() {
                Some(first) => {
                    s.card.push(first);
                    true
                }
                None => false,
            }),
            ("plain sheet on card", |n, s, _| match n.sheets.iter().find(|r| !r.card) {
                Some(r) => {
                    s.card.push(Shown {
                        id: r.id.clone(),
                        title: r.title.clone(),
                        what: r.what.clone(),
                    });
                    s.family = s.family.saturating_sub(1);
                    true
                }
                None => false,
            }),
            ("backs forgotten", |_, s, _| s.backs.pop().is_some()),
            ("unknown sheet", |_, s, _| {
                s.further.push(Shown {
                    id: "nobody".into(),
                    title: "Nobody".into(),
                    what: "maze".into(),
                });
                true
            }),
            ("another title", |_, s, _| s.card.first_mut().map(|c| c.title.push('s')).is_some()),
            ("children's sheets miscounted", |_, s, _| {
                if s.family == 0 {
                    return false;
                }
                s.child += 1;
                s.family -= 1;
                true
            }),
            ("a sheet without a place", |_, s, _| {
                s.family += 1;
                true
            }),
            ("closing caution lost", |_, s, _| s.cautions.pop().is_some()),
            ("closing caution not last", |_, s, _| {
                s.cautions.rotate_right(1);
                s.cautions.len() > 1
            }),
            ("caution forgotten", |_, s, _| {
                if s.cautions.len() < 2 {
                    return false;
                }
                s.cautions.remove(0);
                true
            }),
            ("caution twice", |_, s, _| {
                let again = s.cautions[0].clone();
                s.cautions.insert(0, again);
                true
            }),
            ("ruler longer than the paper", |_, s, _| {
                s.inches = 9;
                true
            }),
            ("ages of another study", |_, s, _| {
                s.ages.to += 1;
                true
            }),
        ]
    }
}

#[test]
fn contract() {
    keeps_contract(&HowToUse);
}

#[test]
fn a_second_sheet_of_a_kind_in_the_same_place_is_a_further_one() {
    let mut asking = asking(Owner::Study);
    asking.gathered = gathered();
    let again =
        asking.gathered.entries.iter().find(|e| e.kind == "matching").cloned().expect("a matching");
    asking.gathered.entries.push(crate::ask::Entry { id: again.id.replace(".a", ".b"), ..again });
    let needs = HowToUse::needs(&asking.ask()).expect("a guide");
    let further: Vec<&str> =
        needs.sheets.iter().filter(|r| r.further).map(|r| r.id.as_str()).collect();
    assert_eq!(further, ["ls-0.matching.b"]);
}

fn ruler(name: &str, w: i64) -> Mark {
    Mark { kind: "ruler".into(), name: name.into(), w, ..Mark::default() }
}

#[test]
fn a_ruler_of_another_length_is_found_on_the_page() {
    let sheet = super::make::make(&full());
    // 6 inches are 152.4 mm (an inch is 25.4 mm by definition).
    for (inch, cm, faults) in
        [(152_400, 150_000, 0), (152_403, 150_000, 0), (152_410, 150_000, 1), (147_828, 145_500, 2)]
    {
        let page =
            LaidPage { marks: vec![ruler("in", inch), ruler("cm", cm)], ..LaidPage::default() };
        let laid = Laid { sheet: String::new(), pages: vec![page] };
        assert_eq!(HowToUse::check_page(&sheet, &laid).0.len(), faults, "{inch} {cm}");
    }
    assert_eq!(HowToUse::check_page(&sheet, &Laid::default()).0.len(), 2);
}
