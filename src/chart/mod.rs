//! Charts and drawings.
