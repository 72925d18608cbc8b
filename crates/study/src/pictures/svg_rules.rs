//! What a drawing may not hold, with the reason in plain words.

use findings::{Finding, Findings, Place};
use roxmltree::{Document, Node};
use std::collections::BTreeMap;

/// Deepest nesting of groups; drawing programs stay far below it.
const DEEPEST: usize = 200;
/// Most parts after all copies (`use`) are drawn.
const MOST_DRAWN: u64 = 1_000_000;

/// Elements that are refused: name, reason, remedy.
const REFUSED: &[(&[&str], &str, &str)] = &[
    (&["script", "handler", "listener"], "holds a script", "save it as plain SVG, without scripts"),
    (
        &["foreignObject", "iframe", "embed", "object", "audio", "video", "canvas"],
        "holds something that is no drawing (`{name}`)",
        "save it as plain SVG; leave out what is no shape",
    ),
    (
        &["text", "tspan", "textPath", "tref", "font"],
        "holds letters, which print only where their typeface is installed",
        "in your drawing program turn the text into outlines (paths)",
    ),
    (
        &["animate", "animateTransform", "animateMotion", "animateColor", "set", "mpath"],
        "moves (`{name}`), and paper does not",
        "save it as a still drawing",
    ),
];

/// All that is against the rules.
pub(super) fn look(tree: &Document<'_>, path: &str) -> Findings {
    let mut rules = Rules { tree, path, findings: Findings::none() };
    let mut depth = BTreeMap::new();
    for node in tree.descendants() {
        let level =
            node.parent().and_then(|p| depth.get(&p.id().get_usize())).map_or(0, |d: &usize| d + 1);
        depth.insert(node.id().get_usize(), level);
        if level > DEEPEST {
            rules.add(
                node,
                "is nested too deep to be drawn",
                "ungroup parts of it in your drawing program",
            );
            return rules.findings;
        }
        if let Some(pi) = node.pi().filter(|pi| pi.target == "xml-stylesheet") {
            rules.outside(node, pi.value.unwrap_or("a style file"));
        }
        if node.is_element() {
            rules.element(node);
        }
    }
    if !rules.findings.has_errors() {
        rules.copies();
    }
    rules.findings
}

struct Rules<'a, 'i> {
    tree: &'a Document<'i>,
    path: &'a str,
    findings: Findings,
}

impl Rules<'_, '_> {
    fn add(&mut self, node: Node<'_, '_>, fact: &str, remedy: &str) {
        let line = self.tree.text_pos_at(node.range().start).row;
        let finding = Finding::error("svg-refused", format!("this drawing {fact}"));
        let finding = finding.at(&Place::new(self.path, format!("line {line}"))).remedy(remedy);
        if !self.findings.iter().any(|f| f.message == finding.message) {
            self.findings.push(finding);
        }
    }

    fn outside(&mut self, node: Node<'_, '_>, link: &str) {
        let short: String = link.trim().chars().take(60).collect();
        self.add(
            node,
            &format!("needs something from outside: `{short}`"),
            "embed nothing and link nothing: save it as plain SVG",
        );
    }

    fn element(&mut self, node: Node<'_, '_>) {
        let name = node.tag_name().name();
        for (names, fact, remedy) in REFUSED {
            if names.iter().any(|n| n.eq_ignore_ascii_case(name)) {
                self.add(node, &fact.replace("{name}", name), remedy);
            }
        }
        if name == "style" {
            let css: String = node
                .descendants()
                .filter_map(|n| if n.is_text() { n.text() } else { None })
                .collect();
            self.style(node, &css);
        }
        for attribute in node.attributes() {
            let (key, value) = (attribute.name(), attribute.value().trim());
            if key.len() > 2 && key.get(..2).is_some_and(|p| p.eq_ignore_ascii_case("on")) {
                self.add(
                    node,
                    &format!("holds a script (`{key}`)"),
                    "save it as plain SVG, without scripts",
                );
            } else if matches!(key, "href" | "src" | "base")
                && attribute.namespace() != Some("http://www.w3.org/XML/1998/namespace")
            {
                self.link(node, value);
            } else if key == "base" {
                self.outside(node, value);
            } else if attribute.namespace().is_none() {
                self.style(node, value);
            }
        }
    }

    fn link(&mut self, node: Node<'_, '_>, value: &str) {
        if value.starts_with('#') || value.is_empty() {
            return;
        }
        if value.get(..5).is_some_and(|v| v.eq_ignore_ascii_case("data:")) {
            self.add(
                node,
                "holds a bitmap inside",
                "save the bitmap as a PNG or JPEG file of its own, or trace it",
            );
        } else {
            self.outside(node, value);
        }
    }

    /// Style rules may point only into the drawing itself.
    fn style(&mut self, node: Node<'_, '_>, css: &str) {
        let plain: String =
            css.chars().filter(|c| !c.is_whitespace()).collect::<String>().to_lowercase();
        // An escape can hide the letters of `url(` or of `@import`.
        let escaped =
            plain.contains('\\') && (plain.contains('(') || node.tag_name().name() == "style");
        let import = plain.contains("@import");
        let outside = plain
            .split("url(")
            .skip(1)
            .find(|rest| !rest.trim_start_matches(['"', '\'']).starts_with('#'));
        if import || escaped {
            self.outside(node, if import { "@import" } else { css });
        } else if let Some(rest) = outside {
            self.outside(node, rest.split(')').next().unwrap_or(rest));
        }
    }

    /// Copies of copies can grow beyond all measure, and a copy of itself has no end.
    fn copies(&mut self) {
        let ids: BTreeMap<&str, Node<'_, '_>> =
            self.tree.descendants().filter_map(|n| Some((n.attribute("id")?, n))).collect();
        let mut known = BTreeMap::new();
        let root = self.tree.root_element();
        if drawn(root, &ids, &mut known, 0).is_none_or(|n| n > MOST_DRAWN) {
            self.add(
                root,
                "holds copies of copies without end",
                "in your drawing program turn the clones into ordinary shapes",
            );
        }
    }
}

/// Parts drawn for a node, copies included; none when a copy holds itself or nests too deep.
fn drawn(
    node: Node<'_, '_>,
    ids: &BTreeMap<&str, Node<'_, '_>>,
    known: &mut BTreeMap<usize, Option<u64>>,
    depth: usize,
) -> Option<u64> {
    if let Some(count) = known.get(&node.id().get_usize()) {
        return *count;
    }
    if depth > 2 * DEEPEST {
        return None;
    }
    // Seen again while it is being counted, it holds itself.
    known.insert(node.id().get_usize(), None);
    let mut sum = 1_u64;
    for child in node.children().filter(Node::is_element) {
        sum = sum.saturating_add(drawn(child, ids, known, depth + 1)?);
    }
    if node.tag_name().name() == "use" {
        let href = node
            .attributes()
            .find(|a| a.name() == "href")
            .and_then(|a| a.value().trim().strip_prefix('#'));
        if let Some(target) = href.and_then(|id| ids.get(id)) {
            sum = sum.saturating_add(drawn(*target, ids, known, depth + 1)?);
        }
    }
    known.insert(node.id().get_usize(), Some(sum));
    Some(sum)
}
