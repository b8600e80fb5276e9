//! The preview as a browser meets it: what it shows, what it follows, what it refuses.

mod client;
mod follow;
mod gate;
mod wish;
