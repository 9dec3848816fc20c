//! The hand on a block: widgets that show a part of its prescription and change it.
//!
//! What a widget reads and sets is a plain function of the block and of a place in it. So each widget is one piece of
//! code, however many parts of a block it serves.

use crate::say;
use crate::sheet::{Block, BlockId, SheetId};
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::parts::{
    Mode, Text, area, choices, dynamic, el, field, stepper, tap, text, toggles_of, when, wrong_word,
};
use crate::ui::seen::Seen;
use crate::ui::stanchion::Stanchion;
use crate::units::Unit;
use leptos::prelude::*;

/// A place in a block: a line of its sets, and an item of a list in that line.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct At {
    /// The line of sets.
    pub line: usize,
    /// The item: a share, a stage, a digit.
    pub item: usize,
}

impl At {
    /// The same line, another item.
    pub fn item(self, item: usize) -> At {
        At { item, ..self }
    }
}

/// Reads a text.
pub type Look = fn(&Block, At) -> String;
/// Reads which of several choices holds.
pub type Pick = fn(&Block, At) -> Option<i64>;
/// Sets a choice, or steps a figure by −1 or 1.
pub type Put = fn(&mut Block, At, i64);
/// Takes what was typed, a mass in that unit; or says what is wrong with it.
pub type Take = fn(&mut Block, At, &str, Unit) -> Result<(), String>;
/// Lays what depends on a choice.
pub type Lay = fn(Hand, At) -> AnyView;

/// A hand on one block of a draft.
#[derive(Clone, Copy)]
pub struct Hand {
    /// The app.
    pub app: Stanchion,
    /// The sheet that is being written.
    pub sheet: SheetId,
    /// The block.
    pub block: BlockId,
    /// The block as it stands; none once it was taken off.
    pub it: Seen<Option<Block>>,
    /// What was wrong with the last change.
    pub wrong: Live<Option<String>>,
}

impl Hand {
    /// A hand on that block.
    pub fn on(app: Stanchion, sheet: SheetId, block: BlockId) -> Hand {
        let it = app.of(move |model: &Model| {
            let draft = model.drafts.get(&sheet)?;
            draft.sheet().block(block).cloned()
        });
        Hand {
            app,
            sheet,
            block,
            it,
            wrong: Live::new(None),
        }
    }

    /// What `look` reads; empty once the block is gone.
    fn read(self, look: Look, at: At) -> String {
        self.it
            .with(|block| block.as_ref().map(|block| look(block, at)))
            .unwrap_or_default()
    }

    /// Changes the block.
    pub fn change(self, change: &mut dyn FnMut(&mut Block)) {
        let changed = self.app.change_block(self.sheet, self.block, change);
        self.wrong.set(changed.err());
    }

    fn set(self, set: Put, at: At, to: i64) {
        self.change(&mut |block| set(block, at, to));
    }

    /// A text that follows the block.
    pub fn text(self, look: Look, at: At) -> Text {
        text(move || self.read(look, at))
    }

    /// What is wrong with the last change.
    pub fn wrong_word(self) -> AnyView {
        wrong_word("draft-wrong", self.wrong)
    }

