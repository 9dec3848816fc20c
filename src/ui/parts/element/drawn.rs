//! How an element is drawn, and redrawn.

use super::{Element, Follow, Is, Plan, Trait, Value};
use crate::ui::unfollow::leave_with_this;
use leptos::prelude::*;
use leptos::tachys::html::attribute::Attribute;
use leptos::tachys::html::attribute::any_attribute::AnyAttribute;
use leptos::tachys::html::property::prop;
use leptos::tachys::html::style::style;
use leptos::tachys::hydration::Cursor;
use leptos::tachys::no_attrs;
use leptos::tachys::renderer::types::{Element as Node, Node as AnyNode};
use leptos::tachys::renderer::{RemoveEventHandler, Rndr};
use leptos::tachys::view::any_view::AnyViewState;
use leptos::tachys::view::{Mountable, Position, PositionState};

const SVG: &str = "http://www.w3.org/2000/svg";

/// An element that stands in the page, and what keeps it as it should be. All of it ends when this is dropped.
pub struct Drawn {
    tag: &'static str,
    node: Node,
    traits: Vec<(&'static str, Kept)>,
    inside: Vec<AnyViewState>,
}

/// What is kept of a trait.
enum Kept {
    Fixed(Value),
    Style(String),
    Follows(RenderEffect<Value>),
    Property(RenderEffect<Value>),
    Hears(RemoveEventHandler<Node>),
}

/// Where a value goes.
#[derive(Clone, Copy)]
enum To {
    Attribute,
    Property,
}

fn put(node: &Node, name: &'static str, value: &Value, to: To) {
    match (&value.0, to) {
        (Some(value), To::Attribute) => Rndr::set_attribute(node, name, value),
        (None, To::Attribute) => Rndr::remove_attribute(node, name),
        (value, To::Property) => {
            // Once the element's children are there: what is chosen in a list cannot be set before.
            prop(name, value.as_deref().unwrap_or_default().to_owned()).build(node);
        }
    }
}

/// Puts what `value` says there, now and whenever what it reads changes. `before` is there already.
fn follow(
    node: &Node,
    name: &'static str,
    value: Follow,
    to: To,
    before: Option<Value>,
) -> RenderEffect<Value> {
    let node = node.clone();
    RenderEffect::new_with_value(
        move |before: Option<Value>| {
            leave_with_this();
            let now = value();
            // An attribute that is left out need not be taken off an element that is new.
            let there = before.unwrap_or(Value(None));
            if there != now {
                put(&node, name, &now, to);
            }
            now
        },
        before,
    )
}

fn keep(node: &Node, has: Trait) -> (&'static str, Kept) {
    let name = has.name;
    let kept = match has.is {
        Is::Fixed(value) => {
            if value.0.is_some() {
                put(node, name, &value, To::Attribute);
            }
            Kept::Fixed(value)
        }
        Is::Style(value) => {
            style((name, value.clone())).build(node);
            Kept::Style(value)
        }
        Is::Follows(value) => Kept::Follows(follow(node, name, value, To::Attribute, None)),
        Is::Property(value) => Kept::Property(follow(node, name, value, To::Property, None)),
        Is::Hears(hear) => Kept::Hears(hear.attach(node)),
    };
    (name, kept)
}

/// Brings what an element was drawn with up to what it has now.
fn refresh(node: &Node, has: Trait, kept: &mut Kept) {
    let name = has.name;
    match (has.is, kept) {
        (Is::Fixed(value), Kept::Fixed(there)) => {
            if value != *there {
                put(node, name, &value, To::Attribute);
                *there = value;
            }
        }
        (Is::Style(value), Kept::Style(there)) => {
            if value != *there {
                style((name, value.clone())).build(node);
                *there = value;
            }
        }
        (Is::Follows(value), Kept::Follows(effect)) => {
            let before = effect.take_value();
            *effect = follow(node, name, value, To::Attribute, before);
        }
        (Is::Property(value), Kept::Property(effect)) => {
            let before = effect.take_value();
            *effect = follow(node, name, value, To::Property, before);
        }
        (Is::Hears(hear), Kept::Hears(heard)) => *heard = hear.attach(node),
        _ => unreachable!("an element was drawn into one of another kind"),
    }
}

fn is_kind(has: &Trait, kept: &(&'static str, Kept)) -> bool {
    has.name == kept.0
        && matches!(
            (&has.is, &kept.1),
            (Is::Fixed(_), Kept::Fixed(_))
                | (Is::Style(_), Kept::Style(_))
                | (Is::Follows(_), Kept::Follows(_))
                | (Is::Property(_), Kept::Property(_))
                | (Is::Hears(_), Kept::Hears(_))
        )
}

impl Drawn {
    /// Whether the plan is for an element of this kind.
    fn is_for(&self, plan: &Plan) -> bool {
        self.tag == plan.tag
            && self.traits.len() == plan.traits.len()
            && plan
                .traits
                .iter()
                .zip(&self.traits)
                .all(|(has, kept)| is_kind(has, kept))
    }
}

impl Render for Element {
    type State = Drawn;

    fn build(self) -> Drawn {
        let Plan {
            tag,
            is_svg,
            traits,
            inside,
        } = *self.0;
        let node = Rndr::create_element(tag, is_svg.then_some(SVG));
        let traits = traits.into_iter().map(|has| keep(&node, has)).collect();
        let mut inside: Vec<AnyViewState> = inside.into_iter().map(AnyView::build).collect();
        for child in &mut inside {
            child.mount(&node, None);
        }
        Drawn {
            tag,
            node,
            traits,
            inside,
        }
    }

    fn rebuild(self, drawn: &mut Drawn) {
        if !drawn.is_for(&self.0) {
            let mut new = self.build();
            drawn.insert_before_this(&mut new);
            drawn.unmount();
            *drawn = new;
            return;
        }
        for (has, (_, kept)) in self.0.traits.into_iter().zip(&mut drawn.traits) {
            refresh(&drawn.node, has, kept);
        }
        let count = self.0.inside.len();
        for (at, child) in self.0.inside.into_iter().enumerate() {
            match drawn.inside.get_mut(at) {
                Some(there) => child.rebuild(there),
                None => {
                    let mut new = child.build();
                    new.mount(&drawn.node, None);
                    drawn.inside.push(new);
                }
            }
        }
        for mut gone in drawn.inside.drain(count..) {
            gone.unmount();
        }
    }
}

impl Mountable for Drawn {
    fn unmount(&mut self) {
        self.node.unmount();
    }

    fn mount(&mut self, parent: &Node, marker: Option<&AnyNode>) {
        self.node.mount(parent, marker);
    }

    fn try_mount(&mut self, parent: &Node, marker: Option<&AnyNode>) -> bool {
        self.node.try_mount(parent, marker)
    }

    fn insert_before_this(&self, child: &mut dyn Mountable) -> bool {
        self.node.insert_before_this(child)
    }

    fn elements(&self) -> Vec<Node> {
        vec![self.node.clone()]
    }
}

no_attrs!(Element);

/// What the library asks of every view, also of those that a server writes; this app has no server.
impl RenderHtml for Element {
    type AsyncOutput = Element;
    type Owned = Element;

    const MIN_LENGTH: usize = 0;

    fn dry_resolve(&mut self) {}

    async fn resolve(self) -> Element {
        self
    }

    fn to_html_with_buf(
        self,
        _: &mut String,
        _: &mut Position,
        _: bool,
        _: bool,
        _: Vec<AnyAttribute>,
    ) {
        unreachable!("a page is drawn in the browser, not written by a server")
    }

    fn hydrate<const FROM_SERVER: bool>(self, _: &Cursor, _: &PositionState) -> Drawn {
        unreachable!("a page is drawn in the browser, not written by a server")
    }

    fn into_owned(self) -> Element {
        self
    }
}
