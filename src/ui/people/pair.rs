//! Two lifters at one rack: both sit at this phone, each with an own session in their own records, and the board turns
//! from one to the other.

use super::seat::remember;
use crate::device::clock;
use crate::kit::Kit;
use crate::programme::LightWeek;
use crate::say;
use crate::session::{Along, Session, SessionId, is_next, turns};
use crate::sheet::{Sheet, SheetId};
use crate::store::Person;
use crate::ui::floor::Beginning;
use crate::ui::model::{Keeping, Model, Pair, Pairing, Stage};
use crate::ui::place::Place;
use crate::ui::stanchion::Stanchion;
use crate::ui::start::sit_down;
use leptos::task::spawn_local;
use std::sync::Arc;
use uuid::Uuid;

/// Lets `person` sit down beside the one who is here, who is put aside for that.
async fn sit_beside(app: Stanchion, person: &Person) {
    let (keep, keeping) = app.records_of(&person.database).await;
    app.put_aside(keep);
    app.model.update(|model| {
        model.who = Some(person.id);
        if keeping != Keeping::Safe {
            model.keeping = keeping;
        }
    });
    sit_down(app).await;
}

/// Why nobody can train along with that one now.
fn refusal(model: &Model) -> Option<String> {
    let name = model.person().map(|person| person.name.to_string())?;
    if model.follows {
        Some(say!(
            "{name} is in use in another tab: close it first.",
            name
        ))
    } else if model.session.is_some() {
        Some(say!(
            "A session of {name}'s is not put away yet: change over to {name} and end it first.",
            name
        ))
    } else if model.lifter.is_none() {
        Some(say!(
            "{name} has not read yet what there is to know before lifting: change over to {name} once.",
            name
        ))
    } else {
        None
    }
}

/// Asks which sheet the other one does, on the floor, where the question stands: the sheet may be begun on its own page.
pub fn ask(app: Stanchion, with: Uuid, pairing: Pairing) {
    let person = app.model.with_untracked(|model| {
        let other = model.who != Some(with);
        model.people.get(with).filter(|_| other).cloned()
    });
    let Some(person) = person.filter(|_| app.may_write()) else {
        return;
    };
    if !app.is_settled() {
        return;
    }
    spawn_local(async move {
        sit_beside(app, &person).await;
        let refused = app.model.with_untracked(refusal);
        app.exchange();
        match refused {
            Some(why) => {
                app.drop_other();
                app.complain(why);
            }
            None => {
                app.model.update(|model| model.pairing = Some(pairing));
                app.go(Place::Floor);
            }
        }
        app.model.update(|model| model.stage = Stage::Open);
    });
}

/// Leaves it at one.
pub fn leave(app: Stanchion) {
    app.drop_other();
}

/// Begins both sessions: one's own, and the other one's on `theirs`, or on the same sheet.
pub fn begin(app: Stanchion, theirs: Option<SheetId>) {
    let (own, other) = (SessionId(app.id()), SessionId(app.id()));
    let mut ready = None;
    app.model.update(|model| {
        let pairing = model.pairing.take();
        let same = pairing.as_ref().and_then(|one| model.sheet(one.sheet));
        let (same, kit) = (same.cloned(), Arc::new(Kit::clone(&model.kit)));
        if pair_up(model, (own, other), &kit) {
            ready = pairing.zip(same);
        }
    });
    let Some((Pairing { sheet, light }, same)) = ready else {
        return app.drop_other();
    };
    // The other one's first: where the phone ends between the two, one's own is none with nobody beside.
    app.exchange();
    let id = theirs.unwrap_or_else(|| has_sheet(app, same));
    // Their programme may have a light week now.
    let light_now = app.model.with_untracked(|model| {
        let sheet = model.sheet(id)?;
        Beginning::of(model, sheet, clock::wall()).light
    });
    begin_one(app, id, light_now);
    let begun = app.model.with_untracked(Model::in_session);
    app.exchange();
    if !begun {
        return app.drop_other();
    }
    begin_one(app, sheet, light);
    let both = app.model.with_untracked(|model| {
        model.in_session() && model.partner().is_some_and(Model::in_session)
    });
    if both {
        // Who trains along was chosen for this session: the next one is begun alone unless it is chosen again.
        app.model.update(|model| model.with = None);
    } else {
        app.drop_other();
    }
}

fn begin_one(app: Stanchion, sheet: SheetId, light: Option<LightWeek>) {
    match light {
        Some(light) => app.begin_light(sheet, light),
        None => app.begin(sheet),
    }
}

