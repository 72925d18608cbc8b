//! What the templates tell the press between the drawn items: small values with a key `bd`.

use crate::drawn::{LeafFacts, um};
use findings::Place;
use typst::foundations::{Dict, Value};

/// One message of a template.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Spot {
    /// From here on, pages belong to the sheet with this id.
    Sheet(String),
    /// A page of a leaf starts.
    Leaf {
        name: String,
        /// Left and top edge of the field, µm.
        field_at: (i64, i64),
        facts: LeafFacts,
    },
    /// The first page of a leaf: the pages after it continue it.
    Start,
    /// The author's text from this place starts.
    Field(Place),
    /// It ends.
    FieldEnd,
    /// A reduced drawing starts.
    Reduced,
    /// It ends.
    ReducedEnd,
    /// Type that adults read starts.
    Adult,
    /// It ends.
    AdultEnd,
    /// An item with its top left corner here; sizes in pt.
    Mark { kind: String, name: String, width: f64, height: f64 },
}

impl Spot {
    /// Reads a message. `None` for metadata of another sort.
    pub(crate) fn read(value: &Value) -> Option<Self> {
        let Value::Dict(dict) = value else { return None };
        match text(dict, "bd")?.as_str() {
            "sheet" => Some(Self::Sheet(text(dict, "id")?)),
            "leaf" => Some(leaf(dict)),
            "start" => Some(Self::Start),
            "field" => Some(Self::Field(Place::parse(&text(dict, "at").unwrap_or_default()))),
            "field-end" => Some(Self::FieldEnd),
            "reduced" => Some(Self::Reduced),
            "reduced-end" => Some(Self::ReducedEnd),
            "adult" => Some(Self::Adult),
            "adult-end" => Some(Self::AdultEnd),
            "mark" => Some(Self::Mark {
                kind: text(dict, "k").unwrap_or_default(),
                name: text(dict, "n").unwrap_or_default(),
                width: number(dict, "w").unwrap_or_default(),
                height: number(dict, "h").unwrap_or_default(),
            }),
            _ => None,
        }
    }
}

fn leaf(dict: &Dict) -> Spot {
    let length = |key| number(dict, key).map(um);
    let yes = |key| matches!(dict.get(key), Ok(Value::Bool(true)));
    let facts = LeafFacts {
        said: true,
        flow: yes("flow"),
        adult: yes("adult"),
        body_end: length("body-end"),
        foot: length("foot"),
        ..LeafFacts::default()
    };
    Spot::Leaf {
        name: text(dict, "name").unwrap_or_default(),
        field_at: (length("field-x").unwrap_or_default(), length("field-y").unwrap_or_default()),
        facts,
    }
}

/// A text; a number counts as its digits.
fn text(dict: &Dict, key: &str) -> Option<String> {
    match dict.get(key).ok()? {
        Value::Str(text) => Some(text.to_string()),
        Value::Int(number) => Some(number.to_string()),
        _ => None,
    }
}

/// A number, or a length in pt.
fn number(dict: &Dict, key: &str) -> Option<f64> {
    match dict.get(key).ok()? {
        Value::Int(number) => Some(*number as f64),
        Value::Float(number) => Some(*number),
        Value::Length(length) => Some(length.abs.to_pt()),
        _ => None,
    }
}
