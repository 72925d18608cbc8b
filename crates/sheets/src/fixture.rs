//! A small study in memory for the kinds' tests: one lesson by itself, one part with one lesson.

use crate::ask::{Ask, Gathered, Owner, Room};
use crate::lexicon::Lexicon;
use findings::Place;
use std::collections::BTreeMap;
use study::{
    Activity, ActivityForm, Ages, Band, Block, Book, Changes, Date, Fact, Lesson, Link, MayBeSold, Options, Part, Picture,
    PictureForm, Question, QuestionFor, Range, Reading, Resource, ResourceForm, Said, Span, Step, Study, Subject, Word,
};

/// Plain words of a field.
pub fn said(at: &str, words: &str) -> Said {
    Said::plain_at(&Place::parse(at), words)
}

/// Words with marks: `**bold**` and `[words](fact:id)`; enough for tests, not Markdown.
pub fn marked(at: &str, words: &str) -> Said {
    let mut spans = Vec::new();
    let mut rest = words;
    while let Some(start) = rest.find(['*', '[']) {
        let (before, from) = rest.split_at(start);
        if !before.is_empty() {
            spans.push(Span::Text { v: before.into() });
        }
        if let Some((inner, after)) = from.strip_prefix("**").and_then(|f| f.split_once("**")) {
            spans.push(Span::Strong { v: vec![Span::Text { v: inner.into() }] });
            rest = after;
        } else {
            let (inner, after) = from[1..].split_once("](fact:").expect("a fact link");
            let (id, after) = after.split_once(')').expect("its end");
            spans.push(Span::Fact { id: id.into(), v: vec![Span::Text { v: inner.into() }] });
            rest = after;
        }
    }
    if !rest.is_empty() {
        spans.push(Span::Text { v: rest.into() });
    }
    Said { at: Place::parse(at), spans }
}

/// A paragraph.
pub fn para(at: &str, words: &str) -> Block {
    Block::Para { v: marked(at, words) }
}

fn picture(name: &str, author: &str) -> (String, Picture) {
    let picture = Picture {
        name: name.into(),
        form: PictureForm::Svg,
        bytes: Default::default(),
        hash: format!("hash of {name}"),
        width: 400,
        height: 300,
        alt: Some(said(&format!("pictures/{name}.toml#alt"), &format!("A {name}."))),
        author: Some(author.into()),
        licence: Some("CC0-1.0".into()),
        source: Some("drawn for this study".into()),
        may_be_sold: Some(MayBeSold::Yes),
        points: Vec::new(),
        pieces: Vec::new(),
        place: Place::file(format!("pictures/{name}.toml")),
    };
    (name.to_owned(), picture)
}

fn fact(id: &str, statement: &str, value: &str, unit: &str, source: (&str, &str, &str)) -> (String, Fact) {
    let fact = Fact {
        id: id.into(),
        statement: said(&format!("facts.csv#{id}/statement"), statement),
        value: value.into(),
        unit: unit.into(),
        source: source.0.into(),
        publisher: source.1.into(),
        year: source.2.into(),
        address: String::new(),
        place: Place::new("facts.csv", id),
    };
    (id.to_owned(), fact)
}

fn word(word: &str, meaning: &str, wherever: &str) -> Word {
    Word {
        word: said(&format!("words.csv#{word}/word"), word),
        meaning: (!meaning.is_empty()).then(|| said(&format!("words.csv#{word}/meaning"), meaning)),
        wherever: names(wherever),
        picture: None,
        puzzle: true,
    }
}

fn names(list: &str) -> Vec<String> {
    list.split(';').filter(|n| !n.is_empty()).map(str::to_owned).collect()
}

/// A question for tests.
pub fn question(id: &str, wherever: &str, whom: QuestionFor, words: &str, answer: &str) -> Question {
    Question {
        id: id.into(),
        wherever: names(wherever),
        whom,
        question: said(&format!("questions.csv#{id}/question"), words),
        answer: (!answer.is_empty()).then(|| said(&format!("questions.csv#{id}/answer"), answer)),
        also: Vec::new(),
        range: None,
        lines: None,
        fact: None,
        band: None,
    }
}

