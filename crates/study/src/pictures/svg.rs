//! Drawings: well-formed SVG without scripts, outside links or letters, and with a size.

use super::{Art, svg_rules};
use crate::fields::tenths;
use crate::model::PictureForm;
use findings::{Finding, Findings, Place};
use roxmltree::{Document, Node, ParsingOptions};
use std::collections::BTreeSet;

/// Most parts of a drawing.
const MOST_PARTS: u32 = 500_000;

/// Checks a drawing; a harmless document type line is taken out.
pub(super) fn clean(bytes: &[u8], path: &str) -> Result<Art, Findings> {
    let text = match std::str::from_utf8(bytes) {
        Ok(text) => text.strip_prefix('\u{feff}').unwrap_or(text),
        Err(_) => {
            let what = if bytes.starts_with(&[0x1F, 0x8B]) {
                "this drawing is packed (SVGZ)"
            } else {
                "this file is no SVG, PNG or JPEG"
            };
            return Err(Finding::error("picture-unreadable", what)
                .remedy("save it again as plain SVG, or as PNG or JPEG")
                .into());
        }
    };
    let text = without_document_type(text)?;
    let options =
        ParsingOptions { allow_dtd: false, nodes_limit: MOST_PARTS, ..ParsingOptions::default() };
    let tree = Document::parse_with_options(&text, options).map_err(|error| {
        let finding = Finding::error("svg-broken", "this drawing cannot be read from here on");
        let finding = finding.at(&Place::new(path, format!("line {}", error.pos().row)));
        Findings::from(finding.remedy("save it again as plain SVG from your drawing program"))
    })?;
    let root = tree.root_element();
    if root.tag_name().name() != "svg" {
        let finding = Finding::error(
            "svg-none",
            format!("this file is no drawing: it begins with `{}`", root.tag_name().name()),
        );
        return Err(finding.remedy("save it as plain SVG from your drawing program").into());
    }
    let findings = svg_rules::look(&tree, path);
    if findings.has_errors() {
        return Err(findings);
    }
    let (left, top, width, height) =
        size(root).ok_or_else(|| {
            let finding = Finding::error(
                "svg-without-size",
                "this drawing has neither a `viewBox` nor a width and height",
            );
            Findings::from(finding.remedy(
                "in your drawing program set the page to the drawing's size and save it again",
            ))
        })?;
    let ids: BTreeSet<String> =
        tree.descendants().filter_map(|n| n.attribute("id")).map(str::to_owned).collect();
    let bytes = text.as_bytes().to_vec();
    Ok(Art { form: PictureForm::Svg, bytes, width, height, origin: (left, top), ids })
}

/// Takes out `<!DOCTYPE svg …>`; one that declares things of its own is refused.
fn without_document_type(text: &str) -> Result<String, Findings> {
    let Some(start) = text.find("<!DOCTYPE") else { return Ok(text.to_owned()) };
    let rest = text.get(start..).unwrap_or_default();
    let end = rest.find(['>', '[']).unwrap_or(rest.len());
    if !rest.get(end..).is_some_and(|r| r.starts_with('>')) {
        let finding = Finding::error(
            "svg-declares",
            "this drawing declares parts of its own at its top, which could hide anything",
        );
        return Err(finding.remedy("save it again as plain SVG from your drawing program").into());
    }
    Ok(format!(
        "{}{}",
        text.get(..start).unwrap_or_default(),
        rest.get(end + 1..).unwrap_or_default()
    ))
}

/// Left and top edge in tenths of a unit, width and height in units.
fn size(root: Node<'_, '_>) -> Option<(i32, i32, u32, u32)> {
    let whole = |n: f64| (n.is_finite() && n > 0.0 && n < 1e7).then_some((n.round() as u32).max(1));
    if let Some(view) = root.attribute("viewBox") {
        let numbers: Vec<f64> = view
            .split([' ', ',', '\t', '\n', '\r'])
            .filter(|s| !s.is_empty())
            .filter_map(|s| s.parse().ok())
            .collect();
        let [left, top, width, height] = numbers.as_slice() else { return None };
        return Some((tenths(*left)?, tenths(*top)?, whole(*width)?, whole(*height)?));
    }
    let length = |name: &str| {
        let written = root.attribute(name)?.trim();
        let (number, factor) = [
            ("px", 1.0),
            ("pt", 4.0 / 3.0),
            ("mm", 96.0 / 25.4),
            ("cm", 96.0 / 2.54),
            ("in", 96.0),
        ]
        .into_iter()
        .find_map(|(unit, factor)| Some((written.strip_suffix(unit)?, factor)))
        .unwrap_or((written, 1.0));
        whole(number.trim().parse::<f64>().ok()? * factor)
    };
    Some((0, 0, length("width")?, length("height")?))
}

