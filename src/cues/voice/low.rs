//! The set *low*: long notes from 0.5 to 1.5 kHz; the triangle's overtones keep them audible on a small speaker.

use super::Voices;
use crate::cues::tone::Wave::{Sine, Square, Triangle};

pub(super) const VOICES: Voices = Voices {
    count_in: &[(0, 150, 800, 85, Triangle)],
    go: &[(0, 420, 1010, 95, Triangle)],
    lower: &[(0, 180, 840, 90, Triangle), (200, 240, 560, 90, Triangle)],
    stretch: &[(0, 240, 500, 95, Triangle)],
    lift: &[(0, 120, 630, 90, Triangle), (140, 150, 945, 90, Triangle)],
    squeeze: &[(0, 190, 1300, 80, Sine)],
    fast: &[(0, 300, 1140, 80, Square)],
    partial: &[(0, 80, 630, 95, Triangle)],
    halfway: &[(0, 120, 710, 85, Triangle), (260, 120, 710, 85, Triangle)],
    left: &[(0, 115, 900, 90, Triangle)],
    stage_change: &[
        (0, 100, 795, 90, Triangle),
        (130, 100, 945, 90, Triangle),
        (260, 100, 1125, 90, Triangle),
    ],
    side_switch: &[
        (0, 150, 1125, 90, Triangle),
        (190, 150, 630, 90, Triangle),
        (380, 150, 1125, 90, Triangle),
    ],
    pause_start: &[(0, 150, 945, 90, Triangle), (190, 300, 530, 95, Triangle)],
    set_end: &[
        (0, 190, 595, 95, Triangle),
        (220, 190, 750, 95, Triangle),
        (440, 420, 1000, 95, Triangle),
    ],
    rest_half: &[(0, 160, 595, 85, Triangle), (320, 160, 795, 85, Triangle)],
    rest_soon: &[
        (0, 110, 560, 90, Triangle),
        (180, 110, 560, 90, Triangle),
        (360, 110, 560, 90, Triangle),
    ],
    rest_end: &[
        (0, 220, 710, 95, Square),
        (260, 220, 710, 95, Square),
        (520, 450, 1190, 95, Square),
    ],
    last_rep: (480, 140, 1480, 80, Sine),
};
