//! `start`: what is asked, what follows from the answers, and the file that is written.

mod command;
mod generated;
mod interview;
mod offers;
mod place;
mod reading;
mod script;
