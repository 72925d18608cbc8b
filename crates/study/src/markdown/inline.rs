//! Words within a line: bold, italic, links, facts.

use super::walk::DEEPEST;
use super::{LINE_END, START, Walk};
use crate::model::Span;
use crate::read::Cx;
use findings::{Finding, Place};
use pulldown_cmark::{Event, Tag};
use std::ops::Range;

impl Walk<'_> {
    /// The spans up to the end of the enclosing tag or the next block, and their bytes in the text.
    pub(super) fn spans(&mut self, at: &Place, cx: &mut Cx) -> (Vec<Span>, Option<Range<usize>>) {
        let mut spans = Vec::new();
        let mut bytes: Option<Range<usize>> = None;
        let mut flattened = 0_usize;
        while let Some((event, range)) = self.peek() {
            let ends_flattened = flattened > 0 && matches!(event, Event::End(_));
            if !is_inline(&event) && !ends_flattened {
                break;
            }
            self.step();
            bytes = Some(bytes.map_or(range.clone(), |b| b.start..range.end.max(b.end)));
            if ends_flattened {
                flattened -= 1;
            } else if matches!(event, Event::Start(_)) && self.marks >= DEEPEST {
                flattened += 1;
            } else {
                self.span(event, at, cx, &mut spans);
            }
        }
        (spans, bytes)
    }

    fn span(&mut self, event: Event<'_>, at: &Place, cx: &mut Cx, into: &mut Vec<Span>) {
        match event {
            Event::Text(words) | Event::Code(words) => push_words(&words, into),
            Event::SoftBreak if self.keeps_lines() => into.push(Span::Break),
            Event::SoftBreak => push_words(" ", into),
            Event::HardBreak => into.push(Span::Break),
            Event::InlineHtml(tag) | Event::Html(tag) => html(&tag, at, cx),
            Event::FootnoteReference(_) => {
                not_printed(cx, at, "a footnote", "say it in the text, or in `## One thing more`")
            }
            Event::Start(tag) => self.marked(tag, at, cx, into),
            _ => {}
        }
    }

    /// Bold, italic, a link, or something that prints plain.
    fn marked(&mut self, tag: Tag<'_>, at: &Place, cx: &mut Cx, into: &mut Vec<Span>) {
        self.marks += 1;
        let (inner, _) = self.spans(at, cx);
        self.marks -= 1;
        self.step();
        let (what, remedy) = match tag {
            Tag::Emphasis => return into.push(Span::Emph { v: inner }),
            Tag::Strong => return into.push(Span::Strong { v: inner }),
            Tag::Link { dest_url, .. } => return link(&dest_url, inner, at, cx, into),
            Tag::Image { .. } => (
                "a picture inside the text",
                "name it in the field `picture` at the top of the file",
            ),
            _ => ("a line struck through words", "take the `~` signs out"),
        };
        not_printed(cx, at, what, remedy);
        into.extend(inner);
    }
}

/// True for what stands within a line.
fn is_inline(event: &Event<'_>) -> bool {
    match event {
        Event::Text(_)
        | Event::Code(_)
        | Event::SoftBreak
        | Event::HardBreak
        | Event::InlineHtml(_)
        | Event::Html(_)
        | Event::FootnoteReference(_)
        | Event::TaskListMarker(_) => true,
        Event::Start(tag) => matches!(
            tag,
            Tag::Emphasis | Tag::Strong | Tag::Strikethrough | Tag::Link { .. } | Tag::Image { .. }
        ),
        _ => false,
    }
}

/// Adds words to the last words; marked line ends become breaks.
pub(super) fn push_words(words: &str, into: &mut Vec<Span>) {
    for (n, piece) in words.trim_start_matches(START).split(LINE_END).enumerate() {
        if n > 0 {
            into.push(Span::Break);
        }
        match into.last_mut() {
            Some(Span::Text { v }) => v.push_str(piece),
            _ if piece.is_empty() => {}
            _ => into.push(Span::Text { v: piece.to_owned() }),
        }
    }
}

/// Words that the format cannot print as the author marked them: printed plain, with advice.
pub(super) fn not_printed(cx: &mut Cx, at: &Place, what: &str, remedy: &str) {
    cx.findings.push(
        Finding::warning("mark-not-printed", format!("{what} does not print as such"))
            .at(at)
            .remedy(remedy),
    );
}

/// A tag is left out with advice; a comment is the author's own note and goes silently.
pub(super) fn html(tag: &str, at: &Place, cx: &mut Cx) {
    if !tag.trim_start().starts_with("<!--") {
        let tag = tag.trim().lines().next().unwrap_or_default();
        not_printed(cx, at, &format!("`{tag}`"), "write plain words, **bold** or *italic*");
    }
}

fn link(url: &str, words: Vec<Span>, at: &Place, cx: &mut Cx, into: &mut Vec<Span>) {
    if let Some(id) = url.strip_prefix("fact:") {
        match cx.fact(id.trim(), at) {
            Some(id) => {
                let v = cx.fact_words(&id, words, at);
                into.push(Span::Fact { id, v });
            }
            None => into.extend(words),
        }
    } else if url.starts_with("https://") {
        into.push(Span::Link { url: url.to_owned(), v: words });
    } else {
        cx.findings.push(link_refused(url).at(at));
        into.extend(words);
    }
}

/// Why an address is not printed as a link.
pub(crate) fn link_refused(url: &str) -> Finding {
    if url.starts_with("http://") {
        Finding::error("link-not-https", format!("`{url}` does not begin with https://"))
            .remedy("open the page with https:// in front; if that works, write it so, else leave the link out")
    } else {
        Finding::error("link-elsewhere", format!("`{url}` is neither a fact nor an https address"))
            .remedy("write fact: and the fact's name, or an address that begins with https://")
    }
}
