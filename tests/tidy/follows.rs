//! Whoever follows a source in a view leaves it when the view ends: see `src/ui/unfollow.rs`.

use super::files::File;

/// What makes one that follows.
const MAKERS: [&str; 4] = [
    "Effect::new",
    "Memo::new",
    "Selector::new",
    "Signal::derive",
];

/// What has it leave.
const LEAVE: &str = "leave_with_";

/// A file of the views has as many that leave as it makes that follow.
pub fn faults(file: &File) -> Vec<String> {
    if !file.path.starts_with("src/ui/") {
        return Vec::new();
    }
    let mut makers = Vec::new();
    let mut leaving = 0;
    for (number, line) in file.code() {
        if MAKERS.iter().any(|maker| line.contains(maker)) {
            makers.push(number);
        } else if line.contains(LEAVE) && !line.trim_start().starts_with("use ") {
            leaving += 1;
        }
    }
    let what = "it is told of changes for ever: `leave_with_owner` or `leave_with_this`";
    makers
        .into_iter()
        .skip(leaving)
        .map(|line| file.fault(line, what))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn caught(path: &str, text: &str) -> usize {
        faults(&File::new(path, text)).len()
    }

    #[test]
    fn one_that_follows_and_never_leaves_is_caught() {
        assert_eq!(caught("src/ui/a.rs", "Effect::new(move |_| act());\n"), 1);
        assert_eq!(caught("src/ui/a.rs", "let memo = ArcMemo::new(f);\n"), 1);
        assert_eq!(
            caught(
                "src/ui/a.rs",
                "use super::leave_with_this;\nEffect::new(f);\n"
            ),
            1
        );
        let leaves = "RenderEffect::new_with_value(move |_| {\n    leave_with_this();\n";
        assert_eq!(caught("src/ui/a.rs", leaves), 0);
        assert_eq!(caught("src/ui/a.rs", &leaves.repeat(2)), 0);
        assert_eq!(
            caught("src/ui/a.rs", &format!("{leaves}Memo::new(f);\n")),
            1
        );
        assert_eq!(caught("src/ui/a.rs", "// Effect::new runs later.\n"), 0);
        assert_eq!(caught("src/store/a.rs", "Effect::new(f);\n"), 0);
    }
}
