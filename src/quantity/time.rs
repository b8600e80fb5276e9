//! Times of the day as people write them.

use super::Time;

/// `18:30`, `6:30 pm`, `6 pm`; the day has 24 hours, and 24:00 is none of its times.
pub(super) fn time_of_day(text: &str) -> Option<Time> {
    let text = text.trim().to_lowercase();
    let (clock, half) = match text.strip_suffix("am").or(text.strip_suffix("a.m.")) {
        Some(clock) => (clock, Some(0)),
        None => match text.strip_suffix("pm").or(text.strip_suffix("p.m.")) {
            Some(clock) => (clock, Some(12)),
            None => (text.as_str(), None),
        },
    };
    let (hour, minute) = match (clock.trim().split_once(':'), half) {
        (Some((hour, minute)), _) => (digits(hour, 1)?, digits(minute, 2)?),
        (None, Some(_)) => (digits(clock.trim(), 1)?, 0),
        (None, None) => return None,
    };
    let hour = match half {
        // Noon is 12 pm and midnight 12 am.
        Some(half) if (1..=12).contains(&hour) => hour % 12 + half,
        Some(_) => return None,
        None => hour,
    };
    Time::new(hour, minute, 0, 0).ok()
}

/// A number of one or two digits, at least `least` of them.
fn digits(text: &str, least: usize) -> Option<i8> {
    let fits = (least..=2).contains(&text.len()) && text.bytes().all(|b| b.is_ascii_digit());
    if fits { text.parse().ok() } else { None }
}
