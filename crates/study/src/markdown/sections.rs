//! The text of a lesson under its fixed `##` headings, and texts without such headings.

use super::Walk;
use super::inline::not_printed;
use crate::model::{Block, Said, Text};
use crate::names::nearest;
use crate::read::Cx;
use findings::{Finding, Place};
use std::ops::Range;

/// Headings of a lesson and the fields they fill.
const SECTIONS: &[(&str, &str)] = &[
    ("Opening", "opening"),
    ("Reading", "reading"),
    ("One thing more", "more"),
    ("Activity", "activity"),
];

/// Headings inside an activity and the fields they fill.
const PARTS: &[(&str, &str)] = &[
    ("Have ready", "supplies"),
    ("Steps", "steps"),
    ("What happened", "table"),
    ("The answer", "answer"),
    ("Ask", "ask"),
    ("Base", "base"),
    ("Fillers", "fillers"),
    ("Tools", "tools"),
    ("Opening idea", "idea"),
];

/// What stands under one `## Activity`.
#[derive(Debug, Default)]
pub(crate) struct Activities {
    /// Where it is written.
    pub at: Place,
    /// Words after the colon of its heading.
    pub title: Option<Said>,
    /// Blocks under no `###` heading, or under `### The answer` and `### Opening idea`, by field.
    pub texts: Vec<(&'static str, Block)>,
    /// Lines of its lists, by field.
    pub lists: Vec<(&'static str, Vec<Said>)>,
    /// Its table.
    pub table: Vec<Vec<Said>>,
}

impl Activities {
    /// The text of a field.
    pub fn text(&self, field: &str) -> Text {
        self.texts.iter().filter(|(f, _)| *f == field).map(|(_, b)| b.clone()).collect()
    }

    /// The lines of a field.
    pub fn lines(&mut self, field: &'static str) -> Vec<Said> {
        self.lists.iter().filter(|(f, _)| *f == field).flat_map(|(_, l)| l.clone()).collect()
    }

    fn list(&mut self, field: &'static str) -> &mut Vec<Said> {
        let known = self.lists.iter().position(|(f, _)| *f == field);
        let index = known.unwrap_or(self.lists.len());
        if known.is_none() {
            self.lists.push((field, Vec::new()));
        }
        &mut self.lists[index].1
    }
}

/// The text of a lesson.
#[derive(Debug, Default)]
pub(crate) struct Body {
    /// Words of a `#` heading, which may stand for the title.
    pub title: Option<Said>,
    /// `## Opening`.
    pub opening: Option<Text>,
    /// `## Reading`: title and text.
    pub reading: Option<(Option<Said>, Text)>,
    /// `## One thing more`.
    pub more: Option<Text>,
    /// Each `## Activity`.
    pub activities: Vec<Activities>,
}

/// Reads a text without fixed headings; its field is `text`.
pub(crate) fn plain(text: &str, base: usize, file: &str, keep_lines: bool, cx: &mut Cx) -> Text {
    let at = Place::new(file, "text");
    cx.spans.insert(at.clone(), body_of(text, base, 0..text.len()));
    Walk::new(text, base, keep_lines).rest(&at, cx)
}

/// Reads the text of a lesson.
pub(crate) fn lesson(text: &str, base: usize, file: &str, keep_lines: bool, cx: &mut Cx) -> Body {
    let mut reader = Reader {
        walk: Walk::new(text, base, keep_lines).below(2),
        body: Body::default(),
        section: None,
        part: "intro",
        file: Place::file(file),
        open: None,
    };
    while reader.walk.peek().is_some() {
        match reader.walk.heading_level() {
            Some(1) => reader.top_heading(cx),
            Some(2) => reader.section_heading(text, base, cx),
            Some(3) if reader.section == Some("activity") => reader.part_heading(text, base, cx),
            _ => reader.block(cx),
        }
    }
    reader.close(text, base, text.len() + base, cx);
    reader.body
}

struct Reader<'a> {
    walk: Walk<'a>,
    body: Body,
    section: Option<&'static str>,
    part: &'static str,
    file: Place,
    open: Option<Open>,
}

/// A section whose end is still to come.
struct Open {
    /// Its place, and where its text starts.
    section: (Place, usize),
    /// The same of the open part of an activity.
    part: Option<(Place, usize)>,
}

/// Bytes between two places of a text, without the blank lines around.
fn body_of(text: &str, base: usize, range: Range<usize>) -> Range<usize> {
    let words = text.get(range.clone()).unwrap_or_default();
    let lead = words.len() - words.trim_start().len();
    if lead == words.len() {
        return base + range.start..base + range.start;
    }
    let start = base + range.start + lead;
    start..start + words.trim().len()
}

impl Reader<'_> {
    /// Notes the bytes of the sections that end here.
    fn close(&mut self, text: &str, base: usize, here: usize, cx: &mut Cx) {
        self.close_part(text, base, here, cx);
        if let Some((at, start)) = self.open.take().map(|o| o.section) {
            cx.spans.insert(at, body_of(text, base, start - base..here - base));
        }
    }

