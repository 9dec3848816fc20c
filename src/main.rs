//! Mounts the app, nothing else.

use stanchion::device::timer::after;

fn main() {
    std::panic::set_hook(Box::new(|info| {
        stanchion::device::faults::panicked(info.location());
        console_error_panic_hook::hook(info);
    }));
    stanchion::words::speak(stanchion::device::language::catalogue());
    // A task of its own: to make the module ready is one already, and both together would hold up a slow phone.
    std::mem::forget(after(0, || {
        // And one more: what is asked for in this task the browser reads while the app is made.
        let ahead = stanchion::ui::read_ahead();
        std::mem::forget(after(0, || {
            leptos::mount::mount_to_body(|| stanchion::ui::app(ahead));
        }));
    }));
}
