//! The one test binary: behaviour through the public interface.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod plan;