    fn close_part(&mut self, text: &str, base: usize, here: usize, cx: &mut Cx) {
        if let Some((at, start)) = self.open.as_mut().and_then(|open| open.part.take()) {
            cx.spans.insert(at, body_of(text, base, start - base..here - base));
        }
    }

    fn top_heading(&mut self, cx: &mut Cx) {
        let at = self.file.child("heading");
        let (spans, _, whole) = self.walk.heading(&at, cx);
        cx.spans.insert(at.clone(), whole);
        if self.body.title.is_none() && self.section.is_none() {
            self.body.title = Some(Said { at, spans });
        } else {
            not_printed(
                cx,
                &at,
                "a heading with one `#`",
                "use `##` with one of the fixed headings, or `###` inside a text",
            );
        }
    }

    fn section_heading(&mut self, text: &str, base: usize, cx: &mut Cx) {
        let provisional = self.file.child("heading");
        let before = cx.findings.0.len();
        let (spans, words, whole) = self.walk.heading(&provisional, cx);
        // The words after the colon are read once more, at their own place.
        cx.findings.0.truncate(before);
        self.close(text, base, whole.start, cx);
        let said = Said { at: provisional, spans }.plain();
        let name = said.split(':').next().unwrap_or_default();
        let Some(field) = known(name, SECTIONS) else {
            return self.unknown(name, SECTIONS, "##", &whole, cx);
        };
        let at = self.section_place(field, &whole, cx);
        self.section = Some(field);
        self.part = "intro";
        let written = words.and_then(|w| text.get(w.start - base..w.end - base).map(|t| (t, w)));
        let title = written.and_then(|(words, bytes)| {
            let title = words.split_once(':')?.1.trim_start();
            let at = at.child("title");
            cx.spans.insert(at.clone(), bytes.end - title.len()..bytes.end);
            (!title.is_empty()).then(|| crate::markdown::line(title, &at, cx))
        });
        self.begin(field, &at, title);
        self.open = Some(Open { section: (at, whole.end), part: None });
    }

    fn begin(&mut self, field: &'static str, at: &Place, title: Option<Said>) {
        let body = &mut self.body;
        match field {
            "opening" => body.opening = Some(body.opening.take().unwrap_or_default()),
            "reading" => {
                let text = body.reading.take().map(|(_, text)| text).unwrap_or_default();
                body.reading = Some((title, text));
            }
            "more" => body.more = Some(body.more.take().unwrap_or_default()),
            _ => {
                let activity = Activities { at: at.clone(), title, ..Activities::default() };
                body.activities.push(activity);
            }
        }
    }

    /// Place of a section; a second one of a kind that stands once is a finding.
    fn section_place(&mut self, field: &'static str, whole: &Range<usize>, cx: &mut Cx) -> Place {
        if field == "activity" {
            return self.file.child(field).child(self.body.activities.len() + 1);
        }
        let there = match field {
            "opening" => self.body.opening.is_some(),
            "reading" => self.body.reading.is_some(),
            _ => self.body.more.is_some(),
        };
        let at = self.file.child(field);
        if !there {
            return at;
        }
        let again = self.file.child(format!("{field}-again"));
        cx.spans.insert(again.clone(), whole.clone());
        let heading = SECTIONS.iter().find(|(_, f)| *f == field).map_or(field, |(h, _)| h);
        let finding =
            Finding::error("section-twice", format!("`## {heading}` stands twice in this lesson"))
                .at(&again);
        cx.findings.push(match field {
            "reading" => finding.remedy("put the second into a file of its own beside the lesson, ending in .reading-10-12.md or another band"),
            _ => finding.remedy("put both texts under one heading"),
        });
        again
    }

