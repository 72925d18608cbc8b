//! The page set of a study that names none: what fits the content that is there.

use findings::Place;
use study::{Entry, PageSet, Study, Value, Wanted};

/// Fewest words that a letter puzzle of the whole study is worth.
const WORDS_FOR_A_PUZZLE: usize = 6;
/// Most words that a word search takes all of without being asked.
const MOST_WORDS: usize = 16;

/// A page set that fits the content: twelve words alone give a word search, an unscramble and their key.
pub fn page_set(study: &Study) -> PageSet {
    let mut set = PageSet::default();
    let has_lessons = !study.lessons.is_empty();
    if has_lessons {
        set.front = ["cover", "how-to-use", "contents"].map(sheet).into();
        if study.introduction.is_some() {
            set.front.push(sheet("reading"));
        }
        if !(study.books.is_empty() && study.resources.is_empty()) {
            set.front.push(sheet("resources"));
        }
        set.lesson = lesson(study);
        set.subject = subject(study);
    }
    let words = study.words.iter().filter(|w| w.puzzle).count();
    // Words that no lesson owns make puzzles of the whole study.
    if words >= WORDS_FOR_A_PUZZLE && !(has_lessons && words_in_lessons(study)) {
        let puzzles = if has_lessons { &mut set.back } else { &mut set.front };
        puzzles.extend([all_words(study), sheet("unscramble")]);
    }
    let meanings = study.words.iter().filter(|w| w.meaning.is_some()).count();
    if meanings >= 8 {
        set.back.push(sheet("pairs"));
    }
    set.back.push(sheet("key"));
    if has_lessons || !study.pictures.is_empty() {
        set.back.push(sheet("credits"));
    }
    set
}

/// True when at least one word names a lesson, part or subject.
fn words_in_lessons(study: &Study) -> bool {
    study.words.iter().any(|w| !w.wherever.is_empty())
}

/// Sheets of a lesson. A lesson that lacks one thing has its own to-do, so only
/// what at least one lesson of the study has is asked of all.
fn lesson(study: &Study) -> Vec<Entry> {
    let mut all = vec![sheet("lesson-opener")];
    if study.lessons.iter().any(|l| !l.readings.is_empty()) {
        all.push(sheet("reading"));
    }
    if !study.questions.is_empty() {
        all.push(sheet("questions"));
    }
    all.push(Entry::Subjects);
    if study.lessons.iter().any(|l| !l.activities.is_empty()) {
        all.push(sheet("activity"));
    }
    if words_in_lessons(study) {
        let slot = ["matching", "unscramble"].map(wanted);
        all.push(Entry::OneOf(slot.into()));
    }
    all
}

fn subject(study: &Study) -> Vec<Entry> {
    let mut all = Vec::new();
    if study.lessons.iter().flat_map(|l| &l.subjects).any(|s| s.picture.is_some()) {
        all.push(sheet("coloring"));
    }
    if words_in_lessons(study) {
        all.push(sheet("word-search"));
    }
    all
}

/// A word search of all the words: someone who types twelve expects to find all twelve.
/// Words that cannot be hidden beside the others are left to the sheet's own judgement.
fn all_words(study: &Study) -> Entry {
    let words = hideable(study);
    let mut wanted = wanted("word-search");
    if (WORDS_FOR_A_PUZZLE..=MOST_WORDS).contains(&words) {
        let how_many = i64::try_from(words).unwrap_or_default();
        wanted.options.insert("how-many".to_owned(), Value::Number(how_many));
    }
    Entry::Sheet(wanted)
}

/// How many words are of letters alone, three or more, and stand in no other word, either way round.
fn hideable(study: &Study) -> usize {
    let letters = |w: &study::Word| -> Option<String> {
        let word = w.word.plain().to_lowercase();
        let kept: String = word.chars().filter(|c| !" -'’".contains(*c)).collect();
        let plain = kept.chars().all(char::is_alphabetic) && kept.chars().count() >= 3;
        (w.puzzle && plain).then_some(kept)
    };
    let all: Vec<String> = study.words.iter().filter_map(letters).collect();
    let held = |word: &String| {
        let turned: String = word.chars().rev().collect();
        all.iter().any(|o| o != word && (o.contains(word.as_str()) || o.contains(&turned)))
    };
    all.iter().filter(|w| !held(w)).count()
}

fn sheet(kind: &str) -> Entry {
    Entry::Sheet(wanted(kind))
}

fn wanted(kind: &str) -> Wanted {
    Wanted {
        kind: kind.to_owned(),
        count: 1,
        name: None,
        options: [("level".to_owned(), Value::Number(2))].into(),
        at: Place::new("study.toml", "page-set"),
    }
}
