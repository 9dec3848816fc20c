//! Stanchion, an offline-first training log for a phone leaning on the rack.