fn book(title: &str, author: &str, isbn: Option<&str>, wherever: &str, when: &str) -> Book {
    Book {
        title: said("books.csv#1/title", title),
        author: said("books.csv#1/author", author),
        publisher: "Charlesbridge".into(),
        year: "2017".into(),
        isbn: isbn.map(str::to_owned),
        ages: "4-8".into(),
        wherever: names(wherever),
        when: (!when.is_empty()).then(|| said("books.csv#1/when", when)),
        note: None,
    }
}

fn link(title: &str, address: &str, wherever: &str) -> Link {
    Link {
        title: said("links.csv#1/title", title),
        institution: said("links.csv#1/institution", "A museum by the sea"),
        address: address.into(),
        wherever: names(wherever),
        when: Some(said("links.csv#1/when", "after the reading")),
        note: None,
        place: Place::new("links.csv", "1/address"),
    }
}

fn resource(form: ResourceForm, title: &str, wherever: &str) -> Resource {
    Resource {
        form,
        title: said("resources.csv#1/title", title),
        by: Some(said("resources.csv#1/by", "Felix Mendelssohn")),
        when: Some(said("resources.csv#1/when", "before the first reading")),
        note: None,
        wherever: names(wherever),
    }
}

fn lesson(name: &str, title: &str, part: Option<usize>, subject: &str) -> Lesson {
    let file = format!("lessons/{name}.md");
    let at = |field: &str| format!("{file}#{field}");
    let own = Subject {
        id: format!("sj-{subject}"),
        name: subject.into(),
        title: said(&at("subject/0/title"), subject),
        picture: Some(subject.into()),
        pages: Changes::default(),
        place: Place::parse(&at("subject/0")),
    };
    Lesson {
        id: format!("ls-{name}"),
        name: name.into(),
        title: said(&at("title"), title),
        question: Some(said(&at("question"), "Why does the sea come and go?")),
        part,
        ages: Ages { from: 4, to: 14 },
        band: Band::B,
        picture: Some(subject.into()),
        caption: Some(said(&at("caption"), "At low tide.")),
        ready: vec![said(&at("ready/0"), "pencil"), said(&at("ready/1"), "scissors")],
        sources: Vec::new(),
        subjects: vec![own],
        opening: Some(vec![para(&at("opening/0"), "Twice a day the sea goes away.")]),
        readings: Vec::new(),
        more: None,
        activities: Vec::new(),
        compare: Vec::new(),
        pages: Changes::default(),
        place: Place::file(file),
    }
}

fn activity() -> Activity {
    Activity {
        title: said("lessons/edge.md#activity/0/title", "A shore in a tin"),
        form: ActivityForm::Experiment,
        minutes: Some(20),
        tags: vec!["water".into(), "cut".into()],
        band: None,
        picture: None,
        intro: Vec::new(),
        supplies: vec![said("lessons/edge.md#activity/0/ready/0", "a tin")],
        steps: vec![said("lessons/edge.md#activity/0/steps/0", "Fill the tin.")],
        base: Vec::new(),
        fillers: Vec::new(),
        tools: Vec::new(),
        idea: None,
        table: Vec::new(),
        answer: None,
        ask: Vec::new(),
        place: Place::new("lessons/edge.md", "activity/0"),
    }
}

fn edge() -> Lesson {
    let mut edge = lesson("edge", "The moving edge", None, "pool");
    edge.readings = vec![
        Reading {
            band: Band::B,
            title: said("lessons/edge.md#reading/title", "A line that moves"),
            text: vec![
                para("lessons/edge.md#reading/0", "The sea goes up and down. This is the **tide**. It lasts [24 hours and fifty minutes](fact:tide-day)."),
                para("lessons/edge.md#reading/1", "Its way down is the **ebb**. It is [the Moon that pulls](fact:tide-why)."),
            ],
        },
        Reading {
            band: Band::D,
            title: said("lessons/edge.reading-13-18.md#title", "Why springs keep their hour"),
            text: vec![para("lessons/edge.reading-13-18.md#0", "After [14.77 days](fact:tide-cycle) the **tide** stands where it stood.")],
        },
    ];
    edge.more = Some(vec![para("lessons/edge.md#more/0", "A spring tide comes in autumn too.")]);
    edge.sources = vec!["tide-cycle".into()];
    edge.activities = vec![activity()];
    edge
}

