//! Pages become PDF bytes.
