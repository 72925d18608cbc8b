//! Sheet kinds: the contract every kind answers, the registry, and one folder a kind.
//! Never sees a file, a clock or the typesetter.

pub mod about;
pub mod adapter;
pub mod ask;
pub mod cautions;
pub mod code_symbol;
pub mod estimate;
#[cfg(test)]
pub mod fixture;
pub mod kind;
pub mod kinds;
pub mod lettering;
pub mod lexicon;
#[cfg(test)]
mod registry;
pub mod shared;
pub mod terms;
#[cfg(test)]
pub mod tested;
pub mod words;

pub use about::{About, Opt, OptKind, Scope, Sign};
pub use adapter::AnyKind;
pub use ask::{Ask, Entry, Gathered, Owner, Room};
pub use kind::{Head, Kind};
pub use kinds::{KINDS, find};
pub use lexicon::Lexicon;
