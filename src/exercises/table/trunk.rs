//! Carries and the trunk.

use crate::exercises::entry::Entry;

pub(super) const CARRY: &[Entry] = rows![Carry:
    ["Farmer's carry" | "farmer's walk" | Pair External Both | Forearms Trapezius | Abdominals Glutes Calves | ClearPath]
    ["Suitcase carry" | "one-sided carry" | Single External EachInTurn | Obliques Forearms | Trapezius Glutes | ClearPath]
    ["Front-rack carry" | "" | Pair External Both | Abdominals UpperBack | FrontDeltoid Glutes | ClearPath]
    ["Overhead carry" | "waiter's walk" | Single External EachInTurn | SideDeltoid Trapezius | Obliques RotatorCuff | ClearPath Overhead]
    ["Sandbag carry" | "bear-hug carry" | Other External Both | UpperBack Abdominals | Glutes Biceps Forearms | ClearPath]
    ["Sled push" | "" | Other External Both | Quadriceps Calves | Glutes Abdominals | ClearPath]
];

pub(super) const TRUNK: &[Entry] = rows![Trunk:
    ["Plank" | "front plank" | Body Nothing Both | Abdominals | Obliques Glutes |]
    ["Side plank" | "" | Body Nothing EachInTurn | Obliques | Abdominals Glutes |]
    ["Adductor side plank" | "Copenhagen plank" | Body Nothing EachInTurn | Adductors Obliques | Abdominals | FirmSupport SlowStart]
    ["Dead bug" | "" | Body Nothing Both | Abdominals | Obliques HipFlexors |]
    ["Bird dog" | "" | Body Nothing Both | SpinalErectors | Glutes Abdominals |]
    ["Ab-wheel roll-out" | "barbell roll-out" | Body Nothing Both | Abdominals | Lats Obliques | SlowStart]
    ["Crunch" | "curl-up" | Body Nothing Both | Abdominals | Obliques |]
    ["Sit-up" | "" | Body Nothing Both | Abdominals HipFlexors | Obliques |]
    ["Hanging knee raise" | "" | Body Nothing Both | Abdominals HipFlexors | Forearms Obliques | Hanging]
    ["Seated twist" | "Russian twist" | Single External Both | Obliques | Abdominals HipFlexors |]
    ["Side bend" | "" | Single External EachInTurn | Obliques | SpinalErectors Forearms |]
    ["Turkish get-up" | "get-up" | Kettlebell External EachInTurn | Abdominals Obliques | SideDeltoid RotatorCuff Glutes | Overhead Coach]
    ["Cable crunch" | "" | Stack External Both | Abdominals | Obliques |]
    ["Cable wood chop" | "" | Stack External EachInTurn | Obliques | Abdominals |]
    ["Band anti-rotation press" | "" | Band Band EachInTurn | Obliques Abdominals | Glutes | BandWear]
];
