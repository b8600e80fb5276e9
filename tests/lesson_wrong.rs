//! Wrong lessons.