    fn part_heading(&mut self, text: &str, base: usize, cx: &mut Cx) {
        let provisional = self.file.child("heading");
        let (spans, _, whole) = self.walk.heading(&provisional, cx);
        self.close_part(text, base, whole.start, cx);
        let name = Said { at: provisional, spans }.plain();
        match known(&name, PARTS) {
            Some(field) => {
                self.part = field;
                if let Some(open) = &mut self.open {
                    open.part = Some((open.section.0.child(field), whole.end));
                }
            }
            None => self.unknown(&name, PARTS, "###", &whole, cx),
        }
    }

    fn unknown(
        &mut self,
        name: &str,
        of: &[(&str, &str)],
        marks: &str,
        whole: &Range<usize>,
        cx: &mut Cx,
    ) {
        let name = name.trim();
        let at = self.file.child(format!("heading {name}"));
        cx.spans.insert(at.clone(), whole.clone());
        let remedy = match nearest(name, of.iter().map(|(heading, _)| *heading)) {
            Some(near) => format!("did you mean `{marks} {near}`?"),
            None => {
                let all: Vec<String> = of.iter().map(|(h, _)| format!("`{marks} {h}`")).collect();
                format!("use one of {}", all.join(", "))
            }
        };
        cx.findings.push(
            Finding::error(
                "heading-unknown",
                format!("`{marks} {name}` is none of the fixed headings"),
            )
            .at(&at)
            .remedy(remedy),
        );
        if marks == "##" {
            self.section = Some("unknown");
        } else {
            self.part = "unknown";
        }
    }

    fn block(&mut self, cx: &mut Cx) {
        match self.section {
            Some("activity") => self.activity_block(cx),
            Some("unknown") => self.walk.step(),
            Some(field) => self.text_block(field, cx),
            None => {
                let at = self.file.child("opening");
                let place = at.child(self.body.opening.as_ref().map_or(0, Vec::len) + 1);
                if let Some(block) = self.walk.block(&place, cx) {
                    if self.body.opening.is_none() {
                        cx.findings.push(
                            Finding::warning(
                                "text-before-headings",
                                "these words stand before the first heading",
                            )
                            .at(&place)
                            .remedy("write `## Opening` above them; they print there"),
                        );
                    }
                    self.body.opening.get_or_insert_default().push(block);
                }
            }
        }
    }

    fn text_block(&mut self, field: &'static str, cx: &mut Cx) {
        let at = self
            .open
            .as_ref()
            .map_or_else(|| self.file.child(field), |open| open.section.0.clone());
        let text = match field {
            "opening" => self.body.opening.get_or_insert_default(),
            "reading" => &mut self.body.reading.get_or_insert_default().1,
            _ => self.body.more.get_or_insert_default(),
        };
        let place = at.child(text.len() + 1);
        text.extend(self.walk.block(&place, cx));
    }

    fn activity_block(&mut self, cx: &mut Cx) {
        let Some(activity) = self.body.activities.last_mut() else { return self.walk.step() };
        let at = activity.at.child(self.part);
        match self.part {
            "unknown" => self.walk.step(),
            "intro" | "answer" | "idea" => {
                let part = self.part;
                let n = activity.texts.iter().filter(|(f, _)| *f == part).count();
                if let Some(block) = self.walk.block(&at.child(n + 1), cx) {
                    activity.texts.push((part, block));
                }
            }
            "table" => match self.walk.block(&at, cx) {
                Some(Block::Table { v }) if activity.table.is_empty() => activity.table = v,
                Some(_) => not_printed(
                    cx,
                    &at,
                    "more than one table under `### What happened`",
                    "keep one table there, and no other words",
                ),
                None => {}
            },
            part => {
                let mut lines = std::mem::take(activity.list(part));
                self.walk.lines(&at, &mut lines, cx);
                *activity.list(part) = lines;
            }
        }
    }
}

fn known(name: &str, of: &[(&'static str, &'static str)]) -> Option<&'static str> {
    let name = name.trim();
    of.iter().find(|(heading, _)| heading.eq_ignore_ascii_case(name)).map(|(_, field)| *field)
}
