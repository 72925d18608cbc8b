//! A small study in memory for the kinds' tests: one lesson by itself, one part with one lesson.

mod asking;
mod gathered;
mod rows;
mod words;

pub use asking::{Asking, asking};
pub use gathered::{entry, gathered};
pub use rows::question;
pub use words::{marked, para, said};

use findings::Place;
use rows::{book, facts, link, picture, questions, resource, words};
use std::collections::BTreeMap;
use study::{
    Activity, ActivityForm, Ages, Band, Changes, Date, Lesson, Part, Reading, ResourceForm, Step,
    Study, Subject,
};

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
                para(
                    "lessons/edge.md#reading/0",
                    "The sea goes up and down. This is the **tide**. It lasts [24 hours and fifty minutes](fact:tide-day).",
                ),
                para(
                    "lessons/edge.md#reading/1",
                    "Its way down is the **ebb**. It is [the Moon that pulls](fact:tide-why).",
                ),
            ],
        },
        Reading {
            band: Band::D,
            title: said("lessons/edge.reading-13-18.md#title", "Why springs keep their hour"),
            text: vec![para(
                "lessons/edge.reading-13-18.md#0",
                "After [14.77 days](fact:tide-cycle) the **tide** stands where it stood.",
            )],
        },
    ];
    edge.more = Some(vec![para("lessons/edge.md#more/0", "A spring tide comes in autumn too.")]);
    edge.sources = vec!["tide-cycle".into()];
    edge.activities = vec![activity()];
    edge
}

fn part() -> Part {
    Part {
        id: "pt-middle".into(),
        name: "middle".into(),
        title: said("parts/middle/part.toml#title", "The middle shore"),
        question: None,
        picture: None,
        lessons: vec![1],
        pages: Changes::default(),
        place: Place::file("parts/middle/part.toml"),
    }
}

/// The study: lesson `edge` (number 1), then part `middle` with lesson `homeward` (number 2).
pub fn study() -> Study {
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
        introduction: Some(vec![para(
            "introduction.md#0",
            "Read this first. The **tide** waits for nobody.",
        )]),
        page_set: None,
        order: vec![Step::Lesson(0), Step::Part(0)],
        parts: vec![part()],
        lessons: vec![edge(), lesson("homeward", "The way home", Some(0), "limpet")],
        people: Vec::new(),
        facts: facts(),
        words: words(),
        questions: questions(),
        books: vec![
            book(
                "The Seashore Book",
                "Charlotte Zolotow",
                Some("978-1-58089-787-7"),
                "edge",
                "the evening before",
            ),
            book(
                "The Edge of the Sea",
                "Rachel Carson",
                Some("978-0-395-92496-9"),
                "",
                "a few pages a week",
            ),
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
        pictures: BTreeMap::from([
            picture("pool", "Ada Wren"),
            picture("limpet", "Ben Lark"),
            picture("crab", "Ada Wren"),
        ]),
        kept: BTreeMap::new(),
    }
}
