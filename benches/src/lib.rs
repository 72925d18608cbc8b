//! Benches over the whole demo study; see `benches/demo.rs`.
