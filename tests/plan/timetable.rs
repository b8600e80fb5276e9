//! Steps by the clock, and the booking.

use super::studio::*;
use proptest::prelude::*;
use puddlebook::lesson::{Lesson, TimedStep, Timetable};
use puddlebook::plan::{Impossible, TimetablePlan, plan};
use puddlebook::quantity::Time;

fn at(hour: i8, minute: i8) -> Time {
    Time::new(hour, minute, 0, 0).unwrap()
}

fn with(start: Time, booked_until: Option<Time>, minutes: &[u32]) -> Lesson {
    let steps = minutes.iter().zip(1..);
    let steps =
        steps.map(|(minutes, n)| TimedStep { name: format!("step {n}"), minutes: *minutes });
    let timetable = Timetable { start, booked_until, steps: steps.collect() };
    Lesson { timetable: Some(timetable), ..lesson() }
}

fn timetable(start: Time, booked_until: Option<Time>, minutes: &[u32]) -> TimetablePlan {
    planned(with(start, booked_until, minutes)).timetable.unwrap()
}

#[test]
fn an_evening_by_hand() {
    // 18:30 + 15 min = 18:45, + 25 min = 19:10, + 90 min = 20:40, + 20 min = 21:00: 150 min.
    let plan = timetable(at(18, 30), Some(at(21, 30)), &[15, 25, 90, 20]);
    let times: Vec<_> = plan.steps.iter().map(|step| (step.start, step.end)).collect();
    assert_eq!(
        times,
        [
            (at(18, 30), at(18, 45)),
            (at(18, 45), at(19, 10)),
            (at(19, 10), at(20, 40)),
            (at(20, 40), at(21, 0)),
        ]
    );
    assert_eq!((plan.start, plan.end, plan.minutes), (at(18, 30), at(21, 0), 150));
    let booking = plan.booking.unwrap();
    assert_eq!(booking.spare_minutes, 30);
    assert!(booking.holds());
}

#[test]
fn a_booking_that_is_too_short_says_by_how_much() {
    // 14:00 + 200 min = 17:20; booked until 17:15.
    let booking = timetable(at(14, 0), Some(at(17, 15)), &[200]).booking.unwrap();
    assert_eq!(booking.spare_minutes, -5);
    assert!(!booking.holds());
    let to_the_minute = timetable(at(14, 0), Some(at(17, 20)), &[200]).booking.unwrap();
    assert_eq!(to_the_minute.spare_minutes, 0);
    assert!(to_the_minute.holds());
    assert!(timetable(at(14, 0), None, &[200]).booking.is_none());
}

#[test]
fn a_lesson_that_reaches_midnight_is_refused_with_the_step() {
    let refused = plan(with(at(22, 0), None, &[30, 90, 5])).unwrap_err();
    assert_eq!(refused, Impossible::PastMidnight { step: "step 2".into() });
    assert!(refused.to_string().contains("midnight"), "{refused}");
    assert_eq!(timetable(at(22, 0), None, &[30, 89]).end, at(23, 59));
    assert!(plan(with(at(0, 0), None, &[u32::MAX])).is_err());
}

proptest! {
    #[test]
    fn clock_times_add_up(
        start in 0_u32..600,
        until in 601_u32..1440,
        minutes in prop::collection::vec(1_u32..60, 1..14),
    ) {
        let time = |minute: u32| at((minute / 60) as i8, (minute % 60) as i8);
        let minute = |time: Time| i64::from(time.hour()) * 60 + i64::from(time.minute());
        let plan = timetable(time(start), Some(time(until)), &minutes);
        let mut now = i64::from(start);
        for (step, minutes) in plan.steps.iter().zip(&minutes) {
            prop_assert_eq!(minute(step.start), now);
            now += i64::from(*minutes);
            prop_assert_eq!(minute(step.end), now);
        }
        prop_assert_eq!(minute(plan.end), now);
        prop_assert_eq!(plan.minutes, minutes.iter().sum::<u32>());
        prop_assert_eq!(plan.booking.unwrap().spare_minutes, i64::from(until) - now);
    }
}
