//! Everything that is kept as a whole: read into one archive, and replaced by another in one write.

use crate::device::db::{DbError, Write};
use crate::session::SessionId;
use crate::store::Archive;
use crate::ui::keep::Keep;
use crate::ui::stanchion::Stanchion;
use crate::ui::writing::Alone;
use crate::ui::{books, change, start};

/// The session on the floor that has not ended.
pub fn running(app: Stanchion) -> Option<SessionId> {
    app.model.with_untracked(|model| {
        let session = model.session.as_ref()?;
        (!session.state().has_ended()).then_some(session.state().began.session)
    })
}

/// Everything that could be read, the session under way and what waits to be written among it. What could not is set
/// aside; gives how many records that are, too.
pub async fn gather(app: Stanchion) -> Result<(Archive, usize), DbError> {
    gather_from(app, &app.keep()).await
}

/// As [`gather`], from those records.
pub async fn gather_from(app: Stanchion, keep: &Keep) -> Result<(Archive, usize), DbError> {
    let gathered = crate::ui::gather::gather(keep).await?;
    let lost = if app.has_left(keep) {
        gathered.unreadable.len()
    } else {
        app.set_aside(gathered.unreadable)
    };
    Ok((gathered.archive, lost))
}

/// Makes `to` of `from` on disk, together with `more`, in one write; then reads all of it again. `alone` was there before
/// `from` was read.
pub async fn replace(
    app: Stanchion,
    alone: Alone,
    from: &Archive,
    to: &Archive,
    more: Vec<Write>,
) -> Result<(), DbError> {
    let keep = app.keep();
    change::apply(&keep, from, to, running(app), more).await?;
    drop(alone);
    written(app, &keep).await
}

/// Makes writes, with what follows from them for the books, at once; then reads all of it again. `alone` was there before
/// anything was read for them.
pub async fn write(app: Stanchion, alone: Alone, mut writes: Vec<Write>) -> Result<(), DbError> {
    let keep = app.keep();
    let books = books::following(&keep.settled(), &mut writes).await?;
    writes.extend(books);
    keep.apply(writes).await?;
    drop(alone);
    written(app, &keep).await
}

/// Reads all that was written again.
async fn written(app: Stanchion, keep: &Keep) -> Result<(), DbError> {
    app.tell_others(keep);
    app.model.update(|model| model.opened = None);
    start::read(app).await
}