/// The study: lesson `edge` (number 1), then part `middle` with lesson `homeward` (number 2).
pub fn study() -> Study {
    let mut questions = vec![
        question("q1", "edge", QuestionFor::Write, "What is the rise and fall of the sea called?", "the tide"),
        question("q2", "edge", QuestionFor::Write, "How many hours does the tide's day last?", "about 24 hours"),
        question("q3", "pool", QuestionFor::Write, "Name one thing that changes in a pool.", "It gets warmer."),
        question("q4", "edge", QuestionFor::Talk, "Where is an edge that moves near you?", "Open answer."),
        question("q5", "edge", QuestionFor::Teen, "Plan a way to measure the tide.", "A stick with marks, read each hour."),
        question("q6", "edge", QuestionFor::Toddler, "Is the pool wet?", "Yes."),
    ];
    questions[1].range = Some(Range { low: "24".into(), high: "25".into(), unit: "hours".into() });
    questions[1].fact = Some("tide-day".into());
    questions[2].also = vec![said("questions.csv#q3/also", "It gets less salty.")];
    questions[5].band = Some(Band::A);
    Study {
        id: "st-0".into(),
        title: said("study.toml#title", "The Moving Shore"),
        subtitle: Some(said("study.toml#subtitle", "Two lessons between high water and low")),
        author: Some(said("study.toml#author", "Ada Wren")),
        press: Some(said("study.toml#press", "Wren Press")),
        language: "en".into(),
        issue: "1.0".into(),
        date: Some(Date { year: 2026, month: 5, day: 1 }),
        ages: Ages { from: 3, to: 18 },
        look: "strand".into(),
        cover: Some("pool".into()),
        terms: Some(said("study.toml#terms", "Print it for your own family.")),
        thanks: Some(said("study.toml#thanks", "To the keepers of tide tables.")),
        inquiry_boxes: Vec::new(),
        introduction: Some(vec![para("introduction.md#0", "Read this first. The **tide** waits for nobody.")]),
        page_set: None,
        order: vec![Step::Lesson(0), Step::Part(0)],
        parts: vec![Part {
            id: "pt-middle".into(),
            name: "middle".into(),
            title: said("parts/middle/part.toml#title", "The middle shore"),
            question: None,
            picture: None,
            lessons: vec![1],
            pages: Changes::default(),
            place: Place::file("parts/middle/part.toml"),
        }],
        lessons: vec![edge(), lesson("homeward", "The way home", Some(0), "limpet")],
        people: Vec::new(),
        facts: BTreeMap::from([
            fact("tide-day", "The tide's day lasts 24 hours and 50 minutes.", "24 hours and 50 minutes", "", ("High high tide", "NOAA", "2024")),
            fact("tide-why", "The Moon is the main reason for tides.", "", "", ("Lunar tides", "Science Photo Library", "")),
            fact("tide-cycle", "From springs to springs takes 14.77 days.", "14.77", "days", ("What are the tidal cycles?", "National Oceanography Centre", "")),
        ]),
        words: vec![
            word("tide", "the rise and fall of the sea", "edge"),
            word("ebb", "the sea on its way down", "edge"),
            word("rock pool", "water left behind in a hollow", "pool"),
            word("spray", "fine drops in the air", "pool"),
            word("limpet", "a sea snail with a shell like a hat", "limpet"),
            word("radula", "", "limpet"),
        ],
        questions,
        books: vec![
            book("The Seashore Book", "Charlotte Zolotow", Some("978-1-58089-787-7"), "edge", "the evening before"),
            book("The Edge of the Sea", "Rachel Carson", Some("978-0-395-92496-9"), "", "a few pages a week"),
        ],
        links: vec![
            link("Tides explained", "https://noc.ac.uk", "edge"),
            link("Which seal is it?", "https://www.zsl.org/seal-id-guide", ""),
        ],
        resources: vec![
            resource(ResourceForm::Hear, "The Hebrides overture", "edge"),
            resource(ResourceForm::Visit, "A rocky shore at low tide", "edge"),
            resource(ResourceForm::Look, "Under the Wave", ""),
        ],
        hunt: Vec::new(),
        prompts: Vec::new(),
        figures: Vec::new(),
        pictures: BTreeMap::from([picture("pool", "Ada Wren"), picture("limpet", "Ben Lark"), picture("crab", "Ada Wren")]),
        kept: BTreeMap::new(),
    }
}

