//! A sound as numbers: when, how long, how high, how loud.

/// The shape of a tone's wave: how it tells itself from others.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wave {
    /// Soft.
    Sine,
    /// A little brighter.
    Triangle,
    /// Sharp; carries through noise.
    Square,
}

/// One tone in a list that is played as a whole.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tone {
    /// When it starts, in milliseconds from the start of the list.
    pub at_ms: u32,
    /// How long it sounds, in milliseconds, fades included.
    pub len_ms: u32,
    /// Pitch in hertz.
    pub hz: f32,
    /// Loudness before the volume, 0 to 1.
    pub gain: f32,
    /// Shape of the wave.
    pub wave: Wave,
}

/// The tones still to come at `from_ms`, each with the milliseconds from then to its start.
///
/// The last tone that was missed by no more than `late_ms` is still played, at once: a sound
/// output that wakes a moment late must not swallow the first beat.
#[must_use]
pub fn due(tones: &[Tone], from_ms: f64, late_ms: f64) -> Vec<(f64, Tone)> {
    let start = |tone: &Tone| f64::from(tone.at_ms);
    let missed = tones
        .iter()
        .filter(|tone| start(tone) < from_ms && start(tone) + late_ms >= from_ms)
        .max_by_key(|tone| tone.at_ms)
        .map(|tone| (0.0, *tone));
    let coming = tones.iter().filter(|tone| start(tone) >= from_ms);
    missed
        .into_iter()
        .chain(coming.map(|tone| (start(tone) - from_ms, *tone)))
        .collect()
}

/// The largest sum of gains that sound at the same time, 0 for no tones.
#[must_use]
pub fn loudest(tones: &[(f64, Tone)]) -> f32 {
    // The sum only rises where a tone starts, so looking there is enough.
    tones
        .iter()
        .map(|(start, _)| {
            tones
                .iter()
                .filter(|(at, tone)| at <= start && *start < at + f64::from(tone.len_ms))
                .map(|(_, tone)| tone.gain)
                .sum()
        })
        .fold(0.0, f32::max)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tone(at_ms: u32, len_ms: u32, gain: f32) -> Tone {
        Tone {
            at_ms,
            len_ms,
            hz: 440.0,
            gain,
            wave: Wave::Sine,
        }
    }

    #[test]
    fn what_lies_before_is_skipped_but_the_last_just_missed() {
        let list = [
            tone(0, 50, 1.0),
            tone(900, 50, 1.0),
            tone(980, 50, 1.0),
            tone(2000, 50, 1.0),
        ];
        let starts = |from, late| -> Vec<(f64, u32)> {
            due(&list, from, late)
                .iter()
                .map(|(at, tone)| (*at, tone.at_ms))
                .collect()
        };
        assert_eq!(starts(1000.0, 0.0), [(1000.0, 2000)]);
        assert_eq!(starts(1000.0, 250.0), [(0.0, 980), (1000.0, 2000)]);
        assert_eq!(starts(2000.0, 250.0), [(0.0, 2000)]);
        assert_eq!(starts(2250.5, 250.0), []);
    }

    #[test]
    fn loudest_counts_only_what_sounds_together() {
        let at = |list: &[Tone]| loudest(&due(list, 0.0, 0.0));
        assert_eq!(at(&[]), 0.0);
        assert_eq!(at(&[tone(0, 100, 0.5), tone(100, 100, 0.75)]), 0.75);
        assert_eq!(at(&[tone(0, 100, 0.5), tone(99, 100, 0.75)]), 1.25);
    }
}
