//! The set *tones*: notes of middle length, steps down with lowering and up with lifting.

use super::Voices;
use crate::cues::tone::Wave::{Sine, Square, Triangle};

pub(super) const VOICES: Voices = Voices {
    count_in: &[(0, 110, 880, 75, Sine)],
    go: &[(0, 300, 1760, 90, Triangle)],
    lower: &[(0, 150, 1250, 85, Sine), (170, 190, 830, 85, Sine)],
    stretch: &[(0, 170, 620, 90, Triangle)],
    lift: &[(0, 90, 930, 85, Sine), (100, 110, 1480, 85, Sine)],
    squeeze: &[(0, 140, 2500, 65, Sine)],
    fast: &[(0, 210, 2050, 75, Square)],
    partial: &[(0, 50, 1050, 90, Triangle)],
    halfway: &[(0, 90, 990, 80, Sine), (200, 90, 990, 80, Sine)],
    left: &[(0, 80, 1320, 85, Sine)],
    stage_change: &[
        (0, 70, 1180, 85, Triangle),
        (100, 70, 1560, 85, Triangle),
        (200, 70, 1980, 85, Triangle),
    ],
    side_switch: &[
        (0, 120, 2250, 85, Triangle),
        (150, 120, 1120, 85, Triangle),
        (300, 120, 2250, 85, Triangle),
    ],
    pause_start: &[(0, 120, 1660, 80, Sine), (150, 240, 560, 90, Sine)],
    set_end: &[
        (0, 150, 1050, 95, Triangle),
        (180, 150, 1400, 95, Triangle),
        (360, 350, 1870, 95, Triangle),
    ],
    rest_half: &[(0, 140, 740, 80, Sine), (260, 140, 1110, 80, Sine)],
    rest_soon: &[
        (0, 90, 700, 85, Sine),
        (150, 90, 700, 85, Sine),
        (300, 90, 700, 85, Sine),
    ],
    rest_end: &[
        (0, 180, 1400, 95, Square),
        (220, 180, 1400, 95, Square),
        (440, 400, 2100, 95, Square),
    ],
    last_rep: (400, 110, 3000, 65, Sine),
};
