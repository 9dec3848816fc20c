//! Sending a sheet: as a link, a QR code, a file, or on paper.

use crate::device::files::{Outgoing, Sharing, save_as, share_file};
use crate::device::{clock, dom, pack, place as address, send};
use crate::exercises::without_cautions;
use crate::say;
use crate::share::{
    self, Parcel, TooLong, file_name, has_start_loads, qr, sheet_file, without_mark,
    without_start_loads,
};
use crate::sheet::Sheet;
use crate::ui::live::Live;
use crate::ui::parts::{button, dynamic, el, line, panel, quiet, svg, toggle, when};
use crate::ui::seen::{Seen, whenever};
use crate::ui::stanchion::Stanchion;
use crate::words::t;
use leptos::prelude::*;
use leptos::task::spawn_local;

/// What goes along.
fn goes() -> &'static str {
    t(
        "Goes along: the name, the warm-up, notes and cues in your words, and every set with the loads and steps that are \
        part of it.",
    )
}

/// What stays here, by whether the loads to start from go along.
fn stays(with_loads: bool) -> &'static str {
    t(if with_loads {
        "The loads to start from go along too. Stays here: your name, your body mass, and all that you lifted."
    } else {
        "Stays here: the loads to start from, your name, your body mass, and all that you lifted."
    })
}

/// The code of a sheet; packed where the browser can, else plain.
pub async fn code_of(sheet: &Sheet) -> Result<String, TooLong> {
    let bare = without_cautions(sheet);
    let parcel = match &bare {
        Some(bare) => Parcel::of(bare).without_cautions(sheet),
        None => Parcel::of(sheet),
    };
    let packed = pack::deflate(parcel.text().as_bytes()).await;
    parcel.seal(packed.as_deref())
}

/// What is being sent, and how far the link is.
#[derive(Clone, Copy)]
struct Sending {
    app: Stanchion,
    sheet: StoredValue<Sheet>,
    with_loads: Live<bool>,
    /// None while it is being made.
    link: Live<Option<Result<String, TooLong>>>,
    /// What became of the last thing that was asked for. It is told in the panel: what lies behind it is out of reach.
    told: Live<String>,
}

impl Sending {
    /// The sheet that goes out.
    fn sheet(self) -> Sheet {
        let with_loads = self.with_loads.get_untracked();
        let sheet = self.sheet.with_value(without_mark);
        if with_loads {
            sheet
        } else {
            without_start_loads(&sheet)
        }
    }

    fn make_link(self) {
        let with_loads = self.with_loads.get();
        let sheet = self.sheet();
        self.link.set(None);
        // What was told was of another link.
        self.told.set(String::new());
        spawn_local(async move {
            let code = code_of(&sheet).await;
            // The panel may be gone, or the choice another one.
            if self.with_loads.try_get_untracked() == Some(with_loads) {
                let link = code.map(|code| share::link(&address::address(), &code));
                self.link.set(Some(link));
            }
        });
    }

    /// Does something with the link, once there is one.
    fn with_link(self, act: impl AsyncFnOnce(String) + 'static) {
        match self.link.get_untracked() {
            None => {}
            Some(Err(too_long)) => self.tell(too_long.to_string()),
            Some(Ok(link)) => spawn_local(act(link)),
        }
    }

    /// Tells in the panel, or on the page where the panel is gone.
    fn tell(self, text: impl Into<String>) {
        match self.told.try_get_untracked() {
            Some(_) => self.told.set(text.into()),
            None => self.app.say(text),
        }
    }

    fn copy(self) {
        self.with_link(async move |link| {
            self.tell(match send::copy(&link).await {
                true => t("The link is copied."),
                false => t("The browser did not copy. Hold the link and copy it by hand."),
            });
        });
    }

    fn send(self) {
        let title = self.sheet.with_value(|sheet| sheet.name.to_string());
        self.with_link(async move |link| {
            if send::share_link(&title, &link).await == Sharing::Unsupported {
                self.tell(t(
                    "The browser did not open a share sheet. Copy the link instead.",
                ));
            }
        });
    }

