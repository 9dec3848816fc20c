//! Pushes, across and upward.

use crate::exercises::entry::Entry;

pub(super) const ACROSS: &[Entry] = rows![PushAcross:
    ["Bench press" | "flat bench press" | Barbell External Both | Chest Triceps | FrontDeltoid | BenchAlone]
    ["Close-grip bench press" | "narrow bench press" | Barbell External Both | Triceps Chest | FrontDeltoid | BenchAlone]
    ["Incline bench press" | "" | Barbell External Both | Chest FrontDeltoid | Triceps | BenchAlone]
    ["Floor press" | "" | Barbell External Both | Triceps Chest | FrontDeltoid | BenchAlone]
    ["Dumbbell bench press" | "" | Pair External Both | Chest Triceps | FrontDeltoid | DumbbellsDown]
    ["Incline dumbbell bench press" | "" | Pair External Both | Chest FrontDeltoid | Triceps | DumbbellsDown]
    ["Dumbbell floor press" | "" | Pair External Both | Triceps Chest | FrontDeltoid | DumbbellsDown]
    ["Push-up" | "Push-up burn-out; press-up" | Body PushUp Both | Chest Triceps | FrontDeltoid Abdominals |]
    ["Push-up on knees" | "kneeling push-up" | Body KneePushUp Both | Chest Triceps | FrontDeltoid Abdominals |]
    ["Push-up with hands on a box" | "incline push-up" | Body HandsUp Both | Chest Triceps | FrontDeltoid Abdominals | FirmSupport]
    ["Push-up with feet on a box" | "decline push-up" | Body FeetUp Both | Chest FrontDeltoid | Triceps Abdominals | FirmSupport]
    ["Dip" | "bar dip" | Body WholeBody Both | Chest Triceps | FrontDeltoid | Shoulders StepDown]
    ["Cable chest press" | "" | Stack External Both | Chest Triceps | FrontDeltoid Abdominals |]
    ["Band chest press" | "" | Band Band Both | Chest Triceps | FrontDeltoid Abdominals | BandWear]
];

pub(super) const UPWARD: &[Entry] = rows![PushUpward:
    ["Overhead press" | "strict press; military press" | Barbell External Both | FrontDeltoid Triceps | SideDeltoid Trapezius Abdominals | Overhead]
    ["Seated overhead press" | "" | Barbell External Both | FrontDeltoid Triceps | SideDeltoid Trapezius | Overhead SafetyBars]
    ["Dumbbell shoulder press" | "dumbbell overhead press" | Pair External Both | FrontDeltoid Triceps | SideDeltoid Trapezius Abdominals | Overhead]
    ["Single-arm dumbbell press" | "one-arm press" | Single External EachInTurn | FrontDeltoid Triceps | SideDeltoid Obliques | Overhead]
    ["Kettlebell press" | "" | Kettlebell External EachInTurn | FrontDeltoid Triceps | SideDeltoid Obliques Forearms | Overhead]
    ["Landmine press" | "angled bar press" | Other External EachInTurn | FrontDeltoid Triceps | Chest Obliques | Shoulders]
    ["Pike push-up" | "" | Body Nothing Both | FrontDeltoid Triceps | SideDeltoid Trapezius | Shoulders]
    ["Handstand push-up" | "" | Body WholeBody Both | FrontDeltoid Triceps | SideDeltoid Trapezius Abdominals | Coach FirmSupport]
    ["Band overhead press" | "" | Band Band Both | FrontDeltoid Triceps | SideDeltoid Trapezius | BandWear]
];
