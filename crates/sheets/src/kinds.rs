//! The registry: a new kind is one folder and two lines here, both in order of name.

pub mod activity;
pub mod biography;
pub mod coloring;
pub mod compare;
pub mod contents;
pub mod cover;
pub mod credits;
pub mod figures_of_speech;
pub mod how_to_use;
pub mod inquiry;
pub mod key;
pub mod lesson_opener;
pub mod matching;
pub mod pairs;
pub mod questions;
pub mod reading;
pub mod resources;
pub mod scavenger_hunt;
pub mod unscramble;
pub mod word_search;
pub mod writing_prompts;

use crate::adapter::AnyKind;

/// Every kind, in order of id.
pub static KINDS: &[&dyn AnyKind] = &[
    &activity::Activity,
    &biography::Biography,
    &coloring::Coloring,
    &compare::Compare,
    &contents::Contents,
    &cover::Cover,
    &credits::Credits,
    &figures_of_speech::FiguresOfSpeech,
    &how_to_use::HowToUse,
    &inquiry::Inquiry,
    &key::AnswerKey,
    &lesson_opener::LessonOpener,
    &matching::Matching,
    &pairs::Pairs,
    &questions::Questions,
    &reading::Reading,
    &resources::Resources,
    &scavenger_hunt::ScavengerHunt,
    &unscramble::Unscramble,
    &word_search::WordSearch,
    &writing_prompts::WritingPrompts,
];

/// The kind of that id.
pub fn find(id: &str) -> Option<&'static dyn AnyKind> {
    KINDS.iter().copied().find(|k| k.about().id == id)
}
