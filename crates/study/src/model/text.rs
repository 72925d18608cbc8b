//! Texts of the author as data: spans and blocks, each with its place; never markup.

use findings::Place;
use serde::{Deserialize, Serialize};

/// One line of the author's words: a title, a cell, a step.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Said {
    /// The field it stands in.
    pub at: Place,
    /// Its spans.
    pub spans: Vec<Span>,
}

/// A stretch of text within a line.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "t", rename_all = "lowercase")]
pub enum Span {
    /// Plain words.
    Text {
        /// The words.
        v: String,
    },
    /// Bold.
    Strong {
        /// Inner spans.
        v: Vec<Span>,
    },
    /// Italic.
    Emph {
        /// Inner spans.
        v: Vec<Span>,
    },
    /// A link to an https address.
    Link {
        /// The address.
        url: String,
        /// Inner spans.
        v: Vec<Span>,
    },
    /// A fact used by name.
    Fact {
        /// Fact id.
        id: String,
        /// The words that stand for it.
        v: Vec<Span>,
    },
    /// A forced line end.
    Break,
}

/// Blocks of text.
pub type Text = Vec<Block>;

/// A paragraph, list, heading, quotation or table.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "b", rename_all = "lowercase")]
pub enum Block {
    /// A paragraph.
    Para {
        /// Its words.
        v: Said,
    },
    /// A heading inside the text, level 1 for the first below the section.
    Heading {
        /// Level, from 1.
        level: u8,
        /// Its words.
        v: Said,
    },
    /// A list.
    List {
        /// Numbered?
        numbered: bool,
        /// Its items.
        v: Vec<Said>,
    },
    /// A quotation.
    Quote {
        /// Its blocks.
        v: Vec<Block>,
    },
    /// A table: first row is the header.
    Table {
        /// Rows of cells.
        v: Vec<Vec<Said>>,
    },
}

impl Said {
    /// Plain words at a place.
    pub fn plain_at(at: &Place, words: impl Into<String>) -> Self {
        Self { at: at.clone(), spans: vec![Span::Text { v: words.into() }] }
    }

    /// The words without their marks.
    pub fn plain(&self) -> String {
        let mut out = String::new();
        plain_into(&self.spans, &mut out);
        out
    }

    /// Ids of the facts it uses, in order.
    pub fn facts(&self) -> Vec<&str> {
        let mut out = Vec::new();
        facts_into(&self.spans, &mut out);
        out
    }
}

pub(crate) fn plain_into(spans: &[Span], out: &mut String) {
    for span in spans {
        match span {
            Span::Text { v } => out.push_str(v),
            Span::Break => out.push(' '),
            Span::Strong { v } | Span::Emph { v } | Span::Link { v, .. } | Span::Fact { v, .. } => {
                plain_into(v, out);
            }
        }
    }
}

fn facts_into<'a>(spans: &'a [Span], out: &mut Vec<&'a str>) {
    for span in spans {
        match span {
            Span::Text { .. } | Span::Break => {}
            Span::Fact { id, v } => {
                out.push(id);
                facts_into(v, out);
            }
            Span::Strong { v } | Span::Emph { v } | Span::Link { v, .. } => facts_into(v, out),
        }
    }
}

impl Block {
    /// All lines of the block, in reading order.
    pub fn lines(&self) -> Vec<&Said> {
        match self {
            Block::Para { v } | Block::Heading { v, .. } => vec![v],
            Block::List { v, .. } => v.iter().collect(),
            Block::Quote { v } => v.iter().flat_map(Block::lines).collect(),
            Block::Table { v } => v.iter().flatten().collect(),
        }
    }
}
