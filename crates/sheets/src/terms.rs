//! The words that a puzzle or a game is made from: the owner's, or those the author lists in the option `words`.

use crate::ask::{Ask, Owner};
use crate::shared::{PictureRef, names_of, owner_place, owner_title, picture, words_of};
use findings::{Finding, Findings};
use serde::{Deserialize, Serialize};
use study::{Said, Word};

/// A word with what goes with it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Term {
    /// The word as the author spells it.
    pub word: Said,
    /// Its meaning.
    pub meaning: Option<Said>,
    /// Its picture.
    pub picture: Option<PictureRef>,
}

/// Words found for a sheet.
#[derive(Debug, Clone, Default)]
pub struct Terms {
    /// In the author's order.
    pub all: Vec<Term>,
    /// True when she listed them for this sheet.
    pub listed: bool,
}

/// Which words a kind takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Take {
    /// Words for letter puzzles; a listed word need not stand in `words.csv`.
    Letters,
    /// Words with what stands beside them in `words.csv`.
    Rows,
}

/// The words for a sheet: those `listed` by the author, else her owner's.
///
/// # Errors
/// A finding for each listed word that `words.csv` does not hold, when the kind needs its row.
pub fn terms(ask: &Ask<'_>, listed: Option<Vec<&str>>, take: Take) -> Result<Terms, Findings> {
    let Some(listed) = listed else {
        let own = words_of(ask).into_iter().filter(|w| take == Take::Rows || w.puzzle);
        return Ok(Terms { all: own.map(|w| term(ask, w)).collect(), listed: false });
    };
    let mut out = Terms { all: Vec::new(), listed: true };
    let mut unknown = Findings::none();
    for name in listed {
        match ask.study.words.iter().find(|w| same(&w.word.plain(), name)) {
            Some(word) => out.all.push(term(ask, word)),
            None if take == Take::Letters => {
                out.all.push(Term {
                    word: Said::plain_at(&owner_place(ask), name.trim()),
                    meaning: None,
                    picture: None,
                });
            }
            None => unknown.push(not_there(ask, name)),
        }
    }
    if unknown.is_empty() { Ok(out) } else { Err(unknown) }
}

fn same(a: &str, b: &str) -> bool {
    a.trim().to_lowercase() == b.trim().to_lowercase()
}

fn term(ask: &Ask<'_>, word: &Word) -> Term {
    let meaning = word.meaning.clone().filter(|m| !m.plain().trim().is_empty());
    let picture = word.picture.as_deref().and_then(|name| picture(ask.study, name));
    Term { word: word.word.clone(), meaning, picture }
}

fn not_there(ask: &Ask<'_>, name: &str) -> Finding {
    let near = ask.study.words.iter().map(|w| w.word.plain());
    let near =
        near.map(|w| (strsim::damerau_levenshtein(&w.to_lowercase(), &name.to_lowercase()), w));
    let finding = Finding::error("word-unknown", format!("`{name}` does not stand in `words.csv`"))
        .at(&owner_place(ask));
    match near.min() {
        Some((distance, word)) if distance < 3 => finding.remedy(format!("did you mean `{word}`?")),
        _ => finding.remedy(format!("add `{name}` to `words.csv`, or take it out of `words`")),
    }
}

/// Says that words are missing and how to add them. `what` they are, e.g. "words with a picture".
pub fn too_few(ask: &Ask<'_>, what: &str, have: usize, least: usize) -> Finding {
    let missing = least.saturating_sub(have);
    let owner = owner_title(ask).plain();
    let message = format!("`{owner}` has {have} {what}, and needs {least}: {missing} missing");
    let row = match where_name(ask) {
        Some(name) => format!("with `{name}` under `where`"),
        None => "with `where` left empty".to_owned(),
    };
    Finding::error("words-missing", message)
        .at(&owner_place(ask))
        .remedy(format!("add {missing} to `words.csv`, {row}"))
        .remedy("or leave the sheet out here with `leave-out`")
}

/// Name that a row carries under `where` to belong to the owner.
fn where_name(ask: &Ask<'_>) -> Option<String> {
    names_of(ask.study, ask.owner)?;
    let lesson = |i: usize| ask.study.lessons.get(i);
    match ask.owner {
        Owner::Study => None,
        Owner::Part(i) => ask.study.parts.get(i).map(|p| p.name.clone()),
        Owner::Lesson(i) => lesson(i).map(|l| l.name.clone()),
        Owner::Subject(i, j) => lesson(i).and_then(|l| l.subjects.get(j)).map(|s| s.name.clone()),
    }
}

/// Rows of words for the kinds' tests.
#[cfg(test)]
pub mod sample {
    use crate::ask::Owner;
    use crate::fixture::{Asking, asking, said};
    use study::{Band, Value, Word};

    /// Words of the demo study: word, meaning, picture (of the fixture study, or none).
    pub const SHORE: [(&str, &str, &str); 16] = [
        ("limpet", "a sea snail under a cone", "limpet"),
        ("home scar", "the ring in the rock that fits one animal", ""),
        ("cone", "a shape like a pointed hat", ""),
        ("foot", "the part on which a snail creeps and holds on", ""),
        ("grip", "a tight hold", ""),
        ("trail", "a line left behind by something that moved", ""),
        ("radula", "a snail's tongue, like a ribbon with teeth", ""),
        ("groove", "a long narrow hollow cut in a surface", ""),
        ("snug", "fitting closely and well", ""),
        ("muscle", "the part of a body that pulls", ""),
        ("crab", "an animal with ten legs that runs sideways", "crab"),
        ("pool", "a hollow where the sea stays behind", "pool"),
        ("plankton", "tiny living things that drift in the sea", ""),
        ("anchor", "something that holds a thing in its place", ""),
        ("barnacle", "a small animal in a ring of plates", ""),
        ("kelp", "a very large brown seaweed", ""),
    ];

    /// The fixture study with these rows and no others, all of the whole study.
    pub fn with_rows(rows: &[(&str, &str, &str)]) -> Asking {
        let mut asking = asking(Owner::Study);
        let at = |w: &str, field: &str| format!("words.csv#{w}/{field}");
        let row = |(word, meaning, picture): &(&str, &str, &str)| Word {
            word: said(&at(word, "word"), word),
            meaning: (!meaning.is_empty()).then(|| said(&at(word, "meaning"), meaning)),
            wherever: Vec::new(),
            picture: (!picture.is_empty()).then(|| (*picture).to_owned()),
            puzzle: true,
        };
        asking.study.words = rows.iter().map(row).collect();
        asking
    }

    /// The demo study's words at a band and level.
    pub fn shore(band: Band, level: u8) -> Asking {
        with_rows(&SHORE).band(band).level(level)
    }

    impl Asking {
        /// The same with an option.
        #[must_use]
        pub fn with(mut self, name: &str, value: Value) -> Self {
            self.options.insert(name.to_owned(), value);
            self
        }

        /// The same with the option `words`.
        #[must_use]
        pub fn listing(self, words: &[&str]) -> Self {
            let list = words.iter().map(|w| Value::Text((*w).to_owned())).collect();
            self.with("words", Value::List(list))
        }
    }
}
