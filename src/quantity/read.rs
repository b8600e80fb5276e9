//! Quantities as people write them.
