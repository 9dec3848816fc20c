//! An element of the page, in one concrete type for all of them.
//!
//! `view!` makes a type of its own for each combination of tag, attributes and children, and the compiler compiles its
//! drawing code again for each. Here tag, attributes and children are data, so all of that is compiled once.

mod drawn;
mod value;

pub use value::{Value, yes_or_no};

use super::Text;
use crate::ui::unfollow::leave_with_this;
use leptos::ev::{self, Event};
use leptos::prelude::*;
use leptos::tachys::html::event::{On, on};

/// An element as it shall be drawn. It is made with [`el`] or [`svg`], told what it has, and ends as a view by
/// [`view`](Element::view) or as the [`child`](Element::child) of another one.
///
/// Redrawn in the place of an element with the same tag and the same names in the same order, it changes that one, which
/// keeps the keyboard, what was typed and where it was scrolled to; otherwise it takes its place.
pub struct Element(Box<Plan>);

struct Plan {
    tag: &'static str,
    is_svg: bool,
    traits: Vec<Trait>,
    inside: Vec<AnyView>,
}

/// Something that an element has, by its name.
struct Trait {
    name: &'static str,
    is: Is,
}

enum Is {
    /// An attribute that stays.
    Fixed(Value),
    /// A property of its style, which stays.
    Style(String),
    /// An attribute that follows what it reads.
    Follows(Follow),
    /// A property that follows what it reads.
    Property(Follow),
    /// A listener to an event.
    Hears(On<ev::Custom<Event>, Hear>),
}

type Follow = Box<dyn Fn() -> Value + Send>;
type Hear = Box<dyn FnMut(Event)>;

/// An element of HTML.
pub fn el(tag: &'static str) -> Element {
    Element::new(tag, false)
}

/// An element of SVG.
pub fn svg(tag: &'static str) -> Element {
    Element::new(tag, true)
}

impl Element {
    fn new(tag: &'static str, is_svg: bool) -> Element {
        let (traits, inside) = (Vec::new(), Vec::new());
        Element(Box::new(Plan {
            tag,
            is_svg,
            traits,
            inside,
        }))
    }

    #[inline(never)]
    fn with(mut self, name: &'static str, is: Is) -> Element {
        self.0.traits.push(Trait { name, is });
        self
    }

    /// With its classes.
    pub fn class(self, class: impl Into<Value>) -> Element {
        self.with("class", Is::Fixed(class.into()))
    }

    /// With its hook, `data-part`.
    pub fn part(self, part: impl Into<Value>) -> Element {
        self.with("data-part", Is::Fixed(part.into()))
    }

    /// With an attribute that stays as it is.
    pub fn set(self, name: &'static str, value: impl Into<Value>) -> Element {
        self.with(name, Is::Fixed(value.into()))
    }

    /// With a property of its style. It is set in the page, where the content security policy allows it, not as an attribute.
    pub fn style(self, name: &'static str, value: String) -> Element {
        self.with(name, Is::Style(value))
    }

    /// With an attribute that follows what `value` reads.
    pub fn follow<V: Into<Value>>(
        self,
        name: &'static str,
        value: impl Fn() -> V + Send + 'static,
    ) -> Element {
        self.with(name, Is::Follows(Box::new(move || value().into())))
    }

    /// With a value that follows what `value` reads, as fields have it.
    pub fn value(self, value: impl Fn() -> String + Send + 'static) -> Element {
        self.with("value", Is::Property(Box::new(move || value().into())))
    }

    /// Ticked, or not.
    pub fn checked(self, is_checked: bool) -> Element {
        // A property takes a text for true unless it is empty.
        let value = move || Value::from(is_checked.then_some("on"));
        self.with("checked", Is::Property(Box::new(value)))
    }

    /// With a listener to an event.
    pub fn on(self, event: &'static str, hear: impl FnMut(Event) + 'static) -> Element {
        self.hears(event, Box::new(hear))
    }

    /// With a listener to what was typed or chosen, once the person leaves it. A browser says it also of a field that is taken
    /// off the page with something in it: then what the listener acts on is gone.
    pub fn on_change(self, mut hear: impl FnMut(Event) + 'static) -> Element {
        let here = StoredValue::new(());
        self.on("change", move |event| {
            if here.try_get_value().is_some() {
                hear(event);
            }
        })
    }

    #[inline(never)]
    fn hears(self, event: &'static str, hear: Hear) -> Element {
        self.with(event, Is::Hears(on(ev::Custom::new(event), hear)))
    }

    /// With a listener to taps and to the keys that stand for them.
    pub fn on_tap(self, tapped: Callback<()>) -> Element {
        self.on("click", move |_| tapped.run(()))
    }

    /// With another view behind those that are inside.
    #[inline(never)]
    pub fn child(mut self, view: impl Inside) -> Element {
        view.put(&mut self.0.inside);
        self
    }

    /// With text behind what is inside.
    pub fn text(self, text: impl Into<Text>) -> Element {
        self.child(text.into())
    }

    /// With text behind what is inside, which follows what `text` reads.
    pub fn says(self, text: impl Fn() -> String + Send + 'static) -> Element {
        self.child(said(Box::new(text)))
    }

    /// The element as a view.
    #[inline(never)]
    pub fn view(self) -> AnyView {
        self.into_any()
    }
}

fn said(text: Box<dyn Fn() -> String + Send>) -> AnyView {
    let said = move || {
        leave_with_this();
        text()
    };
    said.into_any()
}

/// What can stand inside of an element.
pub trait Inside {
    /// Puts it behind what is there.
    fn put(self, inside: &mut Vec<AnyView>);
}

impl Inside for AnyView {
    fn put(self, inside: &mut Vec<AnyView>) {
        inside.push(self);
    }
}

impl Inside for Element {
    fn put(self, inside: &mut Vec<AnyView>) {
        inside.push(self.view());
    }
}

impl Inside for Vec<AnyView> {
    fn put(self, inside: &mut Vec<AnyView>) {
        inside.extend(self);
    }
}

/// Nothing keeps its place, so that what stands behind it is the same element when it is redrawn.
impl Inside for Option<AnyView> {
    fn put(self, inside: &mut Vec<AnyView>) {
        inside.push(self.unwrap_or_else(|| ().into_any()));
    }
}

impl Inside for String {
    fn put(self, inside: &mut Vec<AnyView>) {
        inside.push(self.into_any());
    }
}

impl Inside for &'static str {
    fn put(self, inside: &mut Vec<AnyView>) {
        inside.push(self.to_owned().into_any());
    }
}

impl Inside for Text {
    fn put(self, inside: &mut Vec<AnyView>) {
        inside.push(match self.if_fixed() {
            Some(text) => text.into_any(),
            None => said(Box::new(move || self.get())),
        });
    }
}
