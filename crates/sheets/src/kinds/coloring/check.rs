//! Is the line picture the flat one, all of it, in black and white, large and with lines to colour between?
//!
//! Works on the text of the artwork, not with the reader that drew it.

use super::{Needs, Sheet};
use findings::{Finding, Findings};
use proof::{Laid, Proof};
use study::Band;

/// Least length of the picture on paper, µm.
const LARGE: u64 = 170_000;
/// Least width of any line, µm: half a point, the least for a line to follow.
const THINNEST: u64 = 176;
/// Least pixels an inch of a bitmap in lines; common practice, no source.
const PIXELS: u64 = 150;
/// Things in artwork by which shapes are shifted or hidden: then only their number is compared.
const SHIFTED: [&str; 7] =
    ["transform=", "display", "visibility", "opacity", "<defs", "<mask", "<clipPath"];

/// The proof of a page.
pub(super) fn check(needs: &Needs, sheet: &Sheet) -> Proof {
    let mut proof = Proof::new();
    let (art, own) = (&sheet.art, &needs.picture);
    let same = art.name == own.name && art.hash == own.hash && art.at == own.at;
    proof.demand(same, "picture-other", "the page shows another picture");
    proof.demand(art.alt == own.alt, "picture-alt", "the picture is described in other words");
    proof.demand(
        sheet.letters == needs.letters,
        "letters-other",
        "the name below the picture is not its own",
    );
    let inside = sheet.box_w <= needs.room.full_w && sheet.box_h < needs.room.body_h;
    proof.demand(inside, "picture-outside", "the picture runs off the page");
    let long = longest(sheet);
    proof.count("length in mm", long / 1000);
    proof.demand(long >= LARGE, "picture-small", "the picture is too small to colour");
    match (&needs.flat, &art.svg) {
        (Some(flat), Some(drawn)) => lines(needs, sheet, flat, drawn, &mut proof),
        (None, None) => as_it_is(needs, sheet, &mut proof),
        (Some(_), None) => {
            proof.fault("picture-flat", "the flat picture is printed with its colours")
        }
        (None, Some(_)) => {
            proof.fault("picture-redrawn", "the line picture is drawn a second time")
        }
    }
    proof
}

/// Length of the longer side on paper, µm, once the picture fills its box.
fn longest(sheet: &Sheet) -> u64 {
    let (w, h) = (u64::from(sheet.art.width).max(1), u64::from(sheet.art.height).max(1));
    let (box_w, box_h) = (u64::from(sheet.box_w), u64::from(sheet.box_h));
    // Fits across when box_w × h ≤ box_h × w.
    let (pw, ph) =
        if box_w * h <= box_h * w { (box_w, box_w * h / w) } else { (box_h * w / h, box_h) };
    pw.max(ph)
}

fn as_it_is(needs: &Needs, sheet: &Sheet, proof: &mut Proof) {
    let same = sheet.art.width == needs.picture.width && sheet.art.height == needs.picture.height;
    proof.demand(same, "picture-size", "the picture has another shape than its file");
    if let Some((across, down)) = needs.pixels {
        let fine = u64::from(across.max(down)) * 25_400 / longest(sheet).max(1);
        proof.count("pixels an inch", fine);
        if fine < PIXELS {
            let message = format!(
                "`{}` prints with {fine} pixels an inch, and its lines will look stepped",
                needs.picture.name
            );
            let finding = Finding::warning("picture-coarse", message).at(&needs.picture.at);
            proof.findings.push(
                finding.remedy(format!("scan it larger, with at least {PIXELS} pixels an inch")),
            );
        }
    }
}

/// The drawn lines against the flat picture's own text.
fn lines(needs: &Needs, sheet: &Sheet, flat: &str, drawn: &str, proof: &mut Proof) {
    let names = ["<path", "<circle", "<ellipse", "<rect", "<polygon", "<polyline", "<line"];
    let shapes: usize = names.iter().map(|n| flat.matches(n).count()).sum();
    let paths = drawn.matches("<path").count();
    proof.count("shapes", shapes);
    proof.count("lines drawn", paths);
    proof.demand(paths > 0, "lines-none", "no line is drawn");
    if !SHIFTED.iter().any(|s| flat.contains(s)) {
        proof.demand(paths >= shapes, "lines-lost", "a shape of the picture has no line");
        proof.demand(paths <= 2 * shapes, "lines-doubled", "shapes are drawn over and over");
        proof.demand(
            in_order(flat, drawn),
            "lines-order",
            "a shape is lost, or drawn in another order than it is painted",
        );
    }
    let only = |name: &str, may: &[&str]| values(drawn, name).iter().all(|v| may.contains(v));
    let plain = only("fill", &["#fff", "#000", "none"])
        && only("stroke", &["#000", "none"])
        && !drawn.contains("style=");
    proof.demand(
        plain,
        "lines-coloured",
        "the line picture is painted with something else than black and white",
    );
    proof.demand(
        values(drawn, "fill").contains(&"#fff"),
        "lines-see-through",
        "shapes show through one another",
    );
    wide(needs, sheet, drawn, proof);
}

/// Each path of the flat picture stands in the drawing, in paint order.
fn in_order(flat: &str, drawn: &str) -> bool {
    let mut rest = drawn;
    for d in values(flat, "d") {
        match rest.find(d) {
            Some(at) => rest = &rest[at + d.len()..],
            None => return false,
        }
    }
    true
}

/// Values of an attribute in the text, in order.
fn values<'a>(text: &'a str, name: &str) -> Vec<&'a str> {
    let opening = format!(" {name}=\"");
    text.split(opening.as_str()).skip(1).filter_map(|rest| rest.split('"').next()).collect()
}

/// Lines as wide on paper as the age asks: 1.1 mm, for the youngest 1.5 mm and more; common practice, no source.
fn wide(needs: &Needs, sheet: &Sheet, drawn: &str, proof: &mut Proof) {
    let units = u64::from(sheet.art.width.max(sheet.art.height)).max(1);
    // Hundredths of a unit, so that no fraction is needed.
    let hundredths = |v: &&str| v.parse::<f64>().ok().map(|f| (f * 100.0).round() as u64);
    let widths: Vec<u64> = values(drawn, "stroke-width")
        .iter()
        .filter_map(hundredths)
        .map(|h| h * longest(sheet) / units / 100)
        .collect();
    let (thick, thin) =
        (widths.iter().max().copied().unwrap_or(0), widths.iter().min().copied().unwrap_or(0));
    proof.count("outer line in µm", thick);
    let (low, high) = if needs.band == Band::A { (1400, 1900) } else { (900, 1300) };
    proof.demand(
        (low..=high).contains(&thick),
        "line-width",
        format!("the outer line is {thick} µm wide"),
    );
    proof.demand(
        thin >= THINNEST,
        "line-thin",
        format!("a line is {thin} µm wide, too thin to colour along"),
    );
}

/// Confirms that the picture is laid out large.
pub(super) fn check_page(sheet: &Sheet, laid: &Laid) -> Findings {
    let large = i64::try_from(LARGE).unwrap_or(i64::MAX);
    let mut marks = laid.marks("picture").filter(|(_, m)| m.name == sheet.art.name);
    match marks.next() {
        Some((_, mark)) if mark.w.max(mark.h) >= large => Findings::none(),
        Some((_, mark)) => Finding::error(
            "picture-laid",
            format!("the picture is laid out {} mm long", mark.w.max(mark.h) / 1000),
        )
        .into(),
        None => Finding::error("picture-laid", "the picture does not stand on the page").into(),
    }
}
