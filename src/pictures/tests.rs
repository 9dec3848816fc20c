//! The pictures against what is counted another way.
