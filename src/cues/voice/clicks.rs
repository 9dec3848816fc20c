//! The set *clicks*: short strokes, told apart by how many there are and how far from each other.

use super::Voices;
use crate::cues::tone::Wave::{Square, Triangle};

pub(super) const VOICES: Voices = Voices {
    count_in: &[(0, 40, 1450, 95, Triangle)],
    go: &[
        (0, 40, 1950, 95, Triangle),
        (60, 40, 1950, 95, Triangle),
        (120, 40, 1950, 95, Triangle),
        (180, 40, 1950, 95, Triangle),
    ],
    lower: &[(0, 40, 1750, 95, Triangle), (160, 40, 1150, 95, Triangle)],
    stretch: &[(0, 40, 800, 95, Triangle), (280, 40, 800, 95, Triangle)],
    lift: &[(0, 40, 1300, 95, Triangle), (90, 40, 2350, 95, Triangle)],
    squeeze: &[(0, 40, 3300, 80, Triangle), (220, 40, 3300, 80, Triangle)],
    fast: &[(0, 40, 2650, 85, Square), (50, 40, 2650, 85, Square)],
    partial: &[(0, 110, 1040, 95, Triangle)],
    halfway: &[(0, 40, 920, 95, Triangle), (360, 40, 920, 95, Triangle)],
    left: &[(0, 40, 2300, 95, Triangle), (125, 40, 2300, 95, Triangle)],
    stage_change: &[
        (0, 40, 1600, 95, Triangle),
        (60, 40, 2150, 95, Triangle),
        (120, 40, 2800, 95, Triangle),
    ],
    side_switch: &[
        (0, 40, 2850, 95, Triangle),
        (110, 40, 1000, 95, Triangle),
        (220, 40, 2850, 95, Triangle),
    ],
    pause_start: &[
        (0, 40, 1870, 95, Triangle),
        (60, 40, 1870, 95, Triangle),
        (260, 40, 620, 95, Triangle),
    ],
    set_end: &[
        (0, 60, 1100, 95, Triangle),
        (150, 60, 1650, 95, Triangle),
        (300, 60, 2450, 95, Triangle),
    ],
    rest_half: &[(0, 40, 700, 95, Triangle), (450, 40, 1050, 95, Triangle)],
    rest_soon: &[
        (0, 40, 640, 95, Triangle),
        (170, 40, 640, 95, Triangle),
        (340, 40, 640, 95, Triangle),
    ],
    rest_end: &[
        (0, 50, 1400, 95, Square),
        (80, 50, 1400, 95, Square),
        (160, 50, 1400, 95, Square),
        (400, 50, 2100, 95, Square),
        (480, 50, 2100, 95, Square),
        (560, 50, 2100, 95, Square),
    ],
    last_rep: (400, 60, 3900, 80, Triangle),
};
