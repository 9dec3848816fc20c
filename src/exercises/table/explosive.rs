//! Swings, cleans, snatches, jumps and throws.

use crate::exercises::entry::Entry;

pub(super) const EXPLOSIVE: &[Entry] = rows![Explosive:
    ["Kettlebell swing" | "two-handed swing" | Kettlebell External Both | Glutes Hamstrings | SpinalErectors Forearms | Hinge]
    ["Kettlebell snatch" | "" | Kettlebell External EachInTurn | Glutes Hamstrings | Trapezius SideDeltoid Forearms | Hinge Overhead Coach]
    ["Power clean" | "" | Barbell External Both | Glutes Hamstrings Quadriceps | Trapezius SpinalErectors Calves | Hinge Coach MissedBar]
    ["Hang power clean" | "" | Barbell External Both | Glutes Hamstrings | Quadriceps Trapezius SpinalErectors | Hinge Coach MissedBar]
    ["Clean and jerk" | "" | Barbell External Both | Quadriceps Glutes | Hamstrings Trapezius FrontDeltoid Triceps | Hinge Overhead Coach MissedBar]
    ["Clean pull" | "" | Barbell External Both | Glutes Hamstrings Trapezius | Quadriceps SpinalErectors Calves | Hinge]
    ["Power snatch" | "" | Barbell External Both | Glutes Hamstrings Quadriceps | Trapezius SideDeltoid SpinalErectors | Hinge Overhead Coach MissedBar]
    ["Dumbbell snatch" | "" | Single External EachInTurn | Glutes Hamstrings | Quadriceps Trapezius SideDeltoid | Hinge Overhead]
    ["Push press" | "" | Barbell External Both | FrontDeltoid Triceps Quadriceps | SideDeltoid Glutes Trapezius | Overhead]
    ["Push jerk" | "" | Barbell External Both | FrontDeltoid Quadriceps | Triceps Glutes Calves | Overhead Coach MissedBar]
    ["Thruster" | "squat to press" | Barbell External Both | Quadriceps FrontDeltoid | Glutes Triceps | Overhead MissedBar]
    ["Vertical jump" | "jump squat; countermovement jump" | Body Nothing Both | Quadriceps Glutes | Calves Hamstrings | Landing]
    ["Box jump" | "" | Body Nothing Both | Quadriceps Glutes | Calves Hamstrings | Landing FirmSupport]
    ["Broad jump" | "standing long jump" | Body Nothing Both | Glutes Quadriceps | Hamstrings Calves | Landing]
    ["Medicine-ball slam" | "" | Other External Both | Lats Abdominals | Triceps Glutes | ThrowRoom]
    ["Medicine-ball chest throw" | "chest pass" | Other External Both | Chest Triceps | FrontDeltoid | ThrowRoom]
];
