//! Pulls, across and downward.

use crate::exercises::entry::Entry;

pub(super) const ACROSS: &[Entry] = rows![PullAcross:
    ["Bent-over row" | "barbell row" | Barbell External Both | UpperBack Lats | RearDeltoid Biceps SpinalErectors | BentOver]
    ["Underhand bent-over row" | "reverse-grip row" | Barbell External Both | Lats UpperBack | Biceps RearDeltoid SpinalErectors | BentOver]
    ["Dumbbell bent-over row" | "" | Pair External Both | UpperBack Lats | RearDeltoid Biceps SpinalErectors | BentOver]
    ["Bent-over row, one holds" | "Bent-over row, one side holds" | Pair External OneHolds | UpperBack Lats | RearDeltoid Biceps SpinalErectors Forearms | BentOver]
    ["One-arm dumbbell row" | "single-arm row; supported row" | Single External EachInTurn | Lats UpperBack | RearDeltoid Biceps Obliques | BentOver]
    ["Chest-supported dumbbell row" | "incline bench row" | Pair External Both | UpperBack Lats | RearDeltoid Biceps | FirmSupport]
    ["T-bar row" | "landmine row" | Other External Both | UpperBack Lats | RearDeltoid Biceps SpinalErectors | BentOver]
    ["Inverted row" | "body row; horizontal pull-up" | Body Nothing Both | UpperBack Lats | RearDeltoid Biceps | Hanging]
    ["Seated cable row" | "" | Stack External Both | UpperBack Lats | RearDeltoid Biceps |]
    ["Band row" | "" | Band Band Both | UpperBack Lats | RearDeltoid Biceps | BandWear]
    ["Face pull" | "" | Stack External Both | RearDeltoid UpperBack | RotatorCuff Trapezius |]
    ["Band pull-apart" | "" | Band Band Both | RearDeltoid UpperBack | RotatorCuff Trapezius | BandWear]
];

pub(super) const DOWNWARD: &[Entry] = rows![PullDownward:
    ["Pull-up" | "overhand pull-up" | Body WholeBody Both | Lats UpperBack | Biceps Forearms | Hanging StepDown]
    ["Chin-up" | "Chin-up with added load; underhand pull-up" | Body WholeBody Both | Lats Biceps | UpperBack Forearms | Hanging StepDown]
    ["Slow lowering from the bar" | "negative pull-up; eccentric pull-up" | Body WholeBody Both | Lats Biceps | UpperBack Forearms | Hanging StepDown SlowStart]
    ["Assisted pull-up" | "" | Stack Assisted Both | Lats UpperBack | Biceps Forearms |]
    ["Band-assisted pull-up" | "" | Band BandHelp Both | Lats UpperBack | Biceps Forearms | Hanging BandWear]
    ["Lat pulldown" | "" | Stack External Both | Lats UpperBack | Biceps Forearms |]
    ["Straight-arm pulldown" | "" | Stack External Both | Lats | Triceps Abdominals |]
    ["Band pulldown" | "" | Band Band Both | Lats UpperBack | Biceps Forearms | BandWear]
    ["Dumbbell pullover" | "" | Single External Both | Lats Chest | Triceps | OverTheFace Shoulders]
];
