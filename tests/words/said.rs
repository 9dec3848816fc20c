//! What the app says in another language, and that it still reads and keeps the same.

use super::files;
use chrono::{DateTime, NaiveDate};
use stanchion::cues::next_words;
use stanchion::exercises::{
    Catalogue as Exercises, Muscle, Muscles, OwnExercise, all, find, search,
};
use stanchion::kit::Kit;
use stanchion::ledger::halves_said;
use stanchion::quick::EQUIPMENT;
use stanchion::sheet::{
    BlockId, Equipment, Exercise, ExerciseId, Line, LoadBasis, Note, Pattern, RepTarget, SideMode,
    Target,
};
use stanchion::strength::{Because, Moved, Proposal, Wish};
use stanchion::units::{
    Load, Reps, Rir, Share, Unit, date, day_and_time, long_date, month, weekday_short,
};
use stanchion::words::{Catalogue, SOFT_HYPHEN, name_in, speak, t_name};
use std::collections::{BTreeSet, HashMap};
use uuid::Uuid;

/// Speaks a language for as long as `said` runs.
pub fn speaking(file: &files::Words, said: impl FnOnce()) {
    let texts = file.texts.iter().cloned();
    let texts = texts.map(|(english, text)| (english.into(), text.into()));
    let marks = format!("{}{}", file.decimal_mark, file.group_mark);
    let catalogue = Catalogue::new(file.language.clone().into(), marks.into(), texts.collect());
    speak(Some(Box::leak(Box::new(catalogue))));
    said();
    speak(None);
}

pub fn in_german(said: impl FnOnce()) {
    let german = files::all().into_iter().find(|file| file.language == "de");
    speaking(&german.expect("German is there"), said);
}

#[test]
fn no_two_exercises_have_a_name_in_common_in_any_language() {
    for file in files::all() {
        speaking(&file, || {
            let mut owners = HashMap::new();
            for entry in all() {
                for name in entry.names_said() {
                    let owner = owners.insert(name.to_lowercase(), entry.id());
                    let other = owner.filter(|owner| *owner != entry.id());
                    assert_eq!(other, None, "{}: {name}", file.name);
                }
            }
        });
    }
}

#[test]
fn a_word_that_may_be_parted_is_found_and_written_whole() {
    in_german(|| {
        let cuff = |text: &str| {
            let found = search(text, 5).into_iter();
            found
                .map(|entry| entry.id().to_string())
                .collect::<Vec<_>>()
        };
        assert!(Muscle::RotatorCuff.name().contains(SOFT_HYPHEN));
        let whole = cuff("Rotatorenmanschette");
        assert!(!whole.is_empty());
        assert_eq!(cuff(Muscle::RotatorCuff.name()), whole);
    });
}

#[test]
fn each_equipment_has_one_name_of_its_own_in_any_language() {
    let names = || EQUIPMENT.map(|(equipment, _)| equipment.name());
    let english = BTreeSet::from(names());
    assert_eq!(english.len(), EQUIPMENT.len());
    for file in files::all() {
        speaking(&file, || {
            let here = BTreeSet::from(names());
            assert_eq!(here.len(), EQUIPMENT.len(), "{}", file.name);
        });
    }
    in_german(|| assert_eq!(Equipment::Band.name(), "Band"));
}

#[test]
fn an_exercise_is_found_by_any_name_and_kept_under_its_english_one() {
    for file in files::all() {
        speaking(&file, || {
            for entry in all() {
                for name in entry.sheet_names() {
                    let here = name_in(&name).expect("every name is in every language");
                    let found = find(&here.to_lowercase()).expect("its name here finds it");
                    assert_eq!((found.id, found.name.as_str()), (entry.id(), &*name));
                    assert_eq!(find(&name).map(|found| found.id), Some(entry.id()));
                }
                // Its cautions are kept in English and said here; one that is no fit line could not stand in a field.
                let kept = entry.cautions();
                assert!(kept.iter().all(|line| Line::new(line.said()).is_ok()));
                assert!(kept.iter().all(|line| line.said() != line.as_str()));
                speak_english(|| assert_eq!(entry.cautions(), kept));
            }
        });
    }
}

fn speak_english(said: impl FnOnce()) {
    let spoken = stanchion::words::spoken();
    speak(None);
    said();
    speak(spoken);
}

#[test]
fn a_search_finds_words_of_both_languages() {
    in_german(|| {
        let known = Exercises::default();
        let first = |text: &str| known.search(text, 1).first().map(|found| found.name());
        assert_eq!(first("back squat"), Some("Kniebeuge"));
        assert_eq!(first("kniebeuge"), Some("Kniebeuge"));
        assert_eq!(first("ÜBERKOPF"), Some("Überkopfkniebeuge"));
        let curls = known.search("bizeps band", 9);
        assert!(curls.iter().any(|found| found.id().as_str() == "band-curl"));
        assert_eq!(t_name("Bench press"), "Bankdrücken");
        assert_eq!(t_name("Boat pull"), "Boat pull");
    });
}

#[test]
fn what_a_lifter_wrote_is_shown_as_it_was_written() {
    in_german(|| {
        let line = |text: &str| Line::new(text).unwrap();
        // Word for word texts of the app, but none that it puts into a sheet.
        for own in ["Floor", "Begin", "Close", "What moved", "Ready"] {
            assert_eq!(line(own).said(), own);
            assert_eq!(Note::new(own).unwrap().said(), own);
        }
        // What it brought along is said in German, in a sheet of before too.
        let brought = line("Room overhead, and nobody within two metres.");
        assert_ne!(brought.said(), brought.as_str());
        let demo = stanchion::store::demo();
        let cues = demo
            .current_sheets()
            .into_iter()
            .flat_map(|sheet| sheet.blocks());
        let cues: Vec<&Line> = cues.flat_map(|block| &block.cues).collect();
        assert!(!cues.is_empty() && cues.iter().all(|cue| cue.said() != cue.as_str()));
    });
}

