//! Caution sentences by tag.
