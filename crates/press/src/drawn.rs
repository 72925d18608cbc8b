//! What was drawn on a page, in plain numbers: the ground of the page checks.

use findings::Place;
use proof::LaidPage;
use std::collections::BTreeMap;
use std::sync::Arc;

/// Micrometres in a point: an inch is 72 pt and 25.4 mm.
const UM_PER_PT: f64 = 25_400.0 / 72.0;

/// A length in µm from one in pt. Lengths beyond all paper are cut off, so that sums cannot
/// overflow.
pub(crate) fn um(pt: f64) -> i64 {
    const FAR: f64 = 1e12;
    let value = (pt * UM_PER_PT).round();
    if value.is_nan() { 0 } else { value.clamp(-FAR, FAR) as i64 }
}

/// A rectangle in µm, y downwards.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Area {
    pub(crate) left: i64,
    pub(crate) top: i64,
    pub(crate) right: i64,
    pub(crate) bottom: i64,
}

impl Area {
    /// The common part, when there is one.
    pub(crate) fn common(self, other: Self) -> Option<Self> {
        let area = Self {
            left: self.left.max(other.left),
            top: self.top.max(other.top),
            right: self.right.min(other.right),
            bottom: self.bottom.min(other.bottom),
        };
        (area.left <= area.right && area.top <= area.bottom).then_some(area)
    }

    /// Whether the other lies wholly inside, give or take a slack in µm.
    pub(crate) fn holds(self, other: Self, slack: i64) -> bool {
        other.left >= self.left - slack
            && other.top >= self.top - slack
            && other.right <= self.right + slack
            && other.bottom <= self.bottom + slack
    }

    pub(crate) fn width(self) -> i64 {
        self.right - self.left
    }

    pub(crate) fn height(self) -> i64 {
        self.bottom - self.top
    }
}

/// What an item is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum What {
    /// The text run with this number on its page.
    Text(usize),
    /// The picture with this number on its page.
    Image(usize),
    /// The marked item with this number on its page.
    Mark(usize),
    /// A line or an area.
    Shape,
}

/// One item with the room that it takes.
#[derive(Debug, Clone)]
pub(crate) struct Ink {
    pub(crate) what: What,
    /// The room of the ink itself, not of its line box.
    pub(crate) area: Area,
    /// The author's field that it comes from.
    pub(crate) field: Option<Arc<Place>>,
    /// True for what the frame prints behind the body on each page: head, foot, part tab.
    pub(crate) frame: bool,
    /// True inside a reduced drawing.
    pub(crate) reduced: bool,
    /// True for small type that adults read, such as sources.
    pub(crate) adult: bool,
    /// True when it is not turned, or by a right angle only.
    pub(crate) upright: bool,
}

/// A page with all that was drawn on it.
#[derive(Debug, Clone, Default)]
pub(crate) struct Drawn {
    /// Id of its sheet; empty before the first one.
    pub(crate) sheet: String,
    pub(crate) page: LaidPage,
    pub(crate) inks: Vec<Ink>,
    /// Letters that the typeface lacks, by the number of the text run.
    pub(crate) missing: BTreeMap<usize, String>,
    /// What its leaf says about itself.
    pub(crate) leaf: LeafFacts,
}

/// What the frame says at the start of a page.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(crate) struct LeafFacts {
    /// True on a page of a leaf, false on a blank page between two leaves.
    pub(crate) said: bool,
    /// True on the first page of the leaf.
    pub(crate) start: bool,
    /// True when the leaf may run over several pages.
    pub(crate) flow: bool,
    /// True when the leaf is for the adult, not for the child.
    pub(crate) adult: bool,
    /// Where the zone for the body ends, µm from the paper's top edge.
    pub(crate) body_end: Option<i64>,
    /// Where the foot of the page begins, µm from the paper's top edge.
    pub(crate) foot: Option<i64>,
}