#[cfg(test)]
mod tests {
    use super::clean;

    fn message(svg: &str) -> String {
        let findings = clean(svg.as_bytes(), "pictures/a.svg").expect_err(svg);
        findings.iter().map(|f| f.message.clone()).collect::<Vec<_>>().join("; ")
    }

    fn drawing(inside: &str) -> String {
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\" viewBox=\"0 0 40 30\">{inside}</svg>"
        )
    }

    #[test]
    fn a_plain_drawing_passes_with_its_size() {
        let art = clean(
            drawing(
                "<g id=\"shell\"><path d=\"M0 0h9\" fill=\"url(#g)\"/></g><use href=\"#shell\"/>",
            )
            .as_bytes(),
            "a.svg",
        )
        .expect("harmless");
        assert_eq!((art.width, art.height), (40, 30));
        assert!(art.ids.contains("shell"));
        let dated = format!(
            "<!DOCTYPE svg PUBLIC \"-//W3C//DTD SVG 1.1//EN\" \"http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd\">{}",
            drawing("")
        );
        let art = clean(dated.as_bytes(), "a.svg").expect("harmless");
        assert!(!String::from_utf8_lossy(&art.bytes).contains("DOCTYPE"));
        let sized = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"25.4mm\" height=\"1in\"/>";
        let art = clean(sized.as_bytes(), "a.svg").expect("sized");
        // 1 in = 96 px (CSS Values and Units).
        assert_eq!((art.width, art.height), (96, 96));
    }

    #[test]
    fn what_could_do_harm_is_refused_with_the_reason() {
        for (inside, word) in [
            ("<script>alert(1)</script>", "script"),
            ("<path d=\"M0 0\" onclick=\"x()\"/>", "onclick"),
            ("<image href=\"https://example.org/a.png\"/>", "outside"),
            ("<image xlink:href=\"photo.png\"/>", "outside"),
            ("<image href=\"data:image/png;base64,AAAA\"/>", "bitmap"),
            ("<path style=\"fill:url(https://example.org/a)\" d=\"M0 0\"/>", "outside"),
            ("<style>@import 'a.css';</style>", "outside"),
            ("<style>p{fill: u\\72l(x)}</style>", "outside"),
            ("<foreignObject/>", "foreignObject"),
            ("<text>Hello</text>", "letters"),
            ("<animate attributeName=\"x\"/>", "moves"),
            ("<a href=\"javascript:x()\"><path d=\"M0 0\"/></a>", "outside"),
            ("<g id=\"a\"><use href=\"#a\"/></g>", "copies"),
        ] {
            let said = message(&drawing(inside));
            assert!(said.contains(word), "{inside}: {said}");
        }
        assert!(
            message("<!DOCTYPE svg [<!ENTITY a 'b'>]><svg xmlns=\"http://www.w3.org/2000/svg\"/>")
                .contains("declares")
        );
        assert!(message("<svg xmlns=\"http://www.w3.org/2000/svg\"/>").contains("viewBox"));
        assert!(message("<svg>").contains("cannot be read"));
        assert!(message("<html/>").contains("html"));
        assert!(message("<?xml-stylesheet href=\"a.css\"?><svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 1 1\"/>").contains("outside"));
    }

    #[test]
    fn copies_of_copies_are_counted_before_they_are_drawn() {
        let mut inside = "<g id=\"l0\"><path d=\"M0 0h1\"/></g>".to_owned();
        for level in 1..12 {
            let uses = format!("<use href=\"#l{}\"/>", level - 1).repeat(10);
            inside.push_str(&format!("<g id=\"l{level}\">{uses}</g>"));
        }
        assert!(message(&drawing(&inside)).contains("copies"));
    }

    #[test]
    fn deep_nesting_is_refused() {
        let said = message(&drawing(&format!("{}{}", "<g>".repeat(2000), "</g>".repeat(2000))));
        assert!(said.contains("deep"), "{said}");
    }
}