/// Gives the lifter in use a sheet that they do not have.
fn has_sheet(app: Stanchion, sheet: Sheet) -> SheetId {
    let id = sheet.id;
    if app.model.with_untracked(|model| model.sheet(id).is_none()) {
        app.keep_sheet(sheet);
    }
    id
}

/// Makes a pair of the one in use, who begins, and of the one put aside. False where either is nobody.
fn pair_up(model: &mut Model, (own, theirs): (SessionId, SessionId), kit: &Arc<Kit>) -> bool {
    let pair = |lifter: Option<Uuid>, session, other, first| {
        Some(Pair {
            along: Along {
                lifter: lifter?,
                session: other,
                first,
            },
            session,
            kit: Arc::clone(kit),
            stays: false,
        })
    };
    let Some(mut other) = model.other.take() else {
        return false;
    };
    model.pair = pair(other.who, own, theirs, true);
    other.pair = pair(model.who, theirs, own, false);
    let both = model.pair.is_some() && other.pair.is_some();
    model.other = Some(other);
    both
}

/// Brings back who trained along when the page was left; and the turn.
pub async fn restore(app: Stanchion) {
    let along = app.model.with_untracked(|model| {
        let session = model.session.as_ref()?;
        let along = session.state().began.along?;
        let person = model.people.get(along.lifter)?;
        (Some(person.id) != model.who)
            .then(|| (along, session.state().began.session, person.clone()))
    });
    let Some((along, own, person)) = along else {
        return;
    };
    sit_beside(app, &person).await;
    let there = app.model.with_untracked(|model| {
        let session = model.session.as_ref();
        session.is_some_and(|session| session.state().began.session == along.session)
    });
    app.exchange();
    if !there {
        return app.drop_other();
    }
    app.model.update(|model| {
        let theirs = model.other.as_ref().map(|other| Kit::clone(&other.kit));
        let kit = if along.first { None } else { theirs };
        let kit = Arc::new(kit.unwrap_or_else(|| Kit::clone(&model.kit)));
        pair_up(model, (own, along.session), &kit);
        // Who began is the first, whoever is in use.
        let is_first = |model: &mut Model, first| {
            if let Some(pair) = &mut model.pair {
                pair.along.first = first;
            }
        };
        is_first(model, along.first);
        if let Some(other) = &mut model.other {
            is_first(other, !along.first);
        }
    });
    let turned = app.model.with_untracked(|model| {
        let sessions = both(model);
        sessions.is_some_and(|(own, other)| !is_next(own, other))
    });
    if turned {
        app.turn();
    }
}

/// The sessions of both.
fn both(model: &Model) -> Option<(&Session, &Session)> {
    let other = model.partner()?.session.as_ref()?;
    Some((model.session.as_ref()?, other))
}

impl Stanchion {
    /// Turns the board to the other one.
    pub fn turn(self) {
        if self.model.with_untracked(|model| model.partner().is_none()) {
            return;
        }
        self.exchange();
        if let Some(who) = self.model.with_untracked(|model| model.who) {
            remember(who);
        }
    }

    /// Turns the board to the other one where that holds for one's own session and the other's.
    pub fn turn_if(self, holds: fn(&Session, &Session) -> bool) {
        let turned = self.model.with_untracked(|model| {
            let sessions = both(model);
            sessions.is_some_and(|(own, other)| holds(own, other))
        });
        if turned {
            self.turn();
        }
    }

    /// Turns the board to the one who is next, after a set was logged.
    pub fn turn_after_log(self) {
        let stays = self
            .model
            .with_untracked(|model| model.pair.as_ref().is_none_or(|pair| pair.stays));
        if !stays {
            self.turn_if(|own, other| turns(own.state(), other.state()));
        }
    }

    /// The board turns by itself no more, or again.
    pub fn stay(self, stays: bool) {
        self.model.update(|model| {
            let other = model.other.as_mut().and_then(|other| other.pair.as_mut());
            for pair in model.pair.as_mut().into_iter().chain(other) {
                pair.stays = stays;
            }
        });
    }

    /// Lets the one go who is here and has put the session away; the one who trains along is here then. False where
    /// nobody does.
    pub fn part(self) -> bool {
        let paired = self.model.with_untracked(|model| model.partner().is_some());
        if paired {
            self.turn();
            self.drop_other();
        }
        paired
    }
}
