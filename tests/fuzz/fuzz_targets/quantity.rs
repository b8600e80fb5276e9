//! A text as every kind of quantity: what is refused says which bytes are to blame.
#![no_main]

use libfuzzer_sys::fuzz_target;
use puddlebook::quantity::read;
use puddlebook::quantity::Misread;

/// The bytes to blame lie in the text, on whole characters.
fn held<T>(text: &str, read: Result<T, Misread>) -> Option<T> {
    read.map_err(|misread| assert!(text.get(misread.span.clone()).is_some(), "{misread:?}")).ok()
}

fuzz_target!(|text: &str| {
    held(text, read::length(text)).inspect(|length| assert!(length.value.is_finite()));
    held(text, read::area(text)).inspect(|area| assert!(area.value.is_finite()));
    held(text, read::volume(text)).inspect(|volume| assert!(volume.value.is_finite()));
    held(text, read::mass(text)).inspect(|mass| assert!(mass.value.is_finite()));
    held(text, read::density(text)).inspect(|density| assert!(density.value.is_finite()));
    held(text, read::number(text)).inspect(|number| assert!(number.is_finite()));
    held(text, read::amount(text));
    held(text, read::share(text));
    held(text, read::percent(text));
    held(text, read::days(text));
    held(text, read::minutes(text));
    held(text, read::money(text));
    held(text, read::count(text));
    let _ = read::time_of_day(text);
});
