//! The style sheets of a build, joined into one file: one request at each start instead of one for every sheet.

use std::fs;
use std::path::Path;

use sha2::{Digest, Sha256};

use crate::precache::hex;
use crate::say::{OrNext, Outcome};

/// What to do when this part fails.
const NEXT: &str = "delete dist/ and run `cargo xtask dist` again";

/// How Trunk names a style sheet in the page, around its address.
const OPENS: &str = "<link rel=\"stylesheet\" href=\"./";
const CLOSES: &str = "\"/>";

/// A page with its style sheets taken out of it.
#[derive(Debug, PartialEq)]
struct Taken<'a> {
    /// The addresses of the sheets, in order.
    sheets: Vec<&'a str>,
    /// The page before the first of them.
    before: &'a str,
    /// What stands between and after them.
    after: String,
}

/// Takes the style sheets out of a page; none where it has not more than one.
fn take(page: &str) -> Option<Taken<'_>> {
    let mut pieces = page.split(OPENS);
    let before = pieces.next()?;
    let mut sheets = Vec::new();
    let mut after = String::new();
    for piece in pieces {
        let (address, rest) = piece.split_once(CLOSES)?;
        sheets.push(address);
        after.push_str(rest.trim_start());
    }
    (sheets.len() > 1).then_some(Taken {
        sheets,
        before,
        after,
    })
}

/// Joins the style sheets of a build in the order in which its page names them.
pub fn join(build: &Path) -> Outcome<()> {
    let place = build.join("index.html");
    let page = fs::read_to_string(&place).or_next("reading the page", NEXT)?;
    let Some(Taken {
        sheets,
        before,
        after,
    }) = take(&page)
    else {
        return Ok(());
    };
    let mut joined = String::new();
    for sheet in sheets {
        let file = build.join(sheet);
        let text = fs::read_to_string(&file).or_next(format!("reading {sheet}"), NEXT)?;
        joined.push_str(text.trim_end());
        joined.push('\n');
        fs::remove_file(&file).or_next(format!("removing {sheet}"), NEXT)?;
    }
    let name = format!("style-{}.css", &hex(&Sha256::digest(&joined))[..16]);
    fs::write(build.join(&name), joined).or_next("writing the style sheets", NEXT)?;
    let page = format!("{before}{OPENS}{name}{CLOSES}\n  {after}");
    fs::write(place, page).or_next("writing the page", NEXT)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scratch::Scratch;

    fn link(address: &str) -> String {
        format!("{OPENS}{address}{CLOSES}")
    }

    #[test]
    fn sheets_become_one_in_the_order_of_the_page() {
        let build = Scratch::new("styles");
        build.write("b.css", b"p { color: red }\n");
        build.write("a.css", b"p { color: blue }");
        let page = format!(
            "<head>\n  {}\n  {}\n  <title>A</title>\n</head>\n",
            link("b.css"),
            link("a.css")
        );
        build.write("index.html", page.as_bytes());
        join(build.path()).unwrap();
        let page = fs::read_to_string(build.path().join("index.html")).unwrap();
        let name = take_one(&page);
        let joined = fs::read_to_string(build.path().join(name)).unwrap();
        assert_eq!(joined, "p { color: red }\np { color: blue }\n");
        assert!(page.contains("<title>A</title>\n</head>\n"), "{page}");
        assert!(!build.path().join("a.css").exists());
        // Once more changes nothing.
        join(build.path()).unwrap();
        assert!(build.path().join(name).exists());
    }

    fn take_one(page: &str) -> &str {
        let (_, rest) = page.split_once(OPENS).unwrap();
        let (name, rest) = rest.split_once(CLOSES).unwrap();
        assert!(!rest.contains(OPENS), "{page}");
        name
    }

    #[test]
    fn a_page_with_one_sheet_or_none_stays() {
        assert_eq!(take("<head></head>"), None);
        assert_eq!(take(&link("a.css")), None);
    }
}
