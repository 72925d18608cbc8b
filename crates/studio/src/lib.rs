//! The browser studio. Not built yet: it will call `pack` as the command line does and hold no rules of its own.
