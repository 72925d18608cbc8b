//! Blocks of text: paragraphs, lists, headings, quotations, tables.

use super::inline::{html, not_printed, push_words};
use super::options;
use crate::model::{Block, Said, Span, Text};
use crate::read::Cx;
use findings::Place;
use pulldown_cmark::{Event, HeadingLevel, Parser, Tag, TagEnd};
use std::ops::Range;

/// Deepest nesting of quotations and lists that is followed.
pub(super) const DEEPEST: usize = 12;

/// A walk over the marks of a text.
pub(crate) struct Walk<'a> {
    text: &'a str,
    events: Vec<(Event<'a>, Range<usize>)>,
    next: usize,
    base: usize,
    keep_lines: bool,
    /// How deep inside quotations and lists.
    depth: usize,
    /// How deep inside bold, italic and links.
    pub(super) marks: usize,
    /// Heading level in the text that counts as none (`##` in a lesson).
    above: u8,
}

impl<'a> Walk<'a> {
    /// Begins to walk; `base` is where the text stands in its file; `keep_lines` keeps every line end.
    pub fn new(text: &'a str, base: usize, keep_lines: bool) -> Self {
        let events = Parser::new_ext(text, options()).into_offset_iter().collect();
        Self { text, events, next: 0, base, keep_lines, depth: 0, marks: 0, above: 1 }
    }

    /// Headings inside the text count from below this level.
    pub fn below(mut self, level: u8) -> Self {
        self.above = level;
        self
    }

    pub(super) fn keeps_lines(&self) -> bool {
        self.keep_lines
    }

    /// The next mark with its bytes in the file.
    pub(super) fn peek(&self) -> Option<(Event<'a>, Range<usize>)> {
        let (event, range) = self.events.get(self.next)?;
        Some((event.clone(), self.base + range.start..self.base + range.end))
    }

    pub(super) fn step(&mut self) {
        self.next += 1;
    }

    /// Level of the heading that comes next, if one does.
    pub(super) fn heading_level(&self) -> Option<u8> {
        match self.peek()?.0 {
            Event::Start(Tag::Heading { level, .. }) => Some(level_number(level)),
            _ => None,
        }
    }

    /// Takes a heading: its spans, the bytes of its words, the bytes of the whole line.
    pub(super) fn heading(
        &mut self,
        at: &Place,
        cx: &mut Cx,
    ) -> (Vec<Span>, Option<Range<usize>>, Range<usize>) {
        let whole = self.peek().map_or(0..0, |(_, r)| r);
        self.step();
        let (spans, words) = self.spans(at, cx);
        self.step();
        (spans, words, whole)
    }

    /// The words of a text that is one line.
    pub fn only_line(&mut self, at: &Place, cx: &mut Cx) -> Vec<Span> {
        let mut out = Vec::new();
        while let Some((event, _)) = self.peek() {
            match event {
                Event::Start(Tag::Paragraph) | Event::End(_) => self.step(),
                _ => {
                    let before = self.next;
                    out.extend(self.spans(at, cx).0);
                    self.next = self.next.max(before + 1);
                }
            }
        }
        out
    }

    /// All blocks to the end, numbered below `at` from one.
    pub fn rest(&mut self, at: &Place, cx: &mut Cx) -> Text {
        let mut text = Text::new();
        while self.peek().is_some() {
            let place = at.child(text.len() + 1);
            text.extend(self.block(&place, cx));
        }
        text
    }

    /// The next block; none when the marks hold no words.
    pub(super) fn block(&mut self, at: &Place, cx: &mut Cx) -> Option<Block> {
        let (event, range) = self.peek()?;
        self.step();
        let block = match event {
            Event::Start(Tag::Paragraph) => self.paragraph(at, cx),
            Event::Start(Tag::Heading { level, .. }) => Some(self.inner_heading(level, at, cx)),
            Event::Start(Tag::List(first)) => {
                let mut v = Vec::new();
                self.items(at, &mut v, cx);
                Some(Block::List { numbered: first.is_some(), v })
            }
            Event::Start(Tag::BlockQuote(_)) => self.quotation(at, cx),
            Event::Start(Tag::Table(_)) => Some(Block::Table { v: self.table(at, cx) }),
            other => self.odd_block(&other, at, cx),
        };
        if block.is_some() {
            let bytes = self.trimmed(range);
            cx.spans.insert(at.clone(), bytes);
        }
        block
    }