    /// Choices of which one holds.
    pub fn pick(
        self,
        at: At,
        part: &'static str,
        name: &'static str,
        labels: &[&'static str],
        pick: Pick,
        set: Put,
    ) -> AnyView {
        self.pick_by(at, part, name, labels, pick, move |n| self.set(set, at, n))
    }

    /// The same, where what is chosen takes more than the block.
    pub fn pick_by(
        self,
        at: At,
        part: &'static str,
        name: &'static str,
        labels: &[&'static str],
        pick: Pick,
        choose: impl Fn(i64) + Copy + Send + Sync + 'static,
    ) -> AnyView {
        let pressed = Seen::new(move || {
            self.it
                .with(|block| block.as_ref().and_then(|block| pick(block, at)))
        });
        let short = labels.iter().all(|label| label.len() <= 8);
        let labels = labels.iter().map(|label| ((*label).to_owned(), ""));
        let inside = toggles_of(part, labels, pressed, choose);
        let class = match inside.len() {
            2 => "choices two",
            3 if short => "choices three",
            _ => "choices words",
        };
        choices(class, name, inside)
    }

    /// A figure that is stepped.
    pub fn step(
        self,
        at: At,
        part: &'static str,
        what: &'static str,
        look: Look,
        set: Put,
    ) -> AnyView {
        let figure = self.text(look, at);
        let stepper = stepper(what, part, figure, move |more| {
            self.set(set, at, if more { 1 } else { -1 });
        });
        el("div")
            .class("named")
            .child(el("span").class("quiet").child(what))
            .child(stepper)
            .view()
    }

    /// A row of small figures, each stepped by a button above and one below it.
    pub fn spin(
        self,
        at: At,
        part: &'static str,
        names: Vec<String>,
        look: Look,
        set: Put,
    ) -> AnyView {
        let columns: Vec<AnyView> = names
            .into_iter()
            .enumerate()
            .map(|(item, name)| self.column(at.item(item), part, name, look, set))
            .collect();
        el("div").class("spin").part(part).child(columns).view()
    }

    /// One of them.
    pub fn column(self, at: At, part: &'static str, name: String, look: Look, set: Put) -> AnyView {
        let one = |word: &str, sign: &'static str, by: i64| {
            let named = if by > 0 {
                say!("more {what}", what = name)
            } else {
                say!("less {what}", what = name)
            };
            tap(
                "step",
                format!("{part}-{}-{word}", at.item),
                Some(text(move || named.clone())),
                sign.into_any(),
                Callback::new(move |()| self.set(set, at, by)),
            )
        };
        let (more, less) = (one("more", "+", 1), one("less", "−", -1));
        let figure = self.text(look, at);
        el("div")
            .class("spin-column")
            .set("role", "group")
            .set("aria-label", name.clone())
            .child(more)
            .child(
                el("output")
                    .part(format!("{part}-{}-figure", at.item))
                    .text(figure),
            )
            .child(less)
            .child(el("small").set("aria-hidden", "true").child(name.clone()))
            .view()
    }

    /// A field to type into.
    pub fn typed(
        self,
        at: At,
        part: &'static str,
        mode: Mode,
        label: &'static str,
        look: Look,
        take: Take,
    ) -> AnyView {
        let wrong = Live::new(None);
        let told = move |typed: String| {
            let unit = self.app.model.with_untracked(Model::unit);
            let mut said = Ok(());
            self.change(&mut |block| said = take(block, at, &typed, unit));
            wrong.set(said.err());
        };
        let value = self.text(look, at);
        vec![
            field(part, mode, label, value, false, told),
            wrong_word(format!("{part}-wrong"), wrong),
        ]
        .into_any()
    }

    /// Many lines to type into, one item a line.
    pub fn many_lines(
        self,
        part: &'static str,
        label: &'static str,
        look: Look,
        take: Take,
    ) -> AnyView {
        let value = self.text(look, At::default());
        let wrong = Live::new(None);
        let told = Callback::new(move |typed: String| {
            let unit = self.app.model.with_untracked(Model::unit);
            let mut said = Ok(());
            self.change(&mut |block| said = take(block, At::default(), &typed, unit));
            wrong.set(said.err());
        });
        vec![
            area(part, label, value, false, told),
            wrong_word(format!("{part}-wrong"), wrong),
        ]
        .into_any()
    }

    /// What `read` gives at this moment; not followed.
    pub fn now<T>(self, at: At, read: fn(&Block, At) -> Option<T>) -> Option<T> {
        self.it
            .with_untracked(|block| block.as_ref().and_then(|block| read(block, at)))
    }

    /// What is there only while `is` holds.
    pub fn only_while(self, at: At, is: fn(&Block, At) -> bool, lay: Lay) -> AnyView {
        let on = move || {
            self.it
                .with(|block| block.as_ref().is_some_and(|block| is(block, at)))
        };
        when(Seen::new(on), move || lay(self, at))
    }

    /// A row of small figures, one for each of so many sets; nothing where `count` gives none.
    pub fn spin_sets(
        self,
        at: At,
        part: &'static str,
        what: &'static str,
        count: fn(&Block, At) -> Option<u8>,
        look: Look,
        set: Put,
    ) -> AnyView {
        let count = Seen::new(move || {
            self.it
                .with(|block| block.as_ref().and_then(|block| count(block, at)))
        });
        dynamic(move || match count.get() {
            None => ().into_any(),
            Some(count) => {
                let names = (1..=count).map(|n| format!("{what} {n}"));
                self.spin(at, part, names.collect(), look, set)
            }
        })
    }

    /// What depends on a choice: rebuilt when `key` reads otherwise, and only then, so that what is being tapped
    /// stays where it is.
    pub fn depends(self, at: At, key: Look, lay: Lay) -> AnyView {
        let key = Seen::new(move || self.read(key, at));
        dynamic(move || {
            // Read, not only followed: a memo that was never read follows nothing.
            let there = key.with(|_| self.it.with_untracked(Option::is_some));
            if there { lay(self, at) } else { ().into_any() }
        })
    }
}
