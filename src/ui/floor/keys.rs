//! What a key means on the floor: of a keyboard, of a page-turner, of a headset. Pure.

use crate::device::events::{On, Press};
use crate::device::media::MediaKey;
use crate::words::t;

/// What a key asks the pad for. What that comes to depends on what the floor shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Wish {
    /// What a tap on the large button does: log the set, begin the next one, count a rep.
    Main,
    /// The other large thing: the cues of a set begun or stopped, a rest held open or ended.
    Other,
    /// One rep less, or 15 s less rest.
    Less,
    /// One rep more, or 15 s more rest.
    More,
    /// The last tap taken back; in a rest the last set.
    Undo,
    /// The panel of the load.
    Load,
    /// The panel of the reserve.
    Reserve,
    /// The panel with everything else.
    Everything,
    /// The list of the keys.
    Help,
}

/// The keys as they are listed, and what each group does.
pub fn listed() -> [(&'static str, &'static str); 9] {
    [
        (
            t("Enter · Space · Page down · →"),
            t("log the set; in a rest, begin the next one"),
        ),
        (
            t("B · Page up · ←"),
            t("begin by ear, stop the cues; in a rest, hold it open, end it"),
        ),
        ("↑ · +", t("one rep more; 15 s more rest")),
        ("↓ · −", t("one rep less; 15 s less rest")),
        ("U", t("undo the last tap; in a rest, the last set")),
        ("L", t("another load")),
        ("R", t("reps left in reserve")),
        ("M", t("everything else")),
        (t("Escape"), t("close what is open")),
    ]
}

/// The wish of a key by its name (`KeyboardEvent.key`); none for keys that mean nothing here.
#[must_use]
pub fn wish(key: &str) -> Option<Wish> {
    Some(match key {
        "Enter" | " " | "PageDown" | "ArrowRight" | "MediaTrackNext" => Wish::Main,
        "b" | "B" | "PageUp" | "ArrowLeft" | "MediaPlayPause" => Wish::Other,
        "ArrowUp" | "+" => Wish::More,
        "ArrowDown" | "-" | "−" => Wish::Less,
        "u" | "U" | "MediaTrackPrevious" => Wish::Undo,
        "l" | "L" => Wish::Load,
        "r" | "R" => Wish::Reserve,
        "m" | "M" => Wish::Everything,
        "?" => Wish::Help,
        _ => return None,
    })
}

/// What becomes of a key that went down.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Meant {
    /// It is the browser's: not one of ours, typed into a field, or it operates the button that has the focus.
    Theirs,
    /// It does nothing, and the browser does nothing with it either.
    Nothing,
    /// It asks the pad for something.
    Wish(Wish),
}

/// What becomes of a key that went down while no panel is open.
///
/// A key that is held down acts once. With Ctrl, Alt or Meta it belongs to the browser, and so does what is typed into a
/// field; Shift alone changes a letter, and a key that is no letter belongs to the browser with it. Enter and Space
/// operate the button that has the focus, once.
#[must_use]
pub fn meant(press: &Press) -> Meant {
    let Some(wish) = wish(&press.key).filter(|_| !press.modified && press.on != On::Field) else {
        return Meant::Theirs;
    };
    let letter = press.key.chars().count() == 1 && press.key != " ";
    if press.shifted && !letter {
        return Meant::Theirs;
    }
    match (press.held, press.on) {
        (true, _) => Meant::Nothing,
        (false, On::Button) if matches!(press.key.as_str(), "Enter" | " ") => Meant::Theirs,
        (false, _) => Meant::Wish(wish),
    }
}

/// What a key of a headset asks for: next does what a tap on the pad does.
#[must_use]
pub fn of_media(key: MediaKey) -> Wish {
    match key {
        MediaKey::PlayPause => Wish::Other,
        MediaKey::Next => Wish::Main,
        MediaKey::Previous => Wish::Undo,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn press(key: &str) -> Press {
        Press {
            key: key.to_owned(),
            held: false,
            modified: false,
            shifted: false,
            on: On::Page,
        }
    }

    const OURS: [&str; 20] = [
        "Enter",
        " ",
        "PageDown",
        "ArrowRight",
        "b",
        "B",
        "PageUp",
        "ArrowLeft",
        "ArrowUp",
        "+",
        "ArrowDown",
        "-",
        "u",
        "U",
        "l",
        "L",
        "r",
        "M",
        "?",
        "MediaTrackNext",
    ];

    #[test]
    fn every_key_of_the_list_is_one_and_says_what_it_does() {
        for (keys, does) in listed().iter().filter(|(keys, _)| *keys != "Escape") {
            let wishes: Vec<Option<Wish>> = keys
                .split(" · ")
                .map(|name| {
                    wish(match name {
                        "Space" => " ",
                        "Page down" => "PageDown",
                        "Page up" => "PageUp",
                        "→" => "ArrowRight",
                        "←" => "ArrowLeft",
                        "↑" => "ArrowUp",
                        "↓" => "ArrowDown",
                        other => other,
                    })
                })
                .collect();
            assert!(wishes[0].is_some(), "{keys} does nothing");
            assert!(wishes.iter().all(|one| *one == wishes[0]), "{keys}");
            assert!(!does.is_empty());
        }
    }

    #[test]
    fn every_wish_has_a_key() {
        let all = OURS.map(|key| wish(key).unwrap());
        for wish in [
            Wish::Main,
            Wish::Other,
            Wish::Less,
            Wish::More,
            Wish::Undo,
            Wish::Load,
            Wish::Reserve,
            Wish::Everything,
            Wish::Help,
        ] {
            assert!(all.contains(&wish), "{wish:?}");
        }
    }

    #[test]
    fn a_key_that_is_typed_held_or_modified_never_acts() {
        for key in OURS {
            let typed = Press {
                on: On::Field,
                ..press(key)
            };
            assert_eq!(meant(&typed), Meant::Theirs, "{key}");
            let modified = Press {
                modified: true,
                ..press(key)
            };
            assert_eq!(meant(&modified), Meant::Theirs, "{key}");
            let held = Press {
                held: true,
                ..press(key)
            };
            assert_eq!(meant(&held), Meant::Nothing, "{key}");
        }
        let shifted = |key| Press {
            shifted: true,
            ..press(key)
        };
        assert_eq!(meant(&shifted("Enter")), Meant::Theirs);
        assert_eq!(meant(&shifted(" ")), Meant::Theirs);
        assert_eq!(meant(&shifted("ArrowUp")), Meant::Theirs);
        assert_eq!(meant(&shifted("+")), Meant::Wish(Wish::More));
        assert_eq!(meant(&press("x")), Meant::Theirs);
    }

    #[test]
    fn a_button_with_the_focus_keeps_enter_and_space_and_is_pressed_once() {
        for key in ["Enter", " "] {
            let on_button = Press {
                on: On::Button,
                ..press(key)
            };
            assert_eq!(meant(&on_button), Meant::Theirs);
            assert_eq!(
                meant(&Press {
                    held: true,
                    ..on_button
                }),
                Meant::Nothing
            );
        }
        let turned = Press {
            on: On::Button,
            ..press("PageDown")
        };
        assert_eq!(meant(&turned), Meant::Wish(Wish::Main));
    }
}
