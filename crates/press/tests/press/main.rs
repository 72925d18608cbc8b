//! Tests of the press over its public face, with a test kind of their own.
#![allow(clippy::unwrap_used)]

mod checks;
mod faults;
mod file;
mod fixture;
mod pages;
