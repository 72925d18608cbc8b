//! Checks of the table, of centre lines and of directions.

use crate::hand::table::Table;
use crate::hand::*;

#[test]
fn strokes_stand_where_the_dots_are_and_in_writing_order() {
    let strokes = strokes('t').unwrap();
    assert_eq!(strokes.len(), 2);
    let points = strokes[0].points();
    let ((_, top), (_, low)) = (points[0], points[points.len() - 1]);
    assert!(top == 660 && low < 60, "a t is begun at its top");
    let across = strokes[1].points();
    assert!(across[0].0 < across[across.len() - 1].0 && across.iter().all(|p| p.1 == 480));
}

/// Against the machine's own functions, which are right to more digits than are asked for here.
#[test]
fn directions_are_those_of_sine_and_cosine() {
    for tenth in -7300..=7300 {
        let degrees = f64::from(tenth) / 10.0;
        let d = direction::direction(degrees);
        let truth = kurbo::Vec2::from_angle(degrees.to_radians());
        assert!((d - truth).hypot() < 1e-12, "{degrees}");
    }
}

fn fault(text: &str) -> String {
    Table::read(text).unwrap_err().to_string()
}

#[test]
fn faults_in_a_table_are_told_with_their_line() {
    let sound = "# a comment\nI s s : M 0 740 L 0 0\n";
    assert!(Table::read(sound).is_ok());
    let told = fault(&format!("{sound}T s s : M 0 0 L 5"));
    assert_eq!(told, "stroke table, line 3: `L` wants more numbers");
    assert!(fault("I s s : L 0 0").contains("no point to start from"));
    assert!(fault("I s q : M 0 0 L 5 5").contains("side `q`"));
    assert!(fault("I s s : M 0 0 Q 5 5").contains("step `Q`"));
    assert!(fault("I s s : M 0 0 L 5 x").contains("`x` is not a number"));
    assert!(fault("I s s : M 0 0").contains("draws nothing"));
    assert!(fault("I s s : E 0 0 0 5 0 90").contains("radii"));
    assert!(fault("I s s : E 0 0 5 5 0 400").contains("360"));
    assert!(fault("II s s : D 0 0").contains("`II` is not one character"));
    assert!(fault("I s s 1 2 : D 0 0").contains("pen width"));
    assert!(fault("I").contains("expected"));
    assert!(fault(&sound.repeat(2)).contains("line 4: character `I` is drawn twice"));
    assert!(fault("é = e acute 0").contains("no mark `acute`"));
    assert!(fault("mark acute : D 0 0\né = e acute 0").contains("no character `e`"));
}

/// A curve that no pen of that width can follow is refused, not drawn badly.
#[test]
fn a_curve_tighter_than_the_pen_is_refused() {
    let table = Table::read("I s s : E 0 0 200 60 0 180").unwrap();
    let told = glyph::draw('I', table.get('I').unwrap(), Cut::Bold).err().unwrap();
    assert_eq!(told, HandError::Tight { glyph: 'I' });
}
