//! Mounts the app, nothing else.

fn main() {
    std::panic::set_hook(Box::new(|info| {
        stanchion::device::faults::panicked(info.location());
        console_error_panic_hook::hook(info);
    }));
    stanchion::words::speak(stanchion::device::language::catalogue());
    leptos::mount::mount_to_body(stanchion::ui::App);
}
