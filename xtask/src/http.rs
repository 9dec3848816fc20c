//! What a static host decides for each request: which file, which type, which answer. Pure.

/// What a request asks for.
#[derive(Debug, PartialEq)]
pub enum Ask {
    /// A file of the folder, by its path written with `/`; `body` is false for HEAD.
    File { path: String, body: bool },
    /// The address lies outside what is served, or cannot be a file.
    NotFound,
    /// Not a GET or HEAD.
    NotAllowed,
    /// Not HTTP.
    Malformed,
}

/// Reads a request's first line for a folder that is served under `base` (begins and ends with `/`).
pub fn ask(line: &str, base: &str) -> Ask {
    let mut words = line.split_whitespace();
    let (Some(method), Some(address), Some(protocol)) = (words.next(), words.next(), words.next())
    else {
        return Ask::Malformed;
    };
    if !protocol.starts_with("HTTP/1.") {
        return Ask::Malformed;
    }
    let body = match method {
        "GET" => true,
        "HEAD" => false,
        _ => return Ask::NotAllowed,
    };
    let path = address.split(['?', '#']).next().unwrap_or_default();
    let Some(path) = path.strip_prefix(base).and_then(decoded) else {
        return Ask::NotFound;
    };
    let climbs = path.split(['/', '\\']).any(|part| part.starts_with('.')) || path.contains(':');
    if climbs {
        return Ask::NotFound;
    }
    let path = if path.is_empty() || path.ends_with('/') {
        path + "index.html"
    } else {
        path
    };
    Ask::File { path, body }
}

/// A path with its `%XX` turned into bytes, or none if that is not text.
fn decoded(path: &str) -> Option<String> {
    let mut bytes = Vec::with_capacity(path.len());
    let mut rest = path.as_bytes();
    while let Some((&first, tail)) = rest.split_first() {
        if first == b'%' {
            let digits = std::str::from_utf8(tail.get(..2)?).ok()?;
            bytes.push(u8::from_str_radix(digits, 16).ok()?);
            rest = &tail[2..];
        } else {
            bytes.push(first);
            rest = tail;
        }
    }
    String::from_utf8(bytes)
        .ok()
        .filter(|text| !text.contains('\0'))
}

/// The type of a file by its name, in the words of the IANA media type registry.
pub fn content_type(path: &str) -> &'static str {
    match path.rsplit_once('.').map(|(_, end)| end) {
        Some("html") => "text/html; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("wasm") => "application/wasm",
        Some("webmanifest") => "application/manifest+json",
        Some("json") => "application/json",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        Some("txt") => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn file(path: &str) -> Ask {
        Ask::File {
            path: path.into(),
            body: true,
        }
    }

    #[test]
    fn a_folder_is_answered_by_its_page() {
        assert_eq!(ask("GET / HTTP/1.1", "/"), file("index.html"));
        assert_eq!(ask("GET /?from=home HTTP/1.1", "/"), file("index.html"));
        assert_eq!(
            ask("GET /some/sub/ HTTP/1.1", "/some/sub/"),
            file("index.html")
        );
    }

    #[test]
    fn a_file_is_found_below_the_base_only() {
        assert_eq!(
            ask("GET /a/icons/x.svg HTTP/1.1", "/a/"),
            file("icons/x.svg")
        );
        assert_eq!(ask("GET /icons/x.svg HTTP/1.1", "/a/"), Ask::NotFound);
        assert_eq!(ask("GET /x%20y.js HTTP/1.1", "/"), file("x y.js"));
    }

    #[test]
    fn nothing_outside_the_folder_can_be_asked_for() {
        for line in [
            "GET /../Cargo.toml HTTP/1.1",
            "GET /icons/../../Cargo.toml HTTP/1.1",
            "GET /%2e%2e/Cargo.toml HTTP/1.1",
            "GET /..%5cCargo.toml HTTP/1.1",
            "GET /C:/x HTTP/1.1",
            "GET /.hidden HTTP/1.1",
            "GET /%zz HTTP/1.1",
            "GET /%ff HTTP/1.1",
        ] {
            assert_eq!(ask(line, "/"), Ask::NotFound, "{line}");
        }
    }

    #[test]
    fn only_reading_is_allowed() {
        assert_eq!(
            ask("HEAD /a.js HTTP/1.1", "/"),
            Ask::File {
                path: "a.js".into(),
                body: false
            }
        );
        assert_eq!(ask("POST / HTTP/1.1", "/"), Ask::NotAllowed);
        assert_eq!(ask("hello", "/"), Ask::Malformed);
        assert_eq!(ask("GET / GOPHER", "/"), Ask::Malformed);
    }

    #[test]
    fn types_are_what_browsers_insist_on() {
        // WebAssembly's web API and the manifest specification name these two.
        assert_eq!(content_type("a_bg.wasm"), "application/wasm");
        assert_eq!(
            content_type("manifest.webmanifest"),
            "application/manifest+json"
        );
        assert_eq!(content_type("sw.js"), "text/javascript; charset=utf-8");
        assert_eq!(content_type("LICENSE"), "application/octet-stream");
    }
}