    /// A block that does not print as it is marked: its words are kept where it has any.
    fn odd_block(&mut self, event: &Event<'_>, at: &Place, cx: &mut Cx) -> Option<Block> {
        match event {
            Event::Start(Tag::CodeBlock(_)) => {
                not_printed(
                    cx,
                    at,
                    "a block of indented or fenced words",
                    "take out the four spaces or the ``` signs",
                );
                self.raw(at)
            }
            Event::Start(Tag::HtmlBlock) => self.html_block(at, cx),
            Event::Start(Tag::FootnoteDefinition(_)) => {
                not_printed(cx, at, "a footnote", "say it in the text, or in `## One thing more`");
                None
            }
            Event::Rule => {
                not_printed(
                    cx,
                    at,
                    "a line across the page",
                    "take the `---` out; a heading parts a text better",
                );
                None
            }
            _ => None,
        }
    }

    fn inner_heading(&mut self, level: HeadingLevel, at: &Place, cx: &mut Cx) -> Block {
        let spans = self.spans(at, cx).0;
        self.step();
        let level = level_number(level).saturating_sub(self.above).max(1);
        Block::Heading { level, v: Said { at: at.clone(), spans } }
    }

    /// Bytes of a block without the spaces and line ends after it.
    fn trimmed(&self, range: Range<usize>) -> Range<usize> {
        let inside = range.start - self.base..range.end - self.base;
        let words = self.text.get(inside).unwrap_or_default();
        range.start..range.start + words.trim_end().len()
    }

    fn paragraph(&mut self, at: &Place, cx: &mut Cx) -> Option<Block> {
        let (spans, _) = self.spans(at, cx);
        self.step();
        let said = Said { at: at.clone(), spans };
        (!said.plain().trim().is_empty()).then_some(Block::Para { v: said })
    }

    fn quotation(&mut self, at: &Place, cx: &mut Cx) -> Option<Block> {
        let mut v = Text::new();
        self.depth += 1;
        while let Some((event, _)) = self.peek() {
            if matches!(event, Event::End(TagEnd::BlockQuote(_))) {
                break;
            }
            if self.depth > DEEPEST {
                self.step();
                continue;
            }
            let place = at.child(v.len() + 1);
            v.extend(self.block(&place, cx));
        }
        self.depth -= 1;
        self.step();
        (!v.is_empty()).then_some(Block::Quote { v })
    }

    /// Takes the next block as lines: the items of a list, or a paragraph as one item. Numbered below `at`.
    pub(super) fn lines(&mut self, at: &Place, into: &mut Vec<Said>, cx: &mut Cx) {
        if let Some((Event::Start(Tag::List(_)), _)) = self.peek() {
            self.step();
            self.items(at, into, cx);
            return;
        }
        let place = at.child(into.len() + 1);
        let block = self.block(&place, cx);
        for line in block.iter().flat_map(Block::lines) {
            let at = at.child(into.len() + 1);
            into.push(Said { at, spans: line.spans.clone() });
        }
    }

    /// Items up to the end of the list; inner lists follow their item.
    fn items(&mut self, at: &Place, into: &mut Vec<Said>, cx: &mut Cx) {
        self.depth += 1;
        while let Some((event, _)) = self.peek() {
            self.step();
            match event {
                Event::Start(Tag::Item) if self.depth <= DEEPEST => self.item(at, into, cx),
                Event::End(TagEnd::List(_)) => break,
                _ => {}
            }
        }
        self.depth -= 1;
    }

    fn item(&mut self, at: &Place, into: &mut Vec<Said>, cx: &mut Cx) {
        let place = at.child(into.len() + 1);
        let index = into.len();
        into.push(Said { at: place.clone(), spans: Vec::new() });
        let mut words = ItemWords::default();
        while let Some((event, _)) = self.peek() {
            match event {
                Event::End(TagEnd::Item) => break,
                Event::Start(Tag::List(_)) => {
                    self.step();
                    words.list_inside = true;
                    self.items(at, into, cx);
                }
                _ => self.item_words(&event, &place, &mut words, cx),
            }
        }
        self.step();
        if words.list_inside {
            not_printed(cx, &place, "a list inside a list", "make it one list; it prints as one");
        }
        if let Some(bytes) = words.bytes {
            cx.spans.insert(place, bytes);
        }
        if let Some(item) = into.get_mut(index) {
            item.spans = words.spans;
        }
    }

