//! What holds for the whole list.
