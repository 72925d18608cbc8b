//! Tests that hold for all kinds at once.