    /// Adds the next piece of an item to its words.
    fn item_words(&mut self, event: &Event<'_>, place: &Place, words: &mut ItemWords, cx: &mut Cx) {
        match event {
            Event::Start(Tag::Paragraph) | Event::End(_) => self.step(),
            Event::Start(
                Tag::Table(_)
                | Tag::BlockQuote(_)
                | Tag::CodeBlock(_)
                | Tag::HtmlBlock
                | Tag::Heading { .. },
            ) => {
                let block = self.block(place, cx);
                block
                    .iter()
                    .flat_map(Block::lines)
                    .for_each(|line| join(&mut words.spans, line.spans.clone()));
            }
            _ => {
                let (spans, bytes) = self.spans(place, cx);
                let Some(bytes) = bytes else { return self.step() };
                join(&mut words.spans, spans);
                let start = words.bytes.as_ref().map_or(bytes.start, |b| b.start);
                words.bytes = Some(start..bytes.end);
            }
        }
    }

    fn table(&mut self, at: &Place, cx: &mut Cx) -> Vec<Vec<Said>> {
        let mut rows: Vec<Vec<Said>> = Vec::new();
        while let Some((event, range)) = self.peek() {
            self.step();
            match event {
                Event::Start(Tag::TableHead | Tag::TableRow) => rows.push(Vec::new()),
                Event::Start(Tag::TableCell) => {
                    let row = at.child(rows.len());
                    let place = row.child(rows.last().map_or(0, Vec::len) + 1);
                    let spans = self.spans(&place, cx).0;
                    let bytes = self.trimmed(range);
                    let words = self
                        .text
                        .get(bytes.start - self.base..bytes.end - self.base)
                        .unwrap_or_default();
                    let start = bytes.end - words.trim_start().len();
                    cx.spans.insert(place.clone(), start..bytes.end);
                    if let Some(row) = rows.last_mut() {
                        row.push(Said { at: place, spans });
                    }
                }
                Event::End(TagEnd::Table) => break,
                _ => {}
            }
        }
        rows
    }

    /// The bare words of a block that is kept only for its words.
    fn raw(&mut self, at: &Place) -> Option<Block> {
        let mut spans = Vec::new();
        while let Some((event, _)) = self.peek() {
            self.step();
            match event {
                Event::Text(words) => {
                    for (n, line) in words.trim_end().lines().enumerate() {
                        if n > 0 || !spans.is_empty() {
                            spans.push(Span::Break);
                        }
                        push_words(line, &mut spans);
                    }
                }
                _ => break,
            }
        }
        let said = Said { at: at.clone(), spans };
        (!said.plain().trim().is_empty()).then_some(Block::Para { v: said })
    }

    fn html_block(&mut self, at: &Place, cx: &mut Cx) -> Option<Block> {
        let mut raw = String::new();
        while let Some((event, _)) = self.peek() {
            self.step();
            match event {
                Event::Html(words) | Event::Text(words) => raw.push_str(&words),
                _ => break,
            }
        }
        html(&raw, at, cx);
        let mut spans = Vec::new();
        push_words(&without_tags(&raw), &mut spans);
        let said = Said { at: at.clone(), spans };
        (!said.plain().trim().is_empty()).then_some(Block::Para { v: said })
    }
}

/// Words of a list's item as they are gathered.
#[derive(Default)]
struct ItemWords {
    spans: Vec<Span>,
    bytes: Option<Range<usize>>,
    list_inside: bool,
}

fn level_number(level: HeadingLevel) -> u8 {
    match level {
        HeadingLevel::H1 => 1,
        HeadingLevel::H2 => 2,
        HeadingLevel::H3 => 3,
        HeadingLevel::H4 => 4,
        HeadingLevel::H5 => 5,
        HeadingLevel::H6 => 6,
    }
}

fn join(spans: &mut Vec<Span>, more: Vec<Span>) {
    if !spans.is_empty() && !more.is_empty() {
        spans.push(Span::Break);
    }
    spans.extend(more);
}

/// The words of a block of HTML; comments are notes of the author and fall away.
fn without_tags(raw: &str) -> String {
    let mut rest = raw;
    let mut out = String::new();
    while let Some(open) = rest.find('<') {
        out.push_str(rest.get(..open).unwrap_or_default());
        let tag = rest.get(open..).unwrap_or_default();
        let (end, step) =
            if tag.starts_with("<!--") { (tag.find("-->"), 3) } else { (tag.find('>'), 1) };
        rest = end.and_then(|e| tag.get(e + step..)).unwrap_or_default();
    }
    out.push_str(rest);
    out.split_whitespace().collect::<Vec<_>>().join(" ")
}
