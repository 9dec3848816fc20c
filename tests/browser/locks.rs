//! One writer among the tabs. Two guards in one page stand for two tabs.

use crate::help::{patch, run, until};
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

/// What browsers without locks look like, and those that refuse them.
const WITHOUT_LOCKS: [&str; 3] = [
    "undefined",
    "{request: async () => { throw new DOMException('', 'SecurityError') }}",
    "{request() { throw new DOMException('', 'SecurityError') }}",
];

#[wasm_bindgen_test]
async fn without_locks_one_tab_writes_all_the_same() {
    for (n, locks) in WITHOUT_LOCKS.into_iter().enumerate() {
        let name = format!("test-none-{n}");
        let _patch = patch(&format!("shadow(navigator, 'locks', {{value: {locks}}});"));
        let (first, first_roles) = tab(&name);
        until_role(&first, Role::Writer).await;
        let (second, second_roles) = tab(&name);
        until_role(&second, Role::Waiting).await;
        assert_eq!(first.role(), Role::Writer);
        second.steal();
        assert_eq!(second.role(), Role::Writer);
        until_role(&first, Role::Waiting).await;
        drop(second);
        until_role(&first, Role::Writer).await;
        assert_eq!(
            *first_roles.borrow(),
            [Role::Writer, Role::Waiting, Role::Writer]
        );
        assert_eq!(*second_roles.borrow(), [Role::Waiting, Role::Writer]);
    }
}

#[wasm_bindgen_test]
async fn without_locks_the_one_who_took_over_last_writes_even_where_both_speak_at_once() {
    let _patch = patch("shadow(navigator, 'locks', {value: undefined});");
    let says = |taken: &str| {
        run(&format!(
            "localStorage.setItem('stanchion.writer.test-both', `\"7 ${{Date.now()}} {taken}\"`)"
        ));
        run("dispatchEvent(new StorageEvent('storage', { key: 'stanchion.writer.test-both' }))");
    };
    says("0");
    let (tab, roles) = tab("test-both");
    until_role(&tab, Role::Waiting).await;
    tab.steal();
    // The other one did not know it yet when it said once more that it writes.
    says("0");
    assert_eq!(tab.role(), Role::Writer);
    let said = run("return localStorage.getItem('stanchion.writer.test-both')");
    assert!(!said.as_string().unwrap().starts_with("\"7 "));
    // There, the person takes over once more.
    says("${Date.now() + 1000}");
    assert_eq!(tab.role(), Role::Waiting);
    assert_eq!(
        *roles.borrow(),
        [Role::Waiting, Role::Writer, Role::Waiting]
    );
}

#[wasm_bindgen_test]
async fn without_locks_a_writer_that_fell_silent_is_followed() {
    let _patch = patch("shadow(navigator, 'locks', {value: undefined});");
    // Said by a tab that was killed before it could take its word back.
    run("localStorage.setItem('stanchion.writer.test-silent', `\"7 ${Date.now() - 2500} 0\"`)");
    let (tab, roles) = tab("test-silent");
    until_role(&tab, Role::Writer).await;
    assert_eq!(*roles.borrow(), [Role::Waiting, Role::Writer]);
}

#[wasm_bindgen_test]
async fn without_locks_and_storage_every_tab_writes() {
    let _patch = patch(
        "shadow(navigator, 'locks', {value: undefined});
         shadow(window, 'localStorage', {value: undefined});",
    );
    let (only, roles) = tab("test-nothing");
    until_role(&only, Role::Writer).await;
    assert_eq!(*roles.borrow(), [Role::Writer]);
}