#[test]
fn an_exercise_of_ones_own_is_shown_as_it_was_written_though_the_list_has_one_of_that_name() {
    let exercise = |id: &str, name: &str| Exercise {
        id: ExerciseId::new(id).unwrap(),
        name: Line::new(name).unwrap(),
        pattern: Pattern::SingleJoint,
        equipment: Equipment::Other,
    };
    in_german(|| {
        // The listed one, from a sheet.
        assert_eq!(exercise("bench-press", "Bench press").said(), "Bankdrücken");
        // Another one of that name, and a listed one that a person calls like another.
        assert_eq!(exercise("own-press", "Bench press").said(), "Bench press");
        assert_eq!(exercise("back-squat", "Bench press").said(), "Bench press");
        // What the list has for it is found by its words still, and named as written.
        let own = OwnExercise {
            id: ExerciseId::new("own-press").unwrap(),
            version: Uuid::from_u128(1),
            written: DateTime::parse_from_rfc3339("2026-01-05T09:00:00+01:00").unwrap(),
            name: Line::new("Bench press").unwrap(),
            pattern: Pattern::PushAcross,
            equipment: Equipment::Barbell,
            main: Muscles::default(),
            also: Muscles::default(),
            basis: LoadBasis::External,
            sides: SideMode::Both,
            cautions: Vec::new(),
        };
        let known = Exercises::new([own]);
        assert_eq!(known.of("own-press").unwrap().name(), "Bench press");
        assert_eq!(known.of("bench-press").unwrap().name(), "Bankdrücken");
        // Every listed exercise and every one of the demo is said in German.
        for entry in all() {
            assert_eq!(
                Some(entry.exercise().said().as_str()),
                name_in(entry.exercise().name.as_str())
            );
        }
        let demo = stanchion::store::demo();
        for block in demo
            .current_sheets()
            .iter()
            .flat_map(|sheet| sheet.blocks())
        {
            let exercise = &block.exercise;
            assert_eq!(
                Some(exercise.said().as_str()),
                name_in(exercise.name.as_str())
            );
        }
    });
}

#[test]
fn days_and_numbers_are_said_as_there_and_kept_as_ever() {
    in_german(|| {
        let day = NaiveDate::from_ymd_opt(2026, 11, 25).unwrap();
        assert_eq!(date(day), "25. Nov 2026");
        assert_eq!(long_date(day), "Mittwoch, 25. November 2026");
        assert_eq!(month(day), "November 2026");
        assert_eq!(weekday_short(0), "Mo");
        let at = DateTime::parse_from_rfc3339("2026-03-03T07:05:59+01:00").unwrap();
        assert_eq!(day_and_time(at), "Di 3. Mär 2026, 07:05");
        let load: Load = "82.5 kg".parse().unwrap();
        assert_eq!(load.shown(Unit::Kg), "82,5 kg");
        assert_eq!(load.to_string(), "82,5 kg");
        assert_eq!(load.plain(), "82.5 kg");
        assert_eq!(serde_json::to_string(&load).unwrap(), "\"82.5 kg\"");
        assert_eq!(halves_said(15), "7,5");
        let share: Share = "62,5 %".parse().unwrap();
        assert_eq!(share.to_string(), "62,5 %");
        assert_eq!(serde_json::to_string(&share).unwrap(), "\"62.5 %\"");
    });
}

#[test]
fn what_comes_next_is_spoken_in_the_language() {
    in_german(|| {
        let reps = |n| Reps::new(n).unwrap();
        let said = next_words(
            Some(t_name("Back squat")),
            "62.5 kg".parse().ok(),
            &LoadBasis::External,
            Unit::Kg,
            &Target::Reps(RepTarget::Range(reps(5), reps(7))),
            SideMode::Both,
        );
        let wanted = "als Nächstes: Kniebeuge, 62,5 Kilo, 5 bis 7 Wiederholungen";
        assert_eq!(said, wanted);
    });
}

#[test]
fn a_kit_to_start_from_holds_in_every_language() {
    for file in files::all() {
        speaking(&file, || {
            for unit in [Unit::Kg, Unit::Lb] {
                let kit = Kit::starter(unit);
                let bands = &kit.parts().bands;
                assert_eq!(kit.band_beside(&bands[0], true), Some(&bands[1]));
            }
        });
    }
}

/// Nothing added has one word as a load and another as what something was done with: where the reason says either, the load is said.
#[test]
fn a_load_of_nothing_is_not_said_twice() {
    let moved = Moved {
        at: Load::ZERO,
        to: Load::ZERO,
        wish: Wish::Same,
        on: Equipment::Body,
        assists: false,
        named: None,
        bound: None,
        span: None,
    };
    let said = || {
        let proposal = Proposal {
            block: BlockId(Uuid::from_u128(1)),
            load: Some(Load::ZERO),
            because: Because::AsAimed {
                reserve: Rir::new(2).unwrap(),
                moved,
            },
        };
        proposal.said(Unit::Kg, &LoadBasis::BodyMassPlus)
    };
    assert_eq!(
        said(),
        "2 left with nothing added, as aimed at: same load again"
    );
    in_german(|| {
        let said = said();
        assert!(said.contains("ohne Zusatz"), "{said}");
        assert!(!said.contains("nichts dazu"), "{said}");
    });
}