    fn file(self, to_other_app: bool) {
        let sheet = self.sheet();
        let name = file_name(&sheet.name);
        let text = sheet_file(&sheet, clock::wall());
        spawn_local(async move {
            if to_other_app {
                match share_file(&name, &Outgoing::of(text.clone())).await {
                    Sharing::Shared | Sharing::Cancelled => return,
                    Sharing::Unsupported => {}
                }
            }
            self.tell(match save_as(&name, "application/json", &text) {
                true => say!("{name} is in your downloads.", name),
                false => t("The browser refused the download. Use the link.").to_owned(),
            });
        });
    }
}

/// The button that opens the panel, and the panel.
pub fn share(app: Stanchion, sheet: &Sheet, with_loads: Live<bool>) -> AnyView {
    let open = Live::new(false);
    let sheet = StoredValue::new(sheet.clone());
    let inside = vec![
        button("wide", "share-sheet", t("Share or print"), move || {
            open.set(true);
        }),
        when(open, move || {
            let sending = Sending {
                app,
                sheet,
                with_loads,
                link: Live::new(None),
                told: Live::new(String::new()),
            };
            whenever(move || sending.make_link());
            let close = Callback::new(move |()| open.set(false));
            panel("share-panel", t("Share this sheet"), close, ways(sending))
        }),
    ];
    inside.into_any()
}

fn ways(sending: Sending) -> Vec<AnyView> {
    let Sending {
        with_loads, told, ..
    } = sending;
    let qr_open = Live::new(false);
    let mut inside = Vec::new();
    if sending.sheet.with_value(has_start_loads) {
        inside.push(toggle(
            "share-loads",
            t("with the loads to start from"),
            "",
            with_loads,
            move || with_loads.update(|with| *with = !*with),
        ));
    }
    let stays = Seen::new(move || stays(with_loads.get()).to_owned());
    inside.extend([
        link_field(sending),
        button("wide strong", "share-copy", t("Copy the link"), move || {
            sending.copy();
        }),
    ]);
    if send::can_share() {
        inside.push(button(
            "wide",
            "share-send",
            t("Send the link"),
            move || {
                sending.send();
            },
        ));
    }
    inside.extend([
        el("p")
            .class("said")
            .set("role", "status")
            .part("share-told")
            .says(move || told.get())
            .view(),
        button("wide", "share-qr", t("QR code of the link"), move || {
            qr_open.update(|open| *open = !*open);
        }),
        when(qr_open, move || dynamic(move || qr_of(sending))),
        button("wide", "share-file", t("Save as a file"), move || {
            sending.file(false);
        }),
    ]);
    if send::can_share() {
        inside.push(button(
            "wide",
            "share-file-send",
            t("Send the file"),
            move || {
                sending.file(true);
            },
        ));
    }
    inside.extend([
        button("wide", "share-print", t("Print"), dom::print),
        quiet(goes()),
        line("quiet", "share-stays", stays),
    ]);
    inside
}

/// The link itself, to be copied by hand; or why there is none.
fn link_field(sending: Sending) -> AnyView {
    let told = move || {
        sending.link.with(|link| match link {
            None => String::new(),
            Some(Ok(link)) => link.clone(),
            Some(Err(too_long)) => too_long.to_string(),
        })
    };
    el("label")
        .class("field")
        .child(el("span").child(t("the link")))
        .child(
            el("input")
                .set("type", "text")
                .set("readonly", true)
                .part("share-link")
                .value(told),
        )
        .view()
}

fn qr_of(sending: Sending) -> AnyView {
    let code = sending.link.with(|link| match link {
        None => None,
        Some(Ok(link)) => Some(qr(link)),
        Some(Err(too_long)) => Some(Err(*too_long)),
    });
    match code {
        None => ().into_any(),
        Some(Err(too_long)) => line("wrong-word", "qr-wrong", too_long.to_string()),
        Some(Ok(code)) => {
            let side = code.side();
            svg("svg")
                .class("qr")
                .set("role", "img")
                .set("aria-label", t("QR code of the link"))
                .set("viewBox", format!("0 0 {side} {side}"))
                .part("qr")
                .child(svg("path").set("d", code.path()))
                .view()
        }
    }
}
