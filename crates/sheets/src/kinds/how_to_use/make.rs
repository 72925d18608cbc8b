//! Sorts the sheets into the lists of the print guide.

use super::{Needs, Row, Sheet, Shown};
use crate::cautions::cautions;

/// Signs of sheets on which each child works itself.
const BY_EACH_CHILD: [&str; 2] = ["play", "write"];

pub(super) fn make(needs: &Needs) -> Sheet {
    let list =
        |keep: fn(&Row) -> bool| needs.sheets.iter().filter(|r| keep(r)).map(shown).collect();
    let main = || needs.sheets.iter().filter(|r| !r.card && !r.further);
    let child = main().filter(|r| BY_EACH_CHILD.contains(&r.sign.as_str())).count();
    Sheet {
        ages: needs.ages,
        lessons: needs.lessons,
        card: list(|r| r.card),
        backs: list(|r| r.backs),
        family: main().count() - child,
        child,
        further: list(|r| r.further && !r.card),
        cautions: cautions(&needs.tags, &needs.supplies, &needs.language),
        inches: 6,
        centimetres: 15,
    }
}

fn shown(row: &Row) -> Shown {
    Shown { id: row.id.clone(), title: row.title.clone(), what: row.what.clone() }
}
