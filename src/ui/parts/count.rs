//! Counts in words.

/// So many of a thing: "1 set", "2 sets". For nouns whose plural is made with an s.
pub fn counted(count: usize, one: &str) -> String {
    if count == 1 {
        format!("1 {one}")
    } else {
        format!("{count} {one}s")
    }
}

#[cfg(test)]
mod tests {
    use super::counted;

    #[test]
    fn only_one_is_singular() {
        assert_eq!(counted(0, "set"), "0 sets");
        assert_eq!(counted(1, "set"), "1 set");
        assert_eq!(counted(2, "pair"), "2 pairs");
    }
}
