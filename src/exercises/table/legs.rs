//! Squats, split stances and hinges.

use crate::exercises::entry::Entry;

pub(super) const SQUAT: &[Entry] = rows![Squat:
    ["Back squat" | "squat; barbell squat" | Barbell External Both | Quadriceps Glutes | Adductors SpinalErectors | SafetyBars]
    ["Front squat" | "" | Barbell External Both | Quadriceps Glutes | UpperBack SpinalErectors | SafetyBars]
    ["Box squat" | "" | Barbell External Both | Glutes Quadriceps | Hamstrings SpinalErectors | SafetyBars FirmSupport]
    ["Overhead squat" | "" | Barbell External Both | Quadriceps Glutes | UpperBack Trapezius SideDeltoid | Overhead Coach MissedBar]
    ["Goblet squat" | "" | Single External Both | Quadriceps Glutes | UpperBack Abdominals |]
    ["Dumbbell front squat" | "" | Pair External Both | Quadriceps Glutes | UpperBack Abdominals |]
    ["Body-weight squat" | "air squat; knee bend" | Body Nothing Both | Quadriceps Glutes | Adductors |]
    ["Split squat" | "" | Pair External EachInTurn | Quadriceps Glutes | Adductors Hamstrings |]
    ["Rear-foot-elevated split squat" | "Bulgarian split squat" | Pair External EachInTurn | Quadriceps Glutes | Adductors Hamstrings | RearFoot]
    ["Forward lunge" | "lunge" | Pair External EachInTurn | Quadriceps Glutes | Adductors Hamstrings |]
    ["Reverse lunge" | "" | Pair External EachInTurn | Quadriceps Glutes | Adductors Hamstrings |]
    ["Walking lunge" | "" | Pair External EachInTurn | Quadriceps Glutes | Adductors Hamstrings | ClearPath]
    ["Lateral lunge" | "side lunge" | Single External EachInTurn | Quadriceps Adductors Glutes | Hamstrings |]
    ["Step-up" | "" | Pair External EachInTurn | Quadriceps Glutes | Hamstrings Calves | FirmSupport]
    ["Single-leg squat to a box" | "" | Body Nothing EachInTurn | Quadriceps Glutes | Adductors | FirmSupport]
];

pub(super) const HINGE: &[Entry] = rows![Hinge:
    ["Deadlift" | "conventional deadlift" | Barbell External Both | Glutes Hamstrings SpinalErectors | Quadriceps Lats Trapezius Forearms | Hinge]
    ["Sumo deadlift" | "" | Barbell External Both | Glutes Adductors Quadriceps | Hamstrings SpinalErectors Trapezius Forearms | Hinge]
    ["Trap-bar deadlift" | "hex-bar deadlift" | Barbell External Both | Quadriceps Glutes | Hamstrings SpinalErectors Trapezius Forearms | Hinge]
    ["Romanian deadlift" | "RDL" | Barbell External Both | Hamstrings Glutes | SpinalErectors Forearms | Hinge]
    ["Stiff-leg deadlift" | "straight-leg deadlift" | Barbell External Both | Hamstrings SpinalErectors | Glutes Forearms | Hinge]
    ["Rack pull" | "block pull" | Barbell External Both | Glutes SpinalErectors | Hamstrings Trapezius Forearms | Hinge]
    ["Dumbbell Romanian deadlift" | "dumbbell RDL" | Pair External Both | Hamstrings Glutes | SpinalErectors Forearms | Hinge]
    ["Single-leg Romanian deadlift" | "single-leg RDL" | Single External EachInTurn | Hamstrings Glutes | SpinalErectors Obliques | Hinge]
    ["Good morning" | "" | Barbell External Both | Hamstrings SpinalErectors | Glutes | Hinge SafetyBars]
    ["Hip thrust" | "" | Barbell External Both | Glutes | Hamstrings Quadriceps | FirmSupport]
    ["Glute bridge" | "hip bridge" | Body Nothing Both | Glutes | Hamstrings |]
    ["Back extension" | "hip extension on the bench" | Body Nothing Both | SpinalErectors Glutes | Hamstrings | Hinge]
    ["Cable pull-through" | "" | Stack External Both | Glutes Hamstrings | SpinalErectors | Hinge]
];
