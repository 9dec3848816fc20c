//! Mounts the app, nothing else.

fn main() {
    std::panic::set_hook(Box::new(|info| {
        stanchion::device::faults::panicked(info.location());
        console_error_panic_hook::hook(info);
    }));
    stanchion::words::speak(stanchion::device::language::catalogue());
    // A task of its own: to make the module ready is one already, and both together would hold up a slow phone.
    std::mem::forget(stanchion::device::timer::after(0, || {
        leptos::mount::mount_to_body(stanchion::ui::App);
    }));
}
