//! One writer among the tabs. Two guards in one page stand for two tabs.

use crate::help::{patch, until};
use stanchion::device::locks::{Role, Writer, writer};
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen_test::wasm_bindgen_test;

fn tab(name: &str) -> (Writer, Rc<RefCell<Vec<Role>>>) {
    let roles: Rc<RefCell<Vec<Role>>> = Rc::default();
    let told = Rc::clone(&roles);
    (
        writer(name, move |role| told.borrow_mut().push(role)),
        roles,
    )
}

async fn until_role(tab: &Writer, role: Role) {
    until(&format!("a tab is {role:?}"), || tab.role() == role).await;
}

#[wasm_bindgen_test]
async fn the_second_tab_waits_and_follows() {
    let (first, first_roles) = tab("test-writer");
    assert_eq!(first.role(), Role::Asking);
    until_role(&first, Role::Writer).await;
    let (second, second_roles) = tab("test-writer");
    until_role(&second, Role::Waiting).await;
    assert_eq!(first.role(), Role::Writer);
    drop(first);
    until_role(&second, Role::Writer).await;
    assert_eq!(*first_roles.borrow(), [Role::Writer]);
    assert_eq!(*second_roles.borrow(), [Role::Waiting, Role::Writer]);
}

#[wasm_bindgen_test]
async fn a_lock_taken_by_force_is_told_to_the_tab_that_had_it() {
    let (first, first_roles) = tab("test-steal");
    until_role(&first, Role::Writer).await;
    first.steal();
    let (second, _) = tab("test-steal");
    until_role(&second, Role::Waiting).await;
    second.steal();
    until_role(&second, Role::Writer).await;
    until_role(&first, Role::Waiting).await;
    drop(second);
    until_role(&first, Role::Writer).await;
    assert_eq!(
        *first_roles.borrow(),
        [Role::Writer, Role::Waiting, Role::Writer]
    );
}

#[wasm_bindgen_test]
async fn a_tab_that_gave_up_waiting_does_not_come_back() {
    let (first, _) = tab("test-give-up");
    until_role(&first, Role::Writer).await;
    let (second, second_roles) = tab("test-give-up");
    until_role(&second, Role::Waiting).await;
    drop(second);
    drop(first);
    let (third, _) = tab("test-give-up");
    until_role(&third, Role::Writer).await;
    assert_eq!(*second_roles.borrow(), [Role::Waiting]);
}

#[wasm_bindgen_test]
async fn without_locks_every_tab_writes() {
    for locks in [
        "undefined",
        "{request: async () => { throw new DOMException('', 'SecurityError') }}",
        "{request() { throw new DOMException('', 'SecurityError') }}",
    ] {
        let _patch = patch(&format!("shadow(navigator, 'locks', {{value: {locks}}});"));
        let (only, roles) = tab("test-none");
        until_role(&only, Role::Writer).await;
        assert_eq!(*roles.borrow(), [Role::Writer]);
    }
}
