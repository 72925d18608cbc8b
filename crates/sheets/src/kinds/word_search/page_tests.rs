//! Spoilt pages of a word search that its check of the page must refuse.

use super::*;
use crate::terms::sample::shore;
use proof::{LaidPage, LaidText, Mark};
use study::Band;

/// The grid as a page would lay it: a mark a cell, its letter in the middle.
fn laid(sheet: &Sheet) -> Laid {
    let side = i64::from(sheet.cell);
    let mut page = LaidPage { number: 1, width: 210_000, height: 297_000, ..LaidPage::default() };
    for (r, row) in sheet.rows.iter().enumerate() {
        for (c, letter) in row.iter().enumerate() {
            let (x, y) = (60_000 + side * c as i64, 70_000 + side * r as i64);
            page.marks.push(Mark {
                kind: "cell".into(),
                name: format!("{r},{c}"),
                x,
                y,
                w: side,
                h: side,
            });
            let (x, y) = (x + side / 2 - 1_500, y + side / 2 + 2_000);
            page.texts.push(LaidText {
                text: letter.clone(),
                x,
                y,
                w: 3_000,
                ..LaidText::default()
            });
        }
    }
    let list = sheet.words.iter().map(|w| LaidText { text: w.plain(), ..LaidText::default() });
    page.texts.extend(list);
    Laid { sheet: "s".into(), pages: vec![page] }
}

#[test]
fn the_laid_out_grid_is_judged() {
    let sheet = make::make(
        &needs::needs(&shore(Band::B, 2).ask()).expect("needs"),
        &mut Dice::from_number(2),
    )
    .expect("made");
    assert!(check::check_page(&sheet, &laid(&sheet)).is_empty());
    let spoils: [fn(&mut LaidPage); 7] = [
        |p| p.marks[5].x += 100,
        |p| p.marks[0].w = 6_900,
        |p| {
            p.marks.pop();
        },
        |p| p.texts[7].text = "Q9".into(),
        |p| p.texts[7].x += 2_000,
        |p| p.texts.truncate(144),
        |p| {
            let t = p.texts[3].clone();
            p.texts.push(t);
        },
    ];
    for (i, spoil) in spoils.into_iter().enumerate() {
        let mut bad = laid(&sheet);
        spoil(&mut bad.pages[0]);
        assert!(!check::check_page(&sheet, &bad).is_empty(), "spoil {i}");
    }
}
