//! Cards printed on both sides: does each back lie behind its front?

use crate::{Laid, Mark};
use findings::{Finding, Findings};

/// How far a back may lie from its front, µm.
pub const SLIP: i64 = 500;

/// Proves, for paper turned over its long edge, that each mark of kind `front` stands on an odd page
/// and has on the next page a mark of kind `back` with the same name, as large, as high, and mirrored
/// about the middle of the paper, within 0.5 mm.
pub fn backs_meet_fronts(laid: &Laid, front: &str, back: &str) -> Findings {
    let mut out = Findings::none();
    let backs: Vec<(usize, &Mark)> = laid.marks(back).collect();
    let mut met = 0;
    for (page, card) in laid.marks(front) {
        let (number, width, name) = (laid.pages[page].number, laid.pages[page].width, &card.name);
        if number.is_multiple_of(2) {
            let message =
                format!("the front of card `{name}` is on page {number}, a back of the paper");
            out.push(fault(message));
        }
        let next =
            |(i, b): &&(usize, &Mark)| laid.pages[*i].number == number + 1 && b.name == *name;
        let behind: Vec<_> = backs.iter().filter(next).collect();
        match behind[..] {
            [(_, b)] if lies_behind(card, b, width) => met += 1,
            [_] => out.push(fault(format!("the back of card `{name}` lies aside of its front"))),
            [] => out.push(fault(format!("card `{name}` has no back on the next page"))),
            _ => out.push(fault(format!("card `{name}` has two backs"))),
        }
    }
    if out.is_empty() && met != backs.len() {
        out.push(fault(format!("there are {} backs for {met} cards", backs.len())));
    }
    out
}

fn lies_behind(front: &Mark, back: &Mark, width: i64) -> bool {
    let near = |a: i64, b: i64| (a - b).abs() <= SLIP;
    near(width - front.x - front.w, back.x)
        && near(front.y, back.y)
        && near(front.w, back.w)
        && near(front.h, back.h)
}

fn fault(message: String) -> Finding {
    Finding::error("card-back", message)
        .remedy("throw the dice again with `again = 1`; if it stays, leave `gap` out")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::LaidPage;

    /// Letter paper, 8.5 in wide = 215 900 µm (ANSI/ASME Y14.1; check values 9.9): a card 60 mm wide at 10 mm from the
    /// left edge is covered by a back at 215.9 − 10 − 60 = 145.9 mm.
    fn laid(back_x: i64, front_page: u32) -> Laid {
        let mark = |kind: &str, x| Mark {
            kind: kind.into(),
            name: "1a".into(),
            x,
            y: 40_000,
            w: 60_000,
            h: 52_500,
        };
        let page = |number, mark| LaidPage {
            number,
            width: 215_900,
            height: 279_400,
            marks: vec![mark],
            ..LaidPage::default()
        };
        Laid {
            sheet: "s".into(),
            pages: vec![
                page(front_page, mark("card", 10_000)),
                page(front_page + 1, mark("back", back_x)),
            ],
        }
    }

    #[test]
    fn a_mirrored_back_meets_its_front() {
        assert!(backs_meet_fronts(&laid(145_900, 3), "card", "back").is_empty());
        assert!(backs_meet_fronts(&laid(146_400, 3), "card", "back").is_empty());
    }

    #[test]
    fn slips_and_wrong_sides_are_found() {
        assert!(!backs_meet_fronts(&laid(146_401, 3), "card", "back").is_empty());
        assert!(!backs_meet_fronts(&laid(10_000, 3), "card", "back").is_empty());
        assert!(!backs_meet_fronts(&laid(145_900, 4), "card", "back").is_empty());
        let mut lonely = laid(145_900, 3);
        lonely.pages[1].marks.clear();
        assert!(!backs_meet_fronts(&lonely, "card", "back").is_empty());
        let mut twice = laid(145_900, 3);
        let back = twice.pages[1].marks[0].clone();
        twice.pages[1].marks.push(back);
        assert!(!backs_meet_fronts(&twice, "card", "back").is_empty());
    }
}
