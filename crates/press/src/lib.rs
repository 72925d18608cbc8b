//! Stand-in while the room is being built.