/// What an ask borrows, kept together for tests.
#[derive(Debug, Clone)]
pub struct Asking {
    /// The study.
    pub study: Study,
    /// Owner.
    pub owner: Owner,
    /// Options.
    pub options: Options,
    /// Band.
    pub band: Band,
    /// Level.
    pub level: u8,
    /// Other sheets.
    pub gathered: Gathered,
    /// Word lists.
    pub lexicon: Lexicon,
}

/// An ask about the test study in its second band and level.
pub fn asking(owner: Owner) -> Asking {
    Asking {
        study: study(),
        owner,
        options: Options::new(),
        band: Band::B,
        level: 2,
        gathered: Gathered::default(),
        lexicon: Lexicon::default(),
    }
}

impl Asking {
    /// The ask itself.
    pub fn ask(&self) -> Ask<'_> {
        Ask {
            study: &self.study,
            owner: self.owner,
            sheet: "st-0.test.a",
            options: &self.options,
            band: self.band,
            level: self.level,
            language: &self.study.language,
            room: Room::PLAIN,
            lexicon: &self.lexicon,
            gathered: &self.gathered,
        }
    }

    /// The same in another band.
    #[must_use]
    pub fn band(mut self, band: Band) -> Self {
        self.band = band;
        self
    }

    /// The same at another level.
    #[must_use]
    pub fn level(mut self, level: u8) -> Self {
        self.level = level;
        self
    }
}

/// An entry of another sheet, as contents and key see it.
pub fn entry(kind: &str, owner: Owner, title: &str) -> crate::ask::Entry {
    let (lesson, id) = match owner {
        Owner::Study => (None, "st-0".to_owned()),
        Owner::Part(i) => (None, format!("pt-{i}")),
        Owner::Lesson(i) => (Some(i), format!("ls-{i}")),
        Owner::Subject(i, j) => (Some(i), format!("sj-{i}-{j}")),
    };
    let part = match owner {
        Owner::Part(i) => Some(i),
        _ => lesson.filter(|l| *l == 1).map(|_| 0),
    };
    crate::ask::Entry {
        id: format!("{id}.{kind}.a"),
        kind: kind.into(),
        title: title.into(),
        what: kind.replace('-', " "),
        sign: "play".into(),
        lesson,
        part,
        owner,
        key_number: None,
        key: None,
        pictures: Vec::new(),
        facts: Vec::new(),
        card: false,
        wanting: false,
    }
}

/// The sheets of a small study in printing order: front, lesson 1, part with lesson 2, its end, back.
pub fn gathered() -> Gathered {
    let with = |mut e: crate::ask::Entry, n: u32, facts: &[&str], pictures: &[&str]| {
        if n > 0 {
            e.key_number = Some(n);
            e.key = Some(serde_json::json!({ "answers": [n, e.title] }));
        }
        e.facts = facts.iter().map(ToString::to_string).collect();
        e.pictures = pictures.iter().map(ToString::to_string).collect();
        e
    };
    let own = |kind: &str, title: &str| entry(kind, Owner::Study, title);
    let mut search = entry("word-search", Owner::Subject(1, 0), "Limpet words");
    search.part = Some(0);
    let mut pairs = with(own("pairs", "Shore pairs"), 5, &[], &["pool", "limpet"]);
    pairs.card = true;
    let mut entries = vec![
        own("cover", "The Moving Shore"),
        own("how-to-use", "How to use this study"),
        own("contents", "Contents"),
        entry("lesson-opener", Owner::Lesson(0), "The moving edge"),
        with(entry("reading", Owner::Lesson(0), "A line that moves"), 0, &["tide-day", "tide-why"], &["pool"]),
        with(entry("questions", Owner::Lesson(0), "What did you find out?"), 1, &["tide-day"], &[]),
        with(entry("matching", Owner::Lesson(0), "Which is which?"), 2, &[], &[]),
        entry("writing-prompts", Owner::Part(0), "Write about it"),
        entry("lesson-opener", Owner::Lesson(1), "The way home"),
        with(entry("questions", Owner::Lesson(1), "Ask the limpet"), 3, &["tide-cycle"], &["limpet"]),
        with(search, 4, &[], &[]),
        pairs,
        own("key", "Answers"),
        own("credits", "Credits"),
    ];
    for (e, sign) in entries.iter_mut().zip(["open", "open", "open", "open", "read", "write", "play", "write", "open", "write"]) {
        e.sign = sign.into();
    }
    Gathered { entries }
}
