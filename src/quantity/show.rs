//! Quantities as people read them.
